// SPDX-License-Identifier: MIT
// Tested in board_picture_test.cpp.
#include "draw/board_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/housing.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "fit/seating.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr std::array<double, 20> scales = {4,   3,   2.5, 2,   1.8, 1.6, 1.5, 1.4, 1.3, 1.2,
                                           1.1, 1.0, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2};
constexpr double wave_width = 3.4, wave_height = 2.4;
constexpr double halo = 0.7;  ///< of a leader, white

bool holds(const std::vector<int>& list, int item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}

/// The drawing of one board: turns places on the board into places on paper.
class Drawing {
 public:
  Drawing(std::vector<Group>& groups, const BoardPicture& picture, const Board& board,
          const Catalogue& catalogue, const BoardMarks& marks, const std::vector<Leader>& leaders,
          const TextMeasure& measure)
      : groups_(groups),
        picture_(picture),
        board_(board),
        catalogue_(catalogue),
        marks_(marks),
        leaders_(leaders),
        routes_(leader_routes(picture.box, picture.headers, leaders)),
        measure_(measure) {}

  void draw() {
    draw_bare_board();
    for (std::size_t i = 0; i < board_.headers.size(); ++i) {
      taken_.push_back(around(picture_.headers[i], 0.5));
      if (!used(i)) draw_header(i);
    }
    draw_leaders();
    for (std::size_t i = 0; i < board_.headers.size(); ++i) {
      if (used(i)) draw_header(i);
    }
    draw_waves();
    draw_ids();
  }

 private:
  static Box around(const Box& b, double by) {
    return {b.left - by, b.top - by, b.right + by, b.bottom + by};
  }

  bool used(std::size_t header) const { return holds(marks_.used, static_cast<int>(header)); }

  Point paper(Point on_the_board) const {
    return {picture_.box.left + on_the_board.x * picture_.scale,
            picture_.box.bottom - on_the_board.y * picture_.scale};
  }

  void draw_bare_board() {
    Group group{tr("board from above"), {}};
    const Box& b = picture_.box;
    group.add(rectangle({b.left, b.top}, b.right - b.left, b.bottom - b.top,
                        outlined(style::board, style::board_edge, style::bold_line), 1.0));
    for (const Hole& hole : board_.holes) {
      const Point c = paper({hole.x.value, hole.y.value});
      const double radius = std::max(0.5, hole.diameter.value / 2 * picture_.scale);
      group.add(circle(c, radius, outlined(style::paper, style::board_edge, style::fine)));
      taken_.push_back({c.x - radius, c.y - radius, c.x + radius, c.y + radius});
    }
    groups_.push_back(std::move(group));
  }

  /// Body, key, pins; pin 1 is dark and pointed at.
  void draw_header(std::size_t index) {
    const Header& header = board_.headers[index];
    const Family* family = catalogue_.find(header.family);
    const Box& b = picture_.headers[index];
    Group group{format("header {} on the board", header.id), {}};
    const bool strong = used(index);
    const double bold = std::clamp(style::bold_line * picture_.scale, style::line, style::bold_line);
    Look look = outlined(strong ? style::shroud : style::paper, strong ? style::outline : style::quiet,
                         strong ? bold : style::fine);
    if (header.underside) look.stroke->dashes = {1.2, 0.8};
    group.add(rectangle({b.left, b.top}, b.right - b.left, b.bottom - b.top, look, 0.3));
    add_key(group, header, family);
    const BodySize size = header_size(family, header.rows, 1.0);
    const double side = std::clamp(0.3 * size.pitch * picture_.scale, 0.5, 1.6);
    for (int n = 1; n <= header.positions; ++n) {
      const Point c = paper(pin_on_board(header, catalogue_, n));
      const Look pin = n == 1             ? outlined(style::outline, style::outline, 0.15)
                       : header.underside ? outlined(style::paper, style::outline, 0.15)
                                          : outlined(style::pin, style::outline, 0.15);
      group.add(rectangle({c.x - side / 2, c.y - side / 2}, side, side, pin));
    }
    // As the mark beside a housing: a triangle that points at pin 1 from beyond the end of the body.
    const double gap = 0.3 / picture_.scale, length = 1.7 / picture_.scale, half = 1.0 / picture_.scale;
    const double end = -size.side - gap;
    const Point tip = paper(on_board(header, end, 0)), up = paper(on_board(header, end - length, half)),
                down = paper(on_board(header, end - length, -half));
    group.add(polygon({tip, up, down}, filled(strong ? style::outline : style::quiet)));
    taken_.push_back({std::min({tip.x, up.x, down.x}), std::min({tip.y, up.y, down.y}),
                      std::max({tip.x, up.x, down.x}), std::max({tip.y, up.y, down.y})});
    groups_.push_back(std::move(group));
  }

  void add_key(Group& group, const Header& header, const Family* family) const {
    const KeySide key = family ? key_side(*family) : KeySide::None;
    if ((key != KeySide::Near && key != KeySide::Far) || header.key == KeyState::Removed) return;
    const BodySize size = header_size(family, header.rows, 1.0);
    const int columns = (header.positions + header.rows - 1) / header.rows;
    const double centre = (columns - 1) * size.pitch / 2,
                 half = std::min(0.2 * ((columns - 1) * size.pitch + 2 * size.side), 2.05);
    const double middle = (header.rows - 1) * size.row_pitch / 2;
    const double edge = middle + (key == KeySide::Far ? 1 : -1) * size.half_depth;
    const double inner = edge - (key == KeySide::Far ? 1 : -1) * std::min(0.9, 0.25 * size.half_depth);
    group.add(polygon(
        {paper(on_board(header, centre - half, edge)), paper(on_board(header, centre + half, edge)),
         paper(on_board(header, centre + half, inner)), paper(on_board(header, centre - half, inner))},
        outlined(style::paper, style::outline, style::fine)));
  }

  void draw_leaders() {
    for (std::size_t i = 0; i < leaders_.size(); ++i) {
      const std::string& id = board_.headers[static_cast<std::size_t>(leaders_[i].header)].id;
      Group group{format("leader to {}", id), {}};
      group.add(polyline(routes_[i], stroked(style::paper, halo)));
      group.add(polyline(routes_[i], stroked(style::outline, 0.3)));
      group.add(circle(routes_[i].back(), 0.75, filled(style::outline)));
      groups_.push_back(std::move(group));
    }
  }

  bool free(const Box& box) const {
    const Box& b = picture_.box;
    if (box.left < b.left + 0.5 || box.right > b.right - 0.5 || box.top < b.top + 0.5 ||
        box.bottom > b.bottom - 0.5)
      return false;
    if (std::any_of(taken_.begin(), taken_.end(), [&](const Box& t) { return overlap(box, t); }))
      return false;
    return std::none_of(routes_.begin(), routes_.end(), [&](const std::vector<Point>& route) {
      for (std::size_t i = 1; i < route.size(); ++i) {
        if (crosses(box, route[i - 1], route[i])) return true;
      }
      return false;
    });
  }

  /// A box of this size beside a header, near its middle, then along its edges; nothing where none is free.
  std::optional<Box> place_beside(const Box& header, double width, double height) {
    const Point middle{(header.left + header.right) / 2, (header.top + header.bottom) / 2};
    for (const double gap : {0.6, 1.4, 2.4}) {
      for (const double shift : {0.0, -0.5, 0.5, -1.0, 1.0}) {
        const double along_x = middle.x + shift * (header.right - header.left) / 2,
                     along_y = middle.y + shift * (header.bottom - header.top) / 2;
        const Point centres[] = {{along_x, header.top - gap - height / 2},
                                 {along_x, header.bottom + gap + height / 2},
                                 {header.right + gap + width / 2, along_y},
                                 {header.left - gap - width / 2, along_y}};
        for (const Point c : centres) {
          const Box box{c.x - width / 2, c.y - height / 2, c.x + width / 2, c.y + height / 2};
          if (!free(box)) continue;
          taken_.push_back(around(box, 0.4));
          return box;
        }
      }
    }
    return std::nullopt;
  }

  void draw_waves() {
    for (const int index : marks_.alike) {
      const Box& header = picture_.headers[static_cast<std::size_t>(index)];
      Group group{format("wave mark of {}", board_.headers[static_cast<std::size_t>(index)].id), {}};
      const std::optional<Box> place = place_beside(header, wave_width, wave_height);
      // Where nothing is free it lies on the body, a place that pins leave.
      const Point centre = place ? Point{(place->left + place->right) / 2, (place->top + place->bottom) / 2}
                                 : Point{(header.left + header.right) / 2, (header.top + header.bottom) / 2};
      add_wave_mark(group, centre);
      groups_.push_back(std::move(group));
    }
  }

  void draw_ids() {
    Group group{tr("ids of headers without a plug"), {}};
    for (std::size_t i = 0; i < board_.headers.size(); ++i) {
      if (used(i)) continue;
      const std::string& id = board_.headers[i].id;
      const TextMeasure::Size size = measure_.measure(id, style::small_type, false);
      const std::optional<Box> place =
          place_beside(picture_.headers[i], size.width, size.ascent + size.descent);
      if (!place) continue;
      group.add(Words{{place->left, place->top + size.ascent},
                      id,
                      style::small_type,
                      false,
                      style::quiet,
                      Anchor::Start,
                      0});
    }
    groups_.push_back(std::move(group));
  }

  std::vector<Group>& groups_;
  const BoardPicture& picture_;
  const Board& board_;
  const Catalogue& catalogue_;
  const BoardMarks& marks_;
  const std::vector<Leader>& leaders_;
  std::vector<std::vector<Point>> routes_;  ///< by leader
  const TextMeasure& measure_;
  std::vector<Box> taken_;  ///< where no id and no mark may stand
};

}  // namespace

BoardPicture place_board(const Board& board, const Catalogue& catalogue, const Box& room) {
  BoardPicture picture;
  const double width = board.width.value, height = board.height.value;
  const double most = std::min((room.right - room.left) / width, (room.bottom - room.top) / height);
  picture.scale = most;
  for (const double scale : scales) {
    if (scale > most) continue;
    picture.scale = scale;
    break;
  }
  const double w = width * picture.scale, h = height * picture.scale;
  picture.box.left = (room.left + room.right - w) / 2;
  picture.box.top = (room.top + room.bottom - h) / 2;
  picture.box.right = picture.box.left + w;
  picture.box.bottom = picture.box.top + h;
  for (const Header& header : board.headers) {
    const Box b = header_outline(header, catalogue);
    picture.headers.push_back(
        {picture.box.left + b.left * picture.scale, picture.box.bottom - b.bottom * picture.scale,
         picture.box.left + b.right * picture.scale, picture.box.bottom - b.top * picture.scale});
  }
  return picture;
}

void draw_board(std::vector<Group>& groups, const BoardPicture& picture, const Board& board,
                const Catalogue& catalogue, const BoardMarks& marks, const std::vector<Leader>& leaders,
                const TextMeasure& measure) {
  Drawing(groups, picture, board, catalogue, marks, leaders, measure).draw();
}

void add_wave_mark(Group& group, Point centre) {
  group.add(rectangle({centre.x - wave_width / 2, centre.y - wave_height / 2}, wave_width, wave_height,
                      filled(style::paper), 0.8));
  for (const double y : {centre.y - 0.55, centre.y + 0.55}) {
    const double left = centre.x - 1.3, step = 1.3;
    Shape wave;
    wave.stroke = Stroke{style::outline, 0.45, {}, true};
    wave.path = {
        {'M', {left, y}, {}, {}},
        {'C', {left + 0.4, y - 0.75}, {left + step - 0.4, y - 0.75}, {left + step, y}},
        {'C', {left + step + 0.4, y + 0.75}, {left + 2 * step - 0.4, y + 0.75}, {left + 2 * step, y}}};
    group.add(std::move(wave));
  }
}

std::vector<std::vector<int>> look_alikes(const Fitting& fitting) {
  std::vector<std::vector<int>> all;
  for (const Placement& placement : fitting.placements) {
    const Header& own = header_of(fitting, placement.header);
    std::vector<int> list;
    for (const Seating& seating : neighbour_seatings(plug_of(fitting, placement.plug), placement.header,
                                                     *fitting.board, *fitting.catalogue)) {
      const Header& other = header_of(fitting, seating.header);
      if (other.family == own.family && other.positions == own.positions && other.rows == own.rows)
        list.push_back(seating.header);
    }
    std::sort(list.begin(), list.end());
    all.push_back(std::move(list));
  }
  return all;
}

}  // namespace plugward
