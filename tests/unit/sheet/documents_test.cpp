// SPDX-License-Identifier: MIT
// What must hold of every sheet, on all demo sheets.
#include "sheet/documents.h"

#include <doctest/doctest.h>

#include <functional>
#include <set>
#include <string>

#include "base/format.h"
#include "report/sheet_markdown.h"
#include "report/sheet_text.h"
#include "sheet/picture_words.h"
#include "sheet/step_words.h"
#include "sheet/words.h"
#include "support/bench.h"
#include "support/machine.h"

using namespace plugward;
using plugward::test::Bench;
using plugward::test::Machine;

namespace {

template <class Kind>
void each(const sheet::Document& document, const std::function<void(const Kind&)>& visit) {
  for (const sheet::Section& section : document.sections) {
    for (const sheet::Block& block : section.blocks) {
      if (const auto* one = std::get_if<Kind>(&block)) visit(*one);
    }
  }
}

void each_step(const sheet::Document& document, const std::function<void(const sheet::Step&)>& visit) {
  each<sheet::Steps>(document, [&](const sheet::Steps& steps) {
    for (const sheet::Step& step : steps.steps) visit(step);
  });
}

std::set<std::string> pictures_of(const sheet::Document& document) {
  std::set<std::string> ids;
  each<sheet::Picture>(document, [&](const sheet::Picture& p) { CHECK(ids.insert(p.id).second); });
  return ids;
}

/// Ids stand once, numbers count up from 1, links lead somewhere.
void check_ids(const sheet::Document& document) {
  const std::set<std::string> pictures = pictures_of(document);
  std::set<std::string> sections, ids;
  for (const sheet::Section& section : document.sections) {
    CHECK(sections.insert(section.id).second);
    CHECK(!section.blocks.empty());
  }
  int number = 0;
  each_step(document, [&](const sheet::Step& step) {
    CHECK(step.number == ++number);
    CHECK(ids.insert(step.id).second);
    CHECK((step.picture.empty() || pictures.contains(step.picture)));
    for (const sheet::Blank& blank : step.blanks) CHECK(ids.insert(blank.id).second);
  });
  each<sheet::Table>(document, [&](const sheet::Table& table) {
    for (const auto& row : table.rows) {
      CHECK((table.head.empty() || row.size() <= table.head.size()));
      for (const sheet::Cell& cell : row) CHECK((cell.picture.empty() || pictures.contains(cell.picture)));
    }
  });
}

std::string without_layout(std::string_view text) {
  std::string words;
  for (const char c : text) {
    if (c != '\n' && c != ' ' && c != '\\' && c != '*') words += c;
  }
  return words;
}

/// All that the document says stands in the papers, whatever the line breaks.
void check_said(const sheet::Document& document) {
  for (const std::string& paper : {sheet_text(document), sheet_markdown(document)}) {
    const std::string words = without_layout(paper);
    const auto said = [&](std::string_view text) {
      INFO(text);
      CHECK(words.find(without_layout(text)) != std::string::npos);
    };
    said(document.heading);
    said(document.summary);
    said(document.limits);
    each<sheet::Text>(document, [&](const sheet::Text& t) { said(t.text); });
    each<sheet::Warning>(document, [&](const sheet::Warning& w) { said(w.text); });
    each<sheet::List>(document, [&](const sheet::List& list) {
      for (const std::string& item : list.items) said(item);
    });
    each<sheet::Table>(document, [&](const sheet::Table& table) {
      for (const auto& row : table.rows) {
        for (const sheet::Cell& cell : row) {
          if (columns_of(cell.text) < 20) said(cell.text);  // longer ones are broken beside other columns
        }
      }
    });
    each_step(document, [&](const sheet::Step& step) {
      for (const std::string* line : {&step.act, &step.see, &step.wrong, &step.code, &step.not_proved})
        said(*line);
      for (const std::string& line : step.cautions) said(line);
      for (const std::string& line : step.parts) said(line);
      for (const sheet::Blank& blank : step.blanks) said(blank.points);
    });
  }
}

/// Each link of the Markdown leads to a heading of it, and nothing is raw HTML.
void check_links(const std::string& markdown) {
  std::set<std::string> anchors;
  std::size_t begin = 0;
  while (begin < markdown.size()) {
    const std::size_t end = std::min(markdown.find('\n', begin), markdown.size());
    const std::string_view line = std::string_view(markdown).substr(begin, end - begin);
    if (line.starts_with("### ")) anchors.insert(markdown_anchor(line.substr(4)));
    begin = end + 1;
  }
  for (std::size_t at = markdown.find("](#"); at != std::string::npos; at = markdown.find("](#", at + 1)) {
    const std::string anchor = markdown.substr(at + 3, markdown.find(')', at) - at - 3);
    INFO(anchor);
    CHECK(anchors.contains(anchor));
  }
  for (std::size_t at = markdown.find('<'); at != std::string::npos; at = markdown.find('<', at + 1))
    CHECK(markdown[at - 1] == '\\');
}

/// The words of a picture name every lead of its plug and every pin of its header.
void check_pictures(const sheet::Document& document, const Fitting& fitting) {
  each<sheet::Picture>(document, [&](const sheet::Picture& picture) {
    if (picture.kind != sheet::PictureKind::Plug) return;
    const Placement& placed = fitting.placements[static_cast<std::size_t>(picture.placement)];
    const Plug& plug = plug_at(fitting, placed.plug);
    const Header& header = header_at(fitting, placed.header);
    for (const Lead& lead : plug.leads) {
      INFO(picture.words);
      CHECK(picture.words.find(lead_with_terminal(*fitting.harness, lead)) != std::string::npos);
    }
    for (const Pin& pin : header.pins) {
      const std::string words = format("{}.{}, {}", header.id, pin.number, pin_words(fitting, pin));
      INFO(words);
      CHECK(picture.words.find(words) != std::string::npos);
    }
  });
  each<sheet::Picture>(document, [&](const sheet::Picture& picture) {
    if (picture.kind != sheet::PictureKind::Board) return;
    for (const Header& header : fitting.board->headers) {
      CHECK(picture.words.find("\n" + header_title(header) + ": ") != std::string::npos);
    }
  });
}

void check_all(const sheet::Document& document, const Fitting& fitting) {
  check_ids(document);
  check_said(document);
  check_links(sheet_markdown(document));
  check_pictures(document, fitting);
}

}  // namespace

TEST_CASE("a check of one cable says in words all that it draws") {
  const Bench bench = Bench::shipped("heron-m7", "kite-probe");
  const Fitting fitting = bench.fitting({{"control", "J9"}, {"trigger", "J10"}}, {{"JP2", "5V"}});
  const Advice advice = advise(fitting, {.budget = true});
  const sheet::Document document = sheet::check_document(fitting, advice, {.sources = &bench.sources});
  CHECK(document.verdict == "REPIN");
  CHECK(document.mood == sheet::Mood::Caution);
  check_all(document, fitting);
}

TEST_CASE("a jumper that nobody stated: to be measured, and no settings yet") {
  const Bench bench = Bench::shipped("heron-m7", "kite-probe");
  const Fitting fitting = bench.fitting({{"control", "J9"}, {"trigger", "J10"}});
  const sheet::Document document = sheet::check_document(fitting, advise(fitting, {.budget = true}));
  CHECK(document.verdict == "MEASURE");
  CHECK(document.mood == sheet::Mood::Doubtful);
  for (const sheet::Section& section : document.sections) CHECK(section.id != "firmware");
  check_all(document, fitting);
}

TEST_CASE("a placement speaks of the headers that it chose") {
  const Bench bench = Bench::shipped("heron-m7", "kite-probe");
  const Fitting fitting = bench.fitting({}, {{"JP2", "5V"}});
  const PlacementPlan plan = place(fitting);
  REQUIRE(plan.best);
  check_all(sheet::placement_document(fitting, plan), sheet::placed_fitting(fitting, *plan.best));
}

TEST_CASE("no header for any plug: no pictures, but the reason") {
  const Bench bench(
      "<board id='b' title='B' width='50 mm' height='50 mm' evidence='e'><evidence id='e' "
      "kind='measurement'/>"
      "<rail id='24V' volts='24 V'/><header id='J1' use='supply' family='xh-2.50' positions='2'>"
      "<pin n='1' function='ground'/><pin n='2' function='supply' rail='24V'/></header></board>",
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>"
      "<device id='fan' use='fan'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
      "</device><plug id='p' family='xh-2.50' positions='3'><lead cavity='1' colour='RD' to='V'/>"
      "<lead cavity='2' colour='BK' to='G'/></plug></harness>");
  const Fitting fitting = bench.fitting({});
  const PlacementPlan plan = place(fitting);
  REQUIRE(!plan.best);
  const sheet::Document document = sheet::placement_document(fitting, plan);
  CHECK(document.verdict == "APART");
  CHECK(document.summary == "no plug of this harness finds a header on board 'b'");
  CHECK(pictures_of(document).empty());
  check_ids(document);
  check_said(document);
}

TEST_CASE("a whole machine as it stands is told to stay, not to be plugged in") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting fitting = machine->fitting();
  const Advice advice = advise_loom(*machine->loom, machine->bench, fitting, {.budget = true});
  const sheet::Document document =
      sheet::check_document(fitting, advice, {.sources = &machine->sources, .standing = true});
  check_all(document, fitting);
  each_step(document, [](const sheet::Step& step) { CHECK(!step.act.starts_with("plug it in")); });
}

TEST_CASE("a move to another board has both boards, every plug that goes over, and its order of work") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  const auto plan = plan_swap(before, *machine->to, {});
  const sheet::Document document =
      sheet::swap_document(swap_papers(*plan), {.machine = "Wren no. 3", .date = "2026-11-25"});
  CHECK(document.heading == "Moving 'Wren no. 3' to Heron M7 motion board");
  CHECK(document.verdict == "18 of 20 plugs");
  CHECK(document.summary ==
        "9 as they are, 7 re-pinned, 2 with a part added; 1 stays off until something is known or "
        "had; 1 finds no header");
  CHECK(document.title.old_board == "Heron A4 logic board, revision 2");
  check_all(document, plan->before_moves);
  const std::set<std::string> pictures = pictures_of(document);
  CHECK(pictures.size() == plan->before_moves.placements.size() + 3);  // two boards and true size
  int moving = 0;
  each_step(document, [&](const sheet::Step& step) {
    if (step.parts.empty()) return;
    ++moving;
    CHECK(!step.picture.empty());
  });
  CHECK(moving > 0);
}
