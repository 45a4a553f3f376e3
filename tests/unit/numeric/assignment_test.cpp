// SPDX-License-Identifier: MIT
#include "numeric/assignment.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <string>

using namespace plugward;

namespace {

using Costs = std::vector<std::vector<Cost>>;

/// The twin: every arrangement of the columns, of which the rows take the first ones.
std::optional<Cost> cheapest_by_trying(const Costs& cost) {
  std::vector<std::size_t> columns(cost.empty() ? 0 : cost[0].size());
  std::iota(columns.begin(), columns.end(), std::size_t{0});
  std::optional<Cost> best;
  do {
    Cost sum = 0;
    bool allowed = true;
    for (std::size_t r = 0; r < cost.size(); ++r) {
      allowed &= cost[r][columns[r]] < forbidden;
      if (allowed) sum += cost[r][columns[r]];
    }
    if (allowed && (!best || sum < *best)) best = sum;
  } while (std::next_permutation(columns.begin(), columns.end()));
  return best;
}

/// Is it an assignment, and does it cost what it says?
void check_sound(const Costs& cost, const Assignment& a) {
  REQUIRE(a.columns.size() == cost.size());
  std::vector<int> sorted = a.columns;
  std::sort(sorted.begin(), sorted.end());
  CHECK(std::adjacent_find(sorted.begin(), sorted.end()) == sorted.end());
  Cost sum = 0;
  for (std::size_t r = 0; r < cost.size(); ++r) {
    REQUIRE(cost[r][static_cast<std::size_t>(a.columns[r])] < forbidden);
    sum += cost[r][static_cast<std::size_t>(a.columns[r])];
  }
  CHECK(sum == a.cost);
}

}  // namespace

TEST_CASE("assignments worked by hand") {
  struct Row {
    std::string name;
    Costs cost;
    std::vector<int> columns;
    Cost total;
  };
  const Cost x = forbidden;
  const Row rows[] = {
      {"nothing to assign", {}, {}, 0},
      {"one", {{7}}, {0}, 7},
      {"the example of the header", {{4, 1, 3}, {2, 0, 5}}, {1, 0}, 3},
      {"the first row must step aside", {{1, 2}, {1, 9}}, {1, 0}, 3},
      {"a forbidden column is never taken", {{x, 5}, {3, x}}, {1, 0}, 8},
      {"equal costs: index order", {{0, 0, 0}, {0, 0, 0}}, {0, 1}, 0},
      {"more columns than rows", {{9, 9, 2, 9}}, {2}, 2},
      {"a chain of three moves", {{1, 2, 9}, {1, 9, 3}, {0, 9, 9}}, {1, 2, 0}, 5},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const auto found = cheapest_assignment(row.cost);
    REQUIRE(found.has_value());
    CHECK(found->columns == row.columns);
    CHECK(found->cost == row.total);
  }
}

TEST_CASE("no assignment is a result") {
  const Cost x = forbidden;
  CHECK_FALSE(cheapest_assignment({{x}}).has_value());
  CHECK_FALSE(cheapest_assignment({{1, x, x}, {1, x, x}}).has_value());
}

TEST_CASE("as cheap as the cheapest of all permutations") {
  constexpr unsigned seed = 4711;
  CAPTURE(seed);
  std::mt19937 random(seed);
  int without = 0;
  for (int round = 0; round < 600; ++round) {
    const std::size_t columns = 1 + random() % 7;
    const std::size_t rows = 1 + random() % columns;
    Costs cost(rows, std::vector<Cost>(columns));
    for (auto& row : cost) {
      for (Cost& c : row)
        c = random() % 4 == 0 ? forbidden : static_cast<Cost>(random() % (round % 2 == 0 ? 5 : 1000));
    }
    CAPTURE(round);
    const auto expected = cheapest_by_trying(cost);
    const auto found = cheapest_assignment(cost);
    REQUIRE(found.has_value() == expected.has_value());
    without += !expected;
    if (!found) continue;
    CHECK(found->cost == *expected);
    check_sound(cost, *found);
  }
  CHECK(without > 20);  // the rounds hold unsolvable ones too
}
