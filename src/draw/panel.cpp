// SPDX-License-Identifier: MIT
// Tested in panel_test.cpp.
#include "draw/panel.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr Type body_type{style::small_type, false};
constexpr Type bold_type{style::small_type, true};
constexpr double between = 1.3;
constexpr double between_columns = 6;
constexpr double flag_height = 4.6;
constexpr double flag_extra = 0.8;  ///< keeps the poles of flags below each other apart

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

double height_of(const Paragraph& p, std::size_t lines) {
  return static_cast<double>(lines) * line_height() + between +
         (p.mark == Paragraph::Mark::Flag ? flag_extra : 0);
}

double height_of(const Paragraph& p, double width, const TextMeasure& measure) {
  return height_of(p, wrap(p.text, width - indent(p, measure), type_of(p), measure).size());
}

/// The lines of paragraphs in a width, each wrapped once.
class WrappedParagraphs {
 public:
  WrappedParagraphs(const std::vector<Paragraph>& paragraphs, double width, const TextMeasure& measure)
      : paragraphs_(paragraphs), width_(width), measure_(measure), lines_(paragraphs.size()) {}

  const std::vector<std::string>& lines(std::size_t i) {
    const Paragraph& p = paragraphs_[i];
    if (!lines_[i]) lines_[i] = wrap(p.text, width_ - indent(p, measure_), type_of(p), measure_);
    return *lines_[i];
  }
  double height(std::size_t i) { return height_of(paragraphs_[i], lines(i).size()); }

 private:
  const std::vector<Paragraph>& paragraphs_;
  double width_;
  const TextMeasure& measure_;
  std::vector<std::optional<std::vector<std::string>>> lines_;
};

std::size_t texts_from(const std::vector<Paragraph>& paragraphs, std::size_t first) {
  std::size_t texts = 0;
  for (std::size_t i = first; i < paragraphs.size(); ++i) {
    if (!paragraphs[i].heading) ++texts;
  }
  return texts;
}

/// What stands in front of a paragraph whose first baseline begins at `at`.
void add_mark(Group& group, const Paragraph& p, Point at, const TextMeasure& measure) {
  switch (p.mark) {
    case Paragraph::Mark::TickBox:
      group.add(tick_box({at.x + 0.2, at.y - 2.9}, 3.2));
      add_lines(group, {p.sign}, {at.x + 5.0, at.y}, bold_type, style::text);
      break;
    case Paragraph::Mark::Flag:
      add_flag(group, p.sign, {at.x + 0.4, at.y + 1.1}, false, measure);
      break;
    case Paragraph::Mark::Number:
      add_lines(group, {p.sign}, at, bold_type, style::text);
      break;
    case Paragraph::Mark::None:
      break;
  }
}

using Paragraphs = std::vector<Paragraph>;

Paragraphs slice(const Paragraphs& all, std::size_t from, std::size_t to) {
  return {all.begin() + static_cast<std::ptrdiff_t>(from), all.begin() + static_cast<std::ptrdiff_t>(to)};
}

double column_width(double width) {
  return (width - between_columns) / 2;
}

/// Where the right column begins, and how high the higher one is.
struct Split {
  std::size_t at = 0;
  double height = 0;
};

Split level_split(const Paragraphs& all, double width, const TextMeasure& measure) {
  Split best{all.size(), height_of(all, width, measure)};
  const auto try_at = [&](std::size_t at) {
    const double height = std::max(height_of(slice(all, 0, at), width, measure),
                                   height_of(slice(all, at, all.size()), width, measure));
    if (height < best.height - 0.01) best = {at, height};
  };
  const double one = best.height;
  for (std::size_t i = 1; i < all.size(); ++i) {
    if (all[i].heading) try_at(i);
  }
  // One long list is broken within.
  const bool uneven = best.height > 0.7 * one;
  for (std::size_t i = 1; uneven && i < all.size(); ++i) {
    if (!all[i].heading && !all[i - 1].heading) try_at(i);
  }
  return best;
}

}  // namespace

double height_in_columns(const Paragraphs& paragraphs, double width, const TextMeasure& measure) {
  return level_split(paragraphs, column_width(width), measure).height;
}

std::size_t add_paragraph_columns(Group& group, const Paragraphs& paragraphs, const Box& room,
                                  const std::string& rest, const TextMeasure& measure) {
  const double width = column_width(room.right - room.left);
  const Split split = level_split(paragraphs, width, measure);
  const Box left{room.left, room.top, room.left + width, room.bottom};
  const Box right{room.right - width, room.top, room.right, room.bottom};
  const bool whole = split.height <= room.bottom - room.top + 0.01;
  const std::size_t first =
      add_paragraphs(group, slice(paragraphs, 0, whole ? split.at : paragraphs.size()), left, "", measure);
  return first + add_paragraphs(group, slice(paragraphs, first, paragraphs.size()), right, rest, measure);
}

double height_of(const std::vector<Paragraph>& paragraphs, double width, const TextMeasure& measure) {
  double height = 0.01;
  for (std::size_t i = 0; i < paragraphs.size(); ++i)
    height += height_of(paragraphs[i], width, measure) + (paragraphs[i].heading && i > 0 ? between : 0);
  return height;
}

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

std::size_t add_paragraphs(Group& group, const std::vector<Paragraph>& paragraphs, const Box& room,
                           const std::string& rest, const TextMeasure& measure) {
  const double ascent = measure.measure("Ag", style::small_type, false).ascent;
  const double width = room.right - room.left;
  double y = room.top;
  WrappedParagraphs wrapped(paragraphs, width, measure);
  for (std::size_t i = 0; i < paragraphs.size(); ++i) {
    const Paragraph& p = paragraphs[i];
    if (p.heading && (i + 1 == paragraphs.size() || paragraphs[i + 1].heading)) continue;
    if (p.heading && i > 0) y += between;
    // A heading does not stand alone, and a line is kept for the count of what is left out.
    double need = wrapped.height(i);
    if (p.heading) need += wrapped.height(i + 1);
    if (!rest.empty() && texts_from(paragraphs, i + (p.heading ? 2 : 1)) > 0) need += line_height();
    if (y + need > room.bottom) {
      if (rest.empty()) return i;
      const std::string text = format("… {} {}", texts_from(paragraphs, i), rest);
      add_lines(group, {shorten(text, width, bold_type, measure)}, {room.left, y + ascent}, bold_type,
                style::text);
      return i;
    }
    const double baseline = y + ascent;
    add_mark(group, p, {room.left, baseline}, measure);
    const double in = indent(p, measure);
    add_lines(group, wrapped.lines(i), {room.left + in, baseline}, type_of(p), style::text);
    y += wrapped.height(i);
  }
  return paragraphs.size();
}

}  // namespace plugward
