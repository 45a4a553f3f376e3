// SPDX-License-Identifier: MIT
#include "draw/board_map.h"

#include <doctest/doctest.h>

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

}  // namespace plugward
