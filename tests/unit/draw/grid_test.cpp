// SPDX-License-Identifier: MIT
#include "draw/grid.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "sheet/key_side.h"

namespace plugward {
namespace {

/// Numbers as they are read on the page: each row from left to right, the upper row first.
std::vector<std::vector<int>> as_read(const Grid& grid) {
  std::vector<std::vector<int>> rows(static_cast<std::size_t>(grid.rows));
  for (int row = 0; row < grid.rows; ++row) {
    std::vector<std::pair<double, int>> found;
    for (int n = 1; n <= grid.positions; ++n) {
      const Point p = centre(grid, n);
      if (p.y == grid.origin.y - row * grid.row_pitch) found.emplace_back(p.x, n);
    }
    std::sort(found.begin(), found.end());
    for (const auto& [x, n] : found) rows[static_cast<std::size_t>(grid.rows - 1 - row)].push_back(n);
  }
  return rows;
}

Grid grid(int positions, int rows, Numbering numbering, View view) {
  Grid g;
  g.positions = positions;
  g.rows = rows;
  g.numbering = numbering;
  g.view = view;
  g.origin = {100, 100};
  return g;
}

}  // namespace

TEST_CASE("positions stand on the page as their numbers say, in both views") {
  struct Row {
    std::string_view name;
    Grid grid;
    std::vector<std::vector<int>> expected;
  };
  using enum Numbering;
  using enum View;
  const Row rows[] = {
      {"one row from the wire side", grid(4, 1, Zigzag, WireSide), {{1, 2, 3, 4}}},
      {"one row into the mating face", grid(4, 1, Zigzag, MatingFace), {{4, 3, 2, 1}}},
      // Public footprints of 2x5 box headers, board from above, pin 1 at the left: odd pins below.
      {"2x5 alternating, wire side", grid(10, 2, Zigzag, WireSide), {{2, 4, 6, 8, 10}, {1, 3, 5, 7, 9}}},
      // "Data cables" page: looking into the socket, bump up, red wire left: top row 1 3 5 7 9; here turned
      // by 180 degrees.
      {"2x5 alternating, mating face", grid(10, 2, Zigzag, MatingFace), {{10, 8, 6, 4, 2}, {9, 7, 5, 3, 1}}},
      {"2x5 row by row, wire side", grid(10, 2, ByRow, WireSide), {{6, 7, 8, 9, 10}, {1, 2, 3, 4, 5}}},
      {"2x5 row by row, mating face", grid(10, 2, ByRow, MatingFace), {{10, 9, 8, 7, 6}, {5, 4, 3, 2, 1}}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(as_read(row.grid) == row.expected);
  }
}

TEST_CASE("labels stand in one line in the order of the columns") {
  for (const View view : {View::WireSide, View::MatingFace}) {
    const Grid g = grid(10, 2, Numbering::Zigzag, view);
    std::vector<int> numbers(10);
    for (int n = 1; n <= 10; ++n) numbers[static_cast<std::size_t>(label_slot(g, n))] = n;
    const std::vector<int> forward{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}, backward{10, 9, 8, 7, 6, 5, 4, 3, 2, 1};
    CHECK(numbers == (view == View::WireSide ? forward : backward));
  }
}

TEST_CASE("leads of the far row pass on the side of their own label") {
  const Grid wire = grid(4, 2, Numbering::Zigzag, View::WireSide),
             face = grid(4, 2, Numbering::Zigzag, View::MatingFace);
  struct Row {
    std::string_view name;
    const Grid& grid;
    int number;
    bool up;
    int expected;
  };
  const Row rows[] = {
      {"lower row upwards", wire, 1, true, -1},
      {"upper row upwards", wire, 2, true, 0},
      {"lower row downwards", wire, 1, false, 0},
      {"upper row downwards", wire, 2, false, 1},
      {"mirrored, lower row upwards", face, 1, true, 1},
      {"mirrored, upper row downwards", face, 2, false, -1},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(side_step(row.grid, row.number, row.up) == row.expected);
  }
  CHECK(side_step(grid(4, 1, Numbering::Zigzag, View::WireSide), 2, true) == 0);
}

TEST_CASE("a header that is only partly shown keeps pin 1") {
  Grid g = grid(10, 1, Numbering::Zigzag, View::WireSide);
  g.shown_columns = 4;
  CHECK(shown(g, 4));
  CHECK_FALSE(shown(g, 5));
  CHECK(centre(g, 1).x == 100);
  CHECK(extent(g).right == 130);
}

TEST_CASE("a key is drawn only on a side that a source tells") {
  struct Row {
    std::string_view id;
    Profile profile;
    KeySide expected;
  };
  const Row rows[] = {
      {"pin-2.54", Profile::Bare, KeySide::None},          {"box-2.54", Profile::BoxShroud, KeySide::Near},
      {"xh-2.50", Profile::BoxShroud, KeySide::Far},       {"vh-3.96", Profile::OpenWafer, KeySide::Far},
      {"ph-2.00", Profile::BoxShroud, KeySide::NotStated}, {"m12-a", Profile::Circular, KeySide::None},
  };
  for (const Row& row : rows) {
    CAPTURE(row.id);
    Family family;
    family.id = row.id;
    family.profile = row.profile;
    CHECK(key_side(family) == row.expected);
  }
}

}  // namespace plugward
