// SPDX-License-Identifier: MIT
#include "draw/border_tags.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "base/format.h"

namespace plugward {
namespace {

/// Slow twin of spread_out: every way to let neighbours touch, each block where it deviates least.
std::vector<double> best_of_all_blocks(const std::vector<double>& wanted, const std::vector<double>& lengths,
                                       double low, double high) {
  const std::size_t n = wanted.size();
  std::vector<double> best;
  double least = std::numeric_limits<double>::infinity();
  for (unsigned touching = 0; touching < 1U << (n - 1); ++touching) {
    std::vector<double> at(n);
    for (std::size_t first = 0; first < n;) {
      std::size_t last = first;
      while (last + 1 < n && ((touching >> last) & 1U) != 0) ++last;
      double length = 0, sum = 0;
      for (std::size_t i = first; i <= last; ++i) {
        sum += wanted[i] - (length + lengths[i] / 2);
        length += lengths[i];
      }
      double left = std::clamp(sum / static_cast<double>(last - first + 1), low, high - length);
      for (std::size_t i = first; i <= last; ++i) {
        at[i] = left + lengths[i] / 2;
        left += lengths[i];
      }
      first = last + 1;
    }
    double cost = 0;
    bool fits = true;
    for (std::size_t i = 0; i < n; ++i) {
      cost += (at[i] - wanted[i]) * (at[i] - wanted[i]);
      if (i > 0) fits = fits && at[i] - lengths[i] / 2 > at[i - 1] + lengths[i - 1] / 2 - 1e-9;
    }
    if (fits && cost < least) {
      least = cost;
      best = at;
    }
  }
  return best;
}

std::string box_words(const BorderTag& tag) {
  return tag.placed
             ? format("{:.1f} {:.1f} {:.1f} {:.1f}", tag.box.left, tag.box.top, tag.box.right, tag.box.bottom)
             : "none";
}

}  // namespace

TEST_CASE("what overlaps becomes a block about its middle") {
  const std::vector<double> at = spread_out({10, 12, 30}, {6, 6, 6}, 0, 100);
  REQUIRE(at.size() == 3);
  CHECK(at[0] == doctest::Approx(8));
  CHECK(at[1] == doctest::Approx(14));
  CHECK(at[2] == doctest::Approx(30));
}

TEST_CASE("an end of the room pushes the block back") {
  const std::vector<double> at = spread_out({1, 2}, {4, 4}, 0, 100);
  REQUIRE(at.size() == 2);
  CHECK(at[0] == doctest::Approx(2));
  CHECK(at[1] == doctest::Approx(6));
}

TEST_CASE("equal to the best of all ways to touch, over 2000 seeded rows") {
  std::mt19937 random(11);
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    const std::size_t n = 1 + random() % 8;
    std::vector<double> wanted, lengths;
    double total = 0;
    for (std::size_t i = 0; i < n; ++i) {
      wanted.push_back(static_cast<double>(random() % 1000) / 10);
      lengths.push_back(3 + static_cast<double>(random() % 100) / 10);
      total += lengths.back();
    }
    std::sort(wanted.begin(), wanted.end());
    const double high = std::max(100.0, total);
    const std::vector<double> at = spread_out(wanted, lengths, 0, high),
                              twin = best_of_all_blocks(wanted, lengths, 0, high);
    REQUIRE(at.size() == n);
    REQUIRE(twin.size() == n);
    for (std::size_t i = 0; i < n; ++i) CHECK(at[i] == doctest::Approx(twin[i]));
  }
}

TEST_CASE("a tag stands at the edge that its header is nearest to, its leader on the side of the board") {
  BorderTagProblem problem;
  problem.board = {25, 11, 165, 91};
  problem.headers = {{40, 13, 50, 18}, {60, 80, 70, 89}, {26, 40, 30, 50}, {150, 60, 163, 70}};
  problem.widths = {12, 12, 12, 12};
  problem.room = {0, 0, 190, 102};
  const std::vector<BorderTag> tags = plan_border_tags(problem);
  REQUIRE(tags.size() == 4);
  CHECK(box_words(tags[0]) == "39.0 2.1 51.0 6.5");
  CHECK(box_words(tags[1]) == "59.0 95.5 71.0 99.9");
  CHECK(box_words(tags[2]) == "8.5 42.8 20.5 47.2");
  CHECK(box_words(tags[3]) == "169.5 62.8 181.5 67.2");
  CHECK(tags[0].port.y == doctest::Approx(6.5));
  CHECK(tags[1].port.y == doctest::Approx(95.5));
  CHECK(tags[2].port.x == doctest::Approx(20.5));
  CHECK(tags[3].port.x == doctest::Approx(169.5));
}

TEST_CASE("a full edge gives its headers to the next one, and none overlap; what finds no edge says so") {
  BorderTagProblem problem;
  problem.board = {25, 11, 65, 41};
  problem.room = {0, 0, 90, 52};
  for (int i = 0; i < 30; ++i) {
    problem.headers.push_back({26.0 + i, 13, 26.5 + i, 16});
    problem.widths.push_back(14);
  }
  const std::vector<BorderTag> tags = plan_border_tags(problem);
  int placed = 0;
  for (std::size_t i = 0; i < tags.size(); ++i) {
    if (!tags[i].placed) continue;
    ++placed;
    CHECK(tags[i].box.left >= 0);
    CHECK(tags[i].box.right <= 90);
    for (std::size_t k = 0; k < i; ++k) {
      if (tags[k].placed) CHECK_FALSE(overlap(tags[i].box, tags[k].box));
    }
  }
  // Six of 14.7 mm in 90 mm above and below, six of 5.1 mm in 31.4 mm at each side.
  CHECK(placed == 24);
}

}  // namespace plugward
