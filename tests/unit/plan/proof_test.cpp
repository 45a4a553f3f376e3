// SPDX-License-Identifier: MIT
// The slow, obviously right twin of the planner: all arrangements of a plug's leads are judged, and from each
// of them the planner must come to a clean one with no more moves than the nearest clean arrangement needs.
#include <doctest/doctest.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

struct World {
  std::string name;
  std::string header;
  std::string device;
  std::string terminals;  ///< a lead to each, in this order
  int positions = 0;
  std::vector<bool> may_be_out{};  ///< by lead: may be insulated; empty: none
};

std::string pin(int n, const std::string& more) {
  return format("<pin n='{}' {}/>", n, more);
}

const std::string tolerant =
    "function='input' signal='{}' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 V' high-above='2 V' "
    "pull='up' "
    "pull-ohms='10 kohm'";
std::string input(const std::string& signal) {
  return format_later(tolerant, signal);
}

const std::string v5 = "function='supply' rail='5V' limit='1 A'";
const std::string v24 = "function='supply' rail='24V' limit='1 A'";
const std::string ground = "function='ground'";
const std::string gate = "<optical-switch id='o' needs='4.5..5.5 V' draws='20 mA' rests='off'/>";

std::vector<World> worlds() {
  const auto header = [](const std::string& use, const std::vector<std::string>& pins) {
    std::string all;
    for (std::size_t i = 0; i < pins.size(); ++i) all += pin(static_cast<int>(i) + 1, pins[i]);
    return header_of_pins(use, static_cast<int>(pins.size()), all);
  };
  const auto coil = [](int bridge, char end) {
    return format("function='coil' coil='{}' end='{}' rail='24V' limit='1 A'", bridge, end);
  };
  const std::string motor = "<motor id='m' ohms='2 ohm' amps='0.8 A'/>";
  const std::string not_tolerant =
      "function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' low-below='0.8 V' high-above='2 "
      "V' "
      "pull='up' pull-ohms='10 kohm'";
  const auto data = [](const std::string& high) {
    return format("function='output' signal='led-data' rail='5V' high='{}' limit='20 mA'", high);
  };
  const std::string panel =
      "<device id='d' use='display'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
      "<terminal id='H' function='ground'/><terminal id='A' function='output' signal='button' "
      "withstands='-0.3..5.5 V'/>"
      "<terminal id='B' function='output' signal='encoder' withstands='-0.3..5.5 V'/>"
      "<terminal id='L' function='input' signal='lamp' withstands='-0.3..5.5 V'/>"
      "<load plus='V' minus='G' needs='4.5..5.5 V' draws='50 mA' reversed='destroyed'/>"
      "<receiver terminal='L' plus='V' minus='G' low-below='0.8 V' high-above='2 V'/>"
      "<switch a='A' b='H' rests='open'/><switch a='B' b='H' rests='open'/><join a='G' b='H'/></device>";
  const std::vector<std::string> panel_pins{
      v5,
      ground,
      ground,
      input("button"),
      input("encoder"),
      "function='output' signal='lamp' rail='3V3' high='2.9..3.3 V' limit='8 mA'"};
  return {
      {"fan, two positions", header("fan", {v24, ground}), "<fan id='f' needs='20..28 V' draws='0.1 A'/>",
       "V G", 2},
      {"heater either way round",
       header("heater",
              {v24, "function='switched' signal='heater' ohms='0.1 ohm' limit='1 A' at-reset='off'"}),
       "<heater-element id='h' volts='24 V' watts='15 W'/>", "A B", 2},
      {"optical switch", header("limit", {ground, input("limit"), v5}), gate, "V G S", 3},
      {"dry switch in three positions", header("limit", {v5, input("limit"), ground}),
       "<dry-switch id='k' use='limit' rests='closed'/>", "A B", 3},
      {"changeover switch, its third lead taken out",
       header("limit", {v5, ground, input("limit")}),
       "<device id='k' use='limit'><terminal id='C' signal='limit'/><terminal id='NC' signal='limit'/>"
       "<terminal id='NO' function='spare'/><switch a='C' b='NC' rests='closed'/><switch a='C' b='NO' "
       "rests='open'/>"
       "</device>",
       "C NC NO",
       3,
       {false, false, true}},
      {"supplies of 24 V and 5 V, a device for 5 V", header("limit", {v24, ground, v5, input("limit")}), gate,
       "V G S", 4},
      {"motor, pairs side by side", header("motor", {coil(1, 'A'), coil(1, 'B'), coil(2, 'A'), coil(2, 'B')}),
       motor, "A1 B1 A2 B2", 4},
      {"motor, pairs alternating", header("motor", {coil(1, 'A'), coil(2, 'A'), coil(1, 'B'), coil(2, 'B')}),
       motor, "A1 B1 A2 B2", 4},
      {"motor in six positions",
       header("motor", {coil(1, 'A'), "function='unused'", coil(1, 'B'), coil(2, 'A'), "function='unused'",
                        coil(2, 'B')}),
       motor, "A1 B1 A2 B2", 6},
      {"two inputs of one signal, the first not tolerant",
       header("limit", {v5, ground, not_tolerant, input("limit")}), gate, "V G S", 4},
      {"two data outputs, the first too low for the string",
       header("led", {data("2.9..3.3 V"), v5, ground, data("4.4..5 V")}), "<led-string id='l' count='4'/>",
       "V D G", 4},
      {"probe of five leads in one plug",
       header("probe", {"function='output' signal='servo' rail='3V3' high='2.9..3.3 V' limit='8 mA'", v5,
                        ground, input("probe"), ground}),
       "<servo-probe id='p' needs='4.6..5.5 V' draws='0.3 A' reversed='destroyed'/>", "V G P T H", 5},
      {"panel of six leads", header("display", panel_pins), panel, "V G H A B L", 6},
      {"panel with five leads in six positions, its lamp left out", header("display", panel_pins),
       "<device id='d' use='display'><terminal id='G' function='ground'/><terminal id='H' function='ground'/>"
       "<terminal id='A' function='output' signal='button' withstands='-0.3..5.5 V'/>"
       "<terminal id='B' function='output' signal='encoder' withstands='-0.3..5.5 V'/>"
       "<switch a='A' b='G' rests='open'/><switch a='B' b='H' rests='open'/><join a='G' b='H'/></device>",
       "G H A B", 6},
  };
}

/// Every way to put the leads into cavities, or out where they may be.
void all_arrangements(const World& world, std::size_t leads, Arrangement now, std::vector<Arrangement>& out) {
  if (now.cavity.size() == leads) {
    out.push_back(now);
    return;
  }
  const bool out_allowed = !world.may_be_out.empty() && world.may_be_out[now.cavity.size()];
  for (int cavity = out_allowed ? 0 : 1; cavity <= world.positions; ++cavity) {
    if (cavity > 0 && std::count(now.cavity.begin(), now.cavity.end(), cavity) > 0) continue;
    Arrangement next = now;
    next.cavity.push_back(cavity);
    all_arrangements(world, leads, std::move(next), out);
  }
}

void arrange(Harness& harness, const Arrangement& arrangement) {
  auto& leads = harness.plugs[0].leads;
  for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = arrangement.cavity[l];
}

int distance(const Arrangement& a, const Arrangement& b) {
  int moved = 0;
  for (std::size_t l = 0; l < a.cavity.size(); ++l) moved += a.cavity[l] != b.cavity[l] ? 1 : 0;
  return moved;
}

std::string words(const Arrangement& arrangement) {
  return format("{}", join(arrangement.cavity, " "));
}

/// A plug with a lead to each terminal, in the positions of the world.
std::string plug_of(const World& world) {
  const auto leads = 1 + std::count(world.terminals.begin(), world.terminals.end(), ' ');
  std::string terminals = world.terminals;
  for (auto n = leads; n < world.positions; ++n) terminals += " -";
  return plug_of_leads(terminals);
}

}  // namespace

TEST_CASE("from every arrangement the planner reaches a clean one, with the fewest moves") {
  for (const World& world : worlds()) {
    CAPTURE(world.name);
    const Bench bench(board_of(world.header), harness_of(world.device + plug_of(world)));
    const Fitting fitting = bench.fitting({{"p", "J1"}});
    Harness& harness = *bench.harness;
    std::vector<Arrangement> all;
    all_arrangements(world, harness.plugs[0].leads.size(), {}, all);
    std::vector<Arrangement> clean;
    for (const Arrangement& arrangement : all) {
      arrange(harness, arrangement);
      if (assess(fitting).clean()) clean.push_back(arrangement);
    }
    REQUIRE_FALSE(clean.empty());
    REQUIRE(clean.size() < all.size() + (world.positions == 2 ? 1 : 0));
    for (const Arrangement& before : all) {
      // What is out of the housing already is not planned back in.
      if (std::count(before.cavity.begin(), before.cavity.end(), 0) > 0) continue;
      CAPTURE(words(before));
      arrange(harness, before);
      int fewest = std::numeric_limits<int>::max();
      for (const Arrangement& goal : clean) fewest = std::min(fewest, distance(before, goal));
      const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
      if (fewest == 0) {
        CHECK(to_word(advice.verdict) == "MATE");
        continue;
      }
      CHECK(to_word(advice.verdict) == "REPIN");
      if (!advice.plan) continue;
      REQUIRE(advice.plan->plugs.size() == 1);
      const PlugPlan& plan = advice.plan->plugs[0];
      CHECK(plan.before == before);
      const auto after = carry_out(before, plan.steps, world.positions);
      REQUIRE(after.has_value());
      CHECK(*after == plan.after);
      CHECK(std::count(clean.begin(), clean.end(), *after) == 1);
      CHECK(distance(before, *after) == fewest);
      CHECK(advice.moved == fewest);
    }
  }
}
