// SPDX-License-Identifier: MIT
// Tested in mating_picture_test.cpp.
#include "draw/header_picture.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double margin_above = 3.6, margin_below = 2.6;  ///< of the board, mm on paper
constexpr double edge_width = 1.0;                        ///< of the board
constexpr double number_gap = 0.9;                        ///< between a pin and the foot of its number
constexpr double number_height = 0.73 * style::small_type * style::mm_per_point;
constexpr double number_clear = 0.7;  ///< between a number and the inner line of a wall

double pin_side(const Grid& grid) {
  return std::clamp(0.25 * grid.pitch, 1.2, 3.6);
}

/// From the centres of an outer row of pins to the long edge of the body.
double row_margin(double half_depth, const Grid& grid) {
  return half_depth - (grid.rows - 1) * grid.row_pitch / 2;
}

/// The bar of an open wafer or of a friction ramp, and the notches between bare positions; mm on paper.
double ramp_wall(double half_depth) {
  return std::min(2.0, 0.3 * half_depth);
}
constexpr double bare_notch = 0.9;

/// A wall of a box as thick as there is room for beside the pins; mm on paper.
double box_wall(double long_margin, double end_margin, const Grid& grid) {
  return std::clamp(std::min(long_margin, end_margin) - pin_side(grid) / 2 - 0.8, 0.6, 2.2);
}

/// What reaches into the body from its upper long edge.
double upper_wall(const BodySize& size, const Grid& grid, const Family* family) {
  const KeySide key = family ? key_side(*family) : KeySide::None;
  switch (family ? family->profile : Profile::Bare) {
    case Profile::BoxShroud:
      return box_wall(row_margin(size.half_depth, grid), size.side, grid);
    case Profile::OpenWafer:
    case Profile::FrictionRamp:
      return key == KeySide::Far ? ramp_wall(size.half_depth) : 0;
    case Profile::Bare:
      return bare_notch;
    default:
      return 0;
  }
}

/// Have the numbers of the upper row room between its pins and the wall?
bool numbers_inside(const BodySize& size, const Grid& grid, const Family* family) {
  return row_margin(size.half_depth, grid) - pin_side(grid) / 2 - number_gap - number_height >=
         upper_wall(size, grid, family) + number_clear;
}

/// Of the board above the body: there the numbers stand when the body has no room for them.
double body_top_margin(const BodySize& size, const Grid& grid, const Family* family) {
  return numbers_inside(size, grid, family) ? margin_above : margin_above + 1.0;
}

/// The edge is drawn where it is real and left open where the piece is cut out of a larger board.
Group draw_piece(const HeaderPicture& h) {
  Group group{tr("board"), {}};
  const Box& b = h.piece;
  group.add(rectangle({b.left, b.top}, b.right - b.left, b.bottom - b.top, filled(style::board)));
  const Look edge = stroked(style::board_edge, edge_width);
  if (h.edge_left) group.add(polyline({{b.left, b.top}, {b.left, b.bottom}}, edge));
  if (h.edge_right) group.add(polyline({{b.right, b.top}, {b.right, b.bottom}}, edge));
  if (h.edge_above) group.add(polyline({{b.left, b.top}, {b.right, b.top}}, edge));
  if (h.edge_below) group.add(polyline({{b.left, b.bottom}, {b.right, b.bottom}}, edge));
  return group;
}

Group draw_walls(const HeaderPicture& h, const Header& header, const Family* family) {
  Group group{format("header {}", header.id), {}};
  const double w = h.body.right - h.body.left, d = h.body.bottom - h.body.top;
  const Profile profile = family ? family->profile : Profile::Bare;
  group.add(
      rectangle({h.body.left, h.body.top}, w, d, outlined(style::shroud, style::outline, style::line), 0.4));
  const KeySide key = family ? key_side(*family) : KeySide::None;
  const bool known = key == KeySide::Near || key == KeySide::Far;
  const Extent e = extent(h.grid);
  if (profile == Profile::BoxShroud) {
    const double wall = box_wall(h.body.bottom - e.bottom, e.left - h.body.left, h.grid);
    group.add(rectangle({h.body.left + wall, h.body.top + wall}, w - 2 * wall, d - 2 * wall,
                        outlined(style::paper, style::outline, style::fine)));
    if (known) {
      const double kw = std::min(0.4 * w, 4.1 * h.scale),
                   y = key_on_top(key) ? h.body.top : h.body.bottom - wall;
      group.add(rectangle({(h.body.left + h.body.right - kw) / 2, y - 0.2}, kw, wall + 0.4,
                          outlined(style::paper, style::outline, style::fine)));
    }
  } else if ((profile == Profile::OpenWafer || profile == Profile::FrictionRamp) && known) {
    const double wall = ramp_wall(d / 2);
    group.add(rectangle({h.body.left, key_on_top(key) ? h.body.top : h.body.bottom - wall}, w, wall,
                        filled(style::quiet)));
  } else if (profile == Profile::Bare) {
    for (int column = 1; column < drawn_columns(h.grid); ++column) {
      const double x = e.left + (column - 0.5) * h.grid.pitch;
      group.add(
          polyline({{x, h.body.top}, {x, h.body.top + bare_notch}}, stroked(style::outline, style::fine)));
      group.add(polyline({{x, h.body.bottom}, {x, h.body.bottom - bare_notch}},
                         stroked(style::outline, style::fine)));
    }
  }
  if (drawn_columns(h.grid) < columns(h.grid)) {
    // Broken off: the header goes on.
    std::vector<Point> zigzag;
    for (int i = 0; i <= 6; ++i)
      zigzag.push_back({h.body.right + (i % 2 == 0 ? -0.8 : 0.8), h.body.top + d * i / 6});
    group.add(polyline(zigzag, stroked(style::paper, 1.2)));
    group.add(polyline(zigzag, stroked(style::outline, style::line)));
  }
  group.add(first_mark(h.grid, h.body));
  return group;
}

Group draw_pin(const HeaderPicture& h, int number) {
  Group group{format("header pin {}", number), {}};
  const Point c = centre(h.grid, number);
  const double side = pin_side(h.grid);
  group.add(rectangle({c.x - side / 2, c.y - side / 2}, side, side,
                      outlined(style::pin, style::outline, style::fine)));
  group.add(polyline({{c.x - side / 2, c.y - side / 2}, {c.x + side / 2, c.y + side / 2}},
                     stroked(style::outline, 0.15)));
  group.add(polyline({{c.x - side / 2, c.y + side / 2}, {c.x + side / 2, c.y - side / 2}},
                     stroked(style::outline, 0.15)));
  const bool upper = c.y < extent(h.grid).top + 0.01;
  const double foot = upper ? h.numbers_foot : c.y - side / 2 - number_gap;
  group.add(
      Words{{c.x, foot}, format("{}", number), style::small_type, true, style::text, Anchor::Middle, 0});
  return group;
}

}  // namespace

double header_height(const Grid& grid, const BodySize& size, const Family* family) {
  return body_top_margin(size, grid, family) + 2 * size.half_depth + margin_below;
}

HeaderPicture place_header(Grid grid, const BodySize& size, const Family* family, double top, double scale,
                           const Header& header, const Board& board, double from, double to) {
  HeaderPicture h;
  h.scale = scale;
  const double middle = top + body_top_margin(size, grid, family) + size.half_depth;
  grid.origin.y = middle + (grid.rows - 1) * size.row_pitch / 2;
  h.grid = grid;
  const Extent e = extent(grid);
  const bool broken = drawn_columns(grid) < columns(grid);
  h.body = {e.left - size.side, middle - size.half_depth, e.right + (broken ? grid.pitch / 2 : size.side),
            middle + size.half_depth};
  const double beside = std::max(8.0, 0.8 * size.pitch);
  const Box window{std::max(from, h.body.left - beside), top, std::min(to, h.body.right + beside),
                   h.body.bottom + margin_below};
  h.piece = window;
  // The board in the picture's frame: pin 1 at its place, the row to the right.
  const LocalBoard local = board_around(header, board);
  const Point pin1 = centre(grid, 1);
  const Box edges{pin1.x + local.left * scale, pin1.y - local.above * scale, pin1.x + local.right * scale,
                  pin1.y + local.below * scale};
  h.piece.left = std::min(std::max(window.left, edges.left), h.body.left - 0.5);
  h.piece.right = std::max(std::min(window.right, edges.right), h.body.right + 0.5);
  h.piece.top = std::max(window.top, std::min(edges.top, h.body.top - 0.5));
  h.piece.bottom = std::max(std::min(window.bottom, edges.bottom), h.body.bottom + 0.5);
  h.edge_left = h.piece.left > window.left;
  h.edge_right = h.piece.right < window.right;
  h.edge_above = h.piece.top > window.top;
  h.edge_below = h.piece.bottom < window.bottom;
  if (numbers_inside(size, grid, family)) {
    h.numbers_foot = e.top - pin_side(grid) / 2 - number_gap;
  } else {
    // On the board above the body, or beyond the board's edge where it is too near.
    h.numbers_foot = h.body.top - 1.0;
    const bool on_edge = h.edge_above && h.numbers_foot - number_height - edge_width < h.piece.top;
    if (on_edge) h.numbers_foot = h.piece.top - edge_width;
  }
  h.top = std::min(h.body.top, h.numbers_foot - number_height);
  return h;
}

std::vector<Group> draw_header(const HeaderPicture& h, const Header& header, const Family* family) {
  std::vector<Group> groups;
  groups.push_back(draw_piece(h));
  groups.push_back(draw_walls(h, header, family));
  for (int n = 1; n <= h.grid.positions; ++n) {
    if (shown(h.grid, n)) groups.push_back(draw_pin(h, n));
  }
  return groups;
}

double leader_height(const Grid& grid, const LabelColumns& columns) {
  const double spread = std::abs(columns.width - grid.pitch / grid.rows) * (columns.count - 1) / 2;
  return std::clamp(0.25 * spread, 3.5, 8.0) + 1.4;
}

double draw_leaders(std::vector<Group>& groups, const HeaderPicture& h, const LabelColumns& columns) {
  Group group{tr("leader lines of the header"), {}};
  const double end = h.piece.bottom + leader_height(h.grid, columns);
  const double side = pin_side(h.grid);
  for (int n = 1; n <= h.grid.positions; ++n) {
    if (!shown(h.grid, n)) continue;
    const Point c = centre(h.grid, n);
    const int step = side_step(h.grid, n, false);
    const double x = c.x + step * (side / 2 + 0.4 * (h.grid.pitch - side));
    const double to = slot_x(columns, label_slot(h.grid, n));
    Shape line;
    line.stroke = Stroke{style::quiet, style::fine, {}, false};
    line.path.push_back(
        {'M', step == 0 ? Point{c.x, c.y + side / 2} : Point{c.x + step * side / 2, c.y}, {}, {}});
    if (step != 0) line.path.push_back({'L', {x, c.y}, {}, {}});
    line.path.push_back({'L', {x, h.piece.bottom}, {}, {}});
    const double reach = 0.5 * (end - 0.8 - h.piece.bottom);
    line.path.push_back({'C', {x, h.piece.bottom + reach}, {to, end - 0.8 - reach}, {to, end - 0.8}});
    group.add(std::move(line));
  }
  groups.push_back(std::move(group));
  return end;
}

}  // namespace plugward
