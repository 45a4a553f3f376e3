// SPDX-License-Identifier: MIT
// Cheapest assignment of rows to columns (rectangular, rows <= columns).
//
//   const auto a = cheapest_assignment({{4, 1, 3}, {2, 0, 5}});   // a->columns == {1, 0}, a->cost == 3
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace plugward {

using Cost = std::int64_t;
inline constexpr Cost forbidden = INT64_MAX / 4;

struct Assignment {
  std::vector<int> columns;  ///< columns[row]
  Cost cost = 0;
};

/// The assignment of least total cost in which no row takes a forbidden column; nothing when there is none.
/// Among equally cheap ones, the one found by the algorithm in index order (the same input gives the same
/// answer). REQUIRES: all rows equally long, rows <= columns, costs >= 0. O(rows^2 x columns).
std::optional<Assignment> cheapest_assignment(const std::vector<std::vector<Cost>>& cost);

}  // namespace plugward
