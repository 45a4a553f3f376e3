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
constexpr double number_room = 5.4;                       ///< above the upper row of pins, wall included

double pin_side(const Grid& grid) {
  return std::clamp(0.25 * grid.pitch, 1.2, 3.6);
}

/// Have the numbers of the upper row room between its pins and the edge of the body?
bool numbers_inside(double half_depth, const Grid& grid) {
  return half_depth - (grid.rows - 1) * grid.row_pitch / 2 - pin_side(grid) / 2 >= number_room;
}

/// Of the board above the body: there the numbers stand when the body has no room for them.
double body_top_margin(double half_depth, const Grid& grid) {
  return numbers_inside(half_depth, grid) ? margin_above : margin_above + 1.0;
}

/// The edge is drawn where it is real and left open where the piece is cut out of a larger board.
Group draw_piece(const HeaderPicture& h) {
  Group group{"board", {}};
  const Box& b = h.piece;
  group.add(rectangle({b.left, b.top}, b.right - b.left, b.bottom - b.top, filled(style::board)));
  const Look edge = stroked(style::board_edge, 1.0);
  if (h.edge_left) group.add(polyline({{b.left, b.top}, {b.left, b.bottom}}, edge));
  if (h.edge_right) group.add(polyline({{b.right, b.top}, {b.right, b.bottom}}, edge));
  if (h.edge_above) group.add(polyline({{b.left, b.top}, {b.right, b.top}}, edge));
  if (h.edge_below) group.add(polyline({{b.left, b.bottom}, {b.right, b.bottom}}, edge));
  return group;
}

Group draw_walls(const HeaderPicture& h, const Header& header, const Family* family) {
  Group group{"header " + header.id, {}};
  const double w = h.body.right - h.body.left, d = h.body.bottom - h.body.top;
  const Profile profile = family ? family->profile : Profile::Bare;
  group.add(
      rectangle({h.body.left, h.body.top}, w, d, outlined(style::shroud, style::outline, style::line), 0.4));
  const KeySide key = family ? key_side(*family) : KeySide::None;
  const bool known = key == KeySide::Near || key == KeySide::Far;
  const Extent e = extent(h.grid);
  const double pin = pin_side(h.grid);
  if (profile == Profile::BoxShroud) {
    // Four walls; drawn as thick as there is room for beside the pins.
    const double wall =
        std::clamp(std::min(h.body.bottom - e.bottom, e.left - h.body.left) - pin / 2 - 0.8, 0.6, 2.2);
    group.add(rectangle({h.body.left + wall, h.body.top + wall}, w - 2 * wall, d - 2 * wall,
                        outlined(style::paper, style::outline, style::fine)));
    if (known) {
      const double kw = std::min(0.4 * w, 4.1 * h.scale),
                   y = key_on_top(key) ? h.body.top : h.body.bottom - wall;
      group.add(rectangle({(h.body.left + h.body.right - kw) / 2, y - 0.2}, kw, wall + 0.4,
                          outlined(style::paper, style::outline, style::fine)));
    }
  } else if ((profile == Profile::OpenWafer || profile == Profile::FrictionRamp) && known) {
    const double wall = std::min(2.0, 0.15 * d);
    group.add(rectangle({h.body.left, key_on_top(key) ? h.body.top : h.body.bottom - wall}, w, wall,
                        filled(style::quiet)));
  } else if (profile == Profile::Bare) {
    for (int column = 1; column < drawn_columns(h.grid); ++column) {
      const double x = e.left + (column - 0.5) * h.grid.pitch;
      group.add(polyline({{x, h.body.top}, {x, h.body.top + 0.9}}, stroked(style::outline, style::fine)));
      group.add(
          polyline({{x, h.body.bottom}, {x, h.body.bottom - 0.9}}, stroked(style::outline, style::fine)));
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
  const bool outside = upper && !numbers_inside((h.body.bottom - h.body.top) / 2, h.grid);
  const double baseline = outside ? h.body.top - 1.0 : c.y - side / 2 - 0.9;
  group.add(
      Words{{c.x, baseline}, format("{}", number), style::small_type, true, style::text, Anchor::Middle, 0});
  return group;
}

}  // namespace

double header_height(const Grid& grid, const BodySize& size) {
  return body_top_margin(size.half_depth, grid) + 2 * size.half_depth + margin_below;
}

HeaderPicture place_header(Grid grid, const BodySize& size, double top, double scale, const Header& header,
                           const Board& board, double from, double to) {
  HeaderPicture h;
  h.scale = scale;
  const double middle = top + body_top_margin(size.half_depth, grid) + size.half_depth;
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
  Group group{"leader lines of the header", {}};
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
