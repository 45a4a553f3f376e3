// SPDX-License-Identifier: MIT
// The way back is carried out on the model, on machines of every kind; one that is tampered with is no proof.
#include "plan/way_back.h"

#include <doctest/doctest.h>

#include <numeric>
#include <random>

#include "base/format.h"
#include "support/bench.h"
#include "support/random_world.h"
#include "support/refit.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// Another arrangement of the leads of every plug: exchanged, some out for good.
void shuffle_leads(Harness& harness, const Harness& was, std::mt19937_64& random) {
  for (std::size_t p = 0; p < harness.plugs.size(); ++p) {
    Plug& plug = harness.plugs[p];
    if (plug.leads.size() != was.plugs[p].leads.size()) continue;  // a cure has its own order
    std::vector<int> cavities(static_cast<std::size_t>(plug.positions));
    std::iota(cavities.begin(), cavities.end(), 1);
    std::shuffle(cavities.begin(), cavities.end(), random);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      plug.leads[l].cavity = random() % 5 == 0 ? 0 : cavities[l];
    }
  }
}

}  // namespace

TEST_CASE("the small machine goes back") {
  const auto texts = small_machine();
  const Machine machine("old.xml", texts);
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  REQUIRE(plan->result.clean());
  const WayBack back = way_back(*plan);
  CHECK(back.proven);
  CHECK(back.jumpers == std::map<std::string, std::string>{{"JP", "24V"}});
  REQUIRE(back.plugs.size() == 3);
  CHECK(back.plugs[0].from == 0);
  CHECK(back.plugs[0].to == 0);
  CHECK(back.plugs[0].rebuilt);
  CHECK(back.plugs[0].take_out == std::vector<std::string>{"a voltage divider of 47 kohm and 6.2 kohm"});
  CHECK(back.plugs[0].steps.empty());
  CHECK(back.plugs[1].steps.size() == 3);
  CHECK_FALSE(back.plugs[1].rebuilt);
  CHECK_FALSE(back.plugs[2].from.has_value());
  CHECK(back.plugs[2].to == 2);
  CHECK_FALSE(back.plugs[2].at_bench());

  const auto tampered = [&](auto change) {
    WayBack other = back;
    change(other);
    return ends_as_it_was(*plan, other);
  };
  CHECK(tampered([](WayBack&) {}));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[0].rebuilt = false; }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[1].steps.pop_back(); }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[1].steps.clear(); }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[2].to.reset(); }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[0].to = 1; }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs[0].from.reset(); }));
  CHECK_FALSE(tampered([](WayBack& b) { b.plugs.pop_back(); }));
  CHECK_FALSE(tampered([](WayBack& b) { b.jumpers["JP"] = "5V"; }));
}

TEST_CASE("a lead that was out for good goes back last") {
  const auto texts = small_machine();
  const Machine machine("old.xml", texts);
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  plan->harness = plan->housed;  // V G Q in 1 2 3
  auto& leads = plan->harness.plugs[0].leads;
  leads[0].cavity = 3;
  leads[1].cavity = 1;
  leads[2].cavity = 0;
  const WayBack back = way_back(*plan);
  CHECK(back.proven);
  REQUIRE_FALSE(back.plugs.empty());
  CHECK(back.plugs[0].put_back == std::vector{2});
  REQUIRE(back.plugs[0].steps.size() == 2);
  CHECK(back.plugs[0].steps[0].lead == 1);
  CHECK(back.plugs[0].steps[1].lead == 0);
  WayBack other = back;
  other.plugs[0].put_back.clear();
  CHECK_FALSE(ends_as_it_was(*plan, other));
}

TEST_CASE("another housing is given back") {
  const auto texts = small_machine();
  const Machine machine("old.xml", texts);
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  plan->harness.plugs[1].family = "pin-2.54";
  plan->harness.plugs[1].positions = 3;
  plan->harness.plugs[1].leads[0].cavity = 3;
  const WayBack back = way_back(*plan);
  CHECK(back.proven);
  CHECK(back.plugs[1].other_housing);
  CHECK(back.plugs[1].steps.empty());
  WayBack other = back;
  other.plugs[1].other_housing = false;
  CHECK_FALSE(ends_as_it_was(*plan, other));
}

TEST_CASE("random machines, advised and shuffled, find back") {
  int cured = 0, moved = 0, out = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    CAPTURE(seed);
    std::mt19937_64 random(seed);
    const RandomWorld world = random_world(seed);
    const Bench bench(to_text(world.board), to_text(world.harness));
    Fitting machine = bench.fitting(world.at, world.jumpers);
    const Fitting there = machine;
    if (!machine.placements.empty() && random() % 3 == 0) machine.placements.pop_back();
    const auto plan = plan_by_hand(machine, *bench.board, there.placements, there.jumpers);
    cured += plan->advice.cured ? 1 : 0;
    CHECK(way_back(*plan).proven);
    shuffle_leads(plan->harness, *machine.harness, random);
    const WayBack back = way_back(*plan);
    CHECK(back.proven);
    for (const PlugWayBack& one : back.plugs) {
      moved += one.steps.empty() ? 0 : 1;
      out += one.put_back.empty() ? 0 : 1;
    }
  }
  CHECK(cured > 10);
  CHECK(moved > 300);
  CHECK(out > 100);
}

TEST_CASE("the shipped machine comes back from the other shipped board") {
  const Machine wren("harnesses/wren-a4.xml");
  const NewBoard to(read_file(std::string(PLUGWARD_SOURCE_DIR) + "/boards/heron-m7.xml"));
  const Fitting fitting = wren.fitting();
  const auto plan = plan_swap(fitting, to.board(), {});
  const WayBack back = way_back(*plan);
  CHECK(back.proven);
  CHECK(back.plugs.size() >= fitting.placements.size());
}
