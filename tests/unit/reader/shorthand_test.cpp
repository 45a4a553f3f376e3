// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <variant>

#include "unit/reader/reader_support.h"

namespace plugward::test {
namespace {

/// "use: V supply, S output tach ? | load 0 1" : all that matters of a device in one line.
std::string outline(const Device& device) {
  struct Ends {
    std::string operator()(const Load& p) const {
      return format("{} {} {} {}", p.plus, p.minus, to_text(p.needs), to_text(p.draws));
    }
    std::string operator()(const Heater& p) const {
      return format("{} {} {} {}", p.a, p.b, to_text(p.volts), to_text(p.watts));
    }
    std::string operator()(const Resistor& p) const { return format("{} {}", p.a, p.b); }
    std::string operator()(const Switch& p) const {
      return format("{} {} {}", p.a, p.b, p.rests_closed ? "closed" : "open");
    }
    std::string operator()(const Coil& p) const { return format("{} {} {}", p.a, p.b, to_text(p.ohms)); }
    std::string operator()(const TemperatureSensor& p) const {
      return format("{} {} {} {}", p.a, p.b, to_text(p.nominal), p.beta ? to_text(*p.beta) : "platinum");
    }
    std::string operator()(const Driver& p) const {
      constexpr const char* kinds[] = {"push-pull", "sinking", "sourcing"};
      return format("{} {} {} {}", p.terminal, p.plus, p.minus, kinds[static_cast<int>(p.kind)]);
    }
    std::string operator()(const Receiver& p) const {
      return format("{} {} {}", p.terminal, p.plus, p.minus);
    }
    std::string operator()(const Diode& p) const { return format("{} {}", p.anode, p.cathode); }
    std::string operator()(const Join& p) const { return format("{} {}", p.a, p.b); }
    std::string operator()(const Source& p) const { return format("{} {}", p.plus, p.minus); }
    std::string operator()(const Regulator& p) const { return format("{} {} {}", p.in, p.out, p.minus); }
  };
  std::string text = format("{}:", device.use);
  for (const Terminal& t : device.terminals) {
    text += format(" {}={}{}{}", t.id, to_word(t.function), t.signal.empty() ? "" : "/" + t.signal,
                   t.optional ? "?" : "");
  }
  for (const Part& part : device.parts) text += format(" | {} {}", part_word(part), std::visit(Ends{}, part));
  for (const CorePair& pair : device.pairs) text += " ~ " + std::to_string(pair.a + 1) + "-" + std::to_string(pair.b + 1);
  return text;
}

TEST_CASE("one line stands for its terminals and parts") {
  struct Row {
    const char* line;
    const char* outline;
  };
  const Row rows[] = {
      {"<cable id='d' cores='3' pairs='3-1'/>", ": 1=unknown 2=unknown 3=unknown ~ 1-3"},
      {"<cable id='d' cores='4' pairs='1-2 3-4'/>", ": 1=unknown 2=unknown 3=unknown 4=unknown ~ 1-2 ~ 3-4"},
      {"<dry-switch id='d' use='limit' rests='closed'/>",
       "limit: A=passive/limit B=passive/limit | switch 0 1 closed"},
      {"<dry-switch id='d' use='limit' signal='filament' rests='open'/>",
       "limit: A=passive/filament B=passive/filament | switch 0 1 open"},
      {"<fan id='d' needs='20..28 V' draws='0.1 A'/>", "fan: V=supply G=return | load 0 1 20..28 V 0.1 A"},
      {"<fan id='d' needs='12 V' draws='0.1 A' sense='yes' control='yes'/>",
       "fan: V=supply G=return S=output/tach? C=input/pwm? | load 0 1 12 V 0.1 A | driver 2 0 1 sinking | "
       "receiver 3 0 1"},
      {"<heater-element id='d' volts='24 V' watts='40 W'/>",
       "heater: A=passive B=passive | heater 0 1 24 V 40 W"},
      {"<heater-element id='d' use='bed' volts='24 V' watts='200 W'/>",
       "bed: A=passive B=passive | heater 0 1 24 V 200 W"},
      {"<thermistor id='d' ohms='100 kohm' beta='3950 K'/>",
       "thermistor: A=passive/temperature B=passive/temperature | temperature-sensor 0 1 100 kohm 3950 K"},
      {"<thermistor id='d' ohms='100 ohm'/>",
       "thermistor: A=passive/temperature B=passive/temperature | temperature-sensor 0 1 100 ohm platinum"},
      {"<motor id='d' ohms='2.1 ohm'/>",
       "motor: A1=passive B1=passive A2=passive B2=passive | coil 0 1 2.1 ohm | coil 2 3 2.1 ohm"},
      {"<led-string id='d' count='8'/>",
       "led: V=supply D=input/led-data G=ground | load 0 2 3.5..5.3 V 0.48 A | receiver 1 0 2"},
      {"<led-string id='d' count='10' each='20 mA' needs='4.5..5.3 V' out='yes'/>",
       "led: V=supply D=input/led-data G=ground Q=spare/led-data? | load 0 2 4.5..5.3 V 0.2 A | receiver 1 0 "
       "2"},
      {"<led-string id='d' count='50' brightness='40 %'/>",
       "led: V=supply D=input/led-data G=ground | load 0 2 3.5..5.3 V 1.2 A | receiver 1 0 2"},
      {"<rgb-strip id='d' volts='12 V' draws='0.5 A'/>",
       "led: V=supply R=return/red G=return/green B=return/blue | load 0 1 12 V 0.5 A | load 0 2 12 V 0.5 A "
       "| load 0 3 12 V 0.5 A"},
      {"<servo-probe id='d' needs='4.6..5.5 V' draws='0.3 A'/>",
       "probe: V=supply G=ground P=input/servo T=output/probe H=ground | load 0 1 4.6..5.5 V 0.3 A | "
       "receiver 2 0 1 | switch 3 4 open | join 1 4"},
      {"<proximity id='d' kind='sinking' needs='10..30 V' draws='15 mA'/>",
       "sensor: V=supply G=ground Q=output/sensor | load 0 1 10..30 V 15 mA | driver 2 0 1 sinking"},
      {"<proximity id='d' use='probe' kind='sourcing' needs='10..30 V' draws='15 mA' signal='z'/>",
       "probe: V=supply G=ground Q=output/z | load 0 1 10..30 V 15 mA | driver 2 0 1 sourcing"},
      {"<optical-switch id='d' needs='4.5..5.5 V' draws='20 mA'/>",
       "limit: V=supply G=ground S=output/limit | load 0 1 4.5..5.5 V 20 mA | driver 2 0 1 push-pull"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const Read read(harness_around(std::string(row.line) + "<plug id='p' family='pin-2.54' positions='1'/>"));
    CHECK(read.faults().empty());
    REQUIRE(read.description.harness);
    const Device& device = read.description.harness->devices[0];
    CHECK(outline(device) == row.outline);
    CHECK(format("<{} ", device.kind) == std::string(row.line).substr(0, device.kind.size() + 2));
    for (const Terminal& terminal : device.terminals) CHECK(read.sources.text(terminal.span) == row.line);
    for (const Part& part : device.parts) CHECK(read.sources.text(part_span(part)) == row.line);
  }
}

TEST_CASE("figures of the standard devices") {
  const Read read(
      harness_around("<fan id='f' needs='12 V' draws='0.1 A' control='yes'/><led-string id='l' count='1'/>"
                     "<servo-probe id='s' needs='5 V' draws='0.3 A' withstands='0..3.6 V' rests='closed' "
                     "reversed='blocked'/>"
                     "<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' drop='2 V' rests='on'/>"
                     "<plug id='p' family='pin-2.54' positions='1'/>"));
  REQUIRE(read.description.harness);
  const auto& devices = read.description.harness->devices;
  // "4-Wire PWM Controlled Fans Specification": at most 5.25 V open, at most 5 mA shorted, low up to 0.8 V.
  const Receiver& control = std::get<Receiver>(devices[0].parts[1]);
  CHECK(control.open_circuit == Volts(5.25));
  CHECK(control.pull->value == doctest::Approx(1050.0));
  CHECK(control.low_below == Volts(0.8));
  // WS2812B data sheet: 0.3 and 0.7 of the supply, input up to 0.5 V above it.
  const Receiver& data = std::get<Receiver>(devices[1].parts[1]);
  CHECK(data.low_below_share == 0.3);
  CHECK(data.high_above_share == 0.7);
  CHECK(data.above_supply == Volts(0.5));
  CHECK(devices[2].terminals[2].withstands == Range<Volts>{Volts(0), Volts(3.6)});
  CHECK(std::get<Load>(devices[2].parts[0]).reversed == Reversal::Blocked);
  CHECK(std::get<Switch>(devices[2].parts[2]).rests_closed);
  CHECK(std::get<Driver>(devices[3].parts[1]).drop == Volts(2));
  CHECK(std::get<Driver>(devices[3].parts[1]).rests_on == true);
}

TEST_CASE("a string's brightness is a part of a whole in two spellings, its tracks are ohms") {
  struct Row {
    const char* written;
    std::optional<double> share;
  };
  const Row rows[] = {{"40 %", 0.4},    {"40%", 0.4},      {"0.4", 0.4},      {"12.5 %", 0.125}, {"100 %", 1.0},
                      {"0 %", {}},      {"0.0", {}},       {"101 %", {}},     {"1.5", {}},       {"40", {}},
                      {"-5 %", {}},     {"4e1 %", {}},     {".4", {}},        {"40  %", {}},     {"40 percent", {}},
                      {"0.1234567", {}}, {"1000 %", {}},   {" 40 %", {}},     {"40. %", {}},     {"1", {}}};
  for (const Row& row : rows) {
    CAPTURE(row.written);
    const Read read(harness_around(format("<led-string id='l' count='10' brightness='{}' loop='0.6 ohm'/>"
                                          "<plug id='p' family='pin-2.54' positions='1'/>",
                                          row.written)));
    if (!row.share) {
      const std::string fault = format("brightness: '{}' is no part of a whole", row.written);
      CHECK(read.faults().find(fault) != std::string::npos);
      continue;
    }
    CHECK(read.faults().empty());
    REQUIRE(read.description.harness);
    const Device& device = read.description.harness->devices[0];
    REQUIRE(device.leds);
    CHECK(device.leds->count == 10);
    CHECK(device.leds->each == Amps(0.06));
    CHECK(*device.leds->brightness == doctest::Approx(*row.share));
    CHECK(device.leds->loop == Ohms(0.6));
    CHECK(std::get<Load>(device.parts[0]).draws.value == doctest::Approx(0.6 * *row.share));
  }
}

TEST_CASE("whether a sensor has a resistor inside is stated, or not") {
  struct Row {
    const char* pull;
    std::optional<Ohms> ohms;
    bool stated;
  };
  const Row rows[] = {
      {"", std::nullopt, false}, {"pull='none'", std::nullopt, true}, {"pull='10 kohm'", Ohms(10e3), true}};
  for (const Row& row : rows) {
    CAPTURE(row.pull);
    const Read read(harness_around(
        format("<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' {0}/>"
               "<device id='d' use='sensor'><terminal id='V'/><terminal id='G'/><terminal id='S'/>"
               "<driver terminal='S' plus='V' minus='G' kind='sinking' {0}/></device>"
               "<plug id='p' family='pin-2.54' positions='1'/>",
               row.pull)));
    CHECK(read.faults().empty());
    REQUIRE(read.description.harness);
    const auto& devices = read.description.harness->devices;
    for (const Part& part : {devices[0].parts[1], devices[1].parts[0]}) {
      CHECK(std::get<Driver>(part).pull == row.ohms);
      CHECK(std::get<Driver>(part).pull_stated == row.stated);
    }
  }
  // A fan's speed sense is an open collector by its specification.
  const Read fan(
      harness_around("<fan id='f' needs='12 V' draws='0.1 A' sense='yes'/>"
                     "<plug id='p' family='pin-2.54' positions='1'/>"));
  REQUIRE(fan.description.harness);
  CHECK(std::get<Driver>(fan.description.harness->devices[0].parts[1]).pull_stated);
}

}  // namespace
}  // namespace plugward::test
