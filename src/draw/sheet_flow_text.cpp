// SPDX-License-Identifier: MIT
// Tested in sheet_flow_test.cpp.
#include "draw/sheet_flow_text.h"

#include <algorithm>

#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double mark_room = 5.6;
constexpr double bar = 0.8;  ///< beside a caution

void add_mark(Group& group, FlowMark mark, Point top_left, double baseline) {
  switch (mark) {
    case FlowMark::Box:
      group.add(tick_box({top_left.x + 0.3, top_left.y + baseline - 3.1}, 3.4));
      break;
    case FlowMark::Bullet:
      group.add(circle({top_left.x + 2.2, top_left.y + baseline - 1.2}, 0.6, filled(style::text)));
      break;
    case FlowMark::Warning:
      add_warning_mark(group, {top_left.x + 0.6, top_left.y + 0.1});
      break;
    case FlowMark::None:
      break;
  }
}

}  // namespace

double baseline_of(Type type, const TextMeasure& measure) {
  return measure.measure("Ag", type.points, type.bold).ascent;
}

void add_warning_mark(Group& group, Point corner) {
  constexpr double width = 4.4, height = 4.0;
  Shape triangle = polygon({{corner.x + width / 2, corner.y},
                            {corner.x + width, corner.y + height},
                            {corner.x, corner.y + height}},
                           outlined(style::paper, style::outline, 0.5));
  triangle.stroke->round = true;
  group.add(std::move(triangle));
  // Drawn, not set: a letter of 9 points is too high for it.
  group.add(polyline({{corner.x + width / 2, corner.y + 1.3}, {corner.x + width / 2, corner.y + 2.7}},
                     stroked(style::outline, 0.6)));
  group.add(circle({corner.x + width / 2, corner.y + 3.3}, 0.33, filled(style::outline)));
}

void FlowText::heading(const std::string& text, const std::string& name, int level) {
  const Type type = level == 0 ? flow_type::heading : flow_type::caption;
  const std::vector<std::string> lines = wrap(text, width_, type, measure_);
  FlowPiece piece;
  Group group{"heading", {}};
  add_lines(group, lines, {0, baseline_of(type, measure_)}, type, style::text);
  piece.height = static_cast<double>(lines.size()) * style::line_height(type.points);
  if (level == 0) {
    piece.height += 0.8;
    group.add(polyline({{0, piece.height}, {width_, piece.height}}, stroked(style::outline, style::line)));
    piece.height += 1.6;
  } else {
    piece.height += 0.8;
  }
  piece.groups.push_back(std::move(group));
  piece.before = level == 0 ? 6 : 3;
  piece.with_next = true;
  piece.name = name;
  piece.title = text;
  piece.level = level;
  add(std::move(piece));
}

void FlowText::paragraph(std::string_view text, const FlowParagraph& p) {
  double left = p.left + (p.mark == FlowMark::None ? 0 : mark_room);
  if (p.mark == FlowMark::Warning) left += 2.2;
  const double sign_at = left;
  const Type sign_type{p.type.points, true};
  if (!p.sign.empty()) left += text_width(p.sign, sign_type, measure_) + 1.6;
  const std::vector<std::string> lines =
      wrap(text, std::max(20.0, width_ - left - p.right), p.type, measure_);
  const double line = style::line_height(p.type.points), baseline = baseline_of(p.type, measure_);
  const std::size_t first = pieces.size();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    FlowPiece piece;
    Group group{"text", {}};
    if (p.mark == FlowMark::Warning) {
      group.add(rectangle({p.left, 0}, bar, line, filled(style::outline)));
    }
    if (i == 0) {
      add_mark(group, p.mark, {p.left + (p.mark == FlowMark::Warning ? 1.4 : 0), 0}, baseline);
      if (!p.sign.empty()) add_lines(group, {p.sign}, {sign_at, baseline}, sign_type, style::text);
    }
    add_lines(group, {lines[i]}, {left, baseline}, p.type, style::text);
    piece.groups.push_back(std::move(group));
    piece.height = line;
    piece.before = i == 0 ? p.before : 0;
    add(std::move(piece));
  }
  if (p.whole || lines.size() <= 3) {
    keep_together(pieces, first);
  } else {
    pieces[first].with_next = true;
    pieces[pieces.size() - 2].with_next = true;
  }
  pieces.back().with_next = p.with_next;
}

void keep_together(std::vector<FlowPiece>& pieces, std::size_t first) {
  for (std::size_t i = first; i + 1 < pieces.size(); ++i) pieces[i].with_next = true;
}

}  // namespace plugward
