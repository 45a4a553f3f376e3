// SPDX-License-Identifier: MIT
#include "draw/text_fit.h"

#include <doctest/doctest.h>

#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

// The stub's letters are 0.6 of the type size wide: 10 points give 2.1167 mm a letter.
constexpr Type ten{10, false};
constexpr double letter = 0.6 * 10 * 25.4 / 72.0;
const test::StubMeasure measure;

double letters(int n) {
  return n * letter + 0.001;
}

}  // namespace

TEST_CASE("wrap") {
  struct Row {
    std::string_view name, text;
    int letters;
    std::vector<std::string> expected;
  };
  const Row rows[] = {
      {"fits", "one line", 8, {"one line"}},
      {"at the space", "one line", 7, {"one", "line"}},
      {"empty", "", 5, {""}},
      {"a long word is broken", "abcdefgh", 3, {"abc", "def", "gh"}},
      {"what follows a broken word stays with it", "abcde f", 3, {"abc", "de", "f"}},
      {"no spaces, code points stay whole", "苍鹭运动控制板", 3, {"苍鹭运", "动控制", "板"}},
      {"after a joint", "turn-around", 6, {"turn-", "around"}},
      {"a number stays with its unit", "at 4.75 V or", 8, {"at", "4.75 V", "or"}},
      {"what is counted stays with its number", "to cavity 3, held", 11, {"to", "cavity 3,", "held"}},
      {"a second blank begins no line", "one  to", 3, {"one", "to"}},
      {"a range breaks after its dots", "4.75..5.25 V", 8, {"4.75..", "5.25 V"}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(wrap(row.text, letters(row.letters), ten, measure) == row.expected);
  }
}

TEST_CASE("shorten keeps the beginning and marks what is missing") {
  CHECK(shorten("supply", letters(6), ten, measure) == "supply");
  CHECK(shorten("supply", letters(5), ten, measure) == "supp…");
  CHECK(shorten("电源电源", letters(3), ten, measure) == "电源…");
  CHECK(shorten("a b c", letters(3), ten, measure) == "a…");
}

TEST_CASE("wrap_at_most shortens the last line") {
  CHECK(wrap_at_most("one two three four", letters(5), 2, ten, measure) ==
        std::vector<std::string>{"one", "two…"});
  CHECK(wrap_at_most("one two", letters(5), 2, ten, measure) == std::vector<std::string>{"one", "two"});
}

TEST_CASE("words_box: anchors and quarter turns") {
  struct Row {
    std::string_view name;
    Anchor anchor;
    double rotation;
    Box expected;
  };
  const double em = 10 * 25.4 / 72.0, up = 0.93 * em, down = 0.24 * em, w = 2 * letter;
  const Row rows[] = {
      {"start", Anchor::Start, 0, {50, 50 - up, 50 + w, 50 + down}},
      {"middle", Anchor::Middle, 0, {50 - w / 2, 50 - up, 50 + w / 2, 50 + down}},
      {"end", Anchor::End, 0, {50 - w, 50 - up, 50, 50 + down}},
      {"upwards", Anchor::Start, 90, {50 - up, 50 - w, 50 + down, 50}},
      {"upwards, ending here", Anchor::End, 90, {50 - up, 50, 50 + down, 50 + w}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Box b = words_box(Words{{50, 50}, "ab", 10, false, 0, row.anchor, row.rotation}, measure);
    CHECK(b.left == doctest::Approx(row.expected.left));
    CHECK(b.top == doctest::Approx(row.expected.top));
    CHECK(b.right == doctest::Approx(row.expected.right));
    CHECK(b.bottom == doctest::Approx(row.expected.bottom));
  }
}

}  // namespace plugward
