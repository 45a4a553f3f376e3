// SPDX-License-Identifier: MIT
// Tested in sheet_pictures_test.cpp.
#include "draw/sheet_pictures_board.h"

#include <algorithm>

#include "base/format.h"
#include "draw/page_plan.h"
#include "draw/placement_picture.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double side = 25;       ///< a column of tags with ids
constexpr double line_room = 5;   ///< between a column and the board
constexpr double row_height = 6;  ///< of a tag beside the board
constexpr double legend = 15;     ///< as add_placement_legend() has it
constexpr Type bold{style::small_type, true};

double list_row(int lines) {
  return 5.6 + (lines - 1) * style::line_height(style::small_type);
}

double list_height(std::size_t plugs, int lines) {
  return static_cast<double>((plugs + 1) / 2) * list_row(lines) + 3;
}

/// The tag of a plug and the id of its header, at the edge of the column that faces the board.
void add_tags(Scene& scene, const PlacementFacts& facts, const TextMeasure& measure) {
  for (std::size_t i = 0; i < facts.callouts.slots.size(); ++i) {
    const CalloutSlot& slot = facts.callouts.slots[i];
    if (slot.middle < 0) continue;
    const Placement& placed = facts.fitting.placements[i];
    const double tag_width = cable_tag_width(slot.tag, measure);
    const std::string id = shorten(facts.fitting.board->headers[static_cast<std::size_t>(placed.header)].id,
                                   side - tag_width - 2, bold, measure);
    const double left =
        slot.right ? scene.width - side : side - tag_width - 1 - text_width(id, bold, measure);
    Group group{format("tag {}", slot.tag), {}};
    add_cable_tag(group, slot.tag, {left, slot.middle}, measure);
    const double baseline = slot.middle + 0.365 * style::small_type * style::mm_per_point;
    add_lines(group, {id}, {left + tag_width + 1, baseline}, bold, style::text);
    scene.groups.push_back(std::move(group));
  }
}

/// Places for the tags beside the board; the numbers stay.
void lay_tags(PlacementFacts& facts, double width, double bottom) {
  std::vector<Point> anchors;
  for (const Placement& placement : facts.fitting.placements) {
    const Box& b = facts.board.headers[static_cast<std::size_t>(placement.header)];
    anchors.push_back({(b.left + b.right) / 2, (b.top + b.bottom) / 2});
  }
  const CalloutPlan plan = plan_callouts(anchors, side + 0.8, width - side - 0.8, 0, bottom);
  for (std::size_t i = 0; i < plan.slots.size(); ++i) {
    CalloutSlot& slot = facts.callouts.slots[i];
    slot.right = plan.slots[i].right;
    slot.middle = plan.slots[i].tag == 0 ? -1 : plan.slots[i].middle;
  }
}

void add_list(Scene& scene, const PlacementFacts& facts, double top, int lines, const TextMeasure& measure) {
  const double column = (scene.width - 10) / 2;
  const std::size_t rows = (facts.by_tag.size() + 1) / 2;
  for (std::size_t i = 0; i < facts.by_tag.size(); ++i) {
    const std::size_t placement = static_cast<std::size_t>(facts.by_tag[i]);
    CalloutSlot slot = facts.callouts.slots[placement];
    slot.middle = top + (static_cast<double>(i % rows) + 0.5) * list_row(lines);
    const double left = i < rows ? 1 : scene.width - column - 1;
    draw_callout(scene.groups, facts.texts[placement], slot, lines, {left, 0, left + column, 0}, measure);
  }
}

}  // namespace

Scene board_above_list(PlacementFacts facts, const std::vector<int>& tags, PictureRoom room, bool judged,
                       const TextMeasure& measure) {
  const std::size_t plugs = facts.fitting.placements.size();
  const double width = room.width - 2 * (side + line_room);
  const double at_widest = facts.fitting.board->height.value * width / facts.fitting.board->width.value;
  const double tags_need = row_height * static_cast<double>((plugs + 1) / 2);
  // As much in the list as leaves the board two thirds of the size that its width allows.
  int lines = judged ? 3 : 2;
  const auto left_for_board = [&] { return room.height - legend - list_height(plugs, lines); };
  while (lines > 1 && left_for_board() < std::max(tags_need, 0.66 * at_widest)) --lines;
  const double board_height = std::max({40.0, tags_need, std::min(left_for_board(), at_widest + 6)});
  const double total = board_height + list_height(plugs, lines) + legend;

  // The sheet on which the legend's room ends where this scene ends.
  lay_placement(facts, {room.width, total + page::foot_height}, tags);
  facts.board = place_board(*facts.fitting.board, *facts.fitting.catalogue,
                            {side + line_room, 2, room.width - side - line_room, board_height - 2});
  Scene scene;
  scene.width = room.width;
  scene.height = total + page::foot_height;
  lay_tags(facts, scene.width, board_height);
  std::vector<Leader> leaders;
  for (std::size_t i = 0; i < plugs; ++i) {
    const CalloutSlot& slot = facts.callouts.slots[i];
    if (slot.middle < 0) continue;
    leaders.push_back({{slot.right ? scene.width - side - 0.8 : side + 0.8, slot.middle},
                       facts.fitting.placements[i].header});
  }
  const BoardMarks marks = placement_marks(facts);
  draw_board(scene.groups, facts.board, *facts.fitting.board, *facts.fitting.catalogue, marks, leaders,
             measure);
  add_tags(scene, facts, measure);
  add_list(scene, facts, board_height + 2, lines, measure);
  bool whole = true;
  add_placement_legend(scene, facts, !marks.alike.empty(), whole, measure);
  scene.height = total;
  if (!judged) {
    std::erase_if(scene.groups, [](const Group& g) { return g.name.rfind("verdict of plug ", 0) == 0; });
  }
  return scene;
}

}  // namespace plugward
