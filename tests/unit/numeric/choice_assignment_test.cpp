// SPDX-License-Identifier: MIT
#include "numeric/choice_assignment.h"

#include <doctest/doctest.h>

#include <random>
#include <vector>

using namespace plugward;

namespace {

/// The slow twin: an assignment for every combination of choices.
std::optional<Cost> twin(const ChoiceProblem& problem) {
  std::optional<Cost> best;
  std::vector<std::size_t> choice(problem.groups.size(), 0);
  while (true) {
    ChoiceProblem decided = problem;
    Cost extra = 0;
    for (std::size_t g = 0; g < choice.size(); ++g) {
      const ChoiceGroup& group = problem.groups[g];
      extra += group.choices[choice[g]].extra;
      for (std::size_t i = 0; i < group.rows.size(); ++i) {
        decided.lines[group.rows[i]] = group.choices[choice[g]].lines[i];
      }
    }
    const auto found = cheapest_assignment(decided.lines);
    if (found && (!best || found->cost + extra < *best)) best = found->cost + extra;
    std::size_t g = 0;
    while (g < choice.size() && ++choice[g] == problem.groups[g].choices.size()) choice[g++] = 0;
    if (g == choice.size()) return best;
  }
}

/// Is it an assignment, and does it cost what it says?
void check_sound(const ChoiceProblem& problem, const ChoiceSolution& found) {
  std::vector<std::vector<Cost>> lines = problem.lines;
  Cost sum = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const ChoiceGroup& group = problem.groups[g];
    const Choice& choice = group.choices[static_cast<std::size_t>(found.choices[g])];
    sum += choice.extra;
    for (std::size_t i = 0; i < group.rows.size(); ++i) lines[group.rows[i]] = choice.lines[i];
  }
  std::vector<bool> taken(lines.front().size(), false);
  for (std::size_t row = 0; row < lines.size(); ++row) {
    const auto column = static_cast<std::size_t>(found.columns[row]);
    REQUIRE(lines[row][column] < forbidden);
    CHECK_FALSE(taken[column]);
    taken[column] = true;
    sum += lines[row][column];
  }
  CHECK(sum == found.cost);
}

ChoiceProblem random_problem(std::mt19937& random) {
  const std::size_t columns = 2 + random() % 6;
  const std::size_t rows = 1 + random() % columns;
  const unsigned densities = 1 + static_cast<unsigned>(random() % 4);
  const auto line = [&] {
    std::vector<Cost> costs;
    for (std::size_t c = 0; c < columns; ++c) {
      costs.push_back(random() % 4 >= densities ? forbidden : static_cast<Cost>(random() % 6));
    }
    return costs;
  };
  ChoiceProblem problem;
  for (std::size_t row = 0; row < rows; ++row) problem.lines.push_back(line());
  for (std::size_t row = 0; row + 1 < rows;) {
    const std::size_t size = 1 + random() % 3;
    ChoiceGroup group;
    for (std::size_t i = 0; i < size && row < rows; ++i) group.rows.push_back(row++);
    const std::size_t choices = 1 + random() % 4;
    for (std::size_t k = 0; k < choices; ++k) {
      Choice choice{static_cast<Cost>(random() % 3), {}};
      for (std::size_t i = 0; i < group.rows.size(); ++i) choice.lines.push_back(line());
      group.choices.push_back(std::move(choice));
    }
    problem.groups.push_back(std::move(group));
  }
  return problem;
}

}  // namespace

TEST_CASE("the example of the header") {
  ChoiceProblem p;
  p.lines = {{}, {}};
  const Choice a_first{0, {{1, forbidden}, {forbidden, 1}}};
  const Choice b_first{0, {{forbidden, 0}, {0, forbidden}}};
  p.groups = {{{0, 1}, {a_first, b_first}}};
  const auto found = cheapest_choice(p);
  REQUIRE(found.has_value());
  CHECK(found->columns == std::vector{1, 0});
  CHECK(found->choices == std::vector{1});
  CHECK(found->cost == 0);
  CHECK(found->proven);
}

TEST_CASE("as cheap as the best of all choices") {
  std::mt19937 random(20260401);
  int solved = 0;
  int unsolvable = 0;
  for (int round = 0; round < 6000; ++round) {
    CAPTURE(round);
    const ChoiceProblem problem = random_problem(random);
    const auto expected = twin(problem);
    const auto found = cheapest_choice(problem);
    REQUIRE(found.has_value() == expected.has_value());
    if (!found) {
      ++unsolvable;
      continue;
    }
    ++solved;
    CHECK(found->cost == *expected);
    CHECK(found->proven);
    check_sound(problem, *found);
  }
  CHECK(solved > 1500);
  CHECK(unsolvable > 500);
}

TEST_CASE("a search that is cut off says so") {
  // Two switches that both sit with both ends on one kind: the first look does not settle it.
  ChoiceProblem p;
  p.lines.resize(4);
  const auto line = [](std::size_t home, std::size_t first, std::size_t second) {
    std::vector<Cost> costs(4, forbidden);
    costs[first] = first == home ? 0 : 1;
    costs[second] = second == home ? 0 : 1;
    return costs;
  };
  for (std::size_t g = 0; g < 2; ++g) {
    const std::size_t a = 2 * g;
    const std::size_t b = 2 * g + 1;
    p.groups.push_back({{a, b}, {{0, {line(a, 0, 1), line(b, 2, 3)}}, {0, {line(a, 2, 3), line(b, 0, 1)}}}});
  }
  const auto found = cheapest_choice(p);
  REQUIRE(found.has_value());
  CHECK(found->cost == 2);
  CHECK(found->proven);
  const auto cut = cheapest_choice(p, 1);
  CHECK((!cut || !cut->proven));
}
