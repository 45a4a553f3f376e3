// SPDX-License-Identifier: MIT
#include "numeric/ranked_assignment.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <set>

using namespace plugward;

namespace {

using Costs = std::vector<std::vector<Cost>>;

/// The twin: the costs of all assignments, sorted.
std::vector<Cost> all_costs(const Costs& cost) {
  std::vector<Cost> found;
  std::vector<bool> taken(cost.front().size(), false);
  const auto go = [&](auto&& self, std::size_t row, Cost sum) -> void {
    if (row == cost.size()) {
      found.push_back(sum);
      return;
    }
    for (std::size_t c = 0; c < taken.size(); ++c) {
      if (taken[c] || cost[row][c] >= forbidden) continue;
      taken[c] = true;
      self(self, row + 1, sum + cost[row][c]);
      taken[c] = false;
    }
  };
  go(go, 0, 0);
  std::sort(found.begin(), found.end());
  return found;
}

Costs random_costs(std::mt19937& random, std::size_t most_columns) {
  const std::size_t columns = 1 + random() % most_columns;
  const std::size_t rows = 1 + random() % columns;
  Costs cost(rows, std::vector<Cost>(columns));
  for (auto& line : cost) {
    for (Cost& c : line) c = random() % 4 == 0 ? forbidden : static_cast<Cost>(random() % 8);
  }
  return cost;
}

}  // namespace

TEST_CASE("every assignment once, in the order of cost") {
  std::mt19937 random(33);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const Costs cost = random_costs(random, 5);
    std::vector<Cost> given;
    std::set<std::vector<int>> seen;
    RankedAssignments ranked(cost);
    while (true) {
      const Assignment* peeked = ranked.peek();
      const std::optional<Cost> announced = peeked == nullptr ? std::nullopt : std::optional(peeked->cost);
      const auto next = ranked.next();
      REQUIRE(next.has_value() == announced.has_value());
      if (!next) break;
      CHECK(*announced == next->cost);
      given.push_back(next->cost);
      CHECK(seen.insert(next->columns).second);
    }
    CHECK(given == all_costs(cost));
  }
}

TEST_CASE("costs that rise: as cheap as solved from the beginning") {
  std::mt19937 random(34);
  int solved = 0;
  for (int round = 0; round < 400; ++round) {
    CAPTURE(round);
    Costs cost = random_costs(random, 12);
    LiveAssignment live(cost);
    if (!live.solve()) continue;
    for (int step = 0; step < 12; ++step) {
      const std::size_t rows_changed = 1 + random() % 2;
      for (std::size_t i = 0; i < rows_changed; ++i) {
        const std::size_t row = random() % cost.size();
        for (Cost& c : cost[row]) {
          const auto dice = random() % 10;
          if (dice == 0) c = forbidden;
          if (dice < 4 && c < forbidden) c += static_cast<Cost>(random() % 5);
        }
        live.raise(row, cost[row]);
      }
      const auto expected = cheapest_assignment(cost);
      REQUIRE(live.solve() == expected.has_value());
      if (!expected) break;
      ++solved;
      const Assignment found = live.result();
      CHECK(found.cost == expected->cost);
      Cost sum = 0;
      for (std::size_t r = 0; r < cost.size(); ++r)
        sum += cost[r][static_cast<std::size_t>(found.columns[r])];
      CHECK(sum == found.cost);
    }
  }
  CHECK(solved > 1000);
}
