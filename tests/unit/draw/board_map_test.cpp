// SPDX-License-Identifier: MIT
#include "draw/board_map.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/style.h"
#include "unit/draw/fixtures.h"

namespace plugward {

TEST_CASE("how far the board reaches around pin 1, the header turned upright") {
  const test::FixturePtr f = test::probe_to_repin();  // board 110 x 85 mm
  Header header = f->board.headers[0];
  header.x = Millimetres(61);
  header.y = Millimetres(3);
  struct Row {
    std::string_view name;
    int rotation;
    bool underside;
    LocalBoard expected;
  };
  const Row rows[] = {
      {"row to the right", 0, false, {-61, 49, 82, 3}},
      {"row upwards: the board's left is above", 90, false, {-3, 82, 61, 49}},
      {"row to the left", 180, false, {-49, 61, 3, 82}},
      {"row downwards", 270, false, {-82, 3, 49, 61}},
      {"from below, above and below change places", 0, true, {-61, 49, 3, 82}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    header.rotation = row.rotation;
    header.underside = row.underside;
    const LocalBoard local = board_around(header, f->board);
    CHECK(local.left == doctest::Approx(row.expected.left));
    CHECK(local.right == doctest::Approx(row.expected.right));
    CHECK(local.above == doctest::Approx(row.expected.above));
    CHECK(local.below == doctest::Approx(row.expected.below));
  }
}

TEST_CASE("a turned two-row header lies on the board as its pins do") {
  const test::FixturePtr f = test::ribbon_ten();
  Header header = f->board.headers[0];  // 2x5, 20.36 x 8.75 mm outside
  header.x = Millimetres(50);
  header.y = Millimetres(20);
  header.rotation = 90;
  // Pins run upwards, the second row is at the left; 5.10 mm from pin 1 to the short wall.
  const Box box = header_outline(header, f->catalogue);
  CHECK(box.top == doctest::Approx(20 - 5.1));
  CHECK(box.bottom == doctest::Approx(20 + 4 * 2.54 + 5.1));
  CHECK((box.left + box.right) / 2 == doctest::Approx(50 - 1.27));
  CHECK(box.right - box.left == doctest::Approx(8.75));
}

namespace {

/// "id at x,y" of what is written on the map, 55 mm wide, of the board of the probe (110 x 85 mm).
std::string ids_on_map(const Board& board, const Catalogue& catalogue, const MapMarks& marks) {
  const test::StubMeasure measure;
  const BoardMap map = draw_board_map(board, marks, catalogue, {0, 0, 55, 42.5}, measure);
  std::string text;
  for (const auto& item : map.group.items) {
    if (const Words* words = std::get_if<Words>(&item))
      text += format("{} at {:.1f},{:.1f};", words->text, words->at.x, words->at.y);
  }
  return text;
}

}  // namespace

TEST_CASE("ids stand beside the marked headers, or are left out") {
  const test::FixturePtr f = test::probe_to_repin();
  Board board = f->board;  // J9, and J1 close to J2 at its right
  CHECK(ids_on_map(board, f->catalogue, {0, {}}) == "J9 at 31.8,38.2;");
  CHECK(ids_on_map(board, f->catalogue, {0, {1, 2}}) == "J9 at 31.8,38.2;J1 at 7.5,8.7;J2 at 26.2,8.7;");
  board.headers[0].id = "an id as wide as the whole board is drawn";
  CHECK(ids_on_map(board, f->catalogue, {0, {}}) == "");
  // J9 in the lower left corner, boxed in by J1 at its right and J2 above it.
  board.headers[0].id = "J9";
  board.headers[0].x = Millimetres(3);
  board.headers[1].x = Millimetres(16);
  board.headers[1].y = Millimetres(3);
  board.headers[2].x = Millimetres(3);
  board.headers[2].y = Millimetres(12);
  CHECK(ids_on_map(board, f->catalogue, {0, {}}) == "");
}

TEST_CASE("the headers of the other plugs are outlined bold") {
  const test::FixturePtr f = test::probe_to_repin();
  const test::StubMeasure measure;
  const auto bold = [&](const MapMarks& marks) {
    const BoardMap map = draw_board_map(f->board, marks, f->catalogue, {0, 0, 55, 42.5}, measure);
    int count = 0;
    for (const auto& item : map.group.items) {
      const Shape* shape = std::get_if<Shape>(&item);
      if (shape != nullptr && shape->stroke && shape->stroke->width == style::bold_line) ++count;
    }
    return count;
  };
  CHECK(bold({0, {}}) == 0);
  CHECK(bold({0, {1, 2}}) == 2);
}

}  // namespace plugward
