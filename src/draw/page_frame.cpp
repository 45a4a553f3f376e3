// SPDX-License-Identifier: MIT
// Tested in page_test.cpp and mating_picture_test.cpp.
#include "draw/page_frame.h"

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/page_plan.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "draw/words.h"

namespace plugward {
namespace {

void add_title(Scene& scene, const MatingFacts& facts, const TextMeasure& measure) {
  Group group{"title", {}};
  const double room = scene.width - 64;
  const Type big{style::title_type, true};
  std::vector<std::string> lines{format("{}, plug {}", facts.fitting.harness->title,
                                        facts.plug.label.empty() ? facts.plug.id : facts.plug.label)};
  const std::string second =
      format("→ {}{}, header {}", facts.fitting.board->title,
             facts.fitting.board->revision.empty() ? ", revision not stated"
                                                   : ", revision " + facts.fitting.board->revision,
             header_name(facts.header));
  group.add(Words{{page::inset, 6.5},
                  shorten(lines[0], room, big, measure),
                  big.points,
                  true,
                  style::text,
                  Anchor::Start,
                  0});
  group.add(Words{{page::inset, 13.5},
                  shorten(second, room, {style::caption_type, false}, measure),
                  style::caption_type,
                  false,
                  style::text,
                  Anchor::Start,
                  0});
  scene.groups.push_back(std::move(group));
  scene.groups.push_back(
      verdict_shape(facts.advice.verdict, {scene.width - 58, 1, scene.width - page::inset, 15}, measure));
  Group rule{"rule", {}};
  rule.add(polyline({{0, page::title_height}, {scene.width, page::title_height}},
                    stroked(style::outline, style::fine)));
  scene.groups.push_back(std::move(rule));
}

void add_foot(Scene& scene) {
  Group group{"limits", {}};
  const double y = scene.height - page::foot_height;
  group.add(polyline({{0, y}, {scene.width, y}}, stroked(style::outline, style::fine)));
  group.add(
      Words{{page::inset, y + 5.2},
            "plugward cannot see a bad crimp, a mislabelled board or a dead part. Power off before you plug.",
            style::small_type,
            true,
            style::text,
            Anchor::Start,
            0});
  // A ruler to check that the page was printed at its own size.
  const double right = scene.width - page::inset, left = right - 50;
  group.add(polyline({{left, y + 5.6}, {right, y + 5.6}}, stroked(style::outline, style::line)));
  for (int i = 0; i <= 5; ++i) {
    const double x = left + 10 * i;
    group.add(
        polyline({{x, y + 5.6}, {x, y + (i % 5 == 0 ? 3.2 : 4.4)}}, stroked(style::outline, style::fine)));
  }
  group.add(Words{{left - 1.5, y + 5.6}, "50 mm", style::small_type, false, style::text, Anchor::End, 0});
  scene.groups.push_back(std::move(group));
}

void lower_flag(MatingFacts& facts, const std::string& sign) {
  for (Flagged& f : facts.flagged) {
    if (format("{}", f.number) == sign) f.number = 0;
  }
}

void add_panel(Scene& scene, MatingFacts& facts, const TextMeasure& measure) {
  const double left = scene.width - page::panel_width;
  const Box room{left, page::title_height + 3, scene.width - page::inset,
                 page_field(scene.width, scene.height).bottom};
  MapMarks marks{facts.placed.header, {}};
  std::vector<std::string> others;
  for (const Placement& other : facts.fitting.placements) {
    if (other.plug == facts.placed.plug) continue;
    marks.outlined.push_back(other.header);
    others.push_back(facts.fitting.board->headers[static_cast<std::size_t>(other.header)].id);
  }
  BoardMap map = draw_board_map(*facts.fitting.board, marks, *facts.fitting.catalogue,
                                {room.left + 1, room.top, room.right - 1, room.top + 42}, measure);
  const Box box = map.box;
  scene.groups.push_back(std::move(map.group));
  Group group{"words beside the picture", {}};
  std::vector<Paragraph> text{
      {Paragraph::Mark::None, "",
       format("Board from above; {} is the filled header{}{}.", facts.header.id,
              facts.header.underside ? ", on the underside" : ", its dot is pin 1",
              others.empty() ? std::string() : format("; outlined bold: {}", join(others, ", "))),
       false}};
  for (Paragraph& p : panel_text(facts)) text.push_back(std::move(p));
  const std::size_t listed = add_paragraphs(group, text, {room.left, box.bottom + 2, room.right, room.bottom},
                                            "more: see the text report", measure);
  // A flag that nothing explains is not drawn.
  for (std::size_t i = listed; i < text.size(); ++i) {
    if (text[i].mark == Paragraph::Mark::Flag) lower_flag(facts, text[i].sign);
  }
  scene.groups.push_back(std::move(group));
  Group rule{"panel edge", {}};
  rule.add(polyline({{left - page::gap / 2 - 0.5, page::title_height},
                     {left - page::gap / 2 - 0.5, scene.height - page::foot_height}},
                    stroked(style::outline, style::fine)));
  scene.groups.push_back(std::move(rule));
}

}  // namespace

void add_page_frame(Scene& scene, MatingFacts& facts, const TextMeasure& measure) {
  add_title(scene, facts, measure);
  add_foot(scene);
  add_panel(scene, facts, measure);
}

}  // namespace plugward
