// SPDX-License-Identifier: MIT
#include "plan/swap.h"

#include <doctest/doctest.h>

#include <chrono>

#include "base/format.h"
#include "plan/renamed.h"
#include "support/machine.h"

using namespace plugward;
using plugward::test::Machine;

namespace {

std::string header_id(const Board& board, std::optional<int> header) {
  return header ? board.headers[static_cast<std::size_t>(*header)].id : "-";
}

/// "motor-x/motor J2>J2 re-pin; " of all plugs.
std::string transfers(const Machine& machine, const SwapPlan& plan) {
  std::string text;
  for (const PlugTransfer& t : plan.plugs) {
    text += format("{} {}>{} {}{}; ", machine.name(t.plug), header_id(*plan.machine->board, t.from),
                   header_id(*plan.board, t.to), to_word(t.kind), t.turned ? " turned" : "");
  }
  return text;
}

std::string loom(std::string_view inside, std::string_view board = "heron-a4") {
  return format(
      "<loom id=\"w\" title=\"W\" board=\"../boards/{}.xml\" evidence=\"photo\"><evidence id=\"photo\" "
      "kind=\"photograph\"/>{}</loom>",
      board, inside);
}

}  // namespace

TEST_CASE("the demo machine moves from the old board to the new one") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(transfers(*machine, *plan) ==
        "motor-x/motor J2>J2 re-pin; motor-y/motor J3>J3 re-pin; motor-z/motor J4>J4 straight turned; "
        "limit-x/limit J5>J5 re-pin; limit-y/limit J6>J6 re-pin; limit-z/limit J7>J7 straight; "
        "nozzle-heater/heater J14>J14 straight; nozzle-thermistor/thermistor J17>J18 straight; "
        "bed-heater/bed J16>J15 straight; bed-thermistor/thermistor J18>J19 straight; "
        "part-fan/fan J11>J11 straight; cold-end-fan/fan J12>J12 re-pin; case-fan/fan J13>J13 straight; "
        "chamber-heater/heater ->- no place; firefly/light J8>J20 part; kite/control J9>J9 re-pin; "
        "kite/trigger J10>J10 re-pin; filament/filament J20>J8 part; spool-arm/sensor J19>J21 straight; "
        "display/display J21>J22 off; ");
  CHECK(plan->result.clean());
  CHECK(plan->proven);
  std::string jumpers;
  for (const JumperChoice& choice : plan->jumpers) jumpers += format("{}={}; ", choice.jumper, choice.rail);
  CHECK(jumpers == "JP2=5V; JP3=24V; JP4=24V; ");
  // What the plan says of the plugs is what the harness as it will be does on the new board.
  const Assessment again = assess(plan->after);
  CHECK(again.clean());
}

TEST_CASE("what stays off, and what finds no header, says why") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(plan->of(machine->plug("display/display")).why ==
        "turned by 180 degrees, cavity 1 of 'display/display' on J22.10, it is right as it is; mark that end "
        "of "
        "the housing, since nothing keeps it from going on the other way");
  CHECK(plan->of(machine->plug("chamber-heater/heater")).why ==
        "J15 would suit it, and another plug is on it");
  CHECK(plan->of(machine->plug("motor-z/motor")).why ==
        "as it is; then invert the direction of the motor on 'J4'");
}

TEST_CASE("headers and jumpers that the user states are kept") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  SwapOptions options;
  options.fixed = {{machine->plug("nozzle-thermistor/thermistor"), machine->header("J19")}};
  options.jumpers = {{"JP4", "12V"}};
  const auto plan = plan_swap(before, *machine->to, options);
  CHECK(header_id(*machine->to, plan->of(machine->plug("nozzle-thermistor/thermistor")).to) == "J19");
  CHECK(header_id(*machine->to, plan->of(machine->plug("bed-thermistor/thermistor")).to) == "J18");
  CHECK(plan->of(machine->plug("part-fan/fan")).kind == Transfer::Off);
  CHECK(plan->of(machine->plug("cold-end-fan/fan")).why ==
        "add a supply that gives 'cold-end-fan/fan' at least 20.4 V, with its ground joined to the board's; "
        "move 1 "
        "contact");
  for (const JumperChoice& choice : plan->jumpers) {
    if (choice.jumper == "JP4") CHECK((choice.stated && choice.rail == "12V"));
  }
}

TEST_CASE("names decide between headers that are alike in all else") {
  const auto machine = Machine::of_text(
      loom("<harness id=\"a\" file=\"thermistor.xml\"/><harness id=\"b\" file=\"thermistor.xml\"/>"
           "<seat plug=\"a/thermistor\" header=\"J18\"/><seat plug=\"b/thermistor\" header=\"J17\"/>"),
      test::shipped_board("heron-m7"));
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(transfers(*machine, *plan) == "a/thermistor J18>J19 straight; b/thermistor J17>J18 straight; ");
  const auto names = renamed(before, *machine->to);
  CHECK(names[0][static_cast<std::size_t>(machine->header("J19"))] == 0);  // THERM BED as before
  CHECK(names[0][static_cast<std::size_t>(machine->header("J18"))] == 2);  // THERM 0
  CHECK(names[0][static_cast<std::size_t>(machine->header("J15"))] == 4);  // BED, but it switches
}

TEST_CASE("a fan that always runs keeps to a header that always runs") {
  // On the old board 'FAN 1' switches and 'FAN 2' does not; so it is on the new one. The labels are taken
  // away.
  const auto machine = Machine::of_text(
      loom("<harness id=\"a\" file=\"fan-24v.xml\"/><harness id=\"b\" file=\"fan-24v.xml\"/>"
           "<seat plug=\"a/fan\" header=\"J12\" leads=\"2 1\"/><seat plug=\"b/fan\" header=\"J11\"/>"),
      test::shipped_board("heron-m7"));
  for (Header& header : machine->to->headers) header.label.clear();
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(header_id(*machine->to, plan->of(machine->plug("a/fan")).to) == "J12");
  CHECK(header_id(*machine->to, plan->of(machine->plug("b/fan")).to) == "J11");
}

TEST_CASE("jumpers: as good as the best of all combinations") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  const Fitting start{machine->to.get(), before.harness, before.catalogue, {}, {}};
  PlaceOptions options;
  options.renamed = renamed(before, *machine->to);
  options.runner_up = options.rehouse = false;
  options.advice = {.wrong_seatings = false, .softer = false, .cures = false};
  const SetAndPlaced found = place_with_jumpers(start, options);
  std::optional<PlaceCost> best;
  for (const char* jp2 : {"5V", "24V"}) {
    for (const char* jp3 : {"12V", "24V"}) {
      for (const char* jp4 : {"12V", "24V"}) {
        Fitting fitting = start;
        fitting.jumpers = {{"JP2", jp2}, {"JP3", jp3}, {"JP4", jp4}};
        const PlacementPlan plan = place(fitting, options);
        REQUIRE(plan.best);
        if (!best || plan.best->cost < *best) best = plan.best->cost;
      }
    }
  }
  CHECK(found.plan.best->cost == *best);
}

TEST_CASE("a plug that is on no header today may find one on the new board") {
  const auto machine =
      Machine::of_text(loom("<harness id=\"a\" file=\"thermistor.xml\"/><loose plug=\"a/thermistor\"/>"),
                       test::shipped_board("heron-m7"));
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(transfers(*machine, *plan) == "a/thermistor ->J18 straight; ");
}

TEST_CASE("to a board like the old one everything goes back to its place; what hung loose stays so") {
  const auto machine = Machine::shipped("wren-a4", "heron-a4");
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK(plan->result.clean());
  for (const PlugTransfer& t : plan->plugs) {
    CAPTURE(machine->name(t.plug));
    CHECK(t.from == t.to);
    CHECK(t.kind == (t.from ? Transfer::Straight : Transfer::NoPlace));
    CHECK_FALSE(t.turned);
  }
  CHECK(plan->of(machine->plug("chamber-heater/heater")).why ==
        "J16 would suit it, and another plug is on it");
}

TEST_CASE("a board that cannot feed the machine: the plan says so and is not to be followed") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  for (Rail& rail : machine->to->rails) {
    if (rail.id == "24V") rail.limit = Amps(3);
  }
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  CHECK_FALSE(plan->result.clean());
  CHECK(plan->of(machine->plug("motor-x/motor")).to == machine->header("J2"));
  bool overloaded = false;
  for (const Suit& suit : plan->suits) overloaded = overloaded || (suit.what == "rail '24V'" && !suit.fine);
  CHECK(overloaded);
}
