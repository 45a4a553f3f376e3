// SPDX-License-Identifier: MIT
#include "draw/board_picture.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/style.h"
#include "unit/draw/fixtures.h"
#include "unit/draw/looms.h"
#include "unit/draw/scene_query.h"

namespace plugward {

TEST_CASE("pins lie on the board as rotation and side say") {
  const test::FixturePtr f = test::ribbon_ten();
  Header header = f->board.headers[0];  // 2x5, zigzag, pitch 2.54
  header.x = Millimetres(50);
  header.y = Millimetres(20);
  struct Row {
    int rotation;
    bool underside;
    Point third, second;  ///< along the row; across it
  };
  // Anticlockwise, y upwards. Facing the underside one sees the second row on the other side of the first.
  const Row rows[] = {
      {0, false, {52.54, 20}, {50, 22.54}},   {90, false, {50, 22.54}, {47.46, 20}},
      {180, false, {47.46, 20}, {50, 17.46}}, {270, false, {50, 17.46}, {52.54, 20}},
      {0, true, {52.54, 20}, {50, 17.46}},    {270, true, {50, 17.46}, {47.46, 20}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.rotation);
    CAPTURE(row.underside);
    header.rotation = row.rotation;
    header.underside = row.underside;
    CHECK(pin_on_board(header, f->catalogue, 1).x == doctest::Approx(50));
    CHECK(pin_on_board(header, f->catalogue, 1).y == doctest::Approx(20));
    CHECK(pin_on_board(header, f->catalogue, 3).x == doctest::Approx(row.third.x));
    CHECK(pin_on_board(header, f->catalogue, 3).y == doctest::Approx(row.third.y));
    CHECK(pin_on_board(header, f->catalogue, 2).x == doctest::Approx(row.second.x));
    CHECK(pin_on_board(header, f->catalogue, 2).y == doctest::Approx(row.second.y));
  }
}

TEST_CASE("every pin is drawn at its place, y turned over, and only pin 1 is dark") {
  const test::StubMeasure measure;
  for (const test::LoomPtr& loom : {test::four_fans(), test::generated_loom(3, 5)}) {
    const BoardPicture picture = place_board(loom->board, loom->catalogue, {70, 20, 210, 165});
    std::vector<Group> groups;
    draw_board(groups, picture, loom->board, loom->catalogue, {{0, 2}, {}}, {}, measure);
    for (const Header& header : loom->board.headers) {
      CAPTURE(header.id);
      const std::string name = format("header {} on the board", header.id);
      const auto group =
          std::find_if(groups.begin(), groups.end(), [&](const Group& g) { return g.name == name; });
      REQUIRE(group != groups.end());
      std::vector<Shape> pins;  // the squares that are drawn with the finest line
      for (const auto& item : group->items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (shape != nullptr && shape->stroke && shape->stroke->width == 0.15) pins.push_back(*shape);
      }
      REQUIRE(static_cast<int>(pins.size()) == header.positions);
      for (int n = 1; n <= header.positions; ++n) {
        CAPTURE(n);
        const Point on_the_board = pin_on_board(header, loom->catalogue, n);
        const Shape& pin = pins[static_cast<std::size_t>(n) - 1];
        CHECK(test::middle(pin).x == doctest::Approx(picture.box.left + on_the_board.x * picture.scale));
        CHECK(test::middle(pin).y == doctest::Approx(picture.box.bottom - on_the_board.y * picture.scale));
        CHECK((pin.fill == style::outline) == (n == 1));
      }
    }
  }
}

TEST_CASE("the board is drawn at a round scale, in the middle of its room") {
  const test::LoomPtr loom = test::four_fans();  // 60 x 40 mm
  struct Row {
    Box room;
    double scale;
    Box box;
  };
  const Row rows[] = {
      {{0, 0, 140, 150}, 2, {10, 35, 130, 115}},
      {{0, 0, 60, 40}, 1, {0, 0, 60, 40}},
      {{10, 10, 60, 110}, 0.8, {11, 44, 59, 76}},
      {{0, 0, 6, 4}, 0.1, {0, 0, 6, 4}},  // below the least round scale
  };
  for (const Row& row : rows) {
    const BoardPicture picture = place_board(loom->board, loom->catalogue, row.room);
    CHECK(picture.scale == doctest::Approx(row.scale));
    CHECK(picture.box.left == doctest::Approx(row.box.left));
    CHECK(picture.box.top == doctest::Approx(row.box.top));
    CHECK(picture.box.right == doctest::Approx(row.box.right));
    CHECK(picture.box.bottom == doctest::Approx(row.box.bottom));
  }
}

TEST_CASE("look-alikes: the same family and positions near by, on the same side of the board") {
  const test::LoomPtr loom = test::four_fans();
  // J4 is on the underside; J3 has another family; J5 takes no plug and looks like J1 and J2.
  CHECK(look_alikes(loom->fitting) == std::vector<std::vector<int>>{{1, 4}, {0, 4}, {}, {}});
}

}  // namespace plugward
