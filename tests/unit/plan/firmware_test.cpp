// SPDX-License-Identifier: MIT
// What the firmware must be told, by what board and harness state of each thing. Codes as in the RepRap
// wiki's page "G-code".
#include "plan/firmware.h"

#include <doctest/doctest.h>

#include <string>
#include <tuple>
#include <vector>

#include "plan/firmware_checks.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// "sense J1.1: input J1.1 (net not stated), 'p' | ... | M119" a line.
std::string told(const std::vector<FirmwareSetting>& settings) {
  std::string text;
  for (const FirmwareSetting& s : settings)
    text += format("{} {} | {} | {}\n", to_word(s.role), s.what, s.tell, s.code);
  return text;
}

std::string told(const std::string& pins, int positions, const std::string& device,
                 const std::string& terminals) {
  const Bench bench(board_of(header_of_pins("spare", positions, pins)),
                    harness_of(device + plug_of_leads(terminals)));
  return told(firmware_settings(bench.fitting({{"p", "J1"}}), nullptr));
}

const std::string coils =
    "<pin n='1' function='coil' coil='1' end='A' rail='24V'{0}/><pin n='2' function='coil' coil='1' end='B' "
    "rail='24V'{0}/><pin n='3' function='coil' coil='2' end='A' rail='24V'{0}/><pin n='4' function='coil' "
    "coil='2' end='B' rail='24V'{0}/>";

std::string coil_pins(const std::string& limit) {
  std::string text = coils;
  for (std::size_t at = text.find("{0}"); at != std::string::npos; at = text.find("{0}"))
    text.replace(at, 3, limit.empty() ? "" : " limit='" + limit + "'");
  return text;
}

}  // namespace

TEST_CASE("a motor's current is the lesser of what it stands and what the driver gives") {
  const std::string start = "motor driver of J1, 'p' | direction as its labels say; ";
  const std::string code = " | G91, G1 X1, G1 X-1 (Y, Z alike)\n";
  const std::tuple<std::string, std::string, std::string> rows[] = {
      {"", "", "current: the motor's rating is not stated; read its plate"},
      {"2 A", "", "current: the motor's rating is not stated, the driver gives up to 2 A; read its plate"},
      {"", "amps='1.5 A'", "current no more than 1.5 A"},
      {"2 A", "amps='1.5 A'", "current no more than 1.5 A (the driver gives up to 2 A)"},
      {"1 A", "amps='1.5 A'", "current no more than 1 A (the motor is rated 1.5 A)"},
  };
  for (const auto& [limit, amps, expected] : rows) {
    CAPTURE(limit);
    CAPTURE(amps);
    CHECK(told(coil_pins(limit), 4, "<motor id='m' ohms='2 ohm' " + amps + "/>", "A1 B1 A2 B2") ==
          start + expected + code);
  }
}

TEST_CASE("of two windings the weaker one counts") {
  CHECK(told(coil_pins(""), 4,
             "<device id='m' use='motor'><terminal id='A1'/><terminal id='B1'/><terminal id='A2'/><terminal "
             "id='B2'/><coil a='A1' b='B1' ohms='2 ohm' amps='1.5 A'/><coil a='A2' b='B2' ohms='2 ohm' "
             "amps='1.2 A'/></device>",
             "A1 B1 A2 B2") ==
        "motor driver of J1, 'p' | direction as its labels say; current no more than 1.2 A | G91, G1 X1, G1 "
        "X-1 (Y, Z alike)\n");
}

TEST_CASE("the pull at an input, and its sensor") {
  const std::string analogue =
      "<pin n='1' function='input' signal='thermistor' analogue='yes' {}/>"
      "<pin n='2' function='ground'/>";
  const auto sensor = [&](const std::string& pull, const std::string& device) {
    std::string pins = analogue;
    return told(pins.replace(pins.find("{}"), 2, pull), 2, "<thermistor id='t' " + device + "/>", "A B");
  };
  const std::string start = "sensor temperature on J1.1 (net not stated), 'p' | ", code = " | M105\n";
  CHECK(sensor("rail='3V3' pull='up' pull-ohms='4.7 kohm'", "ohms='100 kohm' beta='3950 K'") ==
        start + "thermistor, 100 kohm at 25 C, beta 3950 K; pulled by 4.7 kohm to 3V3" + code);
  CHECK(sensor("rail='3V3' pull='up' pull-ohms='4.7 kohm'", "ohms='100 ohm'") ==
        start + "platinum sensor, 100 ohm at 0 C; pulled by 4.7 kohm to 3V3" + code);
  CHECK(sensor("rail='3V3' pull='up'", "ohms='100 kohm' beta='3950 K'") ==
        start + "thermistor, 100 kohm at 25 C, beta 3950 K; pulled by a resistor to 3V3" + code);
  CHECK(sensor("rail='3V3' pull='down' pull-ohms='10 kohm'", "ohms='100 kohm' beta='3950 K'") ==
        start + "thermistor, 100 kohm at 25 C, beta 3950 K; pulled by 10 kohm to ground" + code);
  CHECK(
      sensor("", "") ==
      start +
          "its ohms are not stated; no pull on the board: switch the pin's own on, unless the device drives "
          "both ways" +
          code);
}

TEST_CASE("outputs by what hangs on them") {
  const std::string output =
      "<pin n='1' function='output' signal='{}' high='4.5..5.3 V' rail='5V'/>"
      "<pin n='2' function='ground'/><pin n='3' function='supply' rail='5V'/>";
  const auto on = [&](const std::string& signal, const std::string& device, const std::string& terminals) {
    std::string pins = output;
    return told(pins.replace(pins.find("{}"), 2, signal), 3, device, terminals);
  };
  const std::string receiver =
      "<device id='d' use='display'><terminal id='D' function='input' signal='led-data'/><terminal id='G' "
      "function='ground'/><terminal id='V' function='supply'/><load plus='V' minus='G' needs='4.5..5.5 V' "
      "draws='10 mA'/><receiver terminal='D' plus='V' minus='G' low-below='0.8 V' high-above='2 "
      "V'/></device>";
  CHECK(on("led-data", "<led-string id='l' count='30'/>", "D G V") ==
        "leds output J1.1 (net not stated), 'p' | LED data, 30 LEDs; the order of the colours is not known "
        "here | M150 R255, M150 U255, M150 B255\n");
  CHECK(on("led-data", "<led-string id='l' count='30' brightness='40 %'/>", "D G V") ==
        "leds output J1.1 (net not stated), 'p' | LED data, 30 LEDs; the order of the colours is not known "
        "here; no more than 40 % bright | M150 R255, M150 U255, M150 B255\n");
  CHECK(on("led-data", "<led-string id='l' count='30' brightness='100 %'/>", "D G V") ==
        "leds output J1.1 (net not stated), 'p' | LED data, 30 LEDs; the order of the colours is not known "
        "here | M150 R255, M150 U255, M150 B255\n");
  CHECK(
      on("led-data", receiver, "D G V") ==
      "leds output J1.1 (net not stated), 'p' | LED data; count and order of the colours are not known here "
      "| M150 R255, M150 U255, M150 B255\n");
  CHECK(on("beeper", receiver, "D G V") == "line output J1.1 (net not stated), 'p' | beeper | \n");
}

TEST_CASE("what is asked of each kind of input") {
  struct Row {
    std::string signal, code, check, not_proved;
  };
  const Row rows[] = {
      {"limit", "M119", "'open' at rest, 'TRIGGERED' while it is worked by hand, each switch by itself",
       "that the axis runs towards this switch; and of a switch that rests open, a broken lead is not seen: "
       "pull the plug (power off) and ask again"},
      {"probe", "M119", "'open' at rest, 'TRIGGERED' while it is worked by hand, each switch by itself",
       "that the probe moves out, and that it triggers on the plate: keep a hand on the switch at the first "
       "homing, high above it"},
      {"filament", "M119", "'open' at rest, 'TRIGGERED' while it is worked by hand, each switch by itself",
       "that the firmware acts on it while it prints"},
      {"tach", "M123", "with the fan running: turns per minute, and 0 while it is held",
       "that the fan moves enough air, or that this is the fan that the firmware guards"},
      {"door", "M43",
       "the pin changes when the device is worked by hand (where the firmware was built with M43)",
       "that the firmware uses the pin for this device"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.signal);
    FirmwareSetting s;
    s.role = FirmwareRole::Sense;
    add_check(s, row.signal);
    CHECK(s.code == row.code);
    CHECK(s.check == row.check);
    CHECK(s.not_proved == row.not_proved);
  }
}

TEST_CASE("roles as words, and whether a code checks them") {
  using enum FirmwareRole;
  const std::tuple<FirmwareRole, std::string_view, std::string_view> rows[] = {
      {Sense, "sense", "M119"},
      {Sensor, "sensor", "M105"},
      {Motor, "motor", "G91, G1 X1, G1 X-1 (Y, Z alike)"},
      {Heater, "heater", "M104 S50 or M140 S50, M105, then S0"},
      {Fan, "fan", "M106 S255, M106 S127, M107"},
      {AlwaysOn, "always-on", ""},
      {Servo, "servo", "M280 P0 S10, M280 P0 S90 (or M401, M402)"},
      {Leds, "leds", "M150 R255, M150 U255, M150 B255"},
      {Line, "line", ""},
  };
  for (const auto& [role, word, code] : rows) {
    FirmwareSetting s;
    s.role = role;
    add_check(s, "limit");
    CHECK(to_word(role) == word);
    CHECK(s.code == code);
    CHECK_FALSE(s.check.empty());
    CHECK_FALSE(s.not_proved.empty());
  }
}
