// SPDX-License-Identifier: MIT
#include "draw/moves.h"

#include <doctest/doctest.h>

#include <cmath>

#include "draw/shapes.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

struct Pair {
  Housing now, then;
};

Pair housings(int positions) {
  Grid grid;
  grid.positions = positions;
  grid.pitch = grid.row_pitch = 10;
  grid.origin = {60, 0};
  BodySize size;
  size.side = size.half_depth = 5;
  return {place_housing(grid, size, nullptr, 40, true), place_housing(grid, size, nullptr, 85, false)};
}

const Shape& arc(const Group& group) {
  return std::get<Shape>(group.items.front());
}

}  // namespace

TEST_CASE("each kind of step has its own line") {
  const Pair h = housings(4);
  const test::StubMeasure measure;
  const std::vector<Step> steps = {{StepKind::Insulate, 0, 3, 4, 0, ""},
                                   {StepKind::Park, 0, 0, 1, 4, ""},
                                   {StepKind::Hold, 0, 1, 2, 0, ""},
                                   {StepKind::Move, 0, 0, 4, 2, ""},
                                   {StepKind::Insert, 0, 1, 0, 1, ""}};
  const std::vector<Group> groups = draw_moves(steps, h.now, h.then, {20, 180}, {{3, {120, 75}}}, measure);
  REQUIRE(groups.size() == 10);
  struct Row {
    bool dashed;
    Point from, to;
  };
  const double below = numbers_edge(h.now), above = numbers_edge(h.then);
  const Point held = path_end(arc(groups[2]));
  const Row rows[] = {
      {false, {90, below}, {120, 75}},   {true, {60, below}, {90, below}}, {true, {70, below}, held},
      {false, {90, below}, {70, above}}, {true, held, {60, above}},
  };
  for (std::size_t i = 0; i < 5; ++i) {
    CAPTURE(i);
    const Shape& a = arc(groups[i]);
    CHECK(!a.stroke->dashes.empty() == rows[i].dashed);
    CHECK(path_start(a).x == doctest::Approx(rows[i].from.x));
    CHECK(path_start(a).y == doctest::Approx(rows[i].from.y));
    CHECK(path_end(a).x == doctest::Approx(rows[i].to.x));
    CHECK(path_end(a).y == doctest::Approx(rows[i].to.y));
  }
  // Spare leads lie at the right, so the loose one is held at the left.
  CHECK(held.x < h.now.body.left);
}

TEST_CASE("numbers sit on their arcs and do not touch each other") {
  const Pair h = housings(8);
  const test::StubMeasure measure;
  std::vector<Step> steps;
  for (int n = 1; n <= 8; ++n) steps.push_back({StepKind::Move, 0, n - 1, n, 9 - n, ""});
  const std::vector<Group> groups = draw_moves(steps, h.now, h.then, {20, 180}, {}, measure);
  std::vector<Point> numbers;
  for (std::size_t i = 8; i < 16; ++i) {
    const Words& w = std::get<Words>(groups[i].items.back());
    CHECK(w.text == std::to_string(i - 7));
    double nearest = 1e9;
    for (int k = 0; k <= 400; ++k) {
      const Point p = point_on_curve(arc(groups[i - 8]), k / 400.0);
      nearest = std::min(nearest, std::hypot(p.x - w.at.x, p.y - w.at.y));
    }
    CHECK(nearest < 1.4);  // the baseline lies half a letter below the arc
    numbers.push_back(w.at);
  }
  for (std::size_t a = 0; a < numbers.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b)
      CHECK(std::hypot(numbers[a].x - numbers[b].x, numbers[a].y - numbers[b].y) > 3.8);
  }
}

}  // namespace plugward
