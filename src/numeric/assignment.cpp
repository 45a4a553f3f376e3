// SPDX-License-Identifier: MIT
// Shortest augmenting paths with potentials. Rows are assigned one after another; each new row searches, by
// Dijkstra's method over reduced costs, for the cheapest way to a free column, moving earlier rows aside on
// the way.
//
//        c0 c1 c2      row 0 takes c1 (1). Row 1 wants c1 too (0): cheapest is to take it and move row 0 to
//   r0    4  1  3      c0 (+3) or c2 (+2), or to take c0 itself (+2): two ways of equal cost, the first
//   column r1    2  0  5      found stays: r0 c1, r1 c0, cost 3.
//
// O(rows^2 x columns) time, O(rows + columns) space. Not taken: a simplex method (slower at this size) and
// trying all permutations (the twin in the tests). Reference: R. Jonker, A. Volgenant, "A shortest augmenting
// path algorithm for dense and sparse linear assignment problems", Computing 38 (1987); potentials as in H.
// W. Kuhn (1955).
#include "numeric/assignment.h"

#include <cassert>
#include <cstddef>

namespace plugward {
namespace {

constexpr std::size_t none = SIZE_MAX;

struct Matching {
  std::vector<Cost> row_potential, column_potential;
  std::vector<std::size_t> row_of;  // by column; none: free
};

/// Adds `start` to the matching by the cheapest augmenting path; false when there is no path.
bool augment(const std::vector<std::vector<Cost>>& cost, std::size_t start, Matching& m) {
  const std::size_t columns = m.row_of.size();
  std::vector<Cost> distance(columns, forbidden);
  std::vector<std::size_t> came_from(columns, none);  // the column before, none: straight from `start`
  std::vector<bool> done(columns, false);
  std::vector<std::size_t> visited;

  std::size_t row = start;
  std::size_t last = none;
  Cost reached = 0;
  while (true) {
    for (std::size_t c = 0; c < columns; ++c) {
      if (done[c] || cost[row][c] >= forbidden) continue;
      const Cost way = reached + cost[row][c] - m.row_potential[row] - m.column_potential[c];
      if (way < distance[c]) {
        distance[c] = way;
        came_from[c] = last;
      }
    }
    std::size_t nearest = none;
    for (std::size_t c = 0; c < columns; ++c) {
      if (!done[c] && distance[c] < forbidden && (nearest == none || distance[c] < distance[nearest]))
        nearest = c;
    }
    if (nearest == none) return false;
    reached = distance[nearest];
    done[nearest] = true;
    last = nearest;
    if (m.row_of[nearest] == none) break;
    visited.push_back(nearest);
    row = m.row_of[nearest];
  }

  m.row_potential[start] += reached;
  for (const std::size_t c : visited) {
    m.row_potential[m.row_of[c]] += reached - distance[c];
    m.column_potential[c] -= reached - distance[c];
  }
  for (std::size_t c = last; c != none; c = came_from[c]) {
    m.row_of[c] = came_from[c] == none ? start : m.row_of[came_from[c]];
  }
  return true;
}

}  // namespace

std::optional<Assignment> cheapest_assignment(const std::vector<std::vector<Cost>>& cost) {
  const std::size_t rows = cost.size();
  const std::size_t columns = rows == 0 ? 0 : cost.front().size();
  assert(rows <= columns);
  Matching m{std::vector<Cost>(rows, 0), std::vector<Cost>(columns, 0),
             std::vector<std::size_t>(columns, none)};
  for (std::size_t r = 0; r < rows; ++r) {
    assert(cost[r].size() == columns);
    if (!augment(cost, r, m)) return std::nullopt;
  }
  Assignment result;
  result.columns.resize(rows);
  for (std::size_t c = 0; c < columns; ++c) {
    if (m.row_of[c] == none) continue;
    result.columns[m.row_of[c]] = static_cast<int>(c);
    result.cost += cost[m.row_of[c]][c];
  }
  return result;
}

}  // namespace plugward
