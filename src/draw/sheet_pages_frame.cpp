// SPDX-License-Identifier: MIT
// Tested in sheet_pages_test.cpp.
#include "draw/sheet_pages_frame.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/sheet_flow_text.h"
#include "draw/sheet_frame.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"

namespace plugward {
namespace {

constexpr Type heading_type{style::title_type, true}, value_type = flow_type::strong,
                                                      small = flow_type::small;
constexpr double verdict_width = 54, verdict_height = 13, pad = 2;
constexpr double page_words = 32;  ///< "page 100 of 100"
constexpr double ruler_room = 68;  ///< with its words

std::optional<Verdict> verdict_named(const std::string& word) {
  for (const Verdict v : {Verdict::Mate, Verdict::Repin, Verdict::Adapt, Verdict::Measure, Verdict::Apart}) {
    if (to_word(v) == word) return v;
  }
  return std::nullopt;
}

/// A result that is no verdict ("18 of 20 plugs"): in a plain double frame, wrapped where it is long.
Group result_frame(const std::string& words, const Box& room, const TextMeasure& measure) {
  Group group{"result", {}};
  const Look line = outlined(style::paper, style::outline, style::line);
  group.add(rectangle({room.left, room.top}, room.right - room.left, room.bottom - room.top, line));
  group.add(rectangle({room.left + 0.9, room.top + 0.9}, room.right - room.left - 1.8,
                      room.bottom - room.top - 1.8, stroked(style::outline, style::fine)));
  const double width = room.right - room.left - 5;
  Type type{14, true};
  if (text_width(words, type, measure) > width) type.points = 9;
  const std::vector<std::string> lines = wrap_at_most(words, width, type.points > 9 ? 1 : 2, type, measure);
  const double line_height = style::line_height(type.points);
  const double capital = 0.73 * type.points * style::mm_per_point;
  const double first =
      (room.top + room.bottom + capital) / 2 - line_height * static_cast<double>(lines.size() - 1) / 2;
  add_lines(group, lines, {(room.left + room.right) / 2, first}, type, style::text, Anchor::Middle);
  return group;
}

std::string page_text(std::size_t page, std::size_t pages) {
  return format("page {} of {}", page, pages);
}

}  // namespace

std::string heading_of(const sheet::Document& document) {
  if (!document.heading.empty()) return document.heading;
  return document.title.machine.empty() ? document.title.board : document.title.machine;
}

SheetPaper sheet_paper(bool letter, bool landscape) {
  SheetPaper paper;
  if (letter) {
    paper.width = 215.9;
    paper.height = 279.4;
  }
  if (landscape) std::swap(paper.width, paper.height);
  return paper;
}

SheetFrame::SheetFrame(const sheet::Document& document, const SheetPaper& paper, const TextMeasure& measure)
    : document_(document), paper_(paper), measure_(measure) {
  limits_ =
      wrap_at_most(document.limits, paper.content_width() - ruler_room, 5, flow_type::small_strong, measure);
  const double line = style::line_height(style::small_type);
  foot_top_ = paper.height - paper.margin - std::max(7.0, 1.6 + line * static_cast<double>(limits_.size()));
  set_title();
}

void SheetFrame::set_title() {
  const double left = paper_.margin, right = paper_.width - paper_.margin, top = paper_.margin + 5;
  Group group{"title", {}};
  const std::vector<std::string> heading =
      wrap_at_most(heading_of(document_), right - left - verdict_width - 3 * pad, 4, heading_type, measure_);
  double y = top + pad;
  add_lines(group, heading, {left + pad, y + baseline_of(heading_type, measure_)}, heading_type, style::text);
  y += style::line_height(heading_type.points) * static_cast<double>(heading.size());
  y = std::max(y, top + pad + verdict_height) + 2;
  group.add(polyline({{left, y}, {right, y}}, stroked(style::outline, style::fine)));
  y = add_fields(group, y + 1.5) + 1;
  if (!document_.summary.empty()) {
    group.add(polyline({{left, y}, {right, y}}, stroked(style::outline, style::fine)));
    y += 1.5;
    const std::vector<std::string> lines =
        wrap_at_most(document_.summary, right - left - 2 * pad, 12, flow_type::body, measure_);
    add_lines(group, lines, {left + pad, y + baseline_of(flow_type::body, measure_)}, flow_type::body,
              style::text);
    y += style::line_height(flow_type::body.points) * static_cast<double>(lines.size()) + 1.5;
  }
  group.add(rectangle({left, top}, right - left, y - top, stroked(style::outline, style::line)));
  title_.push_back(std::move(group));
  if (!document_.verdict.empty()) {
    const Box room{right - pad - verdict_width, top + pad, right - pad, top + pad + verdict_height};
    const std::optional<Verdict> verdict = verdict_named(document_.verdict);
    title_.push_back(verdict ? verdict_shape(*verdict, room, measure_)
                             : result_frame(document_.verdict, room, measure_));
  }
  title_bottom_ = y;
}

/// Two columns of names with their values; a blank to write on where there is no value.
double SheetFrame::add_fields(Group& group, double top) const {
  struct Field {
    std::string name, value;
    bool always = false;
  };
  const sheet::Title& t = document_.title;
  std::vector<Field> fields = {{tr("Machine"), t.machine, true}, {tr("Harness"), t.harness},
                               {tr("Board"), t.board},           {tr("Old board"), t.old_board},
                               {tr("Date"), t.date, true},       {tr("Done by"), "", true}};
  std::erase_if(fields, [](const Field& f) { return f.value.empty() && !f.always; });
  double name_room = 0;
  for (const Field& f : fields) name_room = std::max(name_room, text_width(f.name, small, measure_) + 2);
  const double left = paper_.margin + pad, width = (paper_.content_width() - 3 * pad) / 2;
  double y = top;
  for (std::size_t i = 0; i < fields.size(); i += 2) {
    double height = 0;
    for (std::size_t k = i; k < std::min(i + 2, fields.size()); ++k) {
      const double x = left + (k == i ? 0 : width + pad);
      const double baseline = y + baseline_of(value_type, measure_);
      add_lines(group, {fields[k].name}, {x, baseline}, small, style::quiet);
      const double value_at = x + name_room, room = width - name_room;
      std::size_t lines = 1;
      if (fields[k].value.empty()) {
        group.add(polyline({{value_at, baseline + 0.8}, {value_at + std::min(room, 60.0), baseline + 0.8}},
                           stroked(style::outline, style::fine)));
      } else {
        const auto set = wrap_at_most(fields[k].value, room, 4, value_type, measure_);
        add_lines(group, set, {value_at, baseline}, value_type, style::text);
        lines = set.size();
      }
      height = std::max(height, style::line_height(value_type.points) * static_cast<double>(lines) + 0.9);
    }
    y += height;
  }
  return y;
}

Group SheetFrame::running(std::size_t page, std::size_t pages) const {
  Group group{tr("running title"), {}};
  const double left = paper_.margin, right = paper_.width - paper_.margin, y = paper_.margin + 3.4;
  std::string text = heading_of(document_);
  if (!document_.title.date.empty()) text += format(", {}", document_.title.date);
  add_lines(group, {shorten(text, right - left - page_words, small, measure_)}, {left, y}, small,
            style::quiet);
  add_lines(group, {page_text(page, pages)}, {right, y}, small, style::text, Anchor::End);
  group.add(polyline({{left, y + 2.2}, {right, y + 2.2}}, stroked(style::outline, style::fine)));
  return group;
}

Group SheetFrame::foot() const {
  Group group{"limits", {}};
  const double left = paper_.margin, right = paper_.width - paper_.margin;
  group.add(polyline({{left, foot_top_}, {right, foot_top_}}, stroked(style::outline, style::fine)));
  const double first = foot_top_ + 1.2 + baseline_of(flow_type::small_strong, measure_);
  add_lines(group, limits_, {left, first}, flow_type::small_strong, style::text);
  add_ruler(group, {right, foot_top_ + 5.6});
  return group;
}

std::vector<Group> SheetFrame::groups(std::size_t page, std::size_t pages) const {
  std::vector<Group> all;
  if (page == 1) {
    all = title_;
    Group number{tr("page number"), {}};
    add_lines(number, {page_text(page, pages)}, {paper_.width - paper_.margin, paper_.margin + 3.4}, small,
              style::text, Anchor::End);
    all.push_back(std::move(number));
  } else {
    all.push_back(running(page, pages));
  }
  all.push_back(foot());
  return all;
}

}  // namespace plugward
