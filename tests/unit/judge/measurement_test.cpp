// SPDX-License-Identifier: MIT
#include "judge/measurement.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string told(const Measurement& m) {
  return format("{} => {} ({}, cost {})\n", m.action, m.expect, m.settles, m.cost);
}

const std::string header = header_of_pins(
    "limit", 8,
    "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/>"
    "<pin n='3' function='input' signal='limit' rail='3V3'/><pin n='5' function='supply' jumper='JP'/>"
    "<pin n='6' function='output' signal='a' evidence='print'/><pin n='6' function='ground' "
    "evidence='drawing'/>"
    "<pin n='7' function='ground' evidence='print'/><pin n='7' function='output' signal='a' "
    "evidence='drawing'/>"
    "<pin n='8' function='coil' coil='2' end='B'/>");

}  // namespace

TEST_CASE("what settles what a pin is: the cheapest that tells it") {
  const Bench bench(board_of(header), harness_of(plug_of_leads("? ? ? ? ? ? ? ?")));
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const std::vector<std::pair<int, std::string>> rows{
      {1,
       "board powered alone, nothing plugged in: volts from J1.1 to ground => 5 V: as described; anything "
       "else: the description is wrong (what J1.1 is, cost 2)\n"},
      {2,
       "power off, nothing plugged in: continuity from J1.2 to the supply minus => a beep: ground; no beep: "
       "not ground (what J1.2 is, cost 1)\n"},
      {3,
       "board powered alone, nothing plugged in: volts from J1.3 to ground => 24 V: supply 24V; 12 V: supply "
       "12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest (continuity to "
       "the supply minus with power off tells ground) (what J1.3 is, cost 2)\n"},
      {4,
       "board powered alone, nothing plugged in: volts from J1.4 to ground => 24 V: supply 24V; 12 V: supply "
       "12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest (continuity to "
       "the supply minus with power off tells ground) (what J1.4 is, cost 2)\n"},
      {5,
       "board powered alone, nothing plugged in: volts from J1.5 to ground => 24 V: supply 24V; 12 V: supply "
       "12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest (continuity to "
       "the supply minus with power off tells ground) (what J1.5 is, cost 2)\n"},
      {6,
       "power off, nothing plugged in: continuity from J1.6 to the supply minus => a beep: ground; no beep: "
       "output 'a' (what J1.6 is, cost 1)\n"},
      {7,
       "power off, nothing plugged in: continuity from J1.7 to the supply minus => a beep: ground; no beep: "
       "output 'a', by 'drawing' (makers-drawing) (what J1.7 is, cost 1)\n"},
      {8,
       "power off, driver fitted, nothing plugged in: follow J1.8 to the driver's output on the board => it "
       "is end B of bridge 2 (what J1.8 is, cost 1)\n"},
  };
  for (const auto& row : rows) {
    const auto pin = row.first;
    CAPTURE(pin);
    const std::string got = told(measure_pin(fitting, 0, pin));
    CHECK(got == row.second);
  }
}

TEST_CASE("where a lead goes, with and without devices; where a jumper sits") {
  const Bench none(board_of(header), harness_of(plug_of_leads("? - - - - - - -")));
  const Bench two(board_of(header),
                  harness_of("<thermistor id='t' ohms='100 kohm'/><dry-switch id='k' use='limit' "
                             "rests='open'/>" +
                             plug_of_leads("? - - - - - - -")));
  const Fitting fitting = none.fitting({{"p", "J1"}});
  const std::vector<std::pair<std::string, std::string>> rows{
      {told(measure_lead(fitting, 0, 0)),
       "plug off the board: continuity from the BK lead in cavity 1 of 'p' to the contacts at the far end => "
       "the one that beeps is where the lead goes; none: find the far end by eye (where the BK lead in "
       "cavity 1 of 'p' goes, cost 1)\n"},
      {told(measure_lead(two.fitting({{"p", "J1"}}), 0, 0)),
       "plug off the board: continuity from the BK lead in cavity 1 of 'p' to terminals t.A, t.B, k.A, k.B "
       "=> the one that beeps is where the lead goes; none: find the far end by eye (where the BK lead in "
       "cavity 1 of 'p' goes, cost 1)\n"},
      {told(look_at_jumper(fitting, none.board->jumpers[0], 0, 5)),
       "look where jumper JP (V) sits, then say --jumper JP=POSITION; or board powered alone, nothing "
       "plugged in: volts from J1.5 to ground => 5 V: JP is at 5V; 24 V: JP is at 24V (where JP sits, cost "
       "0)\n"},
  };
  for (const auto& [got, expected] : rows) CHECK(got == expected);
}
