// SPDX-License-Identifier: MIT
#include "report/sheet_markdown.h"

#include <doctest/doctest.h>

#include <limits>

using namespace plugward;

TEST_CASE("signs of the files that mean something in Markdown are escaped") {
  struct Row {
    std::string_view text, expected;
  };
  // CommonMark 0.31, sections 2.4 "Backslash escapes" and 5.2 "List items" (from memory).
  for (const Row& row : {Row{"RD to 'V'", "RD to 'V'"},
                         {"a*b_c`d`", "a\\*b\\_c\\`d\\`"},
                         {"[x](y) <b> & | ~~z~~", "\\[x\\](y) \\<b> \\& \\| \\~\\~z\\~\\~"},
                         {"# no heading", "\\# no heading"},
                         {"- no item", "\\- no item"},
                         {"> no quote", "\\> no quote"},
                         {"3 -> 1", "3 -> 1"},
                         {"12. no number", "12\\. no number"},
                         {"12) no number", "12\\) no number"},
                         {"12.5 V", "12.5 V"},
                         {"two\nlines", "two lines"},
                         {"C:\\d", "C:\\\\d"},
                         {"", ""}}) {
    CHECK(markdown_escaped(row.text) == row.expected);
  }
}

TEST_CASE("anchors are those that common viewers make") {
  CHECK(markdown_anchor("Plug 'kite/control' on J9 (PROBE)") == "plug-kitecontrol-on-j9-probe");
  CHECK(markdown_anchor("Heron M7: where its headers are") == "heron-m7-where-its-headers-are");
  CHECK(markdown_anchor("a_b-c 1") == "a_b-c-1");
}

TEST_CASE("every block as Markdown, whole") {
  using namespace plugward::sheet;
  Document document;
  document.title = {.machine = "", .harness = "H", .board = "B", .old_board = "A", .date = "2026-11-25"};
  document.heading = "Moving";
  document.verdict = "1 of 1 plugs";
  document.summary = "go over";
  document.limits = "Limits.";
  Section first{.id = "one", .title = "One", .blocks = {}, .own_page = false};
  first.blocks.emplace_back(Text{"plain"});
  first.blocks.emplace_back(Text{"strong", true});
  first.blocks.emplace_back(Warning{"hot"});
  first.blocks.emplace_back(List{{"a", "b"}, false, true});
  first.blocks.emplace_back(List{{"c"}, true, false});
  first.blocks.emplace_back(Table{{"x", ""}, {{{"1|2", Mood::Plain, ""}, {"p", Mood::Bad, "plug-1"}}, {}}});
  Step step;
  step.id = "s1";
  step.number = 1;
  step.cautions = {"slowly"};
  step.act = "do";
  step.see = "it";
  step.wrong = "stop";
  step.parts = {"half"};
  step.blanks = {{"r1-1", "J1.1 to J1.2", "1..2 V", 1.0, 2.0, "V", "low", "high"},
                 {"r1-2", "colours", "1 RD", {}, {}, "", "other", "other"}};
  step.code = "M119";
  step.not_proved = "all";
  step.picture = "plug-1";
  step.power = true;
  first.blocks.emplace_back(Steps{{step}});
  first.blocks.emplace_back(Picture{"plug-1", PictureKind::Plug, 0, "One", "Line one.\nLine two."});
  document.sections = {first};
  CHECK(
      sheet_markdown(document) ==
      "# Moving\n\n**1 of 1 plugs**: go over\n\n"
      "- machine: ...............\n- harness: H\n- from board: A\n- to board: B\n- date: 2026-11-25\n\n"
      "## One\n\nplain\n\n**strong**\n\n> **Caution:** hot\n\n1. a\n2. b\n\n- [ ] c\n\n"
      "| x |  |\n| --- | --- |\n| 1\\|2 | **[p](#one-1)** |\n|  |  |\n\n"
      "- [ ] **1.** do (power on)\n"
      "  - **Caution, before this step:** slowly\n  - [ ] half\n  - check with: M119\n  - must be seen: it\n"
      "  - if not: stop\n  - does not prove: all\n  - picture: [One](#one-1)\n\n"
      "  | between | expected | reading | if too low | if too high, or not so |\n"
      "  | --- | --- | --- | --- | --- |\n"
      "  | J1.1 to J1.2 | 1..2 V | ........ V | low | high |\n"
      "  | colours | 1 RD | yes / no |  | other |\n\n\n"
      "### One\n\n- Line one.\n- Line two.\n\n---\n\nLimits.\n");
}
