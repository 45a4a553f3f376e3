// SPDX-License-Identifier: MIT
#include "draw/verdict_shape.h"

#include <doctest/doctest.h>

#include <set>

#include "unit/draw/fixtures.h"

namespace plugward {

TEST_CASE("each verdict is a word in an outline that no other has") {
  const test::StubMeasure measure;
  std::set<std::string> outlines;
  struct Row {
    Verdict verdict;
    std::string_view word;
  };
  const Row rows[] = {{Verdict::Mate, "MATE"},
                      {Verdict::Repin, "REPIN"},
                      {Verdict::Adapt, "ADAPT"},
                      {Verdict::Measure, "MEASURE"},
                      {Verdict::Apart, "APART"}};
  for (const Row& row : rows) {
    CAPTURE(row.word);
    Scene scene;
    Group group = verdict_shape(row.verdict, {0, 0, 56, 14}, measure);
    const Words words = std::get<Words>(group.items.back());
    CHECK(words.text == row.word);
    const Box box = words_box(words, measure);
    CHECK(box.left > 2);
    CHECK(box.right < 54);
    // Only the paths: inks do not count.
    for (auto& item : group.items) {
      if (Shape* shape = std::get_if<Shape>(&item)) {
        shape->fill.reset();
        shape->stroke.reset();
      }
    }
    group.items.pop_back();
    scene.groups.push_back(group);
    outlines.insert(dump(scene));
  }
  CHECK(outlines.size() == 5);
}

}  // namespace plugward
