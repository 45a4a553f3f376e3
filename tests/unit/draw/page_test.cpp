// SPDX-License-Identifier: MIT
// Rules that every page keeps, measured with the real fonts: no text on text, none off the page, none under 9
// points.
#include <doctest/doctest.h>

#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "unit/draw/fixtures.h"
#include "unit/draw/page_faults.h"

namespace plugward {
namespace {

using test::faults;

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
