// SPDX-License-Identifier: MIT
// Tested in sheet_pictures_test.cpp.
#include "draw/sheet_pictures_board.h"

#include <algorithm>

#include "base/format.h"
#include "draw/border_tags.h"
#include "draw/page_plan.h"
#include "draw/placement_picture.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double side = 25;    ///< left and right of the board: a tag with an id, and its leader
constexpr double strip = 11;   ///< above and below it, likewise
constexpr double legend = 15;  ///< as add_placement_legend() has it
constexpr Type bold{style::small_type, true};

double list_row(int lines) {
  return 5.6 + (lines - 1) * style::line_height(style::small_type);
}

double list_height(std::size_t plugs, int lines) {
  return static_cast<double>((plugs + 1) / 2) * list_row(lines) + 3;
}

/// The tag of each plug with the id of its header, round the board; returns the leaders.
std::vector<Leader> add_tags(Scene& scene, const PlacementFacts& facts, double height,
                             const TextMeasure& measure) {
  BorderTagProblem problem{facts.board.box, {}, {}, cable_tag_height, {0, 0, scene.width, height}};
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < facts.fitting.placements.size(); ++i) {
    const std::size_t header = static_cast<std::size_t>(facts.fitting.placements[i].header);
    const double tag = cable_tag_width(facts.callouts.slots[i].tag, measure);
    ids.push_back(shorten(facts.fitting.board->headers[header].id, side - tag - 6, bold, measure));
    problem.headers.push_back(facts.board.headers[header]);
    problem.widths.push_back(tag + 1 + text_width(ids.back(), bold, measure));
  }
  std::vector<Leader> leaders;
  const std::vector<BorderTag> tags = plan_border_tags(problem);
  for (std::size_t i = 0; i < tags.size(); ++i) {
    if (!tags[i].placed) continue;
    const int number = facts.callouts.slots[i].tag;
    const double y = (tags[i].box.top + tags[i].box.bottom) / 2;
    Group group{format("tag {}", number), {}};
    const double right = add_cable_tag(group, number, {tags[i].box.left, y}, measure).right;
    const double baseline = y + 0.365 * style::small_type * style::mm_per_point;
    add_lines(group, {ids[i]}, {right + 1, baseline}, bold, style::text);
    scene.groups.push_back(std::move(group));
    leaders.push_back({tags[i].port, facts.fitting.placements[i].header});
  }
  return leaders;
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

Scene board_above_list(PlacementFacts facts, PictureRoom room, bool judged, const TextMeasure& measure) {
  const std::size_t plugs = facts.fitting.placements.size();
  const double width = room.width - 2 * side;
  const double at_widest =
      facts.fitting.board->height.value * width / facts.fitting.board->width.value + 2 * strip;
  // As much in the list as leaves the board two thirds of the size that its width allows.
  int lines = judged ? 3 : 2;
  const auto left_for_board = [&] { return room.height - legend - list_height(plugs, lines); };
  while (lines > 1 && left_for_board() < 0.66 * at_widest) --lines;
  const double board_height = std::max(40.0 + 2 * strip, std::min(left_for_board(), at_widest));
  const double total = board_height + list_height(plugs, lines) + legend;

  // The sheet on which the legend's room ends where this scene ends.
  lay_placement(facts, {room.width, total + page::foot_height});
  facts.board = place_board(*facts.fitting.board, *facts.fitting.catalogue,
                            {side, strip, room.width - side, board_height - strip});
  Scene scene;
  scene.width = room.width;
  scene.height = total + page::foot_height;
  std::vector<Group> groups;
  const std::vector<Leader> leaders = add_tags(scene, facts, board_height, measure);
  std::swap(groups, scene.groups);
  const BoardMarks marks = placement_marks(facts);
  draw_board(scene.groups, facts.board, *facts.fitting.board, *facts.fitting.catalogue, marks, leaders,
             measure);
  for (Group& tag : groups) scene.groups.push_back(std::move(tag));
  add_list(scene, facts, board_height + 2, lines, measure);
  bool whole = true;
  add_placement_legend(scene, facts, !marks.alike.empty(), whole, measure);
  scene.height = total;
  if (!judged) {
    std::erase_if(scene.groups, [](const Group& g) { return g.verdict; });
  }
  return scene;
}

}  // namespace plugward
