// SPDX-License-Identifier: MIT
// Idea: everything but type scales, so try the scales of a fixed list from the largest down and take the
// first at which the heights add up; only then say less and try again. At most 3 + 10 + 13 passes over 15
// scales, each linear in the number of labels; a pass does not depend on the height of the field, so fields
// of several heights share them, and scales at which the labels are equally wide share their lines. Tested in
// page_test.cpp and mating_picture_test.cpp.
#include "draw/page_plan.h"

#include <algorithm>
#include <array>
#include <map>
#include <tuple>

#include "base/format.h"
#include "draw/moves.h"
#include "draw/style.h"
#include "draw/words.h"

namespace plugward {
namespace {

constexpr double flag_room = 6.5;     ///< beyond a label
constexpr double upright_flag = 5.4;  ///< likewise, beside the length of its sign
constexpr double spare_room = 32;     ///< beside the housing, for leads that were taken out
constexpr int most_columns = 40;
constexpr std::array<double, 15> scales = {16, 12, 10, 8, 6, 5, 4, 3.5, 3, 2.6, 2.5, 2, 1.5, 1.2, 1};
constexpr double widest_pitch = 20.5;  ///< on paper
constexpr double deepest = 34;         ///< a part larger on paper says no more

/// How much a label says. What the arcs and the row of the header show anyway is left out first; the
/// description says everything. WithPins: leads say which pin they meet, because no header is drawn.
enum class Detail { Full, Short, Least, WithPins };

void add_pins(PageLabels& labels, const MatingFacts& facts) {
  for (int cavity = 1; cavity <= std::min(facts.plug.positions, facts.header.positions); ++cavity) {
    Label& label = labels.then[static_cast<std::size_t>(cavity) - 1];
    if (label.phrases.empty()) continue;
    label.phrases.resize(1);
    label.phrases.push_back(format("on {}.{}", facts.header.id, cavity));
    label.phrases.push_back(pin_phrases(facts.header.pin(cavity), facts.fitting).front());
  }
}

PageLabels make_labels(const MatingFacts& facts, Detail detail) {
  PageLabels labels;
  for (int cavity = 1; cavity <= facts.plug.positions; ++cavity) {
    const auto lead_label = [&](const Arrangement& arrangement, bool after) {
      const int lead = MatingFacts::lead_in(arrangement, cavity);
      Label label;
      if (lead < 0) return label;
      label.phrases = lead_phrases(facts.lead(lead), *facts.fitting.harness);
      if (facts.plan != nullptr && detail == Detail::Least && after) label.phrases.resize(1);
      if (facts.plan != nullptr && detail != Detail::Full) return label;
      if (facts.plan != nullptr && !after) {
        const int goal = facts.then.cavity[static_cast<std::size_t>(lead)];
        label.phrases.push_back(goal == cavity ? tr("stays")
                                : goal > 0     ? format("moves to {}", goal)
                                               : tr("comes out"));
      } else {
        label.phrases.push_back(meeting_words(facts, lead, cavity, after));
      }
      return label;
    };
    labels.now.push_back(lead_label(facts.now, false));
    labels.then.push_back(lead_label(facts.then, true));
  }
  for (const Pin& pin : facts.header.pins) {
    labels.pins.push_back({pin_phrases(pin, facts.fitting)});
    if (detail == Detail::Least) labels.pins.back().phrases.resize(1);
  }
  if (detail == Detail::WithPins) add_pins(labels, facts);
  return labels;
}

double tallest_of(const std::vector<Label>& labels, const LabelColumns& columns, double limit,
                  const TextMeasure& measure) {
  double tallest = 0;
  for (const Label& label : labels)
    tallest = std::max(tallest, set_label(label, columns, limit, measure).height);
  return tallest;
}

class Planner {
 public:
  Planner(const MatingFacts& facts, View view, double width, const TextMeasure& measure)
      : facts_(facts), view_(view), room_(width), measure_(measure) {
    for (const Lead& lead : facts.plug.leads) codes_.push_back(to_code(lead.colour));
    for (std::size_t i = 0; i < facts.then.cavity.size(); ++i) {
      if (facts.then.cavity[i] <= 0) spares_.push_back(static_cast<int>(i));
    }
    flags_ = std::any_of(facts.flagged.begin(), facts.flagged.end(),
                         [](const Flagged& f) { return f.number > 0; });
  }

  std::optional<PagePlan> choose(double height) {
    height_ = height;
    header_drawn_ = true;
    PagePlan last;
    for (const Detail detail : {Detail::Full, Detail::Short, Detail::Least}) {
      detail_ = detail;
      last.brief = detail == Detail::Least;
      if (best_scale(60, last)) return last;
    }
    // Names are shortened only when no scale would do otherwise.
    for (double tallest = 56; tallest >= 20; tallest -= 4) {
      if (best_scale(tallest, last)) return last;
    }
    if (!moves()) return std::nullopt;
    // Two housings of two rows and a deep header are too much for one page: the header's words go to the
    // leads.
    header_drawn_ = false;
    detail_ = Detail::WithPins;
    for (double tallest = 60; tallest >= 12; tallest -= 4) {
      if (best_scale(tallest, last)) return last;
    }
    return std::nullopt;
  }

 private:
  bool moves() const { return facts_.plan != nullptr; }

  const PageLabels& labels() {
    std::optional<PageLabels>& made = labels_[static_cast<std::size_t>(detail_)];
    if (!made) made = make_labels(facts_, detail_);
    return *made;
  }

  /// Does not depend on the height of the field, so it is worked out once.
  const PagePlan& known_at(double scale, double tallest) {
    const auto [entry, is_new] = known_.try_emplace({detail_, scale, tallest});
    if (is_new) entry->second = at(scale, tallest);
    return entry->second;
  }

  /// Height of the flags beyond the labels; upright ones are as high as their signs are long.
  double flag_height(bool turned) const {
    if (!flags_) return 0;
    if (!turned) return flag_room;
    double longest = 0;
    const auto look = [&](const std::string& sign) {
      longest = std::max(longest, text_width(sign, {style::small_type, true}, measure_));
    };
    for (std::size_t i = 0; i < facts_.plug.leads.size(); ++i)
      look(flags_of_lead(facts_, static_cast<int>(i)));
    for (const Pin& pin : facts_.header.pins) look(flags_of_pin(facts_, pin.number));
    return std::max(flag_room, longest + upright_flag);
  }

  /// Between the housings: for the arcs, and for leads that lie beside the housing.
  double band() const {
    const std::size_t rows = spares_.size() <= 3 ? spares_.size() : (spares_.size() + 1) / 2;
    return std::max(move_band(facts_.plan->steps),
                    spares_.empty() ? 0.0 : 12 + page::spare_row * static_cast<double>(rows));
  }

  struct LabelHeights {
    LabelColumns columns;
    double now = 0, then = 0, pins = 0;
  };

  /// Which pins are shown and how many columns there are is the same at every scale.
  const LabelHeights& label_heights(const Grid& header, int count, double least, double tallest) {
    const auto [entry, is_new] = heights_.try_emplace({detail_, std::max(least, room_ / count), tallest});
    LabelHeights& set = entry->second;
    if (!is_new) return set;
    const PageLabels& words = labels();
    std::vector<Label> pins;
    for (int n = 1; n <= facts_.header.positions; ++n) {
      if (shown(header, n)) pins.push_back(words.pins[static_cast<std::size_t>(n) - 1]);
    }
    std::vector<Label> all = words.now;
    if (moves()) all.insert(all.end(), words.then.begin(), words.then.end());
    all.insert(all.end(), pins.begin(), pins.end());
    set.columns = choose_columns(count, least, room_, all, measure_);
    const double flags = flag_height(set.columns.turned);
    set.now = tallest_of(words.now, set.columns, tallest, measure_) + flags;
    set.then = moves() ? tallest_of(words.then, set.columns, tallest, measure_) : 0;
    set.pins = tallest_of(pins, set.columns, tallest, measure_) + flags;
    return set;
  }

  PagePlan at(double scale, double tallest) {
    PagePlan l;
    l.header_drawn = header_drawn_;
    l.spares = spares_;
    if (moves()) l.band = band();
    l.scale = scale;
    l.tallest = tallest;
    l.plug = plug_size(facts_.plug_family, facts_.plug.rows, scale);
    l.header = header_size(facts_.header_family, facts_.header.rows, scale);
    l.plug_grid = {facts_.plug.positions,
                   facts_.plug.rows,
                   facts_.plug.numbering,
                   view_,
                   l.plug.pitch,
                   l.plug.row_pitch,
                   {},
                   0};
    l.header_grid = {facts_.header.positions,
                     facts_.header.rows,
                     facts_.header.numbering,
                     View::WireSide,
                     l.header.pitch,
                     l.header.row_pitch,
                     {},
                     0};
    if (columns(l.header_grid) > columns(l.plug_grid) + 2)
      l.header_grid.shown_columns = columns(l.plug_grid) + 2;
    const int count = std::max(label_slots(l.plug_grid), label_slots(l.header_grid));
    const LabelHeights& set = label_heights(l.header_grid, count, l.plug.pitch / l.plug_grid.rows, tallest);
    l.columns = set.columns;
    l.zone = lead_zone(l.plug_grid, l.columns, codes_, measure_);
    if (moves()) l.zone.fan = std::min(l.zone.fan, 8.0);
    l.now_labels = set.now;
    l.then_labels = set.then;
    l.pin_labels = set.pins;

    const double housing = housing_height(l.plug, facts_.plug_family);
    const double header = header_height(l.header_grid, l.header, facts_.header_family) +
                          leader_height(l.header_grid, l.columns);
    l.total = l.now_labels + l.zone.height() + housing + 4;
    if (header_drawn_) l.total += header + l.pin_labels;
    if (moves()) l.total += l.band + housing + l.zone.height() + l.then_labels;
    return l;
  }

  bool fits(const PagePlan& l) const {
    if (l.total > height_) return false;
    const double plug = (drawn_columns(l.plug_grid) - 1) * l.plug.pitch + 2 * l.plug.side;
    const double header = (drawn_columns(l.header_grid) - 1) * l.header.pitch + 2 * l.header.side;
    if (std::max(plug, header) + 8 > room_) return false;
    if (l.columns.width * l.columns.count > room_ + 0.01) return false;
    if (!spares_.empty() && plug + 2 * spare_room > room_) return false;
    return true;
  }

  /// A drawing at these sizes says no more than a smaller one.
  static bool too_large(const BodySize& plug, const BodySize& header) {
    return std::max(plug.pitch, header.pitch) > widest_pitch ||
           (std::max(plug.half_depth, header.half_depth) > deepest / 2 && plug.pitch > 8);
  }

  /// The largest scale at which everything fits, with labels up to `tallest` mm; else false.
  bool best_scale(double tallest, PagePlan& plan) {
    const double least_pitch = facts_.plug.rows > 1 || facts_.header.rows > 1 ? 6.3 : 4.2;
    for (const double scale : scales) {
      const BodySize plug = plug_size(facts_.plug_family, facts_.plug.rows, scale);
      const BodySize header = header_size(facts_.header_family, facts_.header.rows, scale);
      if (too_large(plug, header)) continue;
      if (std::min(plug.pitch, header.pitch) < least_pitch) break;
      const PagePlan& l = known_at(scale, tallest);
      if (!fits(l)) continue;
      const bool brief = plan.brief;
      plan = l;
      plan.brief = brief;
      plan.labels = labels();
      return true;
    }
    return false;
  }

  const MatingFacts& facts_;
  View view_;
  double room_ = 0;    ///< width of the field
  double height_ = 0;  ///< of the field
  const TextMeasure& measure_;
  Detail detail_ = Detail::Full;
  std::array<std::optional<PageLabels>, 4> labels_;               ///< by Detail
  std::map<std::tuple<Detail, double, double>, PagePlan> known_;  ///< by detail, scale, tallest
  std::map<std::tuple<Detail, double, double>, LabelHeights>
      heights_;  ///< by detail, room of a column, tallest
  std::vector<std::string> codes_;
  std::vector<int> spares_;
  bool flags_ = false;
  bool header_drawn_ = true;
};

}  // namespace

Box page_field(double width, double height) {
  return {page::gutter, page::title_height + 2.5, width - page::panel_width - page::gap,
          height - page::foot_height - 1};
}

struct PagePlannerWork {
  Planner planner;
  double width = 0;
  bool too_wide = false;
};

PagePlanner::PagePlanner(const MatingFacts& facts, View view, double width, const TextMeasure& measure)
    : work_(std::make_unique<PagePlannerWork>(
          PagePlannerWork{Planner(facts, view, width, measure), width, false})) {
  Grid probe;
  probe.positions = facts.plug.positions;
  probe.rows = facts.plug.rows;
  work_->too_wide = columns(probe) > most_columns;
}

PagePlanner::~PagePlanner() = default;

std::optional<PagePlan> PagePlanner::plan(double left, double height) {
  if (work_->too_wide) return std::nullopt;
  std::optional<PagePlan> plan = work_->planner.choose(height);
  if (plan) plan->columns.centre = left + work_->width / 2;
  return plan;
}

std::optional<PagePlan> plan_page(const MatingFacts& facts, View view, const Box& field,
                                  const TextMeasure& measure) {
  return PagePlanner(facts, view, field.right - field.left, measure)
      .plan(field.left, field.bottom - field.top);
}

}  // namespace plugward
