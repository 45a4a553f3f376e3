// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <queue>
#include <random>
#include <set>
#include <tuple>
#include <vector>

#include "plan/repin.h"

using namespace plugward;

namespace {

struct Count {
  int steps = 0;
  int held = 0;
  friend auto operator<=>(const Count&, const Count&) = default;
};

Count count(const std::vector<Step>& steps) {
  Count c;
  c.steps = static_cast<int>(steps.size());
  for (const Step& step : steps) c.held += step.kind == StepKind::Hold ? 1 : 0;
  return c;
}

/// The slow twin: every reachable arrangement with its least (steps, held), by Dijkstra over single steps.
std::map<std::vector<int>, Count> all_reachable(const std::vector<int>& before, int positions) {
  using Item = std::tuple<Count, std::vector<int>>;
  std::map<std::vector<int>, Count> best{{before, Count{}}};
  std::priority_queue<Item, std::vector<Item>, std::greater<>> queue;
  queue.emplace(Count{}, before);
  while (!queue.empty()) {
    const Count cost = std::get<0>(queue.top());
    const std::vector<int> now = std::get<1>(queue.top());
    queue.pop();
    if (best.at(now) < cost) continue;
    const std::set<int> taken(now.begin(), now.end());
    const auto go = [&](std::size_t lead, int to, int held) {
      std::vector<int> next = now;
      next[lead] = to;
      const Count then{cost.steps + 1, cost.held + held};
      const auto found = best.find(next);
      if (found != best.end() && found->second <= then) return;
      best[next] = then;
      queue.emplace(then, next);
    };
    for (std::size_t lead = 0; lead < now.size(); ++lead) {
      if (now[lead] == 0) continue;
      for (int cavity = 1; cavity <= positions; ++cavity) {
        if (!taken.contains(cavity)) go(lead, cavity, 0);
      }
      if (now[lead] > 0 && !taken.contains(-1)) go(lead, -1, 1);
      if (now[lead] > 0) go(lead, 0, 0);
    }
  }
  return best;
}

/// How many goals there are: any j of k leads stay in the housing, in any of n cavities.
int arrangements_up_to(int most) {
  const auto falling = [](int n, int j) {
    int p = 1;
    for (int i = 0; i < j; ++i) p *= n - i;
    return p;
  };
  int sum = 0;
  for (int n = 1; n <= most; ++n) {
    for (int k = 1; k <= n; ++k) {
      for (int j = 0; j <= k; ++j) sum += falling(k, j) / falling(j, j) * falling(n, j);
    }
  }
  return sum;
}

}  // namespace

TEST_CASE("every arrangement of up to six positions: as few steps as a search over all of them") {
  int compared = 0;
  for (int positions = 1; positions <= 6; ++positions) {
    for (int leads = 1; leads <= positions; ++leads) {
      CAPTURE(positions);
      CAPTURE(leads);
      Arrangement before;
      for (int l = 1; l <= leads; ++l) before.cavity.push_back(l);
      for (const auto& [cavities, least] : all_reachable(before.cavity, positions)) {
        if (std::find(cavities.begin(), cavities.end(), -1) != cavities.end()) continue;
        const Arrangement after{cavities};
        const std::vector<Step> steps = order_moves(before, after, positions);
        const auto reached = carry_out(before, steps, positions);
        REQUIRE(reached.has_value());
        REQUIRE(reached->cavity == after.cavity);
        REQUIRE(count(steps).steps == least.steps);
        REQUIRE(count(steps).held == least.held);
        ++compared;
      }
    }
  }
  MESSAGE("compared ", compared, " arrangements");
  CHECK(compared == arrangements_up_to(6));
}

TEST_CASE("random housings of 50 positions: carried out, they reach their goal, one lead loose at most") {
  std::mt19937 random(20261125);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const int positions = 50;
    const int leads = std::uniform_int_distribution(1, positions)(random);
    std::vector<int> cavities(positions);
    for (int i = 0; i < positions; ++i) cavities[static_cast<std::size_t>(i)] = i + 1;
    const auto draw = [&] {
      std::shuffle(cavities.begin(), cavities.end(), random);
      return std::vector<int>(cavities.begin(), cavities.begin() + leads);
    };
    const Arrangement before{draw()};
    Arrangement after{draw()};
    if (round % 3 == 0) after.cavity.front() = 0;
    const auto reached = carry_out(before, order_moves(before, after, positions), positions);
    REQUIRE(reached.has_value());
    CHECK(reached->cavity == after.cavity);
  }
}

TEST_CASE("a swap with an empty cavity parks, a swap in a full housing holds") {
  const auto kinds = [](const std::vector<Step>& steps) {
    std::vector<StepKind> list;
    for (const Step& s : steps) list.push_back(s.kind);
    return list;
  };
  CHECK(kinds(order_moves({{1, 2}}, {{2, 1}}, 3)) ==
        std::vector{StepKind::Park, StepKind::Move, StepKind::Move});
  CHECK(kinds(order_moves({{1, 2}}, {{2, 1}}, 2)) ==
        std::vector{StepKind::Hold, StepKind::Move, StepKind::Insert});
}

TEST_CASE("steps that cannot be done are refused") {
  const Arrangement two{{1, 2}};
  const auto step = [](StepKind kind, int lead, int from, int to) {
    return Step{kind, 0, lead, from, to, ""};
  };
  CHECK_FALSE(carry_out(two, {step(StepKind::Move, 0, 1, 2)}, 3).has_value());  // taken
  CHECK_FALSE(carry_out(two, {step(StepKind::Move, 0, 3, 1)}, 3).has_value());  // it is not there
  CHECK_FALSE(carry_out(two, {step(StepKind::Move, 0, 1, 4)}, 3).has_value());  // no such cavity
  CHECK_FALSE(carry_out(two, {step(StepKind::Hold, 0, 1, 0)}, 3).has_value());  // left loose
  CHECK_FALSE(carry_out(two, {step(StepKind::Hold, 0, 1, 0), step(StepKind::Hold, 1, 2, 0)}, 3).has_value());
  CHECK_FALSE(carry_out(two, {step(StepKind::Insert, 0, 0, 3)}, 3).has_value());  // it is not held
}
