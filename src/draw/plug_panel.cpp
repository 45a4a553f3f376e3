// SPDX-License-Identifier: MIT
// Tested in pages_test.cpp.
#include "draw/plug_panel.h"

#include <algorithm>
#include <memory>
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
constexpr double lowest = 56, highest = 168, step = 8;  ///< heights of the drawing that are tried
/// Of the plug on paper, where a higher panel can give it: with moves between two housings, and without.
constexpr double least_pitch = 6, least_pitch_unmoved = 5;
constexpr double edge = 2;
constexpr double wide = 230;          ///< panels so wide have their words beside the drawing in any case
constexpr double narrow_column = 74;  ///< of words beside the drawing in others

Box drawing_field(double width, double height) {
  return {page::gutter, head + 1, width - edge - 1, head + 1 + height};
}

/// A planner for panels whose drawing ends at `right`.
std::unique_ptr<PagePlanner> planner_for(const MatingFacts& facts, View view, double right,
                                         const TextMeasure& measure) {
  const Box any = drawing_field(right, lowest);
  return std::make_unique<PagePlanner>(facts, view, any.right - any.left, measure);
}

/// The least height at which the drawing is easily read; nothing when it is too narrow. What fits in some
/// height fits in more, so the step is searched by halves.
std::optional<double> height_of_drawing(const MatingFacts& facts, PagePlanner& planner) {
  const double pitch = facts.plan == nullptr ? least_pitch_unmoved : least_pitch;
  const auto reads = [&](int steps) {
    const std::optional<PagePlan> plan = planner.plan(page::gutter, lowest + steps * step);
    return plan && plan->header_drawn && !plan->brief && plan->plug.pitch >= pitch;
  };
  int least = 0, most = static_cast<int>((highest - lowest) / step);
  if (!reads(most)) return std::nullopt;
  while (least < most) {
    const int middle = (least + most) / 2;
    if (reads(middle)) {
      most = middle;
    } else {
      least = middle + 1;
    }
  }
  return lowest + least * step;
}

/// Where drawing and words go in a panel of a given width.
struct PanelPlan {
  bool beside = false;  ///< the words are right of the drawing, in one column; otherwise below it, in two
  double drawing_right = 0, drawing = 0;  ///< of its field: right edge, height
  double words_width = 0, words = 0;      ///< of the words, height as they would like it
  std::unique_ptr<PagePlanner> planner;   ///< of the drawing
};

/// Words beside the drawing where they are no longer than the panel and the drawing loses nothing.
PanelPlan plan_panel(const MatingFacts& facts, const std::vector<Paragraph>& text, View view, double width,
                     double height, const TextMeasure& measure) {
  const double most = std::min(highest, height - head - 4);
  const double column = width >= wide ? page::panel_width : narrow_column;
  PanelPlan plan;
  plan.beside = true;
  plan.drawing_right = width - column - page::gap;
  plan.words_width = column - edge;
  plan.words = height_of(text, plan.words_width, measure);
  plan.planner = planner_for(facts, view, plan.drawing_right, measure);
  if (width >= wide || head + 3 + plan.words <= height) {
    const std::optional<double> reads = height_of_drawing(facts, *plan.planner);
    plan.drawing = std::min(most, reads.value_or(most));
    if (width >= wide || (reads && *reads <= most && plan.words < 1.4 * *reads)) return plan;
  }
  plan.beside = false;
  plan.drawing_right = width;
  plan.words_width = width - 2 * edge;
  plan.words = height_in_columns(text, plan.words_width, measure);
  plan.planner = planner_for(facts, view, width, measure);
  plan.drawing = std::min(most, height_of_drawing(facts, *plan.planner).value_or(most));
  return plan;
}

void add_head(Scene& panel, const PlacementFacts& facts, int placement, const TextMeasure& measure) {
  const std::size_t i = static_cast<std::size_t>(placement);
  const int tag = facts.callouts.slots[i].tag;
  const CalloutText& text = facts.texts[i];
  Group group{tr("names"), {}};
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

/// A caption may reach below its field.
double lowest_word(const std::vector<Group>& groups, const TextMeasure& measure) {
  double lowest_edge = 0;
  for (const Group& group : groups) {
    for (const auto& item : group.items) {
      const Words* words = std::get_if<Words>(&item);
      if (words != nullptr) lowest_edge = std::max(lowest_edge, words_box(*words, measure).bottom);
    }
  }
  return lowest_edge;
}

}  // namespace

Scene plug_panel(const PlacementFacts& placed, int placement, View view, double width,
                 const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  const MatingFacts facts = gather(placed.fitting, one.advice, placement);
  Scene panel;
  panel.width = width / 2;
  std::unique_ptr<PagePlanner> planner = planner_for(facts, view, panel.width, measure);
  std::optional<double> height = height_of_drawing(facts, *planner);
  if (!height && !frames_fit(facts, view, drawing_field(panel.width, highest), measure)) {
    panel.width = width;
    planner = planner_for(facts, view, width, measure);
    height = height_of_drawing(facts, *planner);
  }
  if (!height) height = highest;
  add_head(panel, placed, placement, measure);
  const std::vector<Paragraph> text = panel_text(facts);
  const double words = height_of(text, panel.width - 2 * edge, measure);
  const Box field = drawing_field(panel.width, *height);
  Group group{tr("words"), {}};
  add_paragraphs(group, text, {edge, field.bottom + 2, panel.width - edge, field.bottom + 2 + words}, "",
                 measure);
  for (Group& frame : plug_frames(facts, view, field, *planner, measure))
    panel.groups.push_back(std::move(frame));
  panel.groups.push_back(std::move(group));
  panel.height = field.bottom + 2 + words + 1;
  return panel;
}

bool plug_panel_fits(const PlacementFacts& placed, int placement, View view, double width, double height,
                     const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  const MatingFacts facts = gather(placed.fitting, one.advice, placement);
  const double right = width >= wide ? width - page::panel_width - page::gap : width;
  return frames_fit(facts, view, drawing_field(right, std::min(highest, height - head - 4)), measure);
}

Scene plug_panel_in(const PlacementFacts& placed, int placement, View view, double width, double height,
                    const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  MatingFacts facts = gather(placed.fitting, one.advice, placement);
  const std::vector<Paragraph> text = panel_text(facts);
  const PanelPlan plan = plan_panel(facts, text, view, width, height, measure);
  Scene panel;
  panel.width = width;
  panel.title = title_of(facts);
  panel.description = describe(facts, view);
  add_head(panel, placed, placement, measure);
  const Box field = drawing_field(plan.drawing_right, plan.drawing);
  std::vector<Group> frames = plug_frames(facts, view, field, *plan.planner, measure);
  const double foot = std::max(field.bottom, lowest_word(frames, measure));
  const double top = plan.beside ? head + 2 : foot + 2;
  const Box room{width - edge - plan.words_width, top, width - edge, std::min(height - 1, top + plan.words)};
  Group words{tr("words"), {}};
  const std::string rest(tr("more: see 'plugward check'"));
  const std::size_t listed = plan.beside ? add_paragraphs(words, text, room, rest, measure)
                                         : add_paragraph_columns(words, text, room, rest, measure);
  if (listed < text.size()) {
    lower_unlisted_flags(facts, text, listed);
    frames = plug_frames(facts, view, field, *plan.planner, measure);
  }
  for (Group& frame : frames) panel.groups.push_back(std::move(frame));
  panel.groups.push_back(std::move(words));
  panel.height = std::max(foot, room.bottom) + 1;
  return panel;
}

}  // namespace plugward
