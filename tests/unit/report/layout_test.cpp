// SPDX-License-Identifier: MIT
#include "report/layout.h"

#include <doctest/doctest.h>

namespace plugward {

TEST_CASE("layout: paragraphs break at spaces and never inside a word") {
  struct Row {
    const char* name;
    std::string text;
    Indent indent;
    std::string expected;
  };
  const Row rows[] = {
      {"short", "one two", {}, "one two\n"},
      {"exactly full", "0123456789 012345678", {}, "0123456789 012345678\n"},
      {"one too long", "0123456789 0123456789", {}, "0123456789\n0123456789\n"},
      {"indented", "alpha beta gamma delta", {"1. ", "   "}, "1. alpha beta gamma\n   delta\n"},
      {"a long path stands alone",
       "see harnesses/a/b/c/d/e/f.xml:1:2 now",
       {"  ", "  "},
       "  see\n  harnesses/a/b/c/d/e/f.xml:1:2\n  now\n"},
      {"code points count, not bytes",
       "\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4 123456789 x",
       {},
       "\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4\xC3\xA4 123456789\nx\n"},
      {"nothing", "", {}, "\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Paper paper({.colour = false, .width = 20});
    paper.paragraph(row.text, row.indent);
    CHECK(paper.text() == row.expected);
  }
}

TEST_CASE("layout: tables keep their columns, the last one is broken where there is room") {
  Paper wide({.colour = false, .width = 40});
  wide.table({{"harm", "a sentence that does not fit on one line"}, {"fault", "short"}, {"note"}});
  CHECK(wide.text() ==
        "  harm   a sentence that does not fit on\n         one line\n  fault  short\n  note\n");
  Paper narrow({.colour = false, .width = 20});
  narrow.table({{"harm", "a sentence that stays"}});
  CHECK(narrow.text() == "  harm  a sentence that stays\n");
}

TEST_CASE("layout: colour adds escape sequences and nothing else") {
  const TextOptions painted_options{.colour = true, .width = 12};
  const std::string word = painted("harm", Tone::Bad, painted_options);
  CHECK(word == "\x1b[1;31mharm\x1b[0m");
  CHECK(painted("harm", Tone::Bad, {}) == "harm");
  CHECK(painted("harm", Tone::Plain, painted_options) == "harm");
  CHECK(columns_of(word) == 4);
  Paper paper(painted_options);
  paper.paragraph(word + " a bbb cc");
  CHECK(paper.text() == word + " a bbb\ncc\n");
}

}  // namespace plugward
