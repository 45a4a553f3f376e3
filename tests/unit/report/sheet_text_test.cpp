// SPDX-License-Identifier: MIT
#include "report/sheet_text.h"

#include <doctest/doctest.h>

using namespace plugward;
using namespace plugward::sheet;

namespace {

Document with(Block block) {
  Document document;
  document.title = {.machine = "", .harness = "H", .board = "B", .old_board = "", .date = ""};
  document.heading = "H on B";
  document.verdict = "MATE";
  document.mood = Mood::Good;
  document.summary = "plug it in";
  document.limits = "Limits.";
  Section section{.id = "one", .title = "One", .blocks = {}, .own_page = false};
  section.blocks.push_back(std::move(block));
  document.sections = {section};
  return document;
}

const std::string above =
    "MATE: plug it in\n\nH on B\n  machine  ____________\n  harness  H\n  board    B\n  date     "
    "____________\n\nOne\n";
const std::string below = "\nLimits.\n";

Cell plain(std::string text) {
  return {std::move(text), Mood::Plain, ""};
}

}  // namespace

TEST_CASE("a table that is narrow enough stays one") {
  const Document document = with(Table{{"what", "why"}, {{plain("a"), plain("b")}, {plain("c")}}});
  CHECK(sheet_text(document) == above + "  what  why\n  a     b\n  c\n" + below);
}

TEST_CASE("a table that is too wide becomes a list, columns without a name before the first that has one") {
  const std::string wide(30, 'w');
  const Document document =
      with(Table{{"", "what", "where", ""}, {{plain("harm"), plain("it"), plain("here"), plain("x")}}});
  CHECK(sheet_text(document, {.colour = false, .width = 20}) ==
        "MATE: plug it in\n\nH on B\n  machine  ____________\n  harness  H\n  board    B\n  date     "
        "____________\n\nOne\n  - harm: it; where:\n    here; x\n\nLimits.\n");
  const Document long_one = with(Table{
      {"", "what", "where"}, {{plain("harm"), plain(wide + wide), plain(wide + " " + wide + " " + wide)}}});
  CHECK(sheet_text(long_one) == above + "  - harm: " + wide + wide + "\n    where: " + wide + " " + wide +
                                    "\n      " + wide + "\n" + below);
}

TEST_CASE("a step with all that it can have, and a picture in words") {
  Step step;
  step.number = 12;
  step.cautions = {"slowly"};
  step.act = "do";
  step.see = "it";
  step.wrong = "stop";
  step.parts = {"half"};
  step.blanks = {{"r12-1", "J1.1 to J1.2", "1..2 V", 1.0, 2.0, "V", "too little", "too much"}};
  step.code = "M119";
  step.not_proved = "all";
  step.picture = "plug-1";
  step.power = true;
  Document document = with(Steps{{step}});
  document.sections[0].blocks.emplace_back(Picture{"plug-1", PictureKind::Plug, 0, "Plug 'p'", "One.\nTwo."});
  CHECK(sheet_text(document) == above +
                                    "       !   slowly\n"
                                    "  [ ]  12. do (power on)\n"
                                    "           [ ] half\n"
                                    "           check with: M119\n"
                                    "           must be seen: it\n"
                                    "           if not: stop\n"
                                    "           does not prove: all\n"
                                    "           picture: Plug 'p'\n"
                                    "           J1.1 to J1.2  1..2 V  ______ V  low a, high b\n"
                                    "  Readings that are not as expected point to:\n"
                                    "     a  too little\n"
                                    "     b  too much\n"
                                    "\n  Plug 'p'\n  - One.\n  - Two.\n" +
                                    below);
}
