// SPDX-License-Identifier: MIT
#include "plan/place_search.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <set>

using namespace plugward;

namespace {

PlacingProblem random_problem(std::mt19937& random) {
  const auto pick = [&](int most) { return std::uniform_int_distribution(0, most)(random); };
  const int headers = 1 + pick(4);
  const int rows = 1 + pick(3);
  PlacingProblem problem;
  std::vector<int> at;
  for (int h = 0; h < headers; ++h) at.push_back(pick(9));
  for (const int a : at) {
    std::vector<int> line;
    for (const int b : at) line.push_back(std::abs(a - b));
    problem.distance.push_back(line);
  }
  for (int row = 0; row < rows; ++row) {
    std::vector<std::optional<PlaceCost>> line;
    for (int h = 0; h < headers; ++h) {
      if (pick(3) == 0)
        line.emplace_back();
      else
        line.emplace_back(PlaceCost{0, pick(1), 0, pick(1), pick(1), pick(2), 0, 0});
    }
    problem.cost.push_back(std::move(line));
    const int anchor = row < 2 ? 0 : 2;
    problem.anchor.push_back(pick(4) == 0 && row != 0 && row != 2 ? row : anchor);
    problem.fixed_anchor.push_back(-1);
  }
  if (pick(3) == 0) {
    problem.anchor[0] = 0;
    problem.fixed_anchor[0] = pick(headers - 1);
  }
  return problem;
}

/// The slow twin: the costs of all placings, sorted.
std::vector<PlaceCost> all_costs(const PlacingProblem& problem) {
  std::vector<PlaceCost> found;
  std::vector<int> header(problem.cost.size(), -1);
  const auto go = [&](auto&& self, std::size_t row) -> void {
    if (row == header.size()) {
      PlaceCost sum;
      for (std::size_t r = 0; r < header.size(); ++r) {
        if (header[r] < 0) {
          ++sum.unplaced;
          continue;
        }
        const auto to = static_cast<std::size_t>(header[r]);
        sum = sum + *problem.cost[r][to];
        const int anchor = problem.anchor[r];
        const int from = problem.fixed_anchor[r] >= 0    ? problem.fixed_anchor[r]
                         : anchor == static_cast<int>(r) ? -1
                                                         : header[static_cast<std::size_t>(anchor)];
        if (from >= 0) sum.distance += problem.distance[static_cast<std::size_t>(from)][to];
      }
      found.push_back(sum);
      return;
    }
    header[row] = -1;
    self(self, row + 1);
    for (std::size_t h = 0; h < problem.cost[row].size(); ++h) {
      const int here = static_cast<int>(h);
      if (!problem.cost[row][h] ||
          std::count(header.begin(), header.begin() + static_cast<int>(row), here) > 0)
        continue;
      header[row] = here;
      self(self, row + 1);
    }
  };
  go(go, 0);
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

TEST_CASE("every placing once, in the order of cost") {
  std::mt19937 random(61);
  for (int round = 0; round < 400; ++round) {
    CAPTURE(round);
    const PlacingProblem problem = random_problem(random);
    const std::vector<PlaceCost> expected = all_costs(problem);
    std::vector<PlaceCost> given;
    std::set<std::vector<int>> seen;
    RankedPlacings ranked(problem);
    while (const auto next = ranked.next()) {
      given.push_back(next->cost);
      CHECK(seen.insert(next->headers).second);
    }
    REQUIRE(given.size() == expected.size());
    for (std::size_t i = 0; i < given.size(); ++i) CHECK((given[i] <=> expected[i]) == 0);
  }
}

TEST_CASE("of equal placings the first plug has the first header") {
  PlacingProblem problem;
  problem.distance.assign(3, {0, 0, 0});
  problem.cost.assign(2, std::vector<std::optional<PlaceCost>>(3, PlaceCost{}));
  problem.anchor = {0, 1};
  problem.fixed_anchor = {-1, -1};
  RankedPlacings ranked(problem);
  CHECK(ranked.next()->headers == std::vector{0, 1});
}
