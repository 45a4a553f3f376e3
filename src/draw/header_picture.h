// SPDX-License-Identifier: MIT
// A header as it lies on its board, seen facing its pins, turned so that the row runs to the right: pins,
// walls, key, mark of pin 1, and the piece of the board around it with the board's edge where it is near.
#pragma once

#include "draw/housing.h"
#include "draw/labels.h"
#include "model/board.h"

namespace plugward {

struct HeaderPicture {
  Grid grid;
  Box body;
  Box piece;                ///< of the board
  double numbers_foot = 0;  ///< baseline of the upper row's numbers: within the walls or above the body
  double top = 0;           ///< of the body, or of numbers above it
  double scale = 4;
  bool edge_left = false, edge_right = false, edge_above = false,
       edge_below = false;  ///< the board ends there
  bool edge_near() const { return edge_left || edge_right || edge_above || edge_below; }
};

/// `top` is where the piece of the board begins; it reaches from `from` to `to` at most.
HeaderPicture place_header(Grid, const BodySize&, const Family*, double top, double scale, const Header&,
                           const Board&, double from, double to);
double header_height(const Grid&, const BodySize&, const Family*);

/// The piece of the board, the body, the pins ("header pin 2": pin first, then its number).
std::vector<Group> draw_header(const HeaderPicture&, const Header&, const Family*);

/// Thin lines from the pins to their labels below; returns where labels begin.
double draw_leaders(std::vector<Group>&, const HeaderPicture&, const LabelColumns&);
double leader_height(const Grid&, const LabelColumns&);

}  // namespace plugward
