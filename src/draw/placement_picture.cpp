// SPDX-License-Identifier: MIT
// Tested in placement_picture_test.cpp.
#include "draw/placement_picture.h"

#include <algorithm>

#include "base/format.h"
#include "draw/page_plan.h"
#include "draw/panel.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr Type usual{style::small_type, false};

TitleBar title_bar(const PlacementFacts& facts, const PagePlace& place) {
  const Board& board = *facts.fitting.board;
  return {0,
          format("{}{}", board.title,
                 board.revision.empty() ? std::string(tr(", revision not stated"))
                                        : format(", revision {}", board.revision)),
          count_words(facts), facts.advice.verdict, place};
}

}  // namespace

void add_placement_legend(Scene& scene, const PlacementFacts& facts, bool waves, bool& whole,
                          const TextMeasure& measure) {
  Group group{tr("legend"), {}};
  const Board& board = *facts.fitting.board;
  const double top = board_field(facts.sheet).bottom + 1.5, bottom = scene.height - page::foot_height - 0.5;
  group.add(polyline({{0, top}, {scene.width, top}}, stroked(style::outline, style::fine)));
  const double line = style::line_height(style::small_type);
  double y = top + 4.2;
  double x = page::inset;
  std::string text = format("Board from above, drawn {:.2g}:1; {} = pin 1; bold outline = takes a plug",
                            facts.board.scale, tr("dark square with triangle"));
  const bool underside =
      std::any_of(board.headers.begin(), board.headers.end(), [](const Header& h) { return h.underside; });
  if (underside) text += tr("; dashed = on the underside, seen through the board");
  std::vector<std::string> lines = wrap_at_most(text, scene.width - 2 * page::inset, 2, usual, measure);
  y = add_lines(group, lines, {x, y}, usual, style::quiet);
  if (waves && y < bottom) {
    add_wave_mark(group, {x + 2, y - 1.1});
    add_lines(group,
              {shorten(tr("another header near it has the same housing: read the print before you plug in"),
                       scene.width - x - 8, usual, measure)},
              {x + 5.5, y}, usual, style::quiet);
    y += line;
  }
  // What only the whole brings about, as much of it as there is room for.
  for (std::size_t i = 0; i < facts.together.size(); ++i) {
    if (y > bottom) {
      whole = false;
      break;
    }
    const bool last = y + line > bottom && i + 1 < facts.together.size();
    const Finding& finding = facts.together[i];
    const std::string told = format("All together: {}: {}{}", tr(to_word(finding.weight)), finding.message,
                                    last ? format("; and {} more", facts.together.size() - i - 1) : "");
    const std::string set = shorten(told, scene.width - 2 * page::inset, {style::small_type, true}, measure);
    whole = whole && set == told && !last;
    y = add_lines(group, {set}, {x, y}, {style::small_type, true}, style::text);
    if (last) break;
  }
  scene.groups.push_back(std::move(group));
}

BoardMarks placement_marks(const PlacementFacts& facts) {
  BoardMarks marks;
  for (std::size_t i = 0; i < facts.fitting.placements.size(); ++i) {
    const int header = facts.fitting.placements[i].header;
    marks.used.push_back(header);
    if (!facts.alike[i].empty()) marks.alike.push_back(header);
    for (const int other : facts.alike[i]) marks.alike.push_back(other);
  }
  std::sort(marks.alike.begin(), marks.alike.end());
  marks.alike.erase(std::unique(marks.alike.begin(), marks.alike.end()), marks.alike.end());
  return marks;
}

bool add_placement(Scene& scene, const PlacementFacts& facts, const TextMeasure& measure) {
  const BoardMarks marks = placement_marks(facts);
  std::vector<Leader> leaders;
  const Box columns[2] = {callout_column(facts.sheet, false), callout_column(facts.sheet, true)};
  for (std::size_t i = 0; i < facts.fitting.placements.size(); ++i) {
    const int header = facts.fitting.placements[i].header;
    const CalloutSlot& slot = facts.callouts.slots[i];
    if (slot.middle < 0) continue;
    leaders.push_back({{slot.right ? columns[1].left - 0.8 : columns[0].right + 0.8, slot.middle}, header});
  }
  draw_board(scene.groups, facts.board, *facts.fitting.board, *facts.fitting.catalogue, marks, leaders,
             measure);
  bool all_whole = facts.callouts.lines > 1;
  for (const int i : facts.by_tag) {
    const CalloutSlot& slot = facts.callouts.slots[static_cast<std::size_t>(i)];
    if (slot.middle < 0) {
      all_whole = false;
      continue;
    }
    const bool whole = draw_callout(scene.groups, facts.texts[static_cast<std::size_t>(i)], slot,
                                    facts.callouts.lines, columns[slot.right ? 1 : 0], measure);
    all_whole = all_whole && whole;
  }
  add_placement_legend(scene, facts, !marks.alike.empty(), all_whole, measure);
  return all_whole;
}

PlacementPicture placement_picture(const PlacementFacts& facts, const PagePlace& place,
                                   const TextMeasure& measure) {
  PlacementPicture picture;
  Scene& scene = picture.scene;
  scene.width = facts.sheet.width;
  scene.height = facts.sheet.height;
  scene.title = format("{} on {}", facts.fitting.harness->title, facts.fitting.board->title);
  scene.description = describe(facts);
  add_title_bar(scene, title_bar(facts, place), measure);
  add_foot(scene);
  picture.whole = add_placement(scene, facts, measure);
  return picture;
}

}  // namespace plugward
