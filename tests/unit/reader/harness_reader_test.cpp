// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "unit/reader/reader_support.h"

namespace plugward::test {
namespace {

constexpr std::string_view readme_harness =
    R"(<harness id="kite-probe" title="Kite bed probe, five leads" evidence="drawing">
  <evidence id="drawing" kind="makers-drawing" date="2026-02-11"/>
  <device id="probe" title="Kite bed probe" use="probe">
    <terminal id="V" function="supply"/>
    <terminal id="G" function="ground"/>
    <terminal id="P" function="input" signal="servo" withstands="-0.3..5.5 V"/>
    <terminal id="T" function="output" signal="probe"/>
    <terminal id="H" function="ground"/>
    <load plus="V" minus="G" needs="4.6..5.5 V" draws="0.3 A" reversed="destroyed"/>
    <receiver terminal="P" plus="V" minus="G" low-below="0.8 V" high-above="2 V"/>
    <switch a="T" b="H" rests="open"/>
    <join a="G" b="H"/>
  </device>
  <plug id="control" family="pin-2.54" positions="3">
    <lead cavity="3" colour="OG" gauge="26 AWG" length="300 mm" to="P"/>
    <lead cavity="1" colour="BN" gauge="26 AWG" length="300 mm" to="G"/>
    <lead cavity="2" colour="RD" gauge="0.14 mm2" to="probe.V" mark="+"/>
  </plug>
</harness>
)";

TEST_CASE("the harness of the format page means what the page says") {
  const Read read(readme_harness);
  CHECK(read.faults().empty());
  REQUIRE(read.description.harness);
  const Harness& harness = *read.description.harness;
  CHECK(harness.id == "kite-probe");
  REQUIRE(harness.devices.size() == 1);
  const Device& device = harness.devices[0];
  CHECK(device.use == "probe");
  CHECK(device.kind == "");
  REQUIRE(device.terminals.size() == 5);
  CHECK(device.terminals[2].signal == "servo");
  CHECK(device.terminals[2].withstands == Range<Volts>{Volts(-0.3), Volts(5.5)});
  REQUIRE(device.parts.size() == 4);
  const Load& load = std::get<Load>(device.parts[0]);
  CHECK(load.plus == 0);
  CHECK(load.minus == 1);
  CHECK(load.needs == Range<Volts>{Volts(4.6), Volts(5.5)});
  CHECK(load.draws == Amps(0.3));
  CHECK(load.reversed == Reversal::Destroyed);
  CHECK(std::get<Receiver>(device.parts[1]).high_above == Volts(2));
  CHECK_FALSE(std::get<Switch>(device.parts[2]).rests_closed);
  CHECK(std::get<Join>(device.parts[3]).b == 4);
  CHECK(read.sources.text(part_span(device.parts[3])) == "<join a=\"G\" b=\"H\"/>");
  REQUIRE(harness.plugs.size() == 1);
  const Plug& plug = harness.plugs[0];
  REQUIRE(plug.leads.size() == 3);
  CHECK(plug.leads[0].cavity == 1);
  CHECK(to_code(plug.leads[0].colour) == "BN");
  CHECK(plug.leads[0].gauge->awg == 26);
  CHECK(plug.leads[0].length == Millimetres(300));
  CHECK(plug.leads[1].to == TerminalRef{0, 0});
  CHECK(read.sources.text(plug.leads[1].to_span) == "probe.V");
  CHECK(plug.leads[1].mark == "+");
  CHECK(plug.leads[2].to == TerminalRef{0, 2});
}

TEST_CASE("every kind of part arrives") {
  const Read read(
      harness_around("<device id='d' use='sensor'><terminal id='a'/><terminal id='b'/><terminal id='c' "
                     "function='spare' optional='yes'/>"
                     "<load plus='a' minus='b' needs='12 V' draws='0 A' survives='30 V'/><heater a='a' b='b' "
                     "volts='24 V' watts='40 W'/>"
                     "<resistor a='a' b='b' ohms='330 ohm' limit='0.25 W'/><switch a='a' b='b' "
                     "rests='closed'/><coil a='a' b='b' ohms='2 ohm' amps='1 A'/>"
                     "<temperature-sensor a='a' b='b' ohms='100 kohm' beta='3950 K'/>"
                     "<driver terminal='c' plus='a' minus='b' kind='sourcing' drop='2 V' leak='0.1 mA' "
                     "pull='10 kohm' limit='0.2 A' rests='on'/>"
                     "<receiver terminal='c' plus='a' minus='b' low-below-share='0.3' high-above-share='0.7' "
                     "pull='1 kohm' pull-to='minus' above-supply='0.5 V'/>"
                     "<diode anode='a' cathode='b'/><join a='a' b='b'/><source plus='a' minus='b' "
                     "volts='4.8..5.2 V'/></device>"
                     "<plug id='p' family='pin-2.54' positions='1'/>"));
  CHECK(read.faults().empty());
  REQUIRE(read.description.harness);
  const Device& device = read.description.harness->devices[0];
  std::string words;
  for (const Part& part : device.parts) words += format("{} ", part_word(part));
  CHECK(words == "load heater resistor switch coil temperature-sensor driver receiver diode join source ");
  CHECK(device.terminals[0].function == TerminalFunction::Passive);
  CHECK(device.terminals[2].optional);
  CHECK(std::get<Load>(device.parts[0]).survives == Volts(30));
  CHECK(std::get<Load>(device.parts[0]).reversed == Reversal::Unknown);
  CHECK(std::get<Heater>(device.parts[1]).watts == Watts(40));
  CHECK(std::get<Resistor>(device.parts[2]).limit == Watts(0.25));
  CHECK(std::get<Switch>(device.parts[3]).rests_closed);
  CHECK(std::get<Coil>(device.parts[4]).amps == Amps(1));
  CHECK(std::get<TemperatureSensor>(device.parts[5]).beta == Kelvins(3950));
  const Driver& driver = std::get<Driver>(device.parts[6]);
  CHECK(driver.kind == OutputKind::Sourcing);
  CHECK(driver.leak == Amps(0.0001));
  CHECK(driver.pull == Ohms(10000));
  CHECK(driver.rests_on == true);
  const Receiver& receiver = std::get<Receiver>(device.parts[7]);
  CHECK(receiver.low_below_share == 0.3);
  CHECK(receiver.pull_up == false);
  CHECK(receiver.above_supply == Volts(0.5));
  CHECK(std::get<Diode>(device.parts[8]).drop == Volts(0.7));
  CHECK(std::get<Source>(device.parts[10]).volts.max == Volts(5.2));
}

TEST_CASE("leads find their terminal") {
  struct Row {
    const char* to;
    const char* fault;  ///< "" = found
  };
  const Row rows[] = {
      {"f.S", ""},
      {"S", ""},
      {"t.A", ""},
      {"A", ""},
      {"G", ""},
      {"a.b.A", ""},
      {"B", "terminal 'B' stands in more than one device [conflict]"},
      {"t.C", "terminal 't.C' is not declared [undeclared-reference]"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.to);
    const Read read(harness_around(
        format("<fan id='f' needs='24 V' draws='0.1 A' sense='yes'/><device id='a.b' use='sensor'><terminal "
               "id='A1'/><terminal id='B'/></device>"
               "<device id='a' use='sensor'><terminal id='b.A'/></device><thermistor id='t' ohms='100 kohm'/>"
               "<plug id='p' family='pin-2.54' positions='2'><lead cavity='1' colour='?' to='{}'/></plug>",
               row.to)));
    if (*row.fault == '\0') {
      CHECK(read.faults().empty());
    } else {
      CHECK(read.diagnostics.errors() == 1);
      CHECK(read.faults().ends_with(std::string(row.fault) + "; "));
    }
  }
}

TEST_CASE("a device that could not be read makes no lead bad") {
  const Read read(
      harness_around("<gadget id='g'/><plug id='p' family='pin-2.54' positions='2'><lead cavity='1' "
                     "colour='BN' to='g.X'/></plug>"));
  CHECK(read.faults() == "1:84 unknown element 'gadget' in 'harness' [unknown-element]; ");
}

}  // namespace
}  // namespace plugward::test
