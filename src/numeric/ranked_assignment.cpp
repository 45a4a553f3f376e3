// SPDX-License-Identifier: MIT
// Idea: the best assignment splits the remaining ones into disjoint parts: those that agree with it on the first
// k rows and differ in row k. The cheapest of each part is an assignment problem of its own; a queue holds the
// parts by their cheapest.
//
// Complexity: rows x one assignment for every assignment given.
// Reference: K. G. Murty, Operations Research 16 (1968) 682.
// Tested in tests/unit/numeric/ranked_assignment_test.cpp against all assignments.
#include "numeric/ranked_assignment.h"

#include <utility>

namespace plugward {

RankedAssignments::RankedAssignments(std::vector<std::vector<Cost>> cost) { add(std::move(cost), 0); }

void RankedAssignments::add(std::vector<std::vector<Cost>> cost, std::size_t fixed_rows) {
  auto best = cheapest_assignment(cost);
  if (!best) return;
  parts_.push({std::move(*best), std::move(cost), fixed_rows, made_++});
}

std::optional<Assignment> RankedAssignments::next() {
  if (parts_.empty()) return std::nullopt;
  Part part = parts_.top();
  parts_.pop();
  std::vector<std::vector<Cost>> cost = part.cost;
  for (std::size_t row = part.fixed_rows; row < cost.size(); ++row) {
    const auto taken = static_cast<std::size_t>(part.best.columns[row]);
    std::vector<std::vector<Cost>> differs = cost;
    differs[row][taken] = forbidden;
    add(std::move(differs), row);
    for (std::size_t column = 0; column < cost[row].size(); ++column) {
      if (column != taken) cost[row][column] = forbidden;
    }
  }
  return std::move(part.best);
}

}  // namespace plugward
