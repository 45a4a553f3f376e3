// SPDX-License-Identifier: MIT
// Tested in pages_test.cpp.
#include "draw/plug_list.h"

#include <algorithm>

#include "base/format.h"
#include "draw/page_plan.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "draw/words.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr Type usual{style::small_type, false}, bold{style::small_type, true};
constexpr double gap = 3, row_gap = 2.2;
constexpr std::size_t most_lines = 6;

/// Left edges of the columns and the right edge of the last: tag, plug, header, verdict, what to do.
struct Columns {
  double tag, plug, header, verdict, work, right;
};

Columns columns_of(const SheetSize& sheet) {
  const double right = sheet.width - page::inset;
  return {page::inset, page::inset + 12, page::inset + 84, page::inset + 128, page::inset + 156, right};
}

struct Row {
  int tag = 0;
  Verdict verdict{};
  std::vector<std::string> plug, devices, header, work;
  double height() const {
    const std::size_t lines = std::max({plug.size() + devices.size(), header.size(), work.size()});
    return static_cast<double>(lines) * style::line_height(style::small_type) + row_gap;
  }
};

Row row_of(const PlacementFacts& facts, int placement, const Columns& at, const TextMeasure& measure) {
  const std::size_t i = static_cast<std::size_t>(placement);
  const CalloutText& text = facts.texts[i];
  const Plug& plug = plug_of(facts.fitting, facts.fitting.placements[i].plug);
  Row row{facts.callouts.slots[i].tag, text.verdict, {}, {}, {}, {}};
  row.plug = wrap_at_most(text.plug, at.header - at.plug - gap, 3, bold, measure);
  const std::string title = plug_title(*facts.fitting.harness, plug);
  if (const std::size_t colon = title.find(": "); colon != std::string::npos)
    row.devices = wrap_at_most(title.substr(colon + 2), at.header - at.plug - gap, 2, usual, measure);
  row.header = wrap_at_most(text.header, at.verdict - at.header - gap, 3, bold, measure);
  std::string work = text.work;
  if (!text.notes.empty()) work += "; " + text.notes;
  const Advice& advice = facts.plugs[i].advice;
  if (!advice.now.findings.empty() && advice.verdict != Verdict::Mate)
    work += format(". {}: {}", tr(to_word(advice.now.findings.front().weight)),
                   advice.now.findings.front().message);
  row.work = wrap_at_most(work, at.right - at.work, most_lines, usual, measure);
  return row;
}

void draw_row(Scene& scene, const Row& row, const Columns& at, double top, const TextMeasure& measure) {
  Group group{format("plug {} in the list", row.tag), {}};
  const double baseline = top + 3.6;
  add_cable_tag(group, row.tag, {at.tag, baseline - 1.15}, measure);
  const double y = add_lines(group, row.plug, {at.plug, baseline}, bold, style::text);
  add_lines(group, row.devices, {at.plug, y}, usual, style::quiet);
  add_lines(group, row.header, {at.header, baseline}, bold, style::text);
  add_lines(group, row.work, {at.work, baseline}, usual, style::text);
  const double bottom = top + row.height() - row_gap / 2 + 0.2;
  group.add(polyline({{at.tag, bottom}, {at.right, bottom}}, stroked(style::quiet, 0.15)));
  scene.groups.push_back(std::move(group));
  Group verdict = verdict_shape(row.verdict, {at.verdict, top + 0.3, at.verdict + 25, top + 4.7}, measure,
                                style::small_type);
  verdict.verdict = true;
  verdict.name = format("verdict of plug {} in the list", row.tag);
  scene.groups.push_back(std::move(verdict));
}

void add_together(Scene& scene, const PlacementFacts& facts, double& y, double bottom,
                  const TextMeasure& measure) {
  Group group{tr("all together"), {}};
  for (const Finding& finding : facts.together) {
    const std::vector<std::string> lines =
        wrap_at_most(format("All together: {}: {}", tr(to_word(finding.weight)), finding.message),
                     facts.sheet.width - 2 * page::inset, 3, bold, measure);
    if (y + static_cast<double>(lines.size()) * style::line_height(style::small_type) > bottom) break;
    y = add_lines(group, lines, {page::inset, y + 3.6}, bold, style::text) - 3.6 + 1;
  }
  if (!group.items.empty()) scene.groups.push_back(std::move(group));
}

}  // namespace

std::vector<Scene> plug_list(const PlacementFacts& facts, int before, int pages, const TextMeasure& measure) {
  const Columns at = columns_of(facts.sheet);
  const double top = page::title_height + 2.5, bottom = facts.sheet.height - page::foot_height - 1;
  std::vector<Scene> scenes;
  double y = 0;
  const auto begin = [&] {
    Scene scene{facts.sheet.width, facts.sheet.height, tr("List of plugs"), "", {}};
    add_title_bar(scene,
                  {0,
                   scenes.empty() ? tr("List of plugs") : tr("List of plugs, continued"),
                   count_words(facts),
                   facts.advice.verdict,
                   {before + static_cast<int>(scenes.size()) + 1, pages}},
                  measure);
    add_foot(scene);
    scenes.push_back(std::move(scene));
    y = top;
  };
  begin();
  add_together(scenes.back(), facts, y, top + (bottom - top) / 2, measure);
  for (const int placement : facts.by_tag) {
    const Row row = row_of(facts, placement, at, measure);
    if (y + row.height() > bottom) begin();
    draw_row(scenes.back(), row, at, y, measure);
    y += row.height();
  }
  return scenes;
}

}  // namespace plugward
