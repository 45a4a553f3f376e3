// SPDX-License-Identifier: MIT
// Tested in page_test.cpp and mating_picture_test.cpp.
#include "draw/page_frame.h"

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/page_plan.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/words.h"

namespace plugward {
namespace {

TitleBar title_bar(const MatingFacts& facts, const SheetPlace& place) {
  const Plug& plug = facts.plug;
  TitleBar bar;
  bar.first = format("{}, plug {}", facts.fitting.harness->title, plug.label.empty() ? plug.id : plug.label);
  if (place.tag > 0) bar.first = plug_title(*facts.fitting.harness, plug);
  bar.second = format("→ {}{}, header {}", facts.fitting.board->title,
                      facts.fitting.board->revision.empty() ? ", revision not stated"
                                                            : ", revision " + facts.fitting.board->revision,
                      header_name(facts.header));
  bar.verdict = facts.advice.verdict;
  bar.tag = place.tag;
  bar.place = place.page;
  return bar;
}

void add_panel(Scene& scene, MatingFacts& facts, bool one_of_many, const TextMeasure& measure) {
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
  std::vector<Paragraph> text{{Paragraph::Mark::None, "",
                               format("Board from above; {} is the filled header{}{}.", facts.header.id,
                                      facts.header.underside ? ", on the underside" : ", its dot is pin 1",
                                      others.empty() ? std::string()
                                      : one_of_many ? std::string("; outlined bold: where the other plugs go")
                                                    : format("; outlined bold: {}", join(others, ", "))),
                               false}};
  for (Paragraph& p : panel_text(facts)) text.push_back(std::move(p));
  const std::size_t listed = add_paragraphs(group, text, {room.left, box.bottom + 2, room.right, room.bottom},
                                            "more: see the text report", measure);
  lower_unlisted_flags(facts, text, listed);
  scene.groups.push_back(std::move(group));
  Group rule{"panel edge", {}};
  rule.add(polyline({{left - page::gap / 2 - 0.5, page::title_height},
                     {left - page::gap / 2 - 0.5, scene.height - page::foot_height}},
                    stroked(style::outline, style::fine)));
  scene.groups.push_back(std::move(rule));
}

}  // namespace

void add_page_frame(Scene& scene, MatingFacts& facts, const SheetPlace& place, const TextMeasure& measure) {
  add_title_bar(scene, title_bar(facts, place), measure);
  add_foot(scene);
  add_panel(scene, facts, place.tag > 0, measure);
}

}  // namespace plugward
