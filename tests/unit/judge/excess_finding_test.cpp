// SPDX-License-Identifier: MIT
#include "judge/excess_finding.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

Locus pin(int n) {
  return {0, n, -1, -1, -1, -1, -1, -1};
}
Locus terminal(int t) {
  return {-1, -1, 0, t, -1, -1, -1, -1};
}
Locus part(int p) {
  return {-1, -1, 0, -1, p, -1, -1, -1};
}
Locus lead(int l) {
  return {0, l + 1, -1, -1, -1, 0, l, -1};
}
Locus rail(int r) {
  return {-1, -1, -1, -1, -1, -1, -1, r};
}

Bench one_of_each() {
  return Bench(
      board_of(header_of_pins("limit", 3,
                              "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/><pin "
                              "n='3' function='input' signal='limit' rail='3V3'/>")),
      harness_of("<device id='d' use='limit'><terminal id='V' function='supply'/><terminal id='G' "
                 "function='ground'/><terminal id='S' function='output' signal='limit'/><load plus='V' "
                 "minus='G' needs='4..6 V' draws='10 mA' reversed='harmless'/><load plus='V' minus='G' "
                 "needs='4..6 V' draws='10 mA'/><heater a='V' b='G' volts='24 V' watts='40 W'/><driver "
                 "terminal='S' plus='V' minus='G' kind='sourcing' drop='1 V'/></device>" +
                 plug_of_leads("V G S")));
}

struct Row {
  std::string name;
  Excess excess;
  std::string expected;
};

/// The words of the finding, then what is kept as figures.
std::string all_of(const Finding& f) {
  const auto number = [](std::optional<double> v) { return v ? format("{}", *v) : std::string("-"); };
  return told(f) + format("  figure {} limit {} unit '{}' part '{}' second '{}'\n", number(f.figure),
                          number(f.limit), f.unit, f.part, f.second_says);
}

}  // namespace

TEST_CASE("each kind of excess in words") {
  using enum ExcessKind;
  const std::vector<Row> rows{
      {"overvoltage",
       {Overvoltage, 24, 5.5, true, pin(3), lead(2), "switch closed", "24V - J1.3"},
       "harm overvoltage: 24 V on J1.3, which withstands 5.5 V | switch closed | 24V - J1.3\n"
       "  figure 24 limit 5.5 unit 'V' part 'divider' second 'J1.3 is declared here'\n"},
      {"undervoltage",
       {Overvoltage, -5, -0.3, true, terminal(2), pin(1), "", ""},
       "harm overvoltage: -5 V on 'S', which stands no less than -0.3 V\n"
       "  figure -5 limit -0.3 unit 'V' part 'divider' second 'J1.1 is declared here'\n"},
      {"unknown limit",
       {UnknownLimit, 5, 3.6, true, pin(3), {}, "", ""},
       "doubt unknown-limit: 5 V on J1.3, and what it withstands is not stated\n"
       "  look up what J1.3 withstands (data sheet of the part behind it) => it withstands 5 V as well: safe "
       "here; it does not: do not join (what J1.3 withstands, cost 0)\n"
       "  figure 5 limit 3.6 unit 'V' part '' second ''\n"},
      {"unknown limit below",
       {UnknownLimit, -1.5, -0.3, true, terminal(2), {}, "", ""},
       "doubt unknown-limit: -1.5 V on 'S', and what it withstands is not stated\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands -1.5 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n"
       "  figure -1.5 limit -0.3 unit 'V' part '' second ''\n"},
      {"thresholds",
       {UnknownLimit, 0, 0, true, pin(3), part(3), "", ""},
       "doubt unknown-limit: from which voltages J1.3 reads low and high is not stated\n"
       "  look up from which voltages J1.3 reads low and high (data sheet of the part behind it) => state "
       "them as low-below and high-above, then judge again (how J1.3 reads, cost 0)\n"
       "  figure - limit - unit '' part '' second 'J1.3 is declared here'\n"},
      {"reversed, destroyed",
       {ReversedSupply, -5, 0, true, part(1), {}, "", ""},
       "harm reversed-supply: the load of 'd' gets its supply reversed: -5 V\n"
       "  figure -5 limit - unit 'V' part '' second ''\n"},
      {"reversed, harmless",
       {ReversedSupply, -5, 0, true, part(0), {}, "", ""},
       "fault reversed-supply: the load of 'd' gets its supply reversed: -5 V\n"
       "  figure -5 limit - unit 'V' part '' second ''\n"},
      {"too high",
       {SupplyTooHigh, 24, 6, true, part(1), {}, "", ""},
       "harm supply-too-high: the load of 'd' gets 24 V, and takes 6 V at most\n"
       "  figure 24 limit 6 unit 'V' part 'regulator' second ''\n"},
      {"too low",
       {SupplyTooLow, 3, 4, true, part(1), {}, "", ""},
       "fault supply-too-low: the load of 'd' gets 3 V at best, and needs 4 V\n"
       "  figure 3 limit 4 unit 'V' part 'supply' second ''\n"},
      {"too low in some corner",
       {SupplyTooLow, 3.9, 4, false, part(1), {}, "5V at 4 V", ""},
       "doubt supply-too-low: the load of 'd' gets 3.9 V at best in the worst case, and needs 4 V | 5V at 4 "
       "V | \n"
       "  board powered alone, nothing plugged in: volts on the supply pin of this header => 4 V or more: "
       "enough; less: too low (whether the supply of 'd' is enough, cost 2)\n"
       "  figure 3.9 limit 4 unit 'V' part 'supply' second ''\n"},
      {"too strong",
       {HeaterTooStrong, 160, 48, true, part(2), {}, "", ""},
       "harm heater-power: the heater of 'd' heats with 160 W, more than 48 W\n"
       "  figure 160 limit 48 unit 'W' part '' second ''\n"},
      {"too weak",
       {HeaterTooWeak, 10, 24, true, part(2), {}, "", ""},
       "fault heater-power: the heater of 'd' heats with 10 W at best, less than 24 W\n"
       "  figure 10 limit 24 unit 'W' part '' second ''\n"},
      {"always on",
       {AlwaysOn, 40, 2, true, part(2), {}, "", ""},
       "harm always-on: the heater of 'd' heats with 40 W while nothing is switched on\n"
       "  figure 40 limit 2 unit 'W' part '' second ''\n"},
      {"clamp current",
       {ClampCurrent, 0.1, 0.005, true, pin(3), {}, "", ""},
       "harm clamp-current: 0.1 A flows into the protection diode of J1.3, which stands 5 mA\n"
       "  figure 0.1 limit 0.005 unit 'A' part 'divider' second ''\n"},
      {"back feed",
       {BackFeed, 0.2, 0, true, lead(0), {}, "", ""},
       "harm back-feed: 0.2 A flows backwards into J1.1\n"
       "  figure 0.2 limit - unit 'A' part '' second 'J1.1 is declared here'\n"},
      {"pin overcurrent",
       {PinOvercurrent, 2, 1, true, pin(1), {}, "", ""},
       "harm pin-overcurrent: 2 A through J1.1, limit 1 A\n"
       "  figure 2 limit 1 unit 'A' part '' second ''\n"},
      {"contact overcurrent",
       {ContactOvercurrent, 5, 3, true, lead(1), {}, "", ""},
       "harm contact-overcurrent: 5 A through the contact of J1.2, rated 3 A\n"
       "  figure 5 limit 3 unit 'A' part '' second 'J1.2 is declared here'\n"},
      {"unknown rating",
       {UnknownRating, 1.2, 1, true, lead(1), {}, "", ""},
       "doubt unknown-rating: 1.2 A through the contact of J1.2, and no rating is published for its gauge\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 2 of 'p' => 1.2 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 2 of 'p' carries, cost 0)\n"
       "  figure 1.2 limit 1 unit 'A' part '' second 'J1.2 is declared here'\n"},
      {"wire overcurrent",
       {WireOvercurrent, 9, 7, true, lead(1), {}, "", ""},
       "harm wire-overcurrent: 9 A through J1.2, a wire for 7 A\n"
       "  figure 9 limit 7 unit 'A' part '' second 'J1.2 is declared here'\n"},
      {"rail overload",
       {RailOverload, 3, 2, true, rail(2), {}, "", ""},
       "harm rail-overload: 3 A drawn from rail '5V', limit 2 A\n"
       "  figure 3 limit 2 unit 'A' part '' second ''\n"},
      {"short circuit",
       {ShortCircuit, 80, 6, true, lead(0), {}, "switch closed", ""},
       "harm short-circuit: short circuit at J1.1: 80 A | switch closed | \n"
       "  figure 80 limit 6 unit 'A' part '' second 'J1.1 is declared here'\n"},
      {"level high",
       {LevelHigh, 3.3, 3.5, true, terminal(2), pin(1), "", ""},
       "fault level-high: 'S' reaches 3.3 V when high, and is read as high from 3.5 V\n"
       "  figure 3.3 limit 3.5 unit 'V' part 'level-buffer' second 'J1.1 is declared here'\n"},
      {"level high in some corner",
       {LevelHigh, 1.9, 2, false, pin(3), part(3), "", ""},
       "doubt level-high: J1.3 reaches 1.9 V when high in the worst case, and is read as high from 2 V\n"
       "  device fed, its signal lead off the board: volts from the lead to ground while it is high => 2 V "
       "or more: read as high; less: not (whether J1.3 reaches its high level, cost 3)\n"
       "  figure 1.9 limit 2 unit 'V' part 'level-buffer' second 'J1.3 is declared here'\n"},
      {"level low",
       {LevelLow, 1, 0.8, true, pin(3), part(3), "", ""},
       "fault level-low: J1.3 falls to 1 V when low, and is read as low below 0.8 V\n"
       "  figure 1 limit 0.8 unit 'V' part 'level-buffer' second 'J1.3 is declared here'\n"},
      {"level low in some corner",
       {LevelLow, 1, 0.8, false, pin(3), part(3), "", ""},
       "doubt level-low: J1.3 falls to 1 V when low in the worst case, and is read as low below 0.8 V\n"
       "  device fed, its signal lead off the board: volts from the lead to ground while it is low => 0.8 V "
       "or less: read as low; more: not (whether J1.3 reaches its low level, cost 3)\n"
       "  figure 1 limit 0.8 unit 'V' part 'level-buffer' second 'J1.3 is declared here'\n"},
      {"stuck",
       {Stuck, 3.3, 0.8, true, pin(3), part(3), "", ""},
       "fault floating-input: J1.3 stays at 3.3 V whatever the device does\n"
       "  figure 3.3 limit 0.8 unit 'V' part 'pull-down' second 'J1.3 is declared here'\n"},
      {"floating",
       {Floating, 0, 0, false, pin(3), {}, "switch open", ""},
       "fault floating-input: nothing drives J1.3 in this state | switch open | \n"
       "  figure 0 limit - unit 'V' part 'pull-up' second ''\n"},
      {"floating under a sourcing output",
       {Floating, 0, 0, false, pin(3), part(3), "", ""},
       "fault floating-input: nothing drives J1.3 in this state\n"
       "  figure 0 limit - unit 'V' part 'pull-down' second 'J1.3 is declared here'\n"},
      {"resistor power",
       {ResistorPower, 0.576, 0.25, true, part(1), {}, "", ""},
       "harm resistor-power: the load of 'd' turns 0.576 W into heat, made for 0.25 W\n"
       "  figure 0.576 limit 0.25 unit 'W' part '' second ''\n"},
      {"reset unknown",
       {ResetUnknown, 0, 0, true, part(2), pin(3), "", ""},
       "doubt always-on: J1.3 switches the heater of 'd', and its state at reset is not stated\n"
       "  board powered alone, nothing plugged in, firmware held in reset: volts from J1.3 to the supply pin "
       "of 'J1' => 0 V: off at reset; the supply's voltage: on at reset, do not fit a heater (whether J1.3 "
       "is off at reset, cost 2)\n"
       "  figure - limit - unit '' part '' second 'J1.3 is declared here'\n"},
      {"too many states",
       {TooManyStates, 60000, 20000, true, part(3), {}, "", ""},
       "doubt too-many-states: the circuit has more states than were tried\n"
       "  device fed, plug off the board: volts on every lead against its ground, in every position of the "
       "device => each within what the pin that it is to meet withstands: safe; else: do not join (what the "
       "states do that were not tried, cost 3)\n"
       "  figure - limit - unit '' part '' second ''\n"},
  };
  const Bench bench = one_of_each();
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  std::vector<bool> seen(static_cast<std::size_t>(TooManyStates) + 1, false);
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const std::string got = all_of(finding_of(fitting, row.excess));
    CHECK(got == row.expected);
    seen[static_cast<std::size_t>(row.excess.kind)] = true;
  }
  CHECK(std::count(seen.begin(), seen.end(), false) == 0);
}
