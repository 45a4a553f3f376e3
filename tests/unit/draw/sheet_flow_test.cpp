// SPDX-License-Identifier: MIT
#include "draw/sheet_flow.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/sheet_flow_steps.h"
#include "draw/sheet_flow_table.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

const test::StubMeasure stub;
constexpr FlowRoom room{10, 20, 120};  ///< 100 mm high

FlowPiece block(const std::string& text, double height, double before = 0) {
  FlowPiece piece;
  piece.height = height;
  piece.before = before;
  Group group{text, {}};
  group.add(Words{{0, 3}, text, 9, false, 0, Anchor::Start, 0});
  piece.groups.push_back(std::move(group));
  return piece;
}

/// "a@20 b@50 | c@20": what stands on each page, and the top of each piece.
std::string shown(const FlowPages& flowed) {
  std::vector<std::string> pages;
  for (const auto& groups : flowed.pages) {
    std::vector<std::string> words;
    for (const Group& group : groups) {
      for (const auto& item : group.items) {
        if (const Words* w = std::get_if<Words>(&item))
          words.push_back(format("{}@{:g}", w->text, w->at.y - 3));
      }
    }
    pages.push_back(format("{}", join(words, " ")));
  }
  return format("{}", join(pages, " | "));
}

std::string flowed(const std::vector<FlowPiece>& pieces, const FlowRoom& first = room) {
  return shown(flow(pieces, first, room, stub));
}

}  // namespace

TEST_CASE("pieces follow each other; the gap before one is left out at the top of a page") {
  CHECK(flowed({block("a", 30, 5), block("b", 60, 5), block("c", 20, 5)}) == "a@20 b@55 | c@20");
}

TEST_CASE("a heading goes with what follows it") {
  FlowPiece heading = block("h", 10);
  heading.with_next = true;
  CHECK(flowed({block("a", 80), heading, block("b", 20)}) == "a@20 | h@20 b@30");
  CHECK(flowed({block("a", 70), heading, block("b", 20)}) == "a@20 h@90 b@100");
}

TEST_CASE("what is higher than a page together is parted between its pieces") {
  std::vector<FlowPiece> pieces{block("a", 20)};
  for (const char* name : {"b", "c", "d"}) {
    pieces.push_back(block(name, 45));
    pieces.back().with_next = true;
  }
  CHECK(flowed(pieces) == "a@20 b@40 | c@20 d@65");
}

TEST_CASE("the head of a table is set again at the top of the next page") {
  FlowPiece head = block("head", 10);
  const auto again = std::make_shared<const FlowPiece>(head);
  head.with_next = true;
  std::vector<FlowPiece> pieces{head};
  for (const char* name : {"r1", "r2", "r3", "r4"}) {
    pieces.push_back(block(name, 40));
    pieces.back().again = again;
  }
  CHECK(flowed(pieces) == "head@20 r1@30 r2@70 | head@20 r3@30 r4@70");
}

TEST_CASE("page 1 has less room, below its title block") {
  CHECK(flowed({block("a", 50), block("b", 50)}, {10, 60, 120}) == "a@60 | b@20");
  CHECK(flowed({block("a", 90)}, {10, 60, 120}) == " | a@20");
}

TEST_CASE("a section of its own page begins one, but no empty page arises") {
  FlowPiece own = block("own", 10);
  own.new_page = true;
  CHECK(flowed({own, block("a", 10), own}) == "own@20 a@30 | own@20");
}

TEST_CASE("a link leads to the place of its name, and says its page on paper") {
  FlowPiece from = block("from", 90), to = block("to", 50);
  from.links.push_back({{50, 0, 70, 5}, "plug-1", true});
  from.links.push_back({{0, 0, 5, 5}, "nowhere", true});
  to.name = "plug-1";
  to.title = "Plug 1";
  to.level = 1;
  const FlowPages pages = flow({from, to}, room, room, stub);
  CHECK(shown(pages).rfind("from@20 → page 2@", 0) == 0);
  REQUIRE(pages.links.size() == 1);
  CHECK(pages.links[0].page == 0);
  CHECK(pages.links[0].left == 60);
  CHECK(pages.links[0].top == 20);
  CHECK(pages.links[0].to.page == 1);
  CHECK(pages.links[0].to.y == 20);
  REQUIRE(pages.outline.size() == 1);
  CHECK(pages.outline[0].title == "Plug 1");
  CHECK(pages.outline[0].level == 1);
}

TEST_CASE("columns: natural widths, then least widths with a share of the rest, then squeezed") {
  CHECK(column_widths({10, 20}, {30, 40}, 100) == std::vector<double>{30, 40});
  CHECK(column_widths({10, 20}, {30, 60}, 60) == std::vector<double>{20, 40});
  CHECK(column_widths({10, 30}, {30, 60}, 20) == std::vector<double>{5, 15});
}

TEST_CASE("a mood is said by a sign") {
  CHECK(mood_sign(sheet::Mood::Plain) == "");
  CHECK(mood_sign(sheet::Mood::Good) == "✓");
  CHECK(mood_sign(sheet::Mood::Caution) == "!");
  CHECK(mood_sign(sheet::Mood::Bad) == "✗");
  CHECK(mood_sign(sheet::Mood::Doubtful) == "?");
}

TEST_CASE("a row higher than a page is parted between its lines; every line is kept") {
  std::string long_text;
  for (int i = 0; i < 60; ++i) long_text += format("word{} ", i);
  FlowText text(30, stub);
  add_table(text, {{"head"}, {{{long_text, sheet::Mood::Plain, ""}}}}, 60);
  const FlowRoom low{0, 0, 60};
  const FlowPages pages = flow(text.pieces, low, low, stub);
  CHECK(pages.pages.size() > 2);
  std::string all;
  for (const auto& groups : pages.pages) {
    bool head = false;
    for (const Group& group : groups) {
      for (const auto& item : group.items) {
        const Words* w = std::get_if<Words>(&item);
        if (w == nullptr) continue;
        CHECK(w->at.y < 60);
        if (w->text == "head") {
          head = true;
        } else {
          all += w->text + " ";
        }
      }
    }
    CHECK(head);
  }
  CHECK(all == long_text);
}

TEST_CASE("a step: cautions before the act, then what to see, parts, blanks and code") {
  sheet::Step step;
  step.number = 7;
  step.cautions = {"hot"};
  step.act = "measure";
  step.see = "5 V";
  step.wrong = "jumper";
  step.parts = {"red tip"};
  step.blanks = {{"b", "J9.2 to J9.3", "5 V", 4.5, 5.5, "V", "no supply", ""}};
  step.code = "M42 P0";
  step.not_proved = "the rest";
  FlowText text(190, stub);
  add_steps(text, {{step}});
  std::vector<std::string> words;
  for (const FlowPiece& piece : text.pieces) {
    for (const Group& group : piece.groups) {
      for (const auto& item : group.items) {
        if (const Words* w = std::get_if<Words>(&item)) words.push_back(w->text);
      }
    }
  }
  CHECK(words == std::vector<std::string>{"hot", "measure", "7", "You must see: 5 V", "If not: jumper",
                                          "red tip", "J9.2 to J9.3", "V", "expected: 5 V", "lower: no supply",
                                          "M42 P0", "Not proved by it: the rest"});
  for (std::size_t i = 0; i + 1 < text.pieces.size(); ++i) CHECK(text.pieces[i].with_next);
  CHECK_FALSE(text.pieces.back().with_next);
}

TEST_CASE("a run of steps with power on is announced once, and each of its steps still says so") {
  FlowText text(100, stub);
  const auto step = [](int number, const char* act, bool power) {
    sheet::Step s;
    s.number = number;
    s.act = act;
    s.power = power;
    return s;
  };
  add_steps(text, {{step(1, "look", false), step(2, "measure", true), step(3, "measure again", true),
                    step(4, "unplug", false), step(5, "measure last", true)}});
  std::vector<std::string> words;
  for (const FlowPiece& piece : text.pieces) {
    for (const Group& group : piece.groups) {
      for (const auto& item : group.items) {
        if (const Words* w = std::get_if<Words>(&item); w != nullptr && w->text.size() > 1)
          words.push_back(w->text);
      }
    }
  }
  CHECK(format("{}", join(words, "\n")) ==
        "look\nPower is ON during steps 2 to 3.\nmeasure\nPower ON: measure again\nunplug\n"
        "Power is ON during this step.\nmeasure last");
}

}  // namespace plugward
