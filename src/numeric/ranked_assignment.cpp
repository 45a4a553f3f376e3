// SPDX-License-Identifier: MIT
// Idea: the best assignment splits the remaining ones into disjoint parts: those that agree with it on the
// first k rows and differ in row k. The cheapest of each part is an assignment problem of its own; a queue
// holds the parts by their cheapest. A part differs from the one it is split from in one row, so the prices
// found there are still good and only that row is assigned anew.
//
// A part is split when the next assignment is asked for: who needs one only, pays for one only.
//
// Complexity: for every assignment given, one assignment and rows x O(columns^2).
// Reference: K. G. Murty, Operations Research 16 (1968) 682; the re-use of prices as in M. L. Miller, H. S.
// Stone, I. J. Cox, IEEE Transactions on Aerospace and Electronic Systems 33 (1997) 851 (from memory).
// Tested in tests/unit/numeric/ranked_assignment_test.cpp against all assignments.
#include "numeric/ranked_assignment.h"

#include <utility>

namespace plugward {
namespace {

/// `line` with every place forbidden but one.
std::vector<Cost> only(const std::vector<Cost>& line, std::size_t column) {
  std::vector<Cost> result(line.size(), forbidden);
  result[column] = line[column];
  return result;
}

}  // namespace

RankedAssignments::RankedAssignments(std::vector<std::vector<Cost>> cost) : cost_(std::move(cost)) {
  if (auto best = cheapest_assignment(cost_)) parts_.push({std::move(*best), 0, {}, made_++});
}

void RankedAssignments::split(const Part& part) {
  std::vector<std::vector<Cost>> cost = cost_;
  for (std::size_t row = 0; row < part.fixed_rows; ++row) {
    cost[row] = only(cost[row], static_cast<std::size_t>(part.best.columns[row]));
  }
  if (part.fixed_rows < cost.size()) {
    for (const int column : part.refused) cost[part.fixed_rows][static_cast<std::size_t>(column)] = forbidden;
  }
  LiveAssignment live(cost);
  if (!live.solve()) return;  // cannot be: the part has its best
  for (std::size_t row = part.fixed_rows; row < cost.size(); ++row) {
    const int taken = part.best.columns[row];
    std::vector<Cost> line = cost[row];
    line[static_cast<std::size_t>(taken)] = forbidden;
    LiveAssignment differs = live;
    differs.raise(row, line);
    if (differs.solve()) {
      std::vector<int> refused = row == part.fixed_rows ? part.refused : std::vector<int>{};
      refused.push_back(taken);
      parts_.push({differs.result(), row, std::move(refused), made_++});
    }
    live.raise(row, only(cost[row], static_cast<std::size_t>(taken)));
    live.solve();
  }
}

const Assignment* RankedAssignments::peek() {
  if (given_) split(*std::exchange(given_, std::nullopt));
  return parts_.empty() ? nullptr : &parts_.top().best;
}

std::optional<Assignment> RankedAssignments::next() {
  if (peek() == nullptr) return std::nullopt;
  given_ = parts_.top();
  parts_.pop();
  return given_->best;
}

}  // namespace plugward
