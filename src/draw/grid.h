// SPDX-License-Identifier: MIT
// Where positions lie on the page. Every place in a picture comes from a position's number through here, so
// that no picture can show an order of its own.
//
// Seen from the wire side, a plug lies over its header as it will be mated: position 1 at the left, the row
// of position 1 nearest to the reader (below). Seen into the mating face, left and right are exchanged. For
// two-row box headers this agrees with public footprints and ribbon notes: board seen from above, pins 1, 3,
// 5 below from left to right, 2, 4, 6 above them.
//
//   const Grid g{.positions = 10, .rows = 2, .pitch = 10, .row_pitch = 10, .origin = {40, 60}};
//   centre(g, 4)   // {50, 50}: second column, second row
#pragma once

#include "draw/scene.h"
#include "fit/seating.h"

namespace plugward {

enum class View { WireSide, MatingFace };

struct Grid {
  int positions = 1, rows = 1;
  Numbering numbering = Numbering::Zigzag;
  View view = View::WireSide;
  double pitch = 10, row_pitch = 10;  ///< as drawn, mm
  Point origin;                       ///< centre of the leftmost place of the row of position 1
  int shown_columns = 0;              ///< draw only so many columns, from position 1; 0 = all
};

int columns(const Grid&);        ///< of the whole part
int drawn_columns(const Grid&);  ///< of what is drawn
bool shown(const Grid&, int number);
Point centre(const Grid&, int number);

/// Upright rectangle around the centres of all drawn positions.
struct Extent {
  double left = 0, top = 0, right = 0, bottom = 0;
};
Extent extent(const Grid&);

/// Labels stand in one line, left to right: the place of this position's label among them, from 0.
/// Positions of one column lie side by side, in the order of their leads.
int label_slot(const Grid&, int number);
int label_slots(const Grid&);

/// Which way a lead passes the nearer row, beside the column of its own cavity: -1 left, +1 right.
/// Positions of the row that faces the labels go straight: 0. `up`: the labels are above.
int side_step(const Grid&, int number, bool up);

}  // namespace plugward
