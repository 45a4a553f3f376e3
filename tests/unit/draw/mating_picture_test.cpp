// SPDX-License-Identifier: MIT
// Whole pictures: is everything where its number says, and does a picture stay as it was.
// PLUGWARD_REWRITE=1 in the environment writes the golden files anew.
#include "draw/mating_picture.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

#include "base/file.h"
#include "base/format.h"
#include "draw/shapes.h"
#include "unit/draw/fixtures.h"
#include "unit/draw/scene_query.h"

namespace plugward {
namespace {

using test::find_group;
using test::first_shape;
using test::first_words;
using test::middle;

constexpr View both_views[] = {View::WireSide, View::MatingFace};

Scene picture(const test::Fixture& f, View view) {
  const test::StubMeasure measure;
  MatingPictureOptions options;
  options.view = view;
  return mating_picture(f.fitting, f.advice, options, measure);
}

/// Cavity whose square is nearest to p.
int nearest_cavity(const Scene& scene, const std::string& frame, int positions, Point p) {
  int best = 0;
  double least = 1e9;
  for (int n = 1; n <= positions; ++n) {
    const Point c = middle(first_shape(*find_group(scene, format("{} cavity {}", frame, n))));
    const double d = std::hypot(c.x - p.x, c.y - p.y);
    if (d < least) {
      least = d;
      best = n;
    }
  }
  return best;
}

}  // namespace

TEST_CASE("cavities of one row stand in the order of their numbers, mirrored in the mating face") {
  for (const test::FixturePtr& f : test::all_fixtures()) {
    const Plug& plug = f->harness.plugs[0];
    if (plug.rows != 1) continue;
    for (const View view : both_views) {
      CAPTURE(f->name);
      const Scene scene = picture(*f, view);
      for (int n = 1; n < plug.positions; ++n) {
        CAPTURE(n);
        const Point a = middle(first_shape(*find_group(scene, format("now cavity {}", n))));
        const Point b = middle(first_shape(*find_group(scene, format("now cavity {}", n + 1))));
        CHECK((view == View::WireSide ? b.x - a.x : a.x - b.x) > 1);
        CHECK(a.y == doctest::Approx(b.y));
      }
    }
  }
}

TEST_CASE("two rows: columns by number, the row of cavity 1 below") {
  const test::FixturePtr f = test::ribbon_ten();
  for (const View view : both_views) {
    const Scene scene = picture(*f, view);
    const auto at = [&](int n) {
      return middle(first_shape(*find_group(scene, format("now cavity {}", n))));
    };
    for (int odd = 1; odd <= 9; odd += 2) {
      CHECK(at(odd).x == doctest::Approx(at(odd + 1).x));
      CHECK(at(odd).y > at(odd + 1).y + 1);
      if (odd < 9)
        CHECK((view == View::WireSide ? at(odd + 2).x - at(odd).x : at(odd).x - at(odd + 2).x) > 1);
    }
  }
}

TEST_CASE("header pins always stand as seen from above, pin 1 at the left") {
  for (const test::FixturePtr& f : test::all_fixtures()) {
    if (f->board.headers[0].rows != 1) continue;
    for (const View view : both_views) {
      CAPTURE(f->name);
      const Scene scene = picture(*f, view);
      for (int n = 1; n < f->board.headers[0].positions; ++n) {
        CHECK(middle(first_shape(*find_group(scene, format("header pin {}", n)))).x + 1 <
              middle(first_shape(*find_group(scene, format("header pin {}", n + 1)))).x);
      }
    }
  }
}

TEST_CASE("from the wire side every cavity stands above the pin that it will meet") {
  for (const test::FixturePtr& f :
       {test::probe_to_repin(), test::motor_mates(), test::ribbon_ten(), test::twenty_in_a_row()}) {
    CAPTURE(f->name);
    const Scene scene = picture(*f, View::WireSide);
    for (int n = 1; n <= f->harness.plugs[0].positions; ++n) {
      CHECK(middle(first_shape(*find_group(scene, format("now cavity {}", n)))).x ==
            doctest::Approx(middle(first_shape(*find_group(scene, format("header pin {}", n)))).x));
    }
  }
}

TEST_CASE("every number, lead and label belongs to its cavity") {
  for (const test::FixturePtr& f : test::all_fixtures()) {
    for (const View view : both_views) {
      const Scene scene = picture(*f, view);
      const int positions = f->harness.plugs[0].positions;
      for (const std::string frame : {"now", "then"}) {
        if (find_group(scene, frame + " cavity 1") == nullptr) continue;
        for (int n = 1; n <= positions; ++n) {
          CAPTURE(f->name);
          CAPTURE(frame);
          CAPTURE(n);
          const Group& cavity = *find_group(scene, format("{} cavity {}", frame, n));
          const Point centre_of = middle(first_shape(cavity));
          CHECK(first_words(cavity).text == format("{}", n));
          CHECK(first_words(cavity).at.x == doctest::Approx(centre_of.x));
          const Group* lead = find_group(scene, format("{} lead in cavity {}", frame, n));
          const Group* label = find_group(scene, format("{} label of cavity {}", frame, n));
          REQUIRE((lead == nullptr) == (label == nullptr));
          if (lead == nullptr) continue;
          const Shape& wire = first_shape(*lead);
          CHECK(path_start(wire).x == doctest::Approx(centre_of.x));
          CHECK(path_start(wire).y == doctest::Approx(centre_of.y));
          // The label stands at the wire's other end; upright text within half a line of it.
          CHECK(std::abs(first_words(*label).at.x - path_end(wire).x) < 4.5);
        }
      }
    }
  }
}

TEST_CASE("the tag on a lead carries the code of the lead that sits there") {
  const test::FixturePtr f = test::probe_to_repin();
  for (const View view : both_views) {
    const Scene scene = picture(*f, view);
    const auto code = [&](const char* frame, int n) {
      return first_words(*find_group(scene, format("{} lead in cavity {}", frame, n))).text;
    };
    CHECK(code("now", 1) == "BN");
    CHECK(code("now", 2) == "RD");
    CHECK(code("now", 3) == "OG");
    CHECK(code("then", 1) == "OG");
    CHECK(code("then", 2) == "RD");
    CHECK(code("then", 3) == "BN");
  }
}

TEST_CASE("arcs begin and end at the cavities that the step names") {
  std::vector<test::FixturePtr> fixtures = test::all_fixtures();
  for (unsigned seed = 1; seed <= 60; ++seed) fixtures.push_back(test::random_fixture(seed));
  int arcs = 0;
  for (const test::FixturePtr& f : fixtures) {
    if (!f->advice.plan) continue;
    const PlugPlan& plan = f->advice.plan->plugs[0];
    const int positions = f->harness.plugs[0].positions;
    for (const View view : both_views) {
      CAPTURE(f->name);
      const Scene scene = picture(*f, view);
      for (std::size_t i = 0; i < plan.steps.size(); ++i) {
        CAPTURE(i);
        const Step& step = plan.steps[i];
        const Shape& arc = first_shape(*find_group(scene, format("step {}", i + 1)));
        if (step.from > 0) {
          CHECK(nearest_cavity(scene, "now", positions, path_start(arc)) == step.from);
          ++arcs;
        }
        if (step.kind == StepKind::Park)
          CHECK(nearest_cavity(scene, "now", positions, path_end(arc)) == step.to);
        if (step.kind == StepKind::Move || step.kind == StepKind::Insert)
          CHECK(nearest_cavity(scene, "then", positions, path_end(arc)) == step.to);
      }
    }
  }
  CHECK(arcs > 100);
}

TEST_CASE("a plug that is too long says so instead of drawing small") {
  const test::FixturePtr f = test::twenty_in_a_row();
  f->advice = {};
  f->advice.verdict = Verdict::Mate;
  f->harness.plugs[0].positions = 50;
  const Scene scene = picture(*f, View::WireSide);
  REQUIRE(find_group(scene, "not drawn") != nullptr);
  CHECK(find_group(scene, "now cavity 1") == nullptr);
}

TEST_CASE("so does one whose header cannot be read at the same scale") {
  const test::FixturePtr f = test::motor_mates();
  Family fine;
  fine.id = "xh-2.50";
  fine.pitch = Millimetres(0.5);
  f->catalogue.add(fine);
  f->harness.plugs[0].family = "screw-5.08";
  CHECK(find_group(picture(*f, View::WireSide), "not drawn") != nullptr);
}

TEST_CASE("a flag stands in the picture only when the panel explains it") {
  const test::FixturePtr f = test::limit_apart();
  const auto flags = [&] {
    const Scene scene = picture(*f, View::WireSide);
    std::string signs;
    for (int n = 1; n <= 2; ++n) {
      for (const auto& item : find_group(scene, format("now label of cavity {}", n))->items) {
        const Words* words = std::get_if<Words>(&item);
        if (words != nullptr && words->bold) signs += words->text;
      }
    }
    return signs;
  };
  CHECK(flags() == "21");
  std::string& second = f->advice.now.findings[1].message;
  for (int i = 0; i < 60; ++i) second += " and so it goes on";
  CHECK(flags() == "1");
}

TEST_CASE("golden scenes") {
  struct Row {
    test::FixturePtr (*make)();
    View view;
    std::string_view file;
  };
  const Row rows[] = {
      {test::probe_to_repin, View::WireSide, "probe_to_repin"},
      {test::probe_to_repin, View::MatingFace, "probe_to_repin_mating_face"},
      {test::ribbon_swapped, View::WireSide, "ribbon_swapped"},
      {test::motor_mates, View::WireSide, "motor_mates"},
      {test::limit_apart, View::WireSide, "limit_apart"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.file);
    const std::string path = format("{}/tests/unit/draw/golden/{}.scene", PLUGWARD_SOURCE_DIR, row.file);
    const std::string now = dump(picture(*row.make(), row.view));
    if (const char* rewrite = std::getenv("PLUGWARD_REWRITE");
        rewrite != nullptr && std::string_view(rewrite) == "1")
      write_file(path, now);
    CHECK(now == read_file(path));
  }
}

}  // namespace plugward
