// SPDX-License-Identifier: MIT
// Assignments in the order of their cost, one after the other.
//
//   RankedAssignments ranked(cost);
//   while (auto a = ranked.next()) ...   // cheapest first
#pragma once

#include <optional>
#include <queue>
#include <vector>

#include "numeric/assignment.h"

namespace plugward {

class RankedAssignments {
 public:
  /// REQUIRES: as cheapest_assignment.
  explicit RankedAssignments(std::vector<std::vector<Cost>> cost);

  /// The next assignment, never cheaper than the one before; nothing when all were given.
  std::optional<Assignment> next();

  /// What next() will give, without taking it; nullptr when all were given.
  const Assignment* peek();

 private:
  /// A part of all assignments: some rows fixed, some places of the next row refused, with the cheapest in
  /// it.
  struct Part {
    Assignment best;
    std::size_t fixed_rows = 0;  ///< rows [0, fixed_rows) keep their columns in this part
    std::vector<int> refused;    ///< columns that row `fixed_rows` must not take
    long order = 0;              ///< ties: the part that was made first
  };
  struct Dearer {
    bool operator()(const Part& a, const Part& b) const {
      return a.best.cost != b.best.cost ? a.best.cost > b.best.cost : a.order > b.order;
    }
  };
  void split(const Part&);

  std::vector<std::vector<Cost>> cost_;
  std::priority_queue<Part, std::vector<Part>, Dearer> parts_;
  std::optional<Part> given_;  ///< the last one given: what is left of its part is not in the queue yet
  long made_ = 0;
};

}  // namespace plugward
