// SPDX-License-Identifier: MIT
#include "draw/board_map.h"

#include <algorithm>
#include <utility>

#include "base/words.h"
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

bool holds(const std::vector<int>& list, int item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}

/// Writes an id beside a marked header: the nearest place within `room` that is on none of `taken`.
void add_id(Group& group, const std::string& id, const Box& header, const Box& room, std::vector<Box>& taken,
            const TextMeasure& measure) {
  const double middle_x = (header.left + header.right) / 2, middle_y = (header.top + header.bottom) / 2;
  const double half_capital = 0.365 * style::small_type * style::mm_per_point;
  for (const double gap : {0.9, 1.6, 2.8}) {
    const double beside = middle_y + half_capital, above = header.top - gap,
                 below = header.bottom + gap + 2 * half_capital;
    const std::pair<Point, Anchor> places[] = {{{header.right + gap, beside}, Anchor::Start},
                                               {{header.left - gap, beside}, Anchor::End},
                                               {{middle_x, above}, Anchor::Middle},
                                               {{middle_x, below}, Anchor::Middle},
                                               {{header.right, above}, Anchor::End},
                                               {{header.left, above}, Anchor::Start},
                                               {{header.right, below}, Anchor::End},
                                               {{header.left, below}, Anchor::Start},
                                               {{middle_x, above}, Anchor::End},
                                               {{middle_x, above}, Anchor::Start}};
    for (const auto& [point, anchor] : places) {
      const Words words{point, id, style::small_type, true, style::text, anchor};
      const Box box = words_box(words, measure);
      const bool inside = box.left >= room.left && box.right <= room.right && box.top >= room.top &&
                          box.bottom <= room.bottom;
      if (!inside || std::any_of(taken.begin(), taken.end(), [&](const Box& b) { return overlap(box, b); }))
        continue;
      group.add(words);
      taken.push_back({box.left - 1.0, box.top, box.right + 1.0, box.bottom});
      return;
    }
  }
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

Point on_board(const Header& header, double along, double across) {
  const Axes a = axes(header);
  return {header.x.value + along * a.ux + across * a.vx, header.y.value + along * a.uy + across * a.vy};
}

Point pin_on_board(const Header& header, const Catalogue& catalogue, int number) {
  const BodySize size = header_size(catalogue.find(header.family), header.rows, 1.0);
  const Place place = place_of(number, header.positions, header.rows, header.numbering);
  return on_board(header, place.column * size.pitch, place.row * size.row_pitch);
}

Box header_outline(const Header& header, const Catalogue& catalogue) {
  const BodySize size = header_size(catalogue.find(header.family), header.rows, 1.0);
  const int column_count = (header.positions + header.rows - 1) / header.rows;
  const double u0 = -size.side, u1 = (column_count - 1) * size.pitch + size.side;
  const double middle = (header.rows - 1) * size.row_pitch / 2;
  const double v0 = middle - size.half_depth, v1 = middle + size.half_depth;
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const double u : {u0, u1}) {
    for (const double v : {v0, v1}) {
      const Point p = on_board(header, u, v);
      box = {std::min(box.left, p.x), std::min(box.top, p.y), std::max(box.right, p.x),
             std::max(box.bottom, p.y)};
    }
  }
  return box;
}

BoardMap draw_board_map(const Board& board, const MapMarks& marks, const Catalogue& catalogue,
                        const Box& room, const TextMeasure& measure) {
  constexpr double ring = 1.3;
  BoardMap map;
  map.group.name = tr("map of the board");
  const double scale =
      std::min((room.right - room.left) / board.width.value, (room.bottom - room.top) / board.height.value);
  const double w = board.width.value * scale, h = board.height.value * scale;
  map.box = {room.left, room.top, room.left + w, room.top + h};
  const auto at = [&](double x, double y) {
    return Point{map.box.left + x * scale, map.box.bottom - y * scale};
  };
  map.group.add(rectangle({map.box.left, map.box.top}, w, h,
                          outlined(style::board, style::board_edge, style::line), 0.8));
  std::vector<Box> taken;  ///< where no id may stand
  for (const Hole& hole : board.holes) {
    const Point c = at(hole.x.value, hole.y.value);
    const double radius = std::max(0.5, hole.diameter.value / 2 * scale);
    map.group.add(circle(c, radius, outlined(style::paper, style::board_edge, style::fine)));
    taken.push_back({c.x - radius, c.y - radius, c.x + radius, c.y + radius});
  }
  std::vector<std::pair<std::string, Box>> marked;
  for (std::size_t i = 0; i < board.headers.size(); ++i) {
    const Header& header = board.headers[i];
    Box b = header_outline(header, catalogue);
    // Drawn within the board even where a part hangs over its edge.
    b = {std::clamp(b.left, 0.0, board.width.value), std::clamp(b.top, 0.0, board.height.value),
         std::clamp(b.right, 0.0, board.width.value), std::clamp(b.bottom, 0.0, board.height.value)};
    const Point corner = at(b.left, b.bottom);
    const double bw = std::max(0.8, (b.right - b.left) * scale),
                 bh = std::max(0.8, (b.bottom - b.top) * scale);
    const bool here = static_cast<int>(i) == marks.filled;
    const bool other = !here && holds(marks.outlined, static_cast<int>(i));
    const double line = other ? style::bold_line : style::fine;
    Look look = here ? filled(style::outline) : outlined(style::paper, style::outline, line);
    if (header.underside) look.stroke = Stroke{style::outline, line, {0.8, 0.6}, false};
    map.group.add(rectangle(corner, bw, bh, look));
    const double around = here ? ring : line / 2;
    const Box outer{corner.x - around, corner.y - around, corner.x + bw + around, corner.y + bh + around};
    taken.push_back(outer);
    if (here || other) marked.emplace_back(header.id, outer);
    if (!here) continue;
    map.group.add(rectangle({outer.left, outer.top}, bw + 2 * ring, bh + 2 * ring,
                            stroked(style::outline, style::line), ring));
    // Pin 1 as a white dot in the filled header.
    map.group.add(
        circle(at(std::clamp(header.x.value, b.left, b.right), std::clamp(header.y.value, b.top, b.bottom)),
               std::min(0.5, 0.35 * std::min(bw, bh)), filled(style::paper)));
  }
  for (const auto& [id, box] : marked) add_id(map.group, id, box, map.box, taken, measure);
  return map;
}

}  // namespace plugward
