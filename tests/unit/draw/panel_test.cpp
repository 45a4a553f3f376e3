// SPDX-License-Identifier: MIT
#include "draw/panel.h"

#include <doctest/doctest.h>

#include "draw/style.h"
#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

using Mark = Paragraph::Mark;

/// What stands in a panel that is `lines` lines of type high, one line a line.
std::string set_in(double lines, const std::vector<Paragraph>& paragraphs) {
  const test::StubMeasure measure;
  Group group;
  add_paragraphs(group, paragraphs, {0, 0, 70, lines * style::line_height(9)}, "more", measure);
  std::string text;
  for (const auto& item : group.items) {
    if (const Words* words = std::get_if<Words>(&item); words != nullptr && !words->text.empty())
      text += words->text + "\n";
  }
  return text;
}

}  // namespace

TEST_CASE("a heading never stands alone; what is left out is counted without headings") {
  // 1.3 mm between paragraphs: about a third of a line.
  const std::vector<Paragraph> paragraphs{
      {Mark::None, "", "summary", false},
      {Mark::None, "", "Nothing here", true},
      {Mark::None, "", "Find cavity 1", true},
      {Mark::None, "", "a notch at one end of the housing; copies may lack it", false},
      {Mark::None, "", "Tell the firmware", true},
      {Mark::None, "", "turn it round", false}};
  struct Row {
    double lines;
    std::string expected;
  };
  const std::string notch = "a notch at one end of the housing;\ncopies may lack it\n";
  const Row rows[] = {
      {1.5, "… 3 more\n"},
      {3.0, "summary\n… 2 more\n"},
      // Room for the heading and one of the two lines under it, not for both.
      {5.5, "summary\n… 2 more\n"},
      {6.5, "summary\nFind cavity 1\n" + notch + "… 1 more\n"},
      {7.5, "summary\nFind cavity 1\n" + notch + "… 1 more\n"},
      {9.5, "summary\nFind cavity 1\n" + notch + "Tell the firmware\nturn it round\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.lines);
    CHECK(set_in(row.lines, paragraphs) == row.expected);
  }
}

TEST_CASE("nothing is left out: no line is kept for a count") {
  const std::vector<Paragraph> paragraphs{{Mark::None, "", "Find cavity 1", true},
                                          {Mark::None, "", "a notch", false}};
  CHECK(set_in(2.7, paragraphs) == "Find cavity 1\na notch\n");
  CHECK(set_in(2.6, paragraphs) == "… 1 more\n");
}

TEST_CASE("two columns: the right one begins with a heading; one long list is broken within") {
  const test::StubMeasure measure;
  const auto columns = [&](const std::vector<Paragraph>& paragraphs, double lines) {
    Group group;
    const Box room{0, 0, 146, lines * style::line_height(9)};
    const std::size_t set = add_paragraph_columns(group, paragraphs, room, "more", measure);
    std::string left, right;
    for (const auto& item : group.items) {
      const Words* words = std::get_if<Words>(&item);
      if (words == nullptr || words->text.empty()) continue;
      (words->at.x < 73 ? left : right) += words->text + "\n";
    }
    return left + "|\n" + right + std::to_string(set);
  };
  const std::vector<Paragraph> two{{Mark::None, "", "Moves", true},
                                   {Mark::None, "", "one", false},
                                   {Mark::None, "", "two", false},
                                   {Mark::None, "", "Take care", true},
                                   {Mark::None, "", "power off", false}};
  CHECK(columns(two, 20) == "Moves\none\ntwo\n|\nTake care\npower off\n5");
  CHECK(height_in_columns(two, 146, measure) ==
        doctest::Approx(height_of({two[0], two[1], two[2]}, 70, measure)));

  std::vector<Paragraph> list{{Mark::None, "", "Moves", true}};
  for (const char* text : {"one", "two", "three", "four", "five"})
    list.push_back({Mark::None, "", text, false});
  CHECK(columns(list, 20) == "Moves\none\ntwo\n|\nthree\nfour\nfive\n6");
  // Room for three lines a column: the last of the right one counts what is left out.
  CHECK(columns(list, 4) == "Moves\none\ntwo\n|\nthree\nfour\nfive\n6");
  CHECK(columns(list, 2.8) == "Moves\none\n|\ntwo\n… 3 more\n3");
}

}  // namespace plugward
