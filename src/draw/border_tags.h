// SPDX-License-Identifier: MIT
// Tags round a board, each at the edge that its header is nearest to, so that the leaders are short and those
// of one edge do not cross.
//
//   const auto tags = plan_border_tags({board, headers, widths, 4.4, room});
//   tags[i].box, tags[i].port      // where tag i stands, and where its leader begins
#pragma once

#include <vector>

#include "draw/text_fit.h"

namespace plugward {

struct BorderTagProblem {
  Box board;                   ///< mm, as all here
  std::vector<Box> headers;    ///< of the tags, one each
  std::vector<double> widths;  ///< of the tags, one each
  double height = 4.4;         ///< of a tag
  Box room;  ///< tags fill the strips between it and the board: above, below, left and right
};

struct BorderTag {
  bool placed = false;  ///< false: all four edges were full
  Box box;
  Point port;
};

std::vector<BorderTag> plan_border_tags(const BorderTagProblem&);

/// Middles of intervals on a line, in the order of `wanted` (ascending), each as close to where it is wanted
/// as the others allow (least squares), none overlapping, all within `low` and `high`.
/// REQUIRES: as many lengths; together they fit.
std::vector<double> spread_out(const std::vector<double>& wanted, const std::vector<double>& lengths,
                               double low, double high);

}  // namespace plugward
