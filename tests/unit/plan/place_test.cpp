// SPDX-License-Identifier: MIT
#include "plan/place.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "plan/in_question.h"
#include "support/bench.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

const std::vector<std::string> harness_names{
    "fan-12v",       "fan-24v",        "firefly-led-bar",  "inductive-sensor", "kite-probe", "limit-switch",
    "nozzle-heater", "optical-switch", "changeover-limit", "thermistor",       "x-motor"};

/// A shipped board with some of its headers, and some shipped harnesses as one.
struct World {
  Bench bench;
  Board board;
  Harness harness;

  Fitting fitting() const {
    return {&board, &harness, &bench.catalogue, {}, {{"JP2", "5V"}, {"JP4", "24V"}, {"JP3", "12V"}}};
  }
};

World world(const std::string& board_name, std::vector<std::string> names,
            const std::vector<std::string>& headers) {
  World w{Bench::shipped(board_name, names.front()), {}, {}};
  w.board = *w.bench.board;
  if (!headers.empty()) {
    std::erase_if(w.board.headers, [&](const Header& h) {
      return std::find(headers.begin(), headers.end(), h.id) == headers.end();
    });
  }
  std::vector<Bench> others;
  std::vector<const Harness*> list;
  for (const std::string& name : names) others.push_back(Bench::shipped(board_name, name));
  for (const Bench& other : others) list.push_back(other.harness.get());
  w.harness = merged(list);
  return w;
}

/// "control:J9 trigger:J10", in the order of the plugs.
std::string words(const World& w, std::vector<Placement> placements) {
  std::sort(placements.begin(), placements.end(),
            [](const Placement& a, const Placement& b) { return a.plug < b.plug; });
  std::string text;
  for (const Placement& p : placements) {
    text += (text.empty() ? "" : " ") + w.harness.plugs[static_cast<std::size_t>(p.plug)].id + ":" +
            w.board.headers[static_cast<std::size_t>(p.header)].id;
  }
  return text;
}

/// What the clusters cost, each judged as a whole without the others.
std::optional<PlaceCost> cost_together(const World& w, const std::vector<Placement>& placements) {
  PlaceCost cost;
  cost.unplaced = static_cast<int>(w.harness.plugs.size() - placements.size());
  const auto of_harness = [&](const Placement& p) {
    const std::string& id = w.harness.plugs[static_cast<std::size_t>(p.plug)].id;
    return id.substr(0, id.find('/') == std::string::npos ? 0 : id.find('/'));
  };
  std::set<std::string> names;
  for (const Placement& p : placements) names.insert(of_harness(p));
  for (const std::string& name : names) {
    Fitting fitting = w.fitting();
    for (const Placement& p : placements) {
      if (of_harness(p) == name) fitting.placements.push_back(p);
    }
    const Advice advice = advise(fitting, {false, false});
    if (advice.verdict == Verdict::Apart) return std::nullopt;
    int unknown = 0;
    for (const Placement& p : fitting.placements) {
      Fitting alone = w.fitting();
      alone.placements = {p};
      unknown += advise(alone, {false, false}).verdict == Verdict::Measure ? 1 : 0;
    }
    cost.unknown += std::max(unknown, advice.verdict == Verdict::Measure ? 1 : 0);
    for (const std::string& part : advice.parts) {
      if (part.find("another housing") == 0)
        ++cost.housings;
      else
        ++cost.parts;
    }
    cost.moves += advice.moved;
    for (const Setting& s : advice.settings) cost.settings += s.what.find("invert") == 0 ? 1 : 0;
  }
  return cost;
}

/// The slow twin: every way to give each plug a header or none, each judged as a whole; a plug goes only
/// where it may go by itself. Distance left out.
PlaceCost twin(const World& w) {
  PlaceCost best;
  best.unplaced = 1000;
  std::vector<Placement> placements;
  const auto go = [&](auto&& self, std::size_t plug) -> void {
    if (plug == w.harness.plugs.size()) {
      if (placements.empty()) return;
      const auto cost = cost_together(w, placements);
      if (cost) best = std::min(best, *cost);
      return;
    }
    self(self, plug + 1);
    for (int h = 0; h < static_cast<int>(w.board.headers.size()); ++h) {
      const bool taken = std::any_of(placements.begin(), placements.end(),
                                     [&](const Placement& p) { return p.header == h; });
      if (taken) continue;
      if (!in_question(demands(w.harness)[plug], w.harness.plugs[plug], w.board,
                       w.board.headers[static_cast<std::size_t>(h)]))
        continue;
      Fitting alone = w.fitting();
      alone.placements = {{static_cast<int>(plug), h}};
      if (advise(alone, {false, false}).verdict == Verdict::Apart) continue;
      placements.push_back({static_cast<int>(plug), h});
      self(self, plug + 1);
      placements.pop_back();
    }
  };
  go(go, 0);
  return best;
}

}  // namespace

TEST_CASE("the demo harnesses find their headers by themselves") {
  struct Row {
    std::string board;
    std::vector<std::string> harnesses;
    std::string best;
    std::string runner_up;
    std::string why;
  };
  const std::vector<Row> rows{
      {"heron-m7", {"kite-probe"}, "control:J9 trigger:J10", "", ""},
      {"heron-m7",
       {"thermistor"},
       "thermistor:J18",
       "thermistor:J19",
       "equal in all that counts; the board file names it later"},
      {"heron-m7", {"x-motor"}, "motor:J4", "motor:J2", "moves 0 contacts instead of 2"},
      {"heron-m7", {"nozzle-heater"}, "heater:J14", "heater:J15", "needs 0 new housings instead of 1"},
      {"heron-m7",
       {"x-motor", "thermistor"},
       "x-motor/motor:J4 thermistor/thermistor:J18",
       "x-motor/motor:J4 thermistor/thermistor:J19",
       "equal in all that counts; the board file names it later"},
  };
  for (const Row& row : rows) {
    const World w = world(row.board, row.harnesses, {});
    const PlacementPlan plan = place(w.fitting());
    CAPTURE(row.best);
    REQUIRE(plan.best.has_value());
    CHECK(words(w, plan.best->placements) == row.best);
    if (!row.runner_up.empty()) {
      REQUIRE(plan.runner_up.has_value());
      CHECK(words(w, plan.runner_up->placements) == row.runner_up);
    }
    if (!row.why.empty()) CHECK(plan.why_it_lost == row.why);
  }
}

TEST_CASE("random harnesses on random parts of the boards: as good as the best of all placements") {
  std::mt19937 random(7);
  int with_solution = 0;
  for (int round = 0; round < 60; ++round) {
    CAPTURE(round);
    const auto pick = [&](std::size_t n) {
      return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    const std::string board_name = pick(2) == 0 ? "heron-m7" : "heron-a4";
    std::vector<std::string> names{harness_names[pick(harness_names.size())]};
    const std::string second = harness_names[pick(harness_names.size())];
    if (second != names.front()) names.push_back(second);
    const Bench whole = Bench::shipped(board_name, names.front());
    std::vector<std::string> headers;
    for (const Header& h : whole.board->headers) headers.push_back(h.id);
    std::shuffle(headers.begin(), headers.end(), random);
    headers.resize(7);
    const World w = world(board_name, names, headers);
    const PlacementPlan plan = place(w.fitting());
    const PlaceCost expected = twin(w);
    std::string said = board_name + " " + names.front() + " " + names.back() + ":";
    for (const PlaceOption& o : plan.options) {
      said += " " + std::to_string(o.plug) + "-" + w.board.headers[static_cast<std::size_t>(o.header)].id +
              " " + std::string(to_word(o.verdict));
    }
    CAPTURE(said);
    CAPTURE(expected.unplaced);
    REQUIRE(plan.best.has_value() == (expected.unplaced != 1000));
    if (!plan.best) continue;
    ++with_solution;
    PlaceCost found = plan.best->cost;
    found.distance = 0;
    CAPTURE(words(w, plan.best->placements));
    CHECK(found.unplaced == expected.unplaced);
    CHECK((found <=> expected) == 0);
  }
  MESSAGE(with_solution, " of 60 have a placement (seed 7)");
  CHECK(with_solution > 30);
}

TEST_CASE("a fixed plug stays, the others go near it") {
  const World w = world("heron-m7", {"kite-probe"}, {});
  Fitting fitting = w.fitting();
  int trigger = 0;
  int j10 = 0;
  for (std::size_t i = 0; i < w.harness.plugs.size(); ++i) {
    if (w.harness.plugs[i].id == "trigger") trigger = static_cast<int>(i);
  }
  for (std::size_t i = 0; i < w.board.headers.size(); ++i) {
    if (w.board.headers[i].id == "J10") j10 = static_cast<int>(i);
  }
  fitting.placements = {{trigger, j10}};
  const PlacementPlan plan = place(fitting);
  REQUIRE(plan.best.has_value());
  CHECK(words(w, plan.best->placements) == "control:J9 trigger:J10");
}

TEST_CASE("with and without reasons the same headers come out") {
  const World w =
      world("heron-m7", {"x-motor", "kite-probe", "limit-switch", "fan-24v", "nozzle-heater"}, {});
  PlaceOptions silent;
  silent.reasons = false;
  const PlacementPlan one = place(w.fitting());
  const PlacementPlan two = place(w.fitting(), silent);
  REQUIRE(one.best.has_value());
  REQUIRE(two.best.has_value());
  CHECK(words(w, one.best->placements) == words(w, two.best->placements));
  CHECK((one.best->cost <=> two.best->cost) == 0);
  REQUIRE(one.options.size() == two.options.size());
  for (std::size_t i = 0; i < one.options.size(); ++i) {
    CHECK(one.options[i].header == two.options[i].header);
    CHECK(one.options[i].verdict == two.options[i].verdict);
    CHECK((one.options[i].cost <=> two.options[i].cost) == 0);
    CHECK(two.options[i].reason.empty());
  }
}

TEST_CASE("equal plugs are said to be equal") {
  Bench bench = Bench::shipped("heron-m7", "limit-switch");
  std::vector<Harness> copies;
  for (const std::string id : {"x", "y", "z"}) {
    copies.push_back(*bench.harness);
    copies.back().id = id;
  }
  const Harness all = merged({&copies[0], &copies[1], &copies[2]});
  const Fitting fitting{bench.board.get(), &all, &bench.catalogue, {}, {}};
  const PlacementPlan plan = place(fitting);
  REQUIRE(plan.best.has_value());
  std::string said;
  for (const Placement& p : plan.best->placements) {
    said += all.plugs[static_cast<std::size_t>(p.plug)].id + ":" +
            bench.board->headers[static_cast<std::size_t>(p.header)].id + " ";
  }
  CHECK(said == "x/limit:J5 y/limit:J6 z/limit:J7 ");
  CHECK(plan.equals == std::vector<std::vector<int>>{{0, 1, 2}});
}
