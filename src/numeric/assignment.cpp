// SPDX-License-Identifier: MIT
// Shortest augmenting paths with prices. Rows are assigned one after another; each new row searches, by
// Dijkstra's method over reduced costs, for the cheapest way to a free column, moving earlier rows aside on
// the way.
//
//        c0 c1 c2      row 0 takes c1 (1). Row 1 wants c1 too (0): cheapest is to take it and move row 0 to
//   r0    4  1  3      c0 (+3) or c2 (+2), or to take c0 itself (+2): two ways of equal cost, the first
//   column r1    2  0  5      found stays: r0 c1, r1 c0, cost 3.
//
// Rising costs: the prices stay valid, for a reduced cost can only grow. A row whose own place became dearer
// is set free and searches anew; its way ends at the one column that lacks a row. For that every column must
// have a row: empty rows that cost nothing hold the columns that are free.
//
// O(rows^2 x columns) time, O(rows x columns) space; O(columns^2) for each row that was set free. Not taken:
// a simplex method (slower at this size) and trying all permutations (the twin in the tests). Reference: R.
// Jonker, A. Volgenant, "A shortest augmenting path algorithm for dense and sparse linear assignment
// problems", Computing 38 (1987); prices as in H. W. Kuhn (1955).
// Tested in tests/unit/numeric/assignment_test.cpp, and against glpsol in tests/outside/optimum.
#include "numeric/assignment.h"

#include <cassert>
#include <utility>

namespace plugward {

LiveAssignment::LiveAssignment(const std::vector<std::vector<Cost>>& cost)
    : rows_(cost.size()), columns_(cost.empty() ? 0 : cost.front().size()) {
  assert(rows_ <= columns_);
  cost_.reserve(rows_ * columns_);
  for (const auto& line : cost) {
    assert(line.size() == columns_);
    cost_.insert(cost_.end(), line.begin(), line.end());
  }
  row_price_.assign(columns_, 0);
  column_price_.assign(columns_, 0);
  row_of_.assign(columns_, none);
  for (std::size_t row = rows_; row-- > 0;) waiting_.push_back(row);
}

/// Adds `start` to the matching by the cheapest augmenting path; false when there is no path.
bool LiveAssignment::augment(std::size_t start) {
  std::vector<Cost> distance(columns_, forbidden);
  std::vector<std::size_t> came_from(columns_, none);  // the column before, none: straight from `start`
  std::vector<std::size_t> open(columns_);
  for (std::size_t c = 0; c < columns_; ++c) open[c] = c;
  std::vector<std::size_t> visited;

  std::size_t row = start;
  std::size_t last = none;
  Cost reached = 0;
  while (true) {
    std::size_t nearest = none;
    std::size_t nearest_at = 0;
    const Cost* line = row < rows_ ? &cost_[row * columns_] : nullptr;
    for (std::size_t i = 0; i < open.size(); ++i) {
      const std::size_t c = open[i];
      const Cost here = line == nullptr ? 0 : line[c];
      if (here < forbidden) {
        const Cost way = reached + here - row_price_[row] - column_price_[c];
        if (way < distance[c]) {
          distance[c] = way;
          came_from[c] = last;
        }
      }
      const bool nearer = distance[c] < forbidden && (nearest == none || distance[c] < distance[nearest] ||
                                                      (distance[c] == distance[nearest] && c < nearest));
      if (nearer) {
        nearest = c;
        nearest_at = i;
      }
    }
    if (nearest == none) return false;
    reached = distance[nearest];
    open[nearest_at] = open.back();
    open.pop_back();
    last = nearest;
    if (row_of_[nearest] == none) break;
    visited.push_back(nearest);
    row = row_of_[nearest];
  }

  row_price_[start] += reached;
  for (const std::size_t c : visited) {
    row_price_[row_of_[c]] += reached - distance[c];
    column_price_[c] -= reached - distance[c];
  }
  for (std::size_t c = last; c != none; c = came_from[c]) {
    row_of_[c] = came_from[c] == none ? start : row_of_[came_from[c]];
  }
  return true;
}

bool LiveAssignment::solve() {
  while (!waiting_.empty()) {
    if (!augment(waiting_.back())) return false;
    waiting_.pop_back();
  }
  return true;
}

/// A free column has never been on a way, so its price is 0, and a row that costs nothing may hold it.
void LiveAssignment::fill_free_columns() {
  std::size_t empty_row = rows_;
  for (std::size_t& row : row_of_) {
    if (row == none) row = empty_row++;
  }
  filled_ = true;
}

void LiveAssignment::raise(std::size_t row, const std::vector<Cost>& line) {
  assert(row < rows_ && line.size() == columns_);
  assert(waiting_.empty() || filled_);
  if (!filled_) fill_free_columns();
  for (std::size_t c = 0; c < columns_; ++c) {
    Cost& cost = cost_[row * columns_ + c];
    assert(line[c] >= cost);
    if (row_of_[c] == row && line[c] > cost) {
      row_of_[c] = none;
      waiting_.push_back(row);
    }
    cost = line[c];
  }
}

Assignment LiveAssignment::result() const {
  assert(waiting_.empty());
  Assignment result;
  result.columns.resize(rows_);
  for (std::size_t c = 0; c < columns_; ++c) {
    if (row_of_[c] == none || row_of_[c] >= rows_) continue;
    result.columns[row_of_[c]] = static_cast<int>(c);
    result.cost += at(row_of_[c], c);
  }
  return result;
}

std::optional<Assignment> cheapest_assignment(const std::vector<std::vector<Cost>>& cost) {
  LiveAssignment live(cost);
  if (!live.solve()) return std::nullopt;
  return live.result();
}

}  // namespace plugward
