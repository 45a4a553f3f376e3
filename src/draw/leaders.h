// SPDX-License-Identifier: MIT
// The thin lines from callouts beside the board to its headers: straight where nothing is in the way, else
// with one bend around the headers between.
//
//   for (const auto& route : leader_routes(board.box, board.headers, leaders)) polyline(route, ...)
#pragma once

#include <vector>

#include "draw/text_fit.h"

namespace plugward {

/// From a point beside the board to a header.
struct Leader {
  Point from;
  int header = 0;  ///< index into the boxes of the headers
};

/// Where a straight line from `from` to the middle of the box meets its outline.
Point edge_towards(const Box&, Point from);
/// Does the line from a to b share a point with the box?
bool crosses(const Box&, Point a, Point b);

/// By leader, from its beginning to the outline of its header: two points, or three. No route crosses more
/// headers than the straight line does.
std::vector<std::vector<Point>> leader_routes(const Box& board, const std::vector<Box>& headers,
                                              const std::vector<Leader>&);

}  // namespace plugward
