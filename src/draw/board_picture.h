// SPDX-License-Identifier: MIT
// The whole board to scale, seen from above: outline, holes, every header with its pins, its key and the mark
// of pin 1. Headers that carry a plug are drawn strong; a wave mark stands at headers that are easily taken
// for a neighbour.
//
//   const BoardPicture b = place_board(board, catalogue, room);
//   draw_board(groups, b, board, catalogue, marks, measure);
#pragma once

#include <vector>

#include "catalogue/family.h"
#include "draw/leaders.h"
#include "draw/text_fit.h"
#include "model/fitting.h"

namespace plugward {

/// Where the board lies on the page.
struct BoardPicture {
  Box box;                   ///< of the board
  double scale = 1;          ///< paper to board, a round figure where there is one
  std::vector<Box> headers;  ///< outlines by index into Board::headers; they may reach over the board's edge
};

/// As large as `room` allows, in its middle.
BoardPicture place_board(const Board&, const Catalogue&, const Box& room);

struct BoardMarks {
  std::vector<int> used;   ///< indices into Board::headers
  std::vector<int> alike;  ///< that get the wave mark
};

/// Headers without a plug lie under the leaders, those with one above them. Ids of headers without a plug are
/// written beside them where there is room: on no other text, header or leader.
void draw_board(std::vector<Group>&, const BoardPicture&, const Board&, const Catalogue&, const BoardMarks&,
                const std::vector<Leader>&, const TextMeasure&);

/// Two waves, 3.4 x 2.4 mm about `centre`: "looks like its neighbour".
void add_wave_mark(Group&, Point centre);

/// For each of fitting.placements the other headers (indices) that look the same to a hand with the plug: the
/// same family and positions, within reach of neighbour_seatings() (fit/seating.h).
std::vector<std::vector<int>> look_alikes(const Fitting&);

}  // namespace plugward
