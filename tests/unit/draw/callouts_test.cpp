// SPDX-License-Identifier: MIT
#include "draw/callouts.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <set>
#include <utility>

#include "base/format.h"

namespace plugward {
namespace {

constexpr double left = 70, right = 210, top = 20, bottom = 165;

std::vector<Point> anchors_by_chance(unsigned seed, std::size_t n) {
  std::mt19937 random(seed);
  const auto pick = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  std::vector<Point> anchors;
  for (std::size_t i = 0; i < n; ++i) anchors.push_back({pick(800, 2000) / 10.0, pick(300, 1550) / 10.0});
  return anchors;
}

Point port(const CalloutSlot& slot) {
  return {slot.right ? right : left, slot.middle};
}

double cross(Point o, Point a, Point b) {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

bool cross_each_other(Point a, Point b, Point c, Point d) {
  return cross(a, b, c) * cross(a, b, d) < -1e-6 && cross(c, d, a) * cross(c, d, b) < -1e-6;
}

}  // namespace

TEST_CASE("lines to callouts do not cross, and the callouts of a column keep apart") {
  int pairs = 0;
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const std::size_t n = seed;
    CAPTURE(n);
    const std::vector<Point> anchors = anchors_by_chance(seed, n);
    const CalloutPlan plan = plan_callouts(anchors, left, right, top, bottom);
    REQUIRE(plan.slots.size() == n);
    std::vector<std::size_t> order(n);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      const CalloutSlot &one = plan.slots[a], &other = plan.slots[b];
      return std::pair(one.right, one.middle) < std::pair(other.right, other.middle);
    });
    CHECK(plan.slots[order[0]].middle >= top);
    for (std::size_t i = 1; i < n; ++i) {
      const CalloutSlot &before = plan.slots[order[i - 1]], &now = plan.slots[order[i]];
      CHECK((before.right < now.right || (before.right == now.right && before.middle + 4.7 < now.middle)));
    }
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        ++pairs;
        CHECK_FALSE(cross_each_other(port(plan.slots[i]), anchors[i], port(plan.slots[k]), anchors[k]));
      }
    }
  }
  CHECK(pairs > 30000);
}

TEST_CASE("of six headers no exchange of two slots shortens the lines") {
  for (unsigned seed = 1; seed <= 50; ++seed) {
    CAPTURE(seed);
    const std::vector<Point> anchors = anchors_by_chance(seed, 6);
    const CalloutPlan plan = plan_callouts(anchors, left, right, top, bottom);
    const auto length = [&](std::size_t anchor, std::size_t slot) {
      const Point p = port(plan.slots[slot]);
      return std::hypot(p.x - anchors[anchor].x, p.y - anchors[anchor].y);
    };
    std::vector<std::size_t> order{0, 1, 2, 3, 4, 5};
    double least = 1e9, ours = 0;
    for (std::size_t i = 0; i < 6; ++i) ours += length(i, i);
    do {
      double sum = 0;
      for (std::size_t i = 0; i < 6; ++i) sum += length(i, order[i]);
      least = std::min(least, sum);
    } while (std::next_permutation(order.begin(), order.end()));
    CHECK(ours == doctest::Approx(least).epsilon(1e-6));
  }
}

TEST_CASE("callouts say as much as their number leaves room for") {
  struct Row {
    std::size_t plugs;
    int lines;
    int without_room;
  };
  // 145 mm: 10 rows of 13.4 mm, 15 of 9.4 mm, 30 of 4.75 mm on either side.
  for (const Row& row :
       {Row{1, 3, 0}, {20, 3, 0}, {21, 2, 0}, {30, 2, 0}, {31, 1, 0}, {60, 1, 0}, {64, 1, 4}}) {
    CAPTURE(row.plugs);
    const CalloutPlan plan = plan_callouts(anchors_by_chance(5, row.plugs), left, right, top, bottom);
    CHECK(plan.lines == row.lines);
    CHECK(std::count_if(plan.slots.begin(), plan.slots.end(),
                        [](const CalloutSlot& s) { return s.middle < 0; }) == row.without_room);
  }
}

}  // namespace plugward
