// SPDX-License-Identifier: MIT
// The whole board, small: outline, holes, all headers; one of them filled, those of the other plugs outlined
// bold, both with their ids where these have room. Also the frame of one header on it.
#pragma once

#include <vector>

#include "catalogue/family.h"
#include "draw/text_fit.h"
#include "model/board.h"

namespace plugward {

/// How far the board reaches from pin 1 of a header, in mm of the board, when one faces the header and turns
/// it so that its row runs to the right: negative `left` is the usual case.
struct LocalBoard {
  double left = 0, right = 0, above = 0, below = 0;
};
LocalBoard board_around(const Header&, const Board&);

/// A point of a header on the board, mm from the board's lower left corner, board seen from above: `along` the row
/// from pin 1, `across` it towards the second row as one faces the header.
Point on_board(const Header&, double along, double across);
/// Centre of a pin there. REQUIRES: 1 <= number <= header.positions.
Point pin_on_board(const Header&, const Catalogue&, int number);

/// Outline of a header on the board, mm from the board's lower left corner, board seen from above.
Box header_outline(const Header&, const Catalogue&);

/// Which headers are marked: indices into Board::headers.
struct MapMarks {
  int filled = 0;
  std::vector<int> outlined;
};

/// Fits the board into `room`; returns the group and the box that it fills, mm on paper. An id stands close
/// to its header and on nothing else, or is left out.
struct BoardMap {
  Group group;
  Box box;
};
BoardMap draw_board_map(const Board&, const MapMarks&, const Catalogue&, const Box& room, const TextMeasure&);

}  // namespace plugward
