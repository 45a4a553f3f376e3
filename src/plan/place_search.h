// SPDX-License-Identifier: MIT
// All ways to give each plug a header of its own, in the order of their cost.
//
//   RankedPlacings ranked(problem);
//   while (auto found = ranked.next()) ... found->headers, found->cost
//
// Numbers only: what a plug costs on a header is found out elsewhere.
#pragma once

#include <memory>
#include <optional>
#include <queue>
#include <vector>

#include "numeric/ranked_assignment.h"
#include "plan/place.h"

namespace plugward {

struct PlacingProblem {
  /// [row][header]: nothing when the plug cannot go there. Without distance; fields as large as the caller
  /// likes.
  std::vector<std::vector<std::optional<PlaceCost>>> cost;
  std::vector<std::vector<int>> distance;  ///< [header][header]
  /// [row]: the row from whose header the distance of this one counts; the row itself: it does not count.
  /// An anchor is its own anchor.
  std::vector<int> anchor;
  std::vector<int> fixed_anchor;  ///< [row]: the header from which it counts, where that is fixed; else -1
};

/// A header for each row, -1 for none, and the sum of what they cost; an unplaced row costs {1, 0, ...}.
struct RankedPlacing {
  std::vector<int> headers;
  PlaceCost cost;
};

class RankedPlacings {
 public:
  explicit RankedPlacings(PlacingProblem);

  /// The next one, never cheaper than the one before; nothing when all were given. Of equals, the one whose
  /// first rows have the headers that come first.
  std::optional<RankedPlacing> next();

 private:
  /// Placings in which the first anchors have their headers; -1: none.
  struct Branch {
    std::vector<int> anchors;  ///< header, by index into anchor_rows_
    std::shared_ptr<RankedAssignments> ranked;
    Cost bound = 0;
    long order = 0;
  };
  struct Later {
    bool operator()(const Branch& a, const Branch& b) const;
  };

  void measure_levels();
  Cost packed(const PlaceCost&, int row, int header) const;
  int least_distance(std::size_t row, int header, const std::vector<int>& anchors) const;
  Cost most_distance_of_followers(std::size_t anchor_row, const std::vector<int>& anchors) const;
  void open(std::vector<int> anchors);
  RankedPlacing placing_of(const Assignment&) const;

  PlacingProblem problem_;
  std::size_t headers_ = 0;
  std::vector<std::size_t> anchor_rows_;  ///< rows from which others count their distance
  std::vector<Cost> radix_;               ///< by level: one more than the most that a sum can be
  int distance_shift_ = 0;                ///< distances count in units of 2^shift
  bool ordered_ = true;
  std::priority_queue<Branch, std::vector<Branch>, Later> branches_;
  long made_ = 0;
};

}  // namespace plugward
