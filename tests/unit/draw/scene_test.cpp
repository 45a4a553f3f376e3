// SPDX-License-Identifier: MIT
#include "draw/scene.h"

#include <doctest/doctest.h>

#include "draw/shapes.h"
#include "draw/text_fit.h"

namespace plugward {

TEST_CASE("a dump names every item, rounds to 0.01 mm and has no negative zero") {
  Scene scene{20, 10.006, "a title", "in words", {}};
  Group group{"frame", {}};
  group.add(rectangle({1, -0.001}, 2, 3.14159, outlined(0xffffff, 0x123456, 0.25)));
  group.add(polyline({{0, 0}, {1, 1}}, stroked(0, 0.5, {1, 2})));
  group.add(Words{{5, 6}, "12", 9, true, 0x0000ff, Anchor::End, 90});
  scene.groups.push_back(group);
  CHECK(dump(scene) ==
        "scene 20 x 10.01\n"
        "title a title\n"
        "description in words\n"
        "group frame\n"
        "  shape fill=ffffff stroke=123456/0.25 M1,0 L3,0 L3,3.14 L1,3.14 Z\n"
        "  shape stroke=000000/0.5:1:2 M0,0 L1,1\n"
        "  words 5,6 9pt end bold ink=0000ff turned=90 '12'\n");
}

TEST_CASE("a point on a curve: its ends and, by symmetry, its middle") {
  const Shape s = swing({0, 0}, {10, 20}, stroked(0, 1));
  CHECK(point_on_curve(s, 0).x == doctest::Approx(0));
  CHECK(point_on_curve(s, 1).y == doctest::Approx(20));
  CHECK(point_on_curve(s, 0.5).x == doctest::Approx(5));
  CHECK(point_on_curve(s, 0.5).y == doctest::Approx(10));
}

}  // namespace plugward
