// SPDX-License-Identifier: MIT
#include "plan/meter.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "base/format.h"
#include "support/bench.h"
#include "support/dice.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

const std::string board_text = R"(<board id="b" title="B" width="50 mm" height="50 mm" evidence="s">
  <evidence id="s" kind="schematic"/>
  <rail id="24V" volts="22.8..25.2 V" limit="10 A"/>
  <rail id="5V" volts="4.9..5.2 V" limit="1.5 A"/>
  <rail id="3V3" volts="3.2..3.3 V" limit="0.3 A"/>
  <jumper id="JP1" rails="5V 24V"/>
  <header id="J1" use="probe" family="pin-2.54" positions="4">
    <pin n="1" function="output" signal="servo" rail="3V3" high="2.9..3.3 V" limit="8 mA" at-reset="off"/>
    <pin n="2" function="supply" jumper="JP1" limit="1 A"/>
    <pin n="3" function="ground"/>
    <pin n="4" function="input" signal="probe" rail="3V3" withstands="-0.3..3.6 V" low-below="0.8 V" high-above="2 V" pull="up" pull-ohms="40 kohm"/>
  </header>
  <header id="J2" use="heater" family="vh-3.96" positions="2">
    <pin n="1" function="supply" rail="24V" limit="6 A"/>
    <pin n="2" function="switched" signal="heater" ohms="0.02 ohm" limit="6 A" at-reset="off"/>
  </header>
  <header id="J3" use="spare" family="pin-2.54" positions="3">
    <pin n="1" function="output" signal="buzzer" rail="3V3" high="2.9..3.3 V" limit="8 mA"/>
    <pin n="2" function="unknown"/>
    <pin n="3" function="ground"/>
  </header>
</board>)";

std::string harness_text(const std::string& device, const std::string& leads, int positions) {
  return "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>" + device +
         "<plug id='p' family='pin-2.54' positions='" + std::to_string(positions) + "'>" + leads +
         "</plug></harness>";
}

std::string lead(int cavity, const std::string& to, const std::string& colour = "BK") {
  return "<lead cavity='" + std::to_string(cavity) + "' colour='" + colour +
         "' gauge='24 AWG' length='1000 mm' to='" + to + "'/>";
}

std::vector<std::string> words(const std::vector<ExpectedReading>& readings) {
  std::vector<std::string> all;
  for (const ExpectedReading& r : readings) all.push_back(r.points + ": " + r.expect);
  return all;
}

}  // namespace

TEST_CASE("ohms of a plug in the hand") {
  const std::string ab = lead(1, "A") + lead(2, "B");
  struct Row {
    const char* name;
    std::string device, leads;
    int positions;
    std::vector<std::string> expected;
  };
  const std::vector<Row> rows{
      // V^2 / P = 14.4 ohm; 15.5 ohm was measured on one sold as 24 V 40 W (page on finding a heater
      // cartridge's
      // voltage): 14.4 x 0.85 - 0.2 and 14.4 x 1.15 + 0.2 + leads of 0.21.
      {"heater",
       "<heater-element id='d' volts='24 V' watts='40 W'/>",
       ab,
       2,
       {"cavity 1 to cavity 2: 12.2..17 ohm"}},
      // 125.35 kohm at 20 C, 100 kohm at 25 C: R25 exp(B(1/T - 1/298.15)), within 2.7 % of the thermistor
      // table of a
      // widely used open firmware; 5 % beyond each.
      {"thermistor",
       "<thermistor id='d' ohms='100 kohm' beta='3950 K'/>",
       ab,
       2,
       {"cavity 1 to cavity 2: 95..132 kohm"}},
      // IEC 60751: 1077.94 ohm at 20 C, 1097.35 at 25 C; 1 % beyond each.
      {"platinum", "<thermistor id='d' ohms='1000 ohm'/>", ab, 2, {"cavity 1 to cavity 2: 1.06..1.11 kohm"}},
      // 2.2 ohm a phase (NEMA 17, stepper wiring note in a public repository).
      {"motor",
       "<motor id='d' ohms='2.2 ohm' amps='1.5 A'/>",
       lead(1, "A1") + lead(2, "A2") + lead(3, "B1") + lead(4, "B2"),
       4,
       {"cavity 1 to cavity 3: 1.8..3 ohm", "cavity 2 to cavity 4: 1.8..3 ohm",
        "cavity 1 to cavity 2: open, no beep"}},
      {"switch that rests closed",
       "<dry-switch id='d' use='limit' rests='closed'/>",
       ab,
       2,
       {"cavity 1 to cavity 2: a beep", "cavity 1 to cavity 2, worked by hand: open, no beep"}},
      // A quarter of 24 V / 0.1 A.
      {"fan",
       "<fan id='d' needs='20..28 V' draws='0.1 A' reversed='blocked'/>",
       lead(1, "V", "RD") + lead(2, "G"),
       2,
       {"cavity 1 to cavity 2: 60 ohm or more: not a short"}},
      {"a lead of unknown end",
       "<dry-switch id='d' use='limit' rests='closed'/>",
       lead(1, "A") + "<lead cavity='2' colour='BK'/>",
       2,
       {}}};
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_text, harness_text(row.device, row.leads, row.positions));
    const std::vector<std::string> found = words(plug_readings(bench.fitting({}), 0));
    CAPTURE(format("{}", join(found, "; ")));
    CHECK(found == row.expected);
  }
}

TEST_CASE("a heater for 12 V and one for 24 V are told apart for certain") {
  const Bench right(board_text, harness_text("<heater-element id='d' volts='24 V' watts='40 W'/>",
                                             lead(1, "A") + lead(2, "B"), 2));
  // 12 V^2 / 40 W = 3.6 ohm: 160 W on 24 V.
  const Bench wrong(board_text, harness_text("<heater-element id='d' volts='12 V' watts='40 W'/>",
                                             lead(1, "A") + lead(2, "B"), 2));
  const Fitting fitting = right.fitting({}), other = wrong.fitting({});
  const ExpectedReading expected = plug_readings(fitting, 0).front();
  CHECK(expected.too_low == "a heater for a lower voltage or of more power, or a short: do not fit it");
  CHECK_FALSE(certainly_differs(expected, read_again(expected, as_described(fitting))));
  CHECK(certainly_differs(expected, read_again(expected, as_described(other))));
}

TEST_CASE("no value within the tolerances of the parts reads outside the band") {
  // A slow twin of the two corners: every resistance thrown within its 5 %, 500 times, seed 7.
  const auto device = [](double a, double b, double c, double d) {
    const auto part = [](const char* from, const char* to, double ohms) {
      return "<resistor a='" + std::string(from) + "' b='" + to + "' ohms='" + std::to_string(ohms) +
             " ohm'/>";
    };
    return "<device id='d' use='sensor'><terminal id='A'/><terminal id='B'/><terminal id='C'/>" +
           part("A", "B", a) + part("B", "C", b) + part("A", "C", c) + part("A", "B", d) + "</device>";
  };
  const std::string leads = lead(1, "A") + lead(2, "B") + lead(3, "C");
  const std::vector<double> nominal{1000.0, 330.0, 4700.0, 68.0};
  const Bench bench(board_text,
                    harness_text(device(nominal[0], nominal[1], nominal[2], nominal[3]), leads, 3));
  const Fitting fitting = bench.fitting({});
  const std::vector<ExpectedReading> bands = plug_readings(fitting, 0);
  REQUIRE(bands.size() == 3);
  test::Dice dice(7);
  for (int round = 0; round < 500; ++round) {
    Harness thrown = *bench.harness;
    for (std::size_t i = 0; i < nominal.size(); ++i) {
      const double share = 0.95 + 0.1 * static_cast<double>(dice.below(1001)) / 1000.0;
      std::get<Resistor>(thrown.devices[0].parts[i]).ohms = Ohms(nominal[i] * share);
    }
    Fitting other = fitting;
    other.harness = &thrown;
    const AsFound found = as_described(other);
    for (const ExpectedReading& band : bands) {
      CAPTURE(band.points);
      const double ohms = ohms_in_hand(other, 0, found.held[0], band.at.red, band.at.black, Hand::Rest).ohms;
      CHECK(ohms >= *band.low);
      CHECK(ohms <= *band.high);
    }
  }
}

TEST_CASE("volts on the bare board") {
  const Bench bench(board_text, harness_text("<dry-switch id='d' use='limit' rests='closed'/>",
                                             lead(1, "A") + lead(2, "B"), 2));
  const Fitting fitting = bench.fitting({}, {{"JP1", "5V"}});
  // The pull-up beside the meter's 10 Mohm: 3.2 x 10 / 10.04 = 3.187 V; 3.3 x 10 / 10.04 = 3.287 V.
  CHECK(words(bare_board_readings(fitting, 0)) == std::vector<std::string>{"J1.1 to J1.3: 0..0.4 V",
                                                                           "J1.2 to J1.3: 4.9..5.2 V",
                                                                           "J1.4 to J1.3: 3.18..3.29 V"});
  // No ground of its own; nothing flows through the switched output, so nothing is across it.
  CHECK(words(bare_board_readings(fitting, 1)) ==
        std::vector<std::string>{"J2.1 to the supply's minus: 22.8..25.2 V", "J2.1 to J2.2: 0..1 V"});
  CHECK(words(bare_board_readings(fitting, 2)) ==
        std::vector<std::string>{"J3.1 to J3.3: 0..3.3 V", "J3.2 to J3.3: write down what you see"});
  CHECK(words(bare_board_readings(bench.fitting({}), 0))[1] == "J1.2 to J1.3: write down what you see");
}

TEST_CASE("a jumper at the wrong rail shows on the bare board") {
  const Bench bench(board_text, harness_text("<dry-switch id='d' use='limit' rests='closed'/>",
                                             lead(1, "A") + lead(2, "B"), 2));
  const Fitting right = bench.fitting({}, {{"JP1", "5V"}}), wrong = bench.fitting({}, {{"JP1", "24V"}});
  const ExpectedReading supply = bare_board_readings(right, 0)[1];
  CHECK(supply.too_high ==
        "jumper JP1 sits wrong, the board is not as described, or this is another header: power off");
  CHECK(read_again(supply, as_described(wrong)).expect == "22.8..25.2 V");
  CHECK(certainly_differs(supply, read_again(supply, as_described(wrong))));
  CHECK_FALSE(certainly_differs(supply, read_again(supply, as_described(right))));
}

TEST_CASE("grounds beep and supplies do not, without power") {
  const Bench bench(board_text, harness_text("<dry-switch id='d' use='limit' rests='closed'/>",
                                             lead(1, "A") + lead(2, "B"), 2));
  CHECK(words(power_off_readings(bench.fitting({}), 0)) ==
        std::vector<std::string>{"J1.2 to J1.3: no beep", "J1.3 to the supply's minus: a beep"});
}

TEST_CASE("colours in the hand and over the pins") {
  const Bench bench(board_text, harness_text("<dry-switch id='d' use='probe' signal='probe' rests='open'/>",
                                             lead(3, "B", "BK") + lead(4, "A", "WHGN"), 4));
  const Fitting fitting = bench.fitting({{"p", "J1"}}, {{"JP1", "5V"}});
  CHECK(colours_in_hand(fitting, 0).expect == "3 BK, 4 WHGN");
  CHECK(colours_on(fitting, 0).expect == "3 BK, 4 WHGN");
  CHECK(colours_on(fitting, 1).expect == "empty");
}

TEST_CASE("leads that look alike on something polarised are flagged and followed to their ends") {
  const std::string fan = "<fan id='d' needs='20..28 V' draws='0.1 A' reversed='blocked'/>";
  const Bench alike(board_text, harness_text(fan, lead(1, "V") + lead(2, "G"), 2));
  const Fitting fitting = alike.fitting({});
  CHECK(looks_alike(*alike.harness, 0));
  CHECK(colours_in_hand(fitting, 0).expect == "1 BK (flag V), 2 BK (flag G)");
  const std::vector<ExpectedReading> readings = plug_readings(fitting, 0);
  CHECK(words(readings) == std::vector<std::string>{"cavity 1 to cavity 2: 60 ohm or more: not a short",
                                                    "cavity 1 to 'V' at the device: a beep",
                                                    "cavity 2 to 'G' at the device: a beep"});
  AsFound exchanged = as_described(fitting);
  std::swap(exchanged.held[0][0].cavity, exchanged.held[0][1].cavity);
  CHECK_FALSE(certainly_differs(readings[0], read_again(readings[0], exchanged)));
  CHECK(certainly_differs(readings[1], read_again(readings[1], exchanged)));
  const Bench coloured(board_text, harness_text(fan, lead(1, "V", "RD") + lead(2, "G"), 2));
  CHECK_FALSE(looks_alike(*coloured.harness, 0));
  // A heater has no wrong way round.
  const Bench heater(board_text, harness_text("<heater-element id='d' volts='24 V' watts='40 W'/>",
                                              lead(1, "A") + lead(2, "B"), 2));
  CHECK_FALSE(looks_alike(*heater.harness, 0));
}
