// SPDX-License-Identifier: MIT
// A plug's housing with its cavities, to scale: body, key or latch, mark of cavity 1, cavities, numbers.
#pragma once

#include <string>
#include <vector>

#include "draw/grid.h"
#include "draw/text_fit.h"
#include "sheet/key_side.h"

namespace plugward {

/// Outline of a part before it is placed, at the drawing scale. mm on paper.
struct BodySize {
  double pitch = 10, row_pitch = 10;
  double side = 0;        ///< from the centre of an outer position to the end of the body
  double half_depth = 0;  ///< from the middle between the rows to the long edge
  bool stated = true;     ///< false: the catalogue has no outline, a usual one is drawn
};
BodySize plug_size(const Family*, int rows, double scale);
BodySize header_size(const Family*, int rows, double scale);

/// A housing at its place.
struct Housing {
  Grid grid;
  Box body;
  KeySide key = KeySide::None;
  std::string key_name;
  double cavity = 4;     ///< side of a cavity
  double wire = 2;       ///< width of an insulated lead
  bool leads_up = true;  ///< leads and labels above, numbers below; or the other way round
};

/// `top` is where the body, its key and its strip of numbers begin.
Housing place_housing(Grid, const BodySize&, const Family*, double top, bool leads_up);
/// Height of body, key and strip of numbers.
double housing_height(const BodySize&, const Family*);

/// Where the lead of a cavity leaves: above or below it, or beside it when the other row is in the way.
double bypass_x(const Housing&, int cavity);

/// Edge of everything that belongs to the housing on the side away from the leads.
double numbers_edge(const Housing&);
/// Edge of the housing on the side of the leads.
double leads_edge(const Housing&);

/// From the cavity to the outside away from the leads, first point at the cavity (or its number): where moves
/// start and end. Passes between the cavities of the other row.
std::vector<Point> way_out(const Housing&, int cavity);

/// Body, key, mark of cavity 1; one group.
Group draw_body(const Housing&, const std::string& name);
/// One group: "NAME cavity 3", the cavity square first, then its number.
Group draw_cavity(const Housing&, int cavity, bool filled, const std::string& name);

/// Triangle that points at position 1 from beside the body.
Shape first_mark(const Grid&, const Box& body);

}  // namespace plugward
