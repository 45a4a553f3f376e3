// SPDX-License-Identifier: MIT
// Placements of the plugs of a harness, the cheapest sum of what their pairs cost first.
//
//   Placings placings(board, options);                       // options[plug]: the headers that take it
//   int tries = 20000;
//   while (const auto next = placings.next(tries)) ... next->headers, next->bound
#pragma once

#include <limits>
#include <optional>
#include <queue>
#include <vector>

#include "plan/place.h"

namespace plugward {

/// A placement of the first plugs. Orders by what it costs at least; of equals the longer one comes first,
/// then the one whose headers stand earlier in the board file.
struct PartialPlacing {
  PlaceCost bound;
  PlaceCost cost;
  std::vector<int> headers;  ///< by plug; none: no header

  static constexpr int none = std::numeric_limits<int>::max();

  bool later_than(const PartialPlacing& other) const;
};

/// Placements in the order of the sum of what their pairs cost; the least distance comes first of equals.
class Placings {
 public:
  /// REQUIRES: both outlive it.
  Placings(const Board&, const std::vector<std::vector<PlaceOption>>& options);

  /// Nothing when there is none left, or after `tries` parts.
  std::optional<PartialPlacing> next(int& tries);

 private:
  struct Later {
    bool operator()(const PartialPlacing& a, const PartialPlacing& b) const { return a.later_than(b); }
  };

  void extend(const PartialPlacing&);
  void add(const PartialPlacing&, int header, const PlaceCost&);

  const Board& board_;
  const std::vector<std::vector<PlaceOption>>& options_;
  std::vector<PlaceCost> rest_;  ///< [i]: the least that plugs i and later cost
  std::priority_queue<PartialPlacing, std::vector<PartialPlacing>, Later> open_;
};

}  // namespace plugward
