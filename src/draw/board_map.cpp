// SPDX-License-Identifier: MIT
#include "draw/board_map.h"

#include <algorithm>

#include "draw/housing.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

/// Unit vectors on the board (y upwards): along the row, and towards the second row.
struct Axes {
  double ux = 1, uy = 0, vx = 0, vy = 1;
};

Axes axes(const Header& header) {
  Axes a;
  switch (((header.rotation % 360) + 360) % 360) {
    case 90:
      a = {0, 1, -1, 0};
      break;
    case 180:
      a = {-1, 0, 0, -1};
      break;
    case 270:
      a = {0, -1, 1, 0};
      break;
    default:
      break;
  }
  // Facing a header on the underside one sees the board from below: the second row lies on the other side.
  if (header.underside) {
    a.vx = -a.vx;
    a.vy = -a.vy;
  }
  return a;
}

}  // namespace

LocalBoard board_around(const Header& header, const Board& board) {
  const Axes a = axes(header);
  LocalBoard local{1e9, -1e9, -1e9, -1e9};
  for (const double cx : {0.0, board.width.value}) {
    for (const double cy : {0.0, board.height.value}) {
      const double dx = cx - header.x.value, dy = cy - header.y.value;
      const double u = dx * a.ux + dy * a.uy, v = dx * a.vx + dy * a.vy;
      local.left = std::min(local.left, u);
      local.right = std::max(local.right, u);
      local.above = std::max(local.above, v);
      local.below = std::max(local.below, -v);
    }
  }
  return local;
}

Box header_outline(const Header& header, const Catalogue& catalogue) {
  const BodySize size = header_size(catalogue.find(header.family), header.rows, 1.0);
  const Axes a = axes(header);
  const int columns_ = (header.positions + header.rows - 1) / header.rows;
  const double u0 = -size.side, u1 = (columns_ - 1) * size.pitch + size.side;
  const double middle = (header.rows - 1) * size.row_pitch / 2;
  const double v0 = middle - size.half_depth, v1 = middle + size.half_depth;
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const double u : {u0, u1}) {
    for (const double v : {v0, v1}) {
      const double x = header.x.value + u * a.ux + v * a.vx, y = header.y.value + u * a.uy + v * a.vy;
      box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x), std::max(box.bottom, y)};
    }
  }
  return box;
}

BoardMap draw_board_map(const Board& board, int chosen, const Catalogue& catalogue, const Box& room) {
  BoardMap map;
  map.group.name = "map of the board";
  const double scale =
      std::min((room.right - room.left) / board.width.value, (room.bottom - room.top) / board.height.value);
  const double w = board.width.value * scale, h = board.height.value * scale;
  map.box = {room.left, room.top, room.left + w, room.top + h};
  const auto at = [&](double x, double y) {
    return Point{map.box.left + x * scale, map.box.bottom - y * scale};
  };
  map.group.add(rectangle({map.box.left, map.box.top}, w, h,
                          outlined(style::board, style::board_edge, style::line), 0.8));
  for (const Hole& hole : board.holes) {
    map.group.add(circle(at(hole.x.value, hole.y.value), std::max(0.5, hole.diameter.value / 2 * scale),
                         outlined(style::paper, style::board_edge, style::fine)));
  }
  for (std::size_t i = 0; i < board.headers.size(); ++i) {
    const Header& header = board.headers[i];
    Box b = header_outline(header, catalogue);
    // Drawn within the board even where a part hangs over its edge.
    b = {std::clamp(b.left, 0.0, board.width.value), std::clamp(b.top, 0.0, board.height.value),
         std::clamp(b.right, 0.0, board.width.value), std::clamp(b.bottom, 0.0, board.height.value)};
    const Point corner = at(b.left, b.bottom);
    const double bw = std::max(0.8, (b.right - b.left) * scale),
                 bh = std::max(0.8, (b.bottom - b.top) * scale);
    const bool here = static_cast<int>(i) == chosen;
    Look look = here ? filled(style::outline) : outlined(style::paper, style::outline, style::fine);
    if (header.underside) look.stroke = Stroke{style::outline, style::fine, {0.8, 0.6}, false};
    map.group.add(rectangle(corner, bw, bh, look));
    if (!here) continue;
    const double ring = 1.3;
    map.group.add(rectangle({corner.x - ring, corner.y - ring}, bw + 2 * ring, bh + 2 * ring,
                            stroked(style::outline, style::line), ring));
    // Pin 1 as a white dot in the filled header.
    map.group.add(
        circle(at(std::clamp(header.x.value, b.left, b.right), std::clamp(header.y.value, b.top, b.bottom)),
               std::min(0.5, 0.35 * std::min(bw, bh)), filled(style::paper)));
  }
  return map;
}

}  // namespace plugward
