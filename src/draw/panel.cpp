// SPDX-License-Identifier: MIT
#include "draw/panel.h"

#include <algorithm>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr Type body_type{style::small_type, false};
constexpr Type bold_type{style::small_type, true};
constexpr double between = 1.3;
constexpr double flag_height = 4.6;

Type type_of(const Paragraph& p) {
  return p.heading ? bold_type : body_type;
}

double indent(const Paragraph& p, const TextMeasure& measure) {
  switch (p.mark) {
    case Paragraph::Mark::None:
      return 0;
    case Paragraph::Mark::TickBox:
      return 5.0 + text_width(p.sign + " ", bold_type, measure);
    case Paragraph::Mark::Flag:
      return std::max(7.0, text_width(p.sign, bold_type, measure) + 4.6);
    case Paragraph::Mark::Number:
      break;
  }
  return std::max(4.5, text_width(p.sign + " ", bold_type, measure));
}

double line_height() {
  return style::line_height(style::small_type);
}

}  // namespace

Box add_flag(Group& group, const std::string& sign, Point foot, bool upright, const TextMeasure& measure) {
  const double length = text_width(sign, bold_type, measure) + 3.4;
  const double half_capital = 0.365 * style::small_type * style::mm_per_point;
  const Look look = outlined(style::paper, style::outline, style::line);
  if (upright) {
    const double w = 3.9;
    const Box b{foot.x - w / 2, foot.y - length - 0.6, foot.x + w / 2, foot.y - 0.6};
    group.add(polygon(
        {{b.left, b.bottom}, {b.left, b.top}, {foot.x, b.top + 1.2}, {b.right, b.top}, {b.right, b.bottom}},
        look));
    group.add(Words{{foot.x + half_capital, (b.top + b.bottom) / 2 + 0.6},
                    sign,
                    bold_type.points,
                    true,
                    style::text,
                    Anchor::Middle,
                    90});
    return b;
  }
  const Box b{foot.x, foot.y - flag_height, foot.x + length, foot.y};
  group.add(polygon({{b.left, b.top},
                     {b.right, b.top},
                     {b.right - 1.4, (b.top + b.bottom) / 2},
                     {b.right, b.bottom},
                     {b.left, b.bottom}},
                    look));
  group.add(
      polyline({{b.left, b.top - 0.2}, {b.left, foot.y + 0.9}}, stroked(style::outline, style::bold_line)));
  group.add(Words{{b.left + (length - 1.2) / 2, (b.top + b.bottom) / 2 + half_capital},
                  sign,
                  bold_type.points,
                  true,
                  style::text,
                  Anchor::Middle,
                  0});
  return b;
}

double add_paragraphs(Group& group, const std::vector<Paragraph>& paragraphs, const Box& room,
                      const std::string& rest, const TextMeasure& measure) {
  const TextMeasure::Size size = measure.measure("Ag", style::small_type, false);
  double y = room.top;
  const auto left_out = [&](std::size_t from) {
    return static_cast<std::size_t>(std::count_if(paragraphs.begin() + static_cast<std::ptrdiff_t>(from),
                                                  paragraphs.end(),
                                                  [](const Paragraph& p) { return !p.heading; }));
  };
  for (std::size_t i = 0; i < paragraphs.size(); ++i) {
    const Paragraph& p = paragraphs[i];
    const double in = indent(p, measure);
    const std::vector<std::string> lines = wrap(p.text, room.right - room.left - in, type_of(p), measure);
    if (p.heading && i > 0) y += between;
    const double height = static_cast<double>(lines.size()) * line_height() + between;
    // A heading does not stand alone, and a line is kept for the count of what is left out.
    const double need = height + (p.heading ? 2 : (i + 1 < paragraphs.size() ? 1 : 0)) * line_height();
    if (y + need > room.bottom) {
      const std::size_t more = left_out(i);
      if (more > 0) {
        const std::string text = format("… {} {}", more, rest);
        add_lines(group, {shorten(text, room.right - room.left, bold_type, measure)},
                  {room.left, y + size.ascent}, bold_type, style::text);
        y += line_height();
      }
      return y;
    }
    const double baseline = y + size.ascent;
    switch (p.mark) {
      case Paragraph::Mark::TickBox:
        group.add(tick_box({room.left + 0.2, baseline - 2.9}, 3.2));
        add_lines(group, {p.sign}, {room.left + 5.0, baseline}, bold_type, style::text);
        break;
      case Paragraph::Mark::Flag:
        add_flag(group, p.sign, {room.left + 0.4, baseline + 1.1}, false, measure);
        break;
      case Paragraph::Mark::Number:
        add_lines(group, {p.sign}, {room.left, baseline}, bold_type, style::text);
        break;
      case Paragraph::Mark::None:
        break;
    }
    add_lines(group, lines, {room.left + in, baseline}, type_of(p), style::text);
    y += height;
  }
  return y;
}

}  // namespace plugward
