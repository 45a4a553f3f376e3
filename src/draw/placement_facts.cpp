// SPDX-License-Identifier: MIT
// Tested in placement_picture_test.cpp.
#include "draw/placement_facts.h"

#include <algorithm>
#include <array>
#include <utility>

#include "base/counted.h"
#include "draw/page_plan.h"
#include "draw/words.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr double column_width = 66;
constexpr double line_room = 7;  ///< between a column and the board
constexpr double legend_height = 15;

/// What there is to do at this plug, in two or three words.
std::string work_words(const PlugAdvice& one) {
  const Advice& advice = one.advice;
  switch (advice.verdict) {
    case Verdict::Mate:
      return tr("as it is");
    case Verdict::Repin:
      return format("move {}", counted(one.moves, "{} contact", "{} contacts"));
    case Verdict::Adapt: {
      const std::size_t parts = std::max(advice.parts.size(), advice.cures.size());
      return format("add {}", counted(std::max<std::size_t>(parts, 1), "{} part", "{} parts"));
    }
    case Verdict::Measure:
      return advice.measurements.empty() ? std::string(tr("find out first"))
                                         : count_of(advice.measurements.size(), "measure once",
                                                    "measure {} times", advice.measurements.size());
    case Verdict::Apart:
      break;
  }
  return tr("keep apart");
}

CalloutText text_of(const PlacementFacts& facts, std::size_t i) {
  const Placement& placement = facts.fitting.placements[i];
  const Header& header = header_of(facts.fitting, placement.header);
  CalloutText text;
  text.header = header_name(header);
  text.plug = plug_of(facts.fitting, placement.plug).id;
  text.work = work_words(facts.plugs[i]);
  text.verdict = facts.plugs[i].advice.verdict;
  std::vector<std::string> notes;
  if (header.underside) notes.emplace_back(tr("underside"));
  std::vector<std::string> ids;
  for (const int other : facts.alike[i]) ids.push_back(header_of(facts.fitting, other).id);
  if (!ids.empty()) notes.push_back(format("looks like {}", join(ids, ", ")));
  text.notes = format("{}", join(notes, "; "));
  return text;
}

}  // namespace

Box board_field(const SheetSize& sheet) {
  return {page::inset, page::title_height + 2.5, sheet.width - page::inset,
          sheet.height - page::foot_height - legend_height};
}

Box callout_column(const SheetSize& sheet, bool right) {
  const Box field = board_field(sheet);
  return right ? Box{field.right - column_width, field.top, field.right, field.bottom}
               : Box{field.left, field.top, field.left + column_width, field.bottom};
}

void lay_placement(PlacementFacts& facts, SheetSize sheet) {
  facts.sheet = sheet;
  const Box left = callout_column(sheet, false), right = callout_column(sheet, true);
  facts.board = place_board(*facts.fitting.board, *facts.fitting.catalogue,
                            {left.right + line_room, left.top + 1, right.left - line_room, left.bottom - 1});
  std::vector<Point> anchors;
  for (const Placement& placement : facts.fitting.placements) {
    const Box& b = facts.board.headers[static_cast<std::size_t>(placement.header)];
    anchors.push_back({(b.left + b.right) / 2, (b.top + b.bottom) / 2});
  }
  facts.callouts = plan_callouts(anchors, left.right + 0.8, right.left - 0.8, left.top, left.bottom);
  for (std::size_t i = 0; i < anchors.size(); ++i)
    facts.callouts.slots[i].tag = facts.fitting.placements[i].plug + 1;
  facts.by_tag.clear();
  for (std::size_t i = 0; i < anchors.size(); ++i) facts.by_tag.push_back(static_cast<int>(i));
  std::sort(facts.by_tag.begin(), facts.by_tag.end(), [&](int a, int b) {
    return facts.callouts.slots[static_cast<std::size_t>(a)].tag <
           facts.callouts.slots[static_cast<std::size_t>(b)].tag;
  });
}

PlacementFacts gather_placement(const Fitting& fitting, const Advice& advice, SheetSize sheet) {
  AdviceByPlug by_plug = advice_by_plug(fitting, advice);
  PlacementFacts facts{
      fitting, advice, sheet, std::move(by_plug.plugs), look_alikes(fitting), std::move(by_plug.together), {},
      {},      {},     {}};
  lay_placement(facts, sheet);
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) facts.texts.push_back(text_of(facts, i));
  return facts;
}

void retell(PlacementFacts& facts, std::size_t placement) {
  facts.texts[placement] = text_of(facts, placement);
}

std::string count_words(const PlacementFacts& facts) {
  std::array<int, 5> count{};
  int moves = 0;
  for (const PlugAdvice& one : facts.plugs) {
    ++count[static_cast<std::size_t>(one.advice.verdict)];
    moves += one.moves;
  }
  std::vector<std::string> parts;
  for (const Verdict verdict :
       {Verdict::Mate, Verdict::Repin, Verdict::Adapt, Verdict::Measure, Verdict::Apart}) {
    const int n = count[static_cast<std::size_t>(verdict)];
    if (n == 0) continue;
    parts.push_back(verdict == Verdict::Repin ? format("{} {} ({})", n, to_word(verdict),
                                                       counted(moves, "{} contact", "{} contacts"))
                                              : format("{} {}", n, to_word(verdict)));
  }
  return format("{}: {}", counted(facts.plugs.size(), "{} plug", "{} plugs"), join(parts, ", "));
}

std::string describe(const PlacementFacts& facts) {
  std::string text = format("Verdict {}. {}.", to_word(facts.advice.verdict), count_words(facts));
  for (const int i : facts.by_tag) {
    const std::size_t k = static_cast<std::size_t>(i);
    const CalloutText& callout = facts.texts[k];
    text += format(" {}: plug {} on {}: {}, {}", facts.callouts.slots[k].tag, callout.plug, callout.header,
                   to_word(callout.verdict), callout.work);
    text += callout.notes.empty() ? "." : format("; {}.", callout.notes);
  }
  for (const Finding& finding : facts.together)
    text += format(" Together: {}: {}.", tr(to_word(finding.weight)), finding.message);
  return text;
}

}  // namespace plugward
