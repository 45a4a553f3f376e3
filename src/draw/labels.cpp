// SPDX-License-Identifier: MIT
#include "draw/labels.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr Type type{style::small_type, false};
constexpr double gap = 1.6;    ///< between neighbouring columns
constexpr double widest = 31;  ///< wider columns only make leads longer
constexpr std::size_t most_lines = 6;

double line_height() {
  return style::line_height(type.points);
}

std::string joined(const Label& label) {
  return format("{}", join(label.phrases, ", "));
}

}  // namespace

LabelColumns choose_columns(int count, double least, double room, const std::vector<Label>& labels,
                            const TextMeasure& measure) {
  LabelColumns columns;
  columns.count = count;
  columns.width = std::max(least, std::min(widest, room / count));
  for (const Label& label : labels) {
    std::size_t lines = 0;
    for (const std::string& phrase : label.phrases) {
      if (text_width(phrase, type, measure) <= columns.width - gap) {
        ++lines;
        continue;
      }
      if (widest_word(phrase, type, measure) > columns.width - gap) columns.turned = true;
      lines += wrap(phrase, columns.width - gap, type, measure).size();
    }
    if (lines > most_lines) columns.turned = true;
  }
  // One over-long name does not turn the text of a few wide columns: it is broken instead.
  if (columns.width >= 24) columns.turned = false;
  return columns;
}

double slot_x(const LabelColumns& columns, int slot) {
  return columns.centre + (slot - (columns.count - 1) / 2.0) * columns.width;
}

SetLabel set_label(const Label& label, const LabelColumns& columns, double tallest,
                   const TextMeasure& measure) {
  SetLabel set;
  if (label.phrases.empty()) return set;
  if (!columns.turned) {
    const auto most = static_cast<std::size_t>(std::max(1.0, std::floor(tallest / line_height())));
    for (const std::string& phrase : label.phrases) {
      for (std::string& line : wrap(phrase, columns.width - gap, type, measure))
        set.lines.push_back(std::move(line));
    }
    if (set.lines.size() > most) {
      set.lines.resize(most);
      set.lines.back() = shorten(set.lines.back() + " …", columns.width - gap, type, measure);
    }
    set.height = static_cast<double>(set.lines.size()) * line_height();
    return set;
  }
  const auto most =
      static_cast<std::size_t>(std::max(1.0, std::floor((columns.width - 0.2) / line_height())));
  const std::string text = joined(label);
  double length = text_width(text, type, measure);
  // The shortest length at which the lines suffice; phrases stay whole when there is a line for each.
  if (label.phrases.size() <= most) {
    double longest = 0;
    for (const std::string& phrase : label.phrases)
      longest = std::max(longest, text_width(phrase, type, measure));
    if (longest <= tallest) {
      set.lines = label.phrases;
      set.height = longest;
      return set;
    }
  }
  for (double l = std::max(12.0, widest_word(text, type, measure)); l < length; l += 1) {
    if (wrap(text, l, type, measure).size() <= most) length = l;
  }
  set.lines = wrap_at_most(text, std::min(length, tallest), most, type, measure);
  for (const std::string& line : set.lines)
    set.height = std::max(set.height, text_width(line, type, measure));
  return set;
}

void add_label(Group& group, const SetLabel& set, const LabelColumns& columns, int slot, double y, bool up,
               const TextMeasure& measure) {
  const double x = slot_x(columns, slot);
  const TextMeasure::Size size = measure.measure("Ag", type.points, type.bold);
  const double block = static_cast<double>(set.lines.size()) * line_height();
  if (!columns.turned) {
    double baseline = (up ? y - block : y) + size.ascent;
    for (const std::string& line : set.lines) {
      group.add(Words{{x, baseline}, line, type.points, type.bold, style::text, Anchor::Middle, 0});
      baseline += line_height();
    }
    return;
  }
  const double slack = line_height() - size.ascent - size.descent;
  double baseline = x - block / 2 + slack / 2 + size.ascent;
  for (const std::string& line : set.lines) {
    group.add(Words{
        {baseline, y}, line, type.points, type.bold, style::text, up ? Anchor::Start : Anchor::End, 90});
    baseline += line_height();
  }
}

}  // namespace plugward
