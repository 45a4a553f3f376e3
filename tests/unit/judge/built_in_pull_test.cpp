// SPDX-License-Identifier: MIT
// A sinking sensor of which nobody has said whether it has a resistor to its plus inside.
#include <doctest/doctest.h>

#include <string>

#include "judge/judgement.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string input(const std::string& limits) {
  return format(
      "<pin n='2' function='input' signal='sensor' rail='3V3' low-below='0.8 V' high-above='2 V' pull='up' "
      "pull-ohms='4.7 kohm' {}/>",
      limits);
}

const std::string tolerant = input("withstands='-0.3..5.5 V' withstands-unpowered='3.6 V'");

/// SENSOR of the Heron M7: supply, input, ground.
std::string sensor_header(const std::string& supply, const std::string& signal) {
  return header_of_pins("sensor", 3,
                        format("<pin n='1' function='supply' limit='0.5 A' {}/>", supply) + signal +
                            "<pin n='3' function='ground'/>");
}

std::string sensor(const std::string& more, const std::string& leads = "V Q G") {
  return format(
             "<proximity id='q' title='Eye' needs='4.5..30 V' draws='15 mA' drop='0.5 V' leak='10 uA' {}/>",
             more) +
         plug_of_leads(leads);
}

std::string doubt(const std::string& volts, const std::string& limit) {
  return format(
      "doubt unknown-limit: whether 'Q' has a resistor to its plus inside is not stated; if it has, up to {} "
      "reach J1.2, which withstands {}\n"
      "  device fed, its signal lead off the board: volts from the lead of 'Q' to ground while the output is "
      "off => near 0 V or drifting: it has none, state pull=\"none\"; near the supply: do not join it to "
      "J1.2 directly (whether 'Q' has a resistor to its plus inside, cost 3)\n",
      volts, limit);
}

/// The doubts about built-in resistors among all that is said.
std::string doubts_of(const std::string& header, const std::string& harness) {
  const Bench bench(board_of("<jumper id='JP1' rails='5V 24V'/>" + header), harness_of(harness));
  Assessment said = assess(bench.fitting({{"p", "J1"}}));
  std::erase_if(said.findings,
                [](const Finding& f) { return f.message.find("inside") == std::string::npos; });
  said.settings.clear();
  return told(said);
}

}  // namespace

TEST_CASE("a resistor inside a sinking sensor that nobody has ruled out") {
  struct Row {
    std::string name, header, harness, expected;
  };
  const std::string v24 = sensor_header("rail='24V'", tolerant);
  const std::string open = "kind='sinking' rests='off'";
  const Row rows[] = {
      {"not stated, 24 V on a pin for 5.5 V", v24, sensor(open), doubt("24 V", "5.5 V")},
      {"none", v24, sensor(open + " pull='none'"), ""},
      {"a stated resistor is the circuit's matter", v24, sensor(open + " pull='10 kohm'"), ""},
      {"sourcing: a resistor to minus does no harm", v24, sensor("kind='sourcing' rests='off'"), ""},
      {"fed with 5 V", sensor_header("rail='5V'", tolerant), sensor(open), ""},
      {"fed with 5 V, on a pin for 3.6 V", sensor_header("rail='5V'", input("withstands='-0.3..3.6 V'")),
       sensor(open), doubt("5 V", "3.6 V")},
      {"an input for 30 V", sensor_header("rail='24V'", input("withstands='-0.5..30 V'")), sensor(open), ""},
      {"nothing said of the pin: its own supply and 0.3 V", sensor_header("rail='24V'", input("")),
       sensor(open), doubt("24 V", "3.6 V")},
      {"less while the board's pull is on",
       sensor_header("rail='5V'", input("withstands='-0.3..5.5 V' withstands-pulled='3.6 V'")), sensor(open),
       doubt("5 V", "3.6 V")},
      {"held by its clamp",
       sensor_header("rail='24V'", input("clamp='3V3' clamp-drop='0.3 V' injection='5 mA'")), sensor(open),
       doubt("24 V", "3.6 V")},
      {"a jumper that may be at 24 V", sensor_header("jumper='JP1'", tolerant), sensor(open),
       doubt("24 V", "5.5 V")},
      {"its plus is fed from elsewhere: up to what it is made for", v24, sensor(open, "- Q G"),
       doubt("30 V", "5.5 V")},
      {"its plus is on ground", v24, sensor(open, "G Q V"), ""},
      {"its signal is on ground", v24, sensor(open, "V G Q"), ""},
      {"the speed sense of a fan is an open collector", v24,
       "<fan id='f' needs='20..28 V' draws='0.1 A' sense='yes'/>" + plug_of_leads("V S G"), ""},
      {"a diode in the way of what a resistor would bring", v24,
       "<device id='q' use='sensor'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<terminal id='Q' function='output' signal='sensor'/><terminal id='C'/>"
       "<load plus='V' minus='G' needs='20..28 V' draws='15 mA'/>"
       "<driver terminal='C' plus='V' minus='G' kind='sinking' drop='0.2 V'/>"
       "<diode anode='Q' cathode='C'/></device>" +
           plug_of_leads("V Q G"),
       ""},
      {"through a resistor inside", v24,
       "<device id='q' use='sensor'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<terminal id='Q' function='output' signal='sensor'/><terminal id='C'/>"
       "<load plus='V' minus='G' needs='20..28 V' draws='15 mA'/>"
       "<driver terminal='C' plus='V' minus='G' kind='sinking' drop='0.2 V'/>"
       "<resistor a='Q' b='C' ohms='100 ohm'/></device>" +
           plug_of_leads("V Q G"),
       doubt("24 V", "5.5 V")},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(doubts_of(row.header, row.harness) == row.expected);
  }
}
