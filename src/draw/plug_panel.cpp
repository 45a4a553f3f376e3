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
constexpr double beside = 230;  ///< panels so wide have their words beside the drawing

Box drawing_field(double width, double height) {
  return {page::gutter, head + 1, width - edge - 1, head + 1 + height};
}

/// The least height at which the drawing is easily read in this width; nothing when it is too narrow. What
/// fits in some height fits in more, so the step is searched by halves.
std::optional<double> height_of_drawing(const MatingFacts& facts, View view, double width,
                                        const TextMeasure& measure) {
  const Box any = drawing_field(width, lowest);
  PagePlanner planner(facts, view, any.right - any.left, measure);
  const auto reads = [&](int steps) {
    const Box field = drawing_field(width, lowest + steps * step);
    const std::optional<PagePlan> plan = planner.plan(field.left, field.bottom - field.top);
    return plan && plan->header_drawn && !plan->brief && plan->plug.pitch >= least_pitch;
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

bool plug_panel_fits(const PlacementFacts& placed, int placement, View view, double width, double height,
                     const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  const MatingFacts facts = gather(placed.fitting, one.advice, placement);
  const double right = width >= beside ? width - page::panel_width - page::gap : width;
  return frames_fit(facts, view, drawing_field(right, std::min(highest, height - head - 4)), measure);
}

Scene plug_panel_in(const PlacementFacts& placed, int placement, View view, double width, double height,
                    const TextMeasure& measure) {
  const PlugAdvice& one = placed.plugs[static_cast<std::size_t>(placement)];
  MatingFacts facts = gather(placed.fitting, one.advice, placement);
  Scene panel;
  panel.width = width;
  panel.title = title_of(facts);
  panel.description = describe(facts, view);
  const bool at_side = width >= beside;
  const double drawing_right = at_side ? width - page::panel_width - page::gap : width;
  const double most = std::min(highest, height - head - 4);
  const double drawing =
      std::min(most, height_of_drawing(facts, view, drawing_right, measure).value_or(most));
  add_head(panel, placed, placement, measure);
  const Box field = drawing_field(drawing_right, drawing);
  std::vector<Group> frames = plug_frames(facts, view, field, measure);
  const double foot = std::max(field.bottom, lowest_word(frames, measure));
  const std::vector<Paragraph> text = panel_text(facts);
  const double words_width = at_side ? page::panel_width - edge : width - 2 * edge;
  const double wanted = height_of(text, words_width, measure);
  const Box room = at_side ? Box{width - edge - words_width, head + 2, width - edge,
                                 std::min(height - 1, head + 2 + wanted)}
                           : Box{edge, foot + 2, width - edge, std::min(height - 1, foot + 2 + wanted)};
  Group words{"words", {}};
  const std::size_t listed =
      add_paragraphs(words, text, room, "more on this plug: see its findings", measure);
  if (listed < text.size()) {
    lower_unlisted_flags(facts, text, listed);
    frames = plug_frames(facts, view, field, measure);
  }
  for (Group& frame : frames) panel.groups.push_back(std::move(frame));
  panel.groups.push_back(std::move(words));
  panel.height = std::max(foot, room.bottom) + 1;
  return panel;
}

}  // namespace plugward
