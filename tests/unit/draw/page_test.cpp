// SPDX-License-Identifier: MIT
// Rules that every page keeps, measured with the real fonts: no text on text, none off the page, none under 9
// points.
#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "draw/text_fit.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

/// Text boxes reach a little beyond the letters; this much may be shared.
constexpr double slack = 0.05;

std::string faults(const Scene& scene, const TextMeasure& measure) {
  std::vector<std::string> found;
  std::vector<std::pair<Box, std::string>> boxes;
  for (const Group& group : scene.groups) {
    for (const auto& item : group.items) {
      const Words* words = std::get_if<Words>(&item);
      if (words == nullptr) continue;
      const std::string name = format("'{}' ({})", words->text, group.name);
      if (words->points < 9) found.push_back(name + " is too small");
      if (words->text.empty()) continue;
      const Box box = words_box(*words, measure);
      if (box.left < -slack || box.top < -slack || box.right > scene.width + slack ||
          box.bottom > scene.height + slack) {
        found.push_back(name + " leaves the page");
      }
      for (const auto& [other, other_name] : boxes) {
        if (overlap(box, other, slack)) found.push_back(name + " lies on " + other_name);
      }
      boxes.emplace_back(box, name);
    }
  }
  return format("{}", join(found, "\n"));
}

}  // namespace

TEST_CASE("no text lies on other text, leaves the page or is small: fixtures") {
  const auto measure = make_text_measure();
  for (const test::FixturePtr& f : test::all_fixtures()) {
    for (const View view : {View::WireSide, View::MatingFace}) {
      CAPTURE(f->name);
      MatingPictureOptions options;
      options.view = view;
      CHECK(faults(mating_picture(f->fitting, f->advice, options, *measure), *measure) == "");
    }
  }
}

TEST_CASE("no text lies on other text, leaves the page or is small: Letter paper") {
  const auto measure = make_text_measure();
  for (const test::FixturePtr& f : test::all_fixtures()) {
    CAPTURE(f->name);
    MatingPictureOptions options;
    options.width = 259;
    options.height = 196;
    CHECK(faults(mating_picture(f->fitting, f->advice, options, *measure), *measure) == "");
  }
}

TEST_CASE("no text lies on other text, leaves the page or is small: 200 random plugs") {
  const auto measure = make_text_measure();
  for (unsigned seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const test::FixturePtr f = test::random_fixture(seed);
    MatingPictureOptions options;
    options.view = seed % 2 == 0 ? View::WireSide : View::MatingFace;
    CHECK(faults(mating_picture(f->fitting, f->advice, options, *measure), *measure) == "");
  }
}

}  // namespace plugward
