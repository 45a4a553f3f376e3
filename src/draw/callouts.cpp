// SPDX-License-Identifier: MIT
// Idea: each column has evenly spaced slots; headers are assigned to slots so that all lines together are
// shortest. Then no two lines cross: were two to cross, exchanging their slots would make them shorter
// together (the sides of a triangle). Example: of two headers beside each other the upper slot goes to the
// nearer one. O(n^2 s) for n headers and s slots, about 60 x 60 x 66 at most. Not taken: bent lines, which
// need no crossing either but are longer to follow. The argument is the textbook one for shortest matchings
// of points, from memory. Tested in callouts_test.cpp.
#include "draw/callouts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/format.h"
#include "draw/sheet_frame.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "numeric/assignment.h"

namespace plugward {
namespace {

constexpr std::array<double, 4> heights = {0, 4.75, 9.4, 13.4};  ///< of a callout by its lines
constexpr Type bold{style::small_type, true}, usual{style::small_type, false};
constexpr double shape_width = 25, shape_height = 4.4;

}  // namespace

CalloutPlan plan_callouts(const std::vector<Point>& anchors, double left, double right, double top,
                          double bottom) {
  CalloutPlan plan;
  plan.slots.resize(anchors.size());
  std::size_t rows = 0;
  for (plan.lines = 3; plan.lines >= 1; --plan.lines) {
    rows = static_cast<std::size_t>((bottom - top) / heights[static_cast<std::size_t>(plan.lines)]);
    if (2 * rows >= anchors.size()) break;
  }
  plan.lines = std::max(plan.lines, 1);
  const double pitch = (bottom - top) / static_cast<double>(rows);
  const auto port = [&](std::size_t slot) {
    return Point{slot < rows ? left : right, top + (static_cast<double>(slot % rows) + 0.5) * pitch};
  };
  const std::size_t placed = std::min(anchors.size(), 2 * rows);
  std::vector<std::vector<Cost>> cost;
  for (std::size_t i = 0; i < placed; ++i) {
    std::vector<Cost> row;
    for (std::size_t s = 0; s < 2 * rows; ++s) {
      const Point p = port(s);
      row.push_back(std::llround(1000 * std::hypot(p.x - anchors[i].x, p.y - anchors[i].y)));
    }
    cost.push_back(std::move(row));
  }
  std::vector<std::size_t> owner(2 * rows, anchors.size());
  if (const auto assignment = cheapest_assignment(cost)) {
    for (std::size_t i = 0; i < placed; ++i) owner[static_cast<std::size_t>(assignment->columns[i])] = i;
  }
  for (std::size_t s = 0; s < owner.size(); ++s) {
    if (owner[s] != anchors.size()) plan.slots[owner[s]] = {s >= rows, port(s).y, 0};
  }
  return plan;
}

bool draw_callout(std::vector<Group>& groups, const CalloutText& text, const CalloutSlot& slot, int lines,
                  const Box& room, const TextMeasure& measure) {
  Group group{format("plug {}", slot.tag), {}};
  bool whole = true;
  const auto put = [&](const std::string& words, Type type, double x, double baseline, double end, Ink ink) {
    const std::string set = shorten(words, end - x, type, measure);
    whole = whole && set == words;
    group.add(Words{{x, baseline}, set, type.points, type.bold, ink, Anchor::Start, 0});
  };
  const double half_capital = 0.365 * style::small_type * style::mm_per_point;
  const double height = cable_tag_height + (lines - 1) * style::line_height(style::small_type);
  const double first = slot.middle - height / 2 + cable_tag_height / 2;
  const double left = room.left;
  const double text_left = add_cable_tag(group, slot.tag, {left, first}, measure).right + 1.6;
  const double shape_left = room.right - shape_width;
  put(text.header, bold, text_left, first + half_capital, shape_left - 1.2, style::text);
  double y = first + half_capital + 0.3 + style::line_height(style::small_type);
  if (lines >= 2) {
    const double work = text_width(text.work, usual, measure);
    put(text.plug, usual, left, y, room.right - work - 2, style::text);
    group.add(Words{{room.right, y}, text.work, usual.points, false, style::text, Anchor::End, 0});
    y += style::line_height(style::small_type);
  }
  if (lines >= 3 && !text.notes.empty()) put(text.notes, usual, left, y, room.right, style::quiet);
  Group verdict = verdict_shape(text.verdict,
                                {shape_left, first - shape_height / 2, room.right, first + shape_height / 2},
                                measure, style::small_type);
  verdict.verdict = true;
  verdict.name = format("verdict of plug {}", slot.tag);
  groups.push_back(std::move(group));
  groups.push_back(std::move(verdict));
  return whole;
}

}  // namespace plugward
