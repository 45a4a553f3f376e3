// SPDX-License-Identifier: MIT
// Cheapest assignment of rows to columns (rectangular, rows <= columns).
//
//   const auto a = cheapest_assignment({{4, 1, 3}, {2, 0, 5}});   // a->columns == {1, 0}, a->cost == 3
//
// LiveAssignment is the same, kept up to date while costs rise, as in branch and bound and in ranking:
//
//   LiveAssignment live(cost);
//   live.solve();
//   live.raise(0, {forbidden, 1, 3});
//   live.solve();                       // works on row 0 only
#pragma once

#include <cstddef>
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

/// A cheapest assignment and the prices that prove it. Copies are independent.
class LiveAssignment {
 public:
  /// REQUIRES: as cheapest_assignment.
  explicit LiveAssignment(const std::vector<std::vector<Cost>>& cost);

  /// Assigns the rows that have no column: all at first, then those that `raise` set free. O(columns^2) each.
  /// False when there is no assignment; then this object is of no more use.
  bool solve();

  /// New costs of a row. REQUIRES: none is lower than before.
  void raise(std::size_t row, const std::vector<Cost>& line);

  Assignment result() const;  ///< REQUIRES: solve() gave true, and nothing was raised since

 private:
  static constexpr std::size_t none = SIZE_MAX;

  Cost at(std::size_t row, std::size_t column) const {
    return row < rows_ ? cost_[row * columns_ + column] : 0;
  }
  bool augment(std::size_t start);
  void fill_free_columns();

  std::size_t rows_ = 0;
  std::size_t columns_ = 0;
  std::vector<Cost> cost_;       // row by row
  std::vector<Cost> row_price_;  // rows, then the empty rows that hold free columns
  std::vector<Cost> column_price_;
  std::vector<std::size_t> row_of_;   // by column; none: free
  std::vector<std::size_t> waiting_;  // rows without a column
  bool filled_ = false;
};

}  // namespace plugward
