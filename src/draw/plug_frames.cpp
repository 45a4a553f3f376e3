// SPDX-License-Identifier: MIT
// Tested in mating_picture_test.cpp.
#include "draw/plug_frames.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/moves.h"
#include "draw/page_plan.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/words.h"

namespace plugward {
namespace {

class Frames {
 public:
  Frames(const MatingFacts& facts, View view, const Box& field, const TextMeasure& measure)
      : facts_(facts), view_(view), field_(field), measure_(measure) {}

  std::vector<Group> compose(PagePlan plan) {
    add_frames(std::move(plan));
    return std::move(groups_);
  }

  std::vector<Group> excuse() {
    add_excuse();
    return std::move(groups_);
  }

 private:
  bool moves() const { return facts_.plan != nullptr; }

  void add_excuse() {
    Group group{tr("not drawn"), {}};
    const Type type{style::caption_type, false};
    const std::string text = format(
        "This plug of {} positions on {} does not fit on one page with readable type. The text report "
        "lists every lead.",
        facts_.plug.positions, facts_.header.id);
    add_lines(group, wrap(text, field_.right - field_.left, type, measure_), {field_.left, field_.top + 20},
              type, style::text);
    groups_.push_back(std::move(group));
  }

  void add_caption(const std::string& head, const std::vector<std::string>& texts, bool with_eye,
                   double middle) {
    Group group{format("caption {}", head), {}};
    const Type bold{style::caption_type, true}, small{style::small_type, false};
    std::vector<std::string> lines;
    for (const std::string& text : texts) {
      for (std::string& line : wrap_at_most(text, page::gutter - 3 - page::inset, 5, small, measure_))
        lines.push_back(std::move(line));
    }
    const double eye_height = with_eye ? 6 : 0;
    const std::vector<std::string> heads =
        wrap_at_most(head, page::gutter - 3 - page::inset, 2, bold, measure_);
    const double head_height = static_cast<double>(heads.size()) * style::line_height(bold.points);
    const double height =
        head_height + eye_height + static_cast<double>(lines.size()) * style::line_height(small.points);
    double y =
        std::clamp(middle - height / 2, caption_floor_, std::max(caption_floor_, field_.bottom - height));
    add_lines(group, heads, {page::inset, y + 4}, bold, style::text);
    y += head_height;
    if (with_eye) append(group, eye({page::inset + 4.2, y + 2.6}, 8));
    y += eye_height;
    y = add_lines(group, lines, {page::inset, y + 3}, small, style::quiet);
    caption_floor_ = y;
    groups_.push_back(std::move(group));
  }

  void draw_plug(const Housing& h, const PagePlan& l, const Arrangement& arrangement,
                 const std::vector<Label>& labels, const std::string& name, bool flags) {
    std::vector<Group> leads, cavities, words;
    for (int cavity = 1; cavity <= facts_.plug.positions; ++cavity) {
      const int lead = MatingFacts::lead_in(arrangement, cavity);
      cavities.push_back(draw_cavity(h, cavity, lead >= 0, name));
      if (lead < 0) continue;
      leads.push_back(draw_lead(h, cavity, facts_.lead(lead).colour, l.columns, l.zone, name, measure_));
      Group group{format("{} label of cavity {}", name, cavity), {}};
      const SetLabel set =
          set_label(labels[static_cast<std::size_t>(cavity) - 1], l.columns, l.tallest, measure_);
      const int slot = label_slot(h.grid, cavity);
      const double edge = label_edge(h, l.zone);
      add_label(group, set, l.columns, slot, edge, h.leads_up, measure_);
      const std::string sign = flags ? flags_of_lead(facts_, lead) : std::string();
      if (!sign.empty())
        add_flag(group, sign, {slot_x(l.columns, slot), edge - set.height - 1.2}, l.columns.turned, measure_);
      words.push_back(std::move(group));
    }
    const auto put = [&](std::vector<Group>& groups) {
      for (Group& g : groups) groups_.push_back(std::move(g));
    };
    // Wires towards the reader lie over the housing; seen into the mating face they lie behind it.
    const bool behind = h.grid.view == View::MatingFace;
    if (behind) put(leads);
    groups_.push_back(draw_body(h, name));
    put(cavities);
    if (!behind) put(leads);
    put(words);
  }

  std::string scale_words(const PagePlan& l) const {
    std::string text = format("drawn {:g}:1", l.scale);
    if (!l.plug.stated || !l.header.stated) text += tr(", outline assumed");
    return text;
  }

  std::vector<std::string> plug_caption() const {
    std::vector<std::string> texts{view_words(view_ == View::WireSide)};
    const KeySide key = facts_.plug_family ? key_side(*facts_.plug_family) : KeySide::NotStated;
    if (key == KeySide::NotStated) texts.emplace_back(tr("side of key or latch not stated"));
    if (key == KeySide::None) texts.emplace_back(tr("no key"));
    if (key == KeySide::Near || key == KeySide::Far)
      texts.push_back(
          format("{} {}", key_word(*facts_.plug_family), key_on_top(key) ? tr("above") : tr("below")));
    if (facts_.plug_family && facts_.plug_family->profile == Profile::Circular)
      texts.emplace_back(tr("round part, drawn in a row"));
    if (facts_.plug_family && facts_.plug_family->profile == Profile::Coded)
      texts.emplace_back(tr("contacts drawn in a row by their numbers"));
    if (facts_.plug.rows > 1 && facts_.plug.numbering == Numbering::ByRow)
      texts.emplace_back(tr("side of the second row not stated: compare marks"));
    if (facts_.plug.key == KeyState::Removed) texts.emplace_back(tr("key removed"));
    return texts;
  }

  std::vector<std::string> header_caption(const PagePlan& l, const HeaderPicture& h) const {
    std::vector<std::string> texts{facts_.header.underside ? tr("underside of the board, pins towards you")
                                                           : tr("board from above, pins towards you"),
                                   scale_words(l)};
    if (drawn_columns(l.header_grid) < columns(l.header_grid))
      texts.push_back(format("goes on to pin {}", facts_.header.positions));
    if (h.edge_near()) texts.emplace_back(tr("thick green: edge of the board"));
    return texts;
  }

  /// Leads out of the housing for good lie beside it; returns where each begins.
  std::vector<SpareEnd> add_spares(const Housing& then, const PagePlan& l) {
    std::vector<SpareEnd> ends;
    double y[2] = {numbers_edge(then) - 4, numbers_edge(then) - 4};
    int k = 0;
    for (const int index : l.spares) {
      const bool right = l.spares.size() <= 3 || k % 2 == 0;
      double& row = y[right ? 0 : 1];
      ++k;
      const double d = right ? 1 : -1;
      const double start = right ? then.body.right + 6.5 : then.body.left - 6.5;
      const Lead& lead = facts_.lead(index);
      Group group{format("spare lead {}", to_code(lead.colour)), {}};
      add_wire(group, polyline({{start, row}, {start + d * 23, row}}, {}), lead.colour, 1.8);
      // The sleeve over its end.
      group.add(rectangle({right ? start - 1 : start - 4, row - 1.7}, 5, 3.4,
                          outlined(style::quiet, style::outline, style::fine), 1.2));
      add_tag(group, to_code(lead.colour), {start + d * 14, row}, false, measure_);
      const std::string text =
          (lead.to ? facts_.fitting.harness->terminal_name(*lead.to) : std::string(tr("not known"))) +
          tr(": insulated");
      const double room = right ? field_.right - start : start - field_.left;
      group.add(Words{{start - d * 1, row - 2.9},
                      shorten(text, room, {style::small_type, false}, measure_),
                      style::small_type,
                      false,
                      style::text,
                      right ? Anchor::Start : Anchor::End,
                      0});
      ends.push_back({index, {start - d * 1.6, row}});
      row -= page::spare_row;
      groups_.push_back(std::move(group));
    }
    return ends;
  }

  /// Dotted lines from the cavities down to the pins that they will meet.
  void add_drops(const Housing& h, const HeaderPicture& header) {
    if (h.grid.view == View::MatingFace) return;
    Group group{tr("which pin each cavity will meet"), {}};
    for (int cavity = 1; cavity <= facts_.plug.positions; ++cavity) {
      if (cavity > facts_.header.positions || !shown(header.grid, cavity)) continue;
      const std::vector<Point> out = way_out(h, cavity);
      if (out.size() > 1 || std::abs(out.back().x - centre(header.grid, cavity).x) > 0.01) continue;
      group.add(polyline({out.back(), {out.back().x, header.top - 0.5}},
                         stroked(style::quiet, style::fine, {0.5, 0.9})));
    }
    groups_.push_back(std::move(group));
  }

  void add_header(const PagePlan& l, const HeaderPicture& h) {
    for (Group& g : draw_header(h, facts_.header, facts_.header_family)) groups_.push_back(std::move(g));
    const double y = draw_leaders(groups_, h, l.columns);
    for (int n = 1; n <= facts_.header.positions; ++n) {
      if (!shown(h.grid, n)) continue;
      Group group{format("header label of pin {}", n), {}};
      const SetLabel set =
          set_label(l.labels.pins[static_cast<std::size_t>(n) - 1], l.columns, l.tallest, measure_);
      add_label(group, set, l.columns, label_slot(h.grid, n), y, false, measure_);
      const std::string sign = flags_of_pin(facts_, n);
      if (!sign.empty()) {
        const double foot =
            y + set.height +
            (l.columns.turned ? text_width(sign, {style::small_type, true}, measure_) + 4.6 : 5.8);
        add_flag(group, sign, {slot_x(l.columns, label_slot(h.grid, n)), foot}, l.columns.turned, measure_);
      }
      groups_.push_back(std::move(group));
    }
  }

  void add_frames(PagePlan l) {
    // What height is left goes between the parts.
    const double spare = std::max(0.0, field_.bottom - field_.top - l.total);
    const double centre_x = l.columns.centre;
    const int shared = std::max(drawn_columns(l.plug_grid), drawn_columns(l.header_grid));
    const double left = centre_x - (shared - 1) * l.plug.pitch / 2;
    l.plug_grid.origin.x = left;
    l.header_grid.origin.x = l.header.pitch == l.plug.pitch
                                 ? left
                                 : centre_x - (drawn_columns(l.header_grid) - 1) * l.header.pitch / 2;
    const double stretch = std::min(spare * 0.5, 14.0);

    double y = field_.top + (moves() ? std::min(spare * 0.15, 5.0) : std::max(0.0, spare - stretch) / 2) +
               l.now_labels + l.zone.height();
    const Housing now = place_housing(l.plug_grid, l.plug, facts_.plug_family, y, true);
    y += housing_height(l.plug, facts_.plug_family);

    caption_floor_ = field_.top;
    add_caption(moves() ? tr("NOW") : tr("PLUG"), plug_caption(), true, (now.body.top + now.body.bottom) / 2);
    if (moves()) {
      y += l.band + stretch;
      const Housing then = place_housing(l.plug_grid, l.plug, facts_.plug_family, y, false);
      y += housing_height(l.plug, facts_.plug_family) + l.zone.height() + l.then_labels;
      std::vector<std::string> texts{view_words(view_ == View::WireSide)};
      if (!l.header_drawn) texts.push_back(format("header {} is on the map only", facts_.header.id));
      if (!l.header_drawn) texts.push_back(scale_words(l));
      add_caption(tr("THEN"), texts, true, (then.body.top + then.body.bottom) / 2);
      draw_plug(now, l, facts_.now, l.labels.now, tr("now"), false);
      draw_plug(then, l, facts_.then, l.labels.then, tr("then"), false);
      const std::vector<SpareEnd> ends = add_spares(then, l);
      for (Group& g : draw_moves(facts_.plan->steps, now, then, {field_.left, field_.right}, ends, measure_))
        groups_.push_back(std::move(g));
      y += 3 + std::min(spare * 0.2, 4.0);
    } else {
      draw_plug(now, l, facts_.now, l.labels.now, tr("now"), true);
      y += 6 + stretch;
    }
    if (!l.header_drawn) return;
    const HeaderPicture header =
        place_header(l.header_grid, l.header, facts_.header_family, y, l.scale, facts_.header,
                     *facts_.fitting.board, field_.left, field_.right - 1);
    add_header(l, header);
    if (!moves()) add_drops(now, header);
    add_caption(format("HEADER {}", facts_.header.id), header_caption(l, header), true,
                (header.body.top + header.body.bottom) / 2);
  }

  const MatingFacts& facts_;
  View view_;
  Box field_;
  const TextMeasure& measure_;
  std::vector<Group> groups_;
  double caption_floor_ = 0;
};

}  // namespace

bool frames_fit(const MatingFacts& facts, View view, const Box& field, const TextMeasure& measure) {
  const std::optional<PagePlan> plan = plan_page(facts, view, field, measure);
  return plan && plan->header_drawn;
}

std::vector<Group> plug_frames(const MatingFacts& facts, View view, const Box& field,
                               const TextMeasure& measure) {
  PagePlanner planner(facts, view, field.right - field.left, measure);
  return plug_frames(facts, view, field, planner, measure);
}

std::vector<Group> plug_frames(const MatingFacts& facts, View view, const Box& field, PagePlanner& planner,
                               const TextMeasure& measure) {
  Frames frames(facts, view, field, measure);
  if (std::optional<PagePlan> plan = planner.plan(field.left, field.bottom - field.top))
    return frames.compose(std::move(*plan));
  return frames.excuse();
}

}  // namespace plugward
