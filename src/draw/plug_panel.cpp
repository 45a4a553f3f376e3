// SPDX-License-Identifier: MIT
// Tested in pages_test.cpp.
#include "draw/plug_panel.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "draw/mating_facts.h"
#include "draw/page_plan.h"
#include "draw/panel_words.h"
#include "draw/plug_frames.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "draw/words.h"

namespace plugward {
namespace {

constexpr double head = 14;                             ///< tag, names, verdict
constexpr double lowest = 72, highest = 168, step = 8;  ///< heights of the drawing that are tried
constexpr double least_pitch = 6;  ///< of the plug on paper, where a higher panel can give it
constexpr double edge = 2;

Box drawing_field(double width, double height) {
  return {page::gutter, head + 1, width - edge - 1, head + 1 + height};
}

/// The least height at which the drawing is easily read in this width; nothing when it is too narrow.
std::optional<double> height_of_drawing(const MatingFacts& facts, View view, double width,
                                        const TextMeasure& measure) {
  for (double height = lowest; height <= highest; height += step) {
    const std::optional<PagePlan> plan = plan_page(facts, view, drawing_field(width, height), measure);
    if (plan && plan->header_drawn && !plan->brief && plan->plug.pitch >= least_pitch) return height;
  }
  return std::nullopt;
}

void add_head(Scene& panel, const PlacementFacts& facts, int placement, const TextMeasure& measure) {
  const std::size_t i = static_cast<std::size_t>(placement);
  const int tag = facts.callouts.slots[i].tag;
  const CalloutText& text = facts.texts[i];
  Group group{"names", {}};
  const Type bold{style::caption_type, true}, usual{style::small_type, false};
  const double left = add_cable_tag(group, tag, {edge, 4}, measure).right + 2, right = panel.width - 31;
  group.add(Words{{left, 5.5},
                  shorten(text.plug, right - left, bold, measure),
                  bold.points,
                  true,
                  style::text,
                  Anchor::Start,
                  0});
  const Plug& plug = facts.fitting.harness->plugs[static_cast<std::size_t>(facts.fitting.placements[i].plug)];
  const std::string title = plug_title(*facts.fitting.harness, plug);
  const std::size_t colon = title.find(": ");
  std::string second = "→ " + text.header;
  if (colon != std::string::npos) second += ";" + title.substr(colon + 1);
  group.add(Words{{edge, 10.8},
                  shorten(second, panel.width - 2 * edge, usual, measure),
                  usual.points,
                  false,
                  style::text,
                  Anchor::Start,
                  0});
  panel.groups.push_back(std::move(group));
  panel.groups.push_back(verdict_shape(text.verdict, {panel.width - 29, 1.4, panel.width - edge, 6.6},
                                       measure, style::small_type));
}

}  // namespace

Scene plug_panel(const PlacementFacts& placed, int placement, View view, double width,
                 const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  const MatingFacts facts = gather(placed.fitting, one.advice, placement);
  Scene panel;
  panel.width = width / 2;
  std::optional<double> height = height_of_drawing(facts, view, panel.width, measure);
  if (!height && !frames_fit(facts, view, drawing_field(panel.width, highest), measure)) {
    panel.width = width;
    height = height_of_drawing(facts, view, panel.width, measure);
  }
  if (!height) height = highest;
  add_head(panel, placed, placement, measure);
  const std::vector<Paragraph> text = panel_text(facts);
  const double words = height_of(text, panel.width - 2 * edge, measure);
  const Box field = drawing_field(panel.width, *height);
  Group group{"words", {}};
  add_paragraphs(group, text, {edge, field.bottom + 2, panel.width - edge, field.bottom + 2 + words}, "",
                 measure);
  for (Group& frame : plug_frames(facts, view, field, measure)) panel.groups.push_back(std::move(frame));
  panel.groups.push_back(std::move(group));
  panel.height = field.bottom + 2 + words + 1;
  return panel;
}

}  // namespace plugward
