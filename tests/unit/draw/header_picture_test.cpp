// SPDX-License-Identifier: MIT
// Numbers of pins stand clear of the walls, the key and the board's edge, at every scale.
#include "draw/header_picture.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/style.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

/// Digits only: from the baseline up; half a line's width of clearance is asked of them.
Box digits_box(const Words& words, const TextMeasure& measure) {
  const double width = measure.measure(words.text, words.points, words.bold).width;
  const double height = 0.73 * words.points * style::mm_per_point;
  return {words.at.x - width / 2, words.at.y - height, words.at.x + width / 2, words.at.y};
}

/// Boxes of all straight strokes of a group, as wide as they are drawn.
std::vector<Box> strokes(const Group& group) {
  std::vector<Box> boxes;
  for (const auto& item : group.items) {
    const Shape* shape = std::get_if<Shape>(&item);
    if (shape == nullptr || !shape->stroke) continue;
    const double half = shape->stroke->width / 2;
    Point last;
    for (const Shape::Command& c : shape->path) {
      if (c.op == 'Z') continue;
      const Point p = c.op == 'C' ? c.p3 : c.p1;
      if (c.op == 'L') {
        boxes.push_back({std::min(p.x, last.x) - half, std::min(p.y, last.y) - half,
                         std::max(p.x, last.x) + half, std::max(p.y, last.y) + half});
      }
      last = p;
    }
  }
  return boxes;
}

std::string touching(const HeaderPicture& h, const Header& header, const Family& family) {
  const test::StubMeasure measure;
  std::string faults;
  std::vector<Box> lines;
  std::vector<Words> numbers;
  for (const Group& group : draw_header(h, header, &family)) {
    for (const Box& box : strokes(group)) lines.push_back(box);
    for (const auto& item : group.items) {
      if (const Words* words = std::get_if<Words>(&item)) numbers.push_back(*words);
    }
  }
  for (const Words& number : numbers) {
    for (const Box& line : lines) {
      if (overlap(digits_box(number, measure), line)) faults += number.text + " ";
    }
  }
  return faults;
}

}  // namespace

TEST_CASE("pin numbers touch no line at any scale") {
  struct Row {
    test::FixturePtr (*make)();
    std::string_view family;
  };
  const Row rows[] = {{test::motor_mates, "xh-2.50"},     {test::ribbon_ten, "box-2.54"},
                      {test::probe_to_repin, "pin-2.54"}, {test::fan_to_measure, "kk-2.54"},
                      {test::motor_mates, "vh-3.96"},     {test::motor_mates, "screw-5.08"}};
  for (const Row& row : rows) {
    const test::FixturePtr f = row.make();
    const Family& family = *f->catalogue.find(row.family);
    for (const double scale : {1.0, 2.0, 2.5, 2.6, 3.0, 3.5, 4.0, 5.0, 6.0, 8.0}) {
      // In the middle of the board; its edge close above the body, and touching it.
      for (const double from_edge : {40.0, 7.0, 5.0, 3.0}) {
        CAPTURE(row.family);
        CAPTURE(scale);
        CAPTURE(from_edge);
        Header header = f->board.headers[0];
        header.rotation = 0;
        header.x = Millimetres(50);
        header.y = Millimetres(f->board.height.value - from_edge);
        const BodySize size = header_size(&family, header.rows, scale);
        if (size.pitch < 4.2) continue;
        const Grid grid{header.positions, header.rows,    header.numbering, View::WireSide,
                        size.pitch,       size.row_pitch, {60, 0},          0};
        const HeaderPicture h = place_header(grid, size, &family, 20, scale, header, f->board, 0, 200);
        CHECK(touching(h, header, family) == "");
        CHECK(h.top > 20 - 3);
      }
    }
  }
}

}  // namespace plugward
