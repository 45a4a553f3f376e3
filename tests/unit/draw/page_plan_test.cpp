// SPDX-License-Identifier: MIT
// A planner that is asked for several heights remembers what it worked out; the plans must be those of one
// that is asked for the first time. Whole pages are tested in page_test.cpp and mating_picture_test.cpp.
#include "draw/page_plan.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

std::string told(const std::optional<PagePlan>& plan) {
  if (!plan) return "does not fit";
  std::string labels;
  for (const std::vector<Label>* list : {&plan->labels.now, &plan->labels.then, &plan->labels.pins}) {
    for (const Label& label : *list) labels += format("{}|", join(label.phrases, ","));
  }
  return format(
      "{}:1, {:.3f} high, labels up to {}, {} columns of {:.3f} about {:.3f}, brief {}, header {}: {}",
      plan->scale, plan->total, plan->tallest, plan->columns.count, plan->columns.width, plan->columns.centre,
      plan->brief, plan->header_drawn, labels);
}

}  // namespace

TEST_CASE("plans for several heights are those for one height each") {
  const test::StubMeasure measure;
  std::vector<test::FixturePtr> fixtures = test::all_fixtures();
  for (unsigned seed = 1; seed <= 60; ++seed) fixtures.push_back(test::random_fixture(seed));
  bool some_fit = false, some_do_not = false;
  for (const test::FixturePtr& f : fixtures) {
    CAPTURE(f->name);
    const MatingFacts facts = gather(f->fitting, f->advice, 0);
    PagePlanner planner(facts, View::WireSide, 120, measure);
    // Down and up again: what was remembered is asked for in another order.
    for (const double height : {200.0, 60.0, 100.0, 140.0, 40.0, 200.0, 80.0}) {
      CAPTURE(height);
      const std::optional<PagePlan> known = planner.plan(34, height);
      CHECK(told(known) == told(plan_page(facts, View::WireSide, {34, 10, 154, 10 + height}, measure)));
      some_fit = some_fit || known;
      some_do_not = some_do_not || !known;
      if (known) CHECK(known->total <= height);
    }
  }
  CHECK(some_fit);
  CHECK(some_do_not);
}

}  // namespace plugward
