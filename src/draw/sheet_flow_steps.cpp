// SPDX-License-Identifier: MIT
// Tested in sheet_flow_test.cpp.
#include "draw/sheet_flow_steps.h"

#include <algorithm>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double indent = 15;     ///< of everything below the act
constexpr double link_room = 24;  ///< for "→ page 123" at the right of the act
constexpr double written = 26;    ///< of the line to write a reading on
constexpr double unit_room = 13;  ///< for the reading's unit
constexpr double column_gap = 2.5;

class StepSetter {
 public:
  explicit StepSetter(FlowText& text) : text_(text), measure_(text.measure()) {}

  /// `power_until`: number of the last step of the run with power on that this one begins; 0: it begins none.
  void set(const sheet::Step& step, int power_until) {
    const std::size_t first = text_.pieces.size();
    for (const std::string& caution : step.cautions) {
      text_.paragraph(caution, {.type = flow_type::strong, .left = indent, .mark = FlowMark::Warning});
    }
    if (power_until > 0) {
      const std::string words = power_until == step.number
                                    ? std::string(tr("Power is ON during this step."))
                                    : format("Power is ON during steps {} to {}.", step.number, power_until);
      text_.paragraph(words, {.type = flow_type::strong, .left = indent, .mark = FlowMark::Warning});
    }
    add_act(step, power_until > 0);
    const auto line = [&](const std::string& words, Type type) {
      text_.paragraph(words, {.type = type, .left = indent});
    };
    if (!step.see.empty()) line(format("You must see: {}", step.see), flow_type::body);
    if (!step.wrong.empty()) line(format("If not: {}", step.wrong), flow_type::small);
    for (const std::string& part : step.parts) {
      text_.paragraph(part, {.type = flow_type::body, .left = indent, .mark = FlowMark::Box, .before = 0.5});
    }
    for (const sheet::Blank& blank : step.blanks) add_blank(blank);
    if (!step.code.empty()) add_code(step.code);
    if (!step.not_proved.empty()) line(format("Not proved by it: {}", step.not_proved), flow_type::small);
    text_.pieces[first].before = 2.6;
    keep_together(text_.pieces, first);
    text_.pieces.back().with_next = false;
  }

 private:
  void add_act(const sheet::Step& step, bool power_told) {
    const std::size_t first = text_.pieces.size();
    const double baseline = baseline_of(flow_type::body, measure_);
    const bool cautioned = !step.cautions.empty() || power_told;
    text_.paragraph(
        step.power && !power_told ? format("Power ON: {}", step.act) : step.act,
        {.left = indent, .right = step.picture.empty() ? 0 : link_room, .before = cautioned ? 0.9 : 0});
    FlowPiece& piece = text_.pieces[first];
    Group group{"step", {}};
    group.add(tick_box({0.3, baseline - 3.3}, 3.8));
    group.add(
        Words{{indent - 1.8, baseline}, format("{}", step.number), 10, true, style::text, Anchor::End, 0});
    piece.groups.push_back(std::move(group));
    if (!step.picture.empty()) {
      piece.links.push_back(
          {{text_.width() - link_room + 1, 0, text_.width(), piece.height}, step.picture, true});
    }
  }

  /// Points, a line to write on with its unit, and what is expected; below it what other readings point to.
  void add_blank(const sheet::Blank& blank) {
    const double room = text_.width() - indent;
    const double points = std::max(20.0, 0.4 * (room - written - unit_room));
    const double line_at = indent + points + column_gap;
    const double expected_at = line_at + written + unit_room + column_gap;
    const Type type = flow_type::small, strong = flow_type::small_strong;
    const std::vector<std::string> names = wrap(blank.points, points, strong, measure_);
    std::vector<std::string> expected;
    if (!blank.expect.empty()) {
      expected = wrap(format("expected: {}", blank.expect), text_.width() - expected_at, type, measure_);
    }
    const double line = style::line_height(type.points), top = 1.8,
                 baseline = top + baseline_of(type, measure_);
    FlowPiece piece;
    piece.height = top + line * static_cast<double>(std::max(names.size(), expected.size())) + 1.2;
    Group group{"blank", {}};
    add_lines(group, names, {indent, baseline}, strong, style::text);
    group.add(polyline({{line_at, baseline + 0.6}, {line_at + written, baseline + 0.6}},
                       stroked(style::outline, style::fine)));
    if (!blank.unit.empty()) {
      add_lines(group, {shorten(blank.unit, unit_room - 1.5, type, measure_)},
                {line_at + written + 1.2, baseline}, type, style::text);
    }
    add_lines(group, expected, {expected_at, baseline}, type, style::text);
    piece.groups.push_back(std::move(group));
    text_.add(std::move(piece));
    const FlowParagraph below{.type = type, .left = indent + 4};
    if (!blank.too_low.empty()) text_.paragraph(format("lower: {}", blank.too_low), below);
    if (!blank.too_high.empty()) text_.paragraph(format("higher: {}", blank.too_high), below);
  }

  void add_code(const std::string& code) {
    const Type type = flow_type::small;
    const double line = style::line_height(type.points);
    for (std::size_t at = 0; at <= code.size();) {
      const std::size_t end = std::min(code.find('\n', at), code.size());
      for (const std::string& set :
           wrap(std::string_view(code).substr(at, end - at), text_.width() - indent - 4, type, measure_)) {
        FlowPiece piece;
        piece.height = line;
        Group group{"code", {}};
        group.add(rectangle({indent, 0}, text_.width() - indent, line, filled(style::panel)));
        add_lines(group, {set}, {indent + 2, baseline_of(type, measure_)}, type, style::text);
        piece.groups.push_back(std::move(group));
        text_.add(std::move(piece));
      }
      at = end + 1;
    }
  }

  FlowText& text_;
  const TextMeasure& measure_;
};

}  // namespace

void add_steps(FlowText& text, const sheet::Steps& steps) {
  StepSetter setter(text);
  const std::vector<sheet::Step>& all = steps.steps;
  for (std::size_t i = 0; i < all.size(); ++i) {
    int power_until = 0;
    if (all[i].power && (i == 0 || !all[i - 1].power)) {
      std::size_t last = i;
      while (last + 1 < all.size() && all[last + 1].power) ++last;
      power_until = all[last].number;
    }
    setter.set(all[i], power_until);
  }
}

}  // namespace plugward
