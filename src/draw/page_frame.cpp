// SPDX-License-Identifier: MIT
// Tested in page_test.cpp and mating_picture_test.cpp.
#include "draw/page_frame.h"

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/page_plan.h"
#include "draw/panel_words.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/words.h"

namespace plugward {
namespace {

std::string_view continued() {
  return tr(", continued");
}
constexpr int word_columns = 3;  ///< of a sheet of words
constexpr double column_gap = 6;

TitleBar title_bar(const MatingFacts& facts, const SheetPlace& place) {
  const Plug& plug = facts.plug;
  TitleBar bar;
  bar.first = format("{}, plug {}", facts.fitting.harness->title, plug.label.empty() ? plug.id : plug.label);
  if (place.tag > 0) bar.first = plug_title(*facts.fitting.harness, plug);
  bar.second =
      format("→ {}{}, header {}", facts.fitting.board->title,
             facts.fitting.board->revision.empty() ? std::string(tr(", revision not stated"))
                                                   : format(", revision {}", facts.fitting.board->revision),
             header_name(facts.header));
  bar.verdict = facts.advice.verdict;
  bar.tag = place.tag;
  bar.place = place.page;
  return bar;
}

/// From paragraph `first` on, with the heading that it stands under.
std::vector<Paragraph> rest_of(const std::vector<Paragraph>& text, std::size_t first) {
  std::vector<Paragraph> rest(text.begin() + static_cast<std::ptrdiff_t>(first), text.end());
  if (rest.empty() || rest.front().heading) return rest;
  for (std::size_t i = first; i-- > 0;) {
    if (!text[i].heading) continue;
    Paragraph heading = text[i];
    if (!heading.text.ends_with(continued())) heading.text += continued();
    rest.insert(rest.begin(), std::move(heading));
    break;
  }
  return rest;
}

std::vector<Paragraph> add_panel(Scene& scene, MatingFacts& facts, bool one_of_many, bool rest_follows,
                                 const TextMeasure& measure) {
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
  Group group{tr("words beside the picture"), {}};
  std::vector<Paragraph> text{
      {Paragraph::Mark::None, "",
       format("Board from above; {} is the filled header{}{}.", facts.header.id,
              facts.header.underside ? tr(", on the underside") : tr(", its dot is pin 1"),
              others.empty() ? std::string()
              : one_of_many  ? std::string(tr("; outlined bold: where the other plugs go"))
                             : format("; outlined bold: {}", join(others, ", "))),
       false}};
  for (Paragraph& p : panel_text(facts)) text.push_back(std::move(p));
  const std::size_t listed =
      add_paragraphs(group, text, {room.left, box.bottom + 2, room.right, room.bottom},
                     rest_follows ? tr("more: on the next page") : tr("more: see the text report"), measure);
  if (!rest_follows) lower_unlisted_flags(facts, text, listed);
  scene.groups.push_back(std::move(group));
  Group rule{tr("panel edge"), {}};
  rule.add(polyline({{left - page::gap / 2 - 0.5, page::title_height},
                     {left - page::gap / 2 - 0.5, scene.height - page::foot_height}},
                    stroked(style::outline, style::fine)));
  scene.groups.push_back(std::move(rule));
  return rest_of(text, listed);
}

/// Sets what fits in one column and returns the rest. A paragraph higher than a column is cut at its end.
std::vector<Paragraph> add_column(Group& group, const std::vector<Paragraph>& text, const Box& room,
                                  const TextMeasure& measure) {
  const std::size_t listed = add_paragraphs(group, text, room, "", measure);
  if (listed > 0) return rest_of(text, listed);
  const std::size_t long_one = text.front().heading ? 1 : 0;
  const Type type{style::small_type, false};
  const double line = style::line_height(style::small_type);
  const auto most = static_cast<std::size_t>((room.bottom - room.top) / line);
  add_lines(group, wrap_at_most(text[long_one].text, room.right - room.left, most, type, measure),
            {room.left, room.top + line}, type, style::text);
  return rest_of(text, long_one + 1);
}

}  // namespace

std::vector<Paragraph> add_page_frame(Scene& scene, MatingFacts& facts, const SheetPlace& place,
                                      bool rest_follows, const TextMeasure& measure) {
  add_title_bar(scene, title_bar(facts, place), measure);
  add_foot(scene);
  return add_panel(scene, facts, place.tag > 0, rest_follows, measure);
}

std::vector<Scene> word_sheets(const MatingFacts& facts, std::vector<Paragraph> text, SheetPlace before,
                               double width, double height, const TextMeasure& measure) {
  std::vector<Scene> sheets;
  const double column = (width - 2 * page::inset - (word_columns - 1) * column_gap) / word_columns;
  while (!text.empty()) {
    ++before.page.page;
    Scene sheet{width, height, title_of(facts) + std::string(continued()), "", {}};
    TitleBar bar = title_bar(facts, before);
    bar.first += continued();
    add_title_bar(sheet, bar, measure);
    add_foot(sheet);
    Group words{tr("words that go on"), {}};
    for (int c = 0; c < word_columns && !text.empty(); ++c) {
      const double left = page::inset + c * (column + column_gap);
      text =
          add_column(words, text,
                     {left, page::title_height + 3, left + column, height - page::foot_height - 1}, measure);
    }
    sheet.groups.push_back(std::move(words));
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace plugward
