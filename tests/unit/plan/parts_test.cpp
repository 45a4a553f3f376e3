// SPDX-License-Identifier: MIT
#include "plan/parts.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

Finding finding(Rule rule, Weight weight, std::string part, std::optional<double> limit = std::nullopt) {
  Finding f;
  f.rule = rule;
  f.weight = weight;
  f.message = "what is wrong";
  f.part = std::move(part);
  f.limit = limit;
  return f;
}

Assessment with(std::vector<Finding> findings) {
  Assessment a;
  a.findings = std::move(findings);
  return a;
}

}  // namespace

TEST_CASE("what no added part cures") {
  using enum Rule;
  struct Row {
    std::string name;
    Assessment assessment;
    int incurable;
  };
  const Finding high = finding(SupplyTooHigh, Weight::Harm, "regulator");
  const std::vector<Row> rows{
      {"nothing", with({}), 0},
      {"a note and a doubt",
       with({finding(AlteredKey, Weight::Note, ""), finding(UnknownPin, Weight::Doubt, "")}), 0},
      {"a cured harm", with({finding(Overvoltage, Weight::Harm, "divider")}), 0},
      {"a short", with({finding(ShortCircuit, Weight::Harm, "")}), 1},
      {"a fault of function beside a cured harm",
       with({finding(Overvoltage, Weight::Harm, "divider"), finding(WrongFunction, Weight::Fault, "")}), 1},
      {"a current by itself", with({finding(PinOvercurrent, Weight::Harm, "")}), 1},
      {"currents that come of too high a supply",
       with({high, finding(PinOvercurrent, Weight::Harm, ""), finding(ContactOvercurrent, Weight::Harm, ""),
             finding(WireOvercurrent, Weight::Harm, ""), finding(RailOverload, Weight::Harm, "")}),
       0},
      {"a short does not come of it", with({high, finding(ShortCircuit, Weight::Harm, "")}), 1},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(incurable(row.assessment) == row.incurable);
    CHECK(curable(row.assessment) == (row.incurable == 0));
  }
}

TEST_CASE("parts in words") {
  const Bench bench(
      board_of(header_of_pins("limit", 3, "", "ph-2.00")),
      harness_of("<optical-switch id='o' needs='4..6 V' draws='1 mA'/>" + plug_of_leads("V G S")));
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const auto at_pin = [](Finding f) {
    f.at.header = 0;
    f.at.pin = 3;
    return f;
  };
  const auto at_terminal = [](Finding f) {
    f.at.device = 0;
    f.at.terminal = 2;
    return f;
  };
  const auto at_device = [](Finding f) {
    f.at.device = 0;
    return f;
  };
  Finding housing = finding(Rule::PitchMismatch, Weight::Harm, "housing");
  housing.first = bench.harness->plugs[0].family_span;
  using enum Rule;
  const std::vector<std::pair<Finding, std::string>> rows{
      {at_pin(finding(Overvoltage, Weight::Harm, "divider", 3.6)),
       "a voltage divider or level shifter that keeps J1.3 at 3.6 V or less"},
      {at_device(finding(SupplyTooHigh, Weight::Harm, "regulator", 6)),
       "a step-down regulator that gives 'o' no more than 6 V"},
      {at_device(finding(SupplyTooLow, Weight::Fault, "supply", 4)),
       "a supply that gives 'o' at least 4 V, with its ground joined to the board's"},
      {at_terminal(finding(LevelHigh, Weight::Fault, "level-buffer", 3.5)),
       "a level buffer before terminal 'S' whose output reaches 3.5 V or more (74HCT type, fed by the supply "
       "of the "
       "receiving side)"},
      {at_pin(finding(LevelLow, Weight::Fault, "level-buffer", 0.8)),
       "a level buffer or transistor before J1.3 whose output falls below 0.8 V"},
      {at_pin(finding(FloatingInput, Weight::Fault, "pull-up")),
       "a pull-up resistor from J1.3 to the supply of the board's input"},
      {at_pin(finding(FloatingInput, Weight::Fault, "pull-down")),
       "a pull-down resistor from J1.3 to ground"},
      {finding(Overvoltage, Weight::Harm, "divider"),
       "a voltage divider or level shifter that keeps the signal at what it needs or less"},
      {housing,
       "another housing for plug 'p': family 'ph-2.00', 3 positions, with its own contacts, crimped anew; "
       "they "
       "take 32 to 24 AWG, not the 22 AWG of its leads: those leads need other wire, or take an adapter lead "
       "between ('plugward repin --adapter')"},
      {finding(PitchMismatch, Weight::Harm, "housing"), "another housing"},
      {finding(Assumed, Weight::Fault, "something else"), "a part that cures 'what is wrong'"},
  };
  for (const auto& [f, expected] : rows) CHECK(part_words(fitting, f) == expected);
}

TEST_CASE("another housing whose contacts do not take the leads says so") {
  // VH takes 22 to 16 AWG (seller guide).
  const Bench bench = Bench::shipped("heron-m7", "fan-24v");
  const Fitting fitting = bench.fitting({{"fan", "J17"}}, {});
  Finding housing = finding(Rule::PitchMismatch, Weight::Harm, "housing");
  housing.first = bench.harness->plugs[0].family_span;
  CHECK(
      part_words(fitting, housing) ==
      "another housing for plug 'fan': family 'vh-3.96', 2 positions, with its own contacts, crimped anew; "
      "they take 22 to 16 AWG, not the 26 AWG of its leads: those leads need other wire, or take an adapter "
      "lead between ('plugward repin --adapter')");
}
