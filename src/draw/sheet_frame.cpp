// SPDX-License-Identifier: MIT
// Tested in page_test.cpp and placement_picture_test.cpp.
#include "draw/sheet_frame.h"

#include "base/format.h"
#include "draw/page_plan.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"

namespace plugward {
namespace {

constexpr Type number_type{style::small_type, true};
constexpr double hole_room = 3.4;  ///< from the pointed end of a cable tag to its number

}  // namespace

double cable_tag_width(int number, const TextMeasure& measure) {
  return hole_room + text_width(format("{}", number), number_type, measure) + 1.2;
}

Box add_cable_tag(Group& group, int number, Point at, const TextMeasure& measure) {
  const double width = cable_tag_width(number, measure), half = cable_tag_height / 2, cut = 1.5;
  const Box b{at.x, at.y - half, at.x + width, at.y + half};
  group.add(polygon({{b.left, at.y},
                     {b.left + cut, b.top},
                     {b.right, b.top},
                     {b.right, b.bottom},
                     {b.left + cut, b.bottom}},
                    outlined(style::paper, style::outline, style::line)));
  group.add(circle({b.left + 2.1, at.y}, 0.55, outlined(style::paper, style::outline, style::fine)));
  const double half_capital = 0.365 * number_type.points * style::mm_per_point;
  group.add(Words{{b.left + hole_room, at.y + half_capital},
                  format("{}", number),
                  number_type.points,
                  true,
                  style::text,
                  Anchor::Start,
                  0});
  return b;
}

void add_title_bar(Scene& scene, const TitleBar& bar, const TextMeasure& measure) {
  Group group{"title", {}};
  const Type big{style::title_type, true}, usual{style::caption_type, false};
  double left = page::inset, right = scene.width - 62.5;
  if (bar.tag > 0) left = add_cable_tag(group, bar.tag, {left, 4.7}, measure).right + 2;
  group.add(Words{{left, 6.5},
                  shorten(bar.first, right - left, big, measure),
                  big.points,
                  true,
                  style::text,
                  Anchor::Start,
                  0});
  if (bar.place.pages > 1) {
    const std::string text = format("page {} of {}", bar.place.page, bar.place.pages);
    group.add(Words{{right, 13.5}, text, style::small_type, false, style::quiet, Anchor::End, 0});
    right -= text_width(text, {style::small_type, false}, measure) + 3;
  }
  group.add(Words{{page::inset, 13.5},
                  shorten(bar.second, right - page::inset, usual, measure),
                  usual.points,
                  false,
                  style::text,
                  Anchor::Start,
                  0});
  scene.groups.push_back(std::move(group));
  scene.groups.push_back(
      verdict_shape(bar.verdict, {scene.width - 58, 1, scene.width - page::inset, 15}, measure));
  Group rule{"rule", {}};
  rule.add(polyline({{0, page::title_height}, {scene.width, page::title_height}},
                    stroked(style::outline, style::fine)));
  scene.groups.push_back(std::move(rule));
}

void add_ruler(Group& group, Point right_end) {
  const double left = right_end.x - 50, y = right_end.y;
  group.add(polyline({{left, y}, {right_end.x, y}}, stroked(style::outline, style::line)));
  for (int i = 0; i <= 5; ++i) {
    const double x = left + 10 * i;
    group.add(polyline({{x, y}, {x, y - (i % 5 == 0 ? 2.4 : 1.2)}}, stroked(style::outline, style::fine)));
  }
  group.add(Words{{left - 1.5, y}, "50 mm", style::small_type, false, style::text, Anchor::End, 0});
}

void add_foot(Scene& scene) {
  Group group{"limits", {}};
  const double y = scene.height - page::foot_height;
  group.add(polyline({{0, y}, {scene.width, y}}, stroked(style::outline, style::fine)));
  group.add(Words{
      {page::inset, y + 5.2},
      tr("plugward cannot see a bad crimp, a mislabelled board or a dead part. Power off before you plug."),
      style::small_type,
      true,
      style::text,
      Anchor::Start,
      0});
  add_ruler(group, {scene.width - page::inset, y + 5.6});
  scene.groups.push_back(std::move(group));
}

}  // namespace plugward
