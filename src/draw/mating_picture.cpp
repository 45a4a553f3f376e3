// SPDX-License-Identifier: MIT
// The page from top to bottom: title and verdict; housing now with its leads upwards; moves; housing then
// with its leads downwards; header on its board below, so that a lead comes down onto its pin; limits. The
// scale is the largest of a fixed list at which everything fits; type never shrinks.
#include "draw/mating_picture.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/format.h"
#include "draw/board_map.h"
#include "draw/header_picture.h"
#include "draw/leads.h"
#include "draw/mating_facts.h"
#include "draw/moves.h"
#include "draw/shapes.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "draw/words.h"

namespace plugward {
namespace {

constexpr double title_height = 17, foot_height = 8;
constexpr double gutter = 34;       ///< captions at the left
constexpr double panel_width = 74;  ///< at the right
constexpr double gap = 4;
constexpr double flag_room = 6.5;
constexpr double spare_room = 44;  ///< beside the housing, for leads that were taken out
constexpr int most_columns = 40;
constexpr std::array<double, 15> scales = {16, 12, 10, 8, 6, 5, 4, 3.5, 3, 2.6, 2.5, 2, 1.5, 1.2, 1};
constexpr double widest_pitch = 20.5;  ///< on paper
constexpr double deepest = 34;         ///< a part larger on paper says no more
constexpr double inset = 1.5;          ///< free along the edges of the page
constexpr double spare_row = 10.5;

/// Everything that depends on the scale.
struct Layout {
  double scale = 1;
  BodySize plug, header;
  Grid plug_grid, header_grid;
  LabelColumns columns;
  LeadZone zone;
  double now_labels = 0, then_labels = 0, pin_labels = 0;  ///< heights
  double tallest = 60;                                     ///< that a label may be
  double total = 0;
};

struct Labels {
  std::vector<Label> now, then, pins;  ///< [cavity - 1], [pin - 1]
};

/// How much a label says. What the arcs and the row of the header show anyway is left out first; the
/// description says everything.
enum class Detail { Full, Short, Least };

Labels make_labels(const MatingFacts& facts, Detail detail) {
  Labels labels;
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
        label.phrases.push_back(goal == cavity ? "stays"
                                : goal > 0     ? format("moves to {}", goal)
                                               : "comes out");
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
  return labels;
}

double tallest_of(const std::vector<Label>& labels, const LabelColumns& columns, double limit,
                  const TextMeasure& measure) {
  double tallest = 0;
  for (const Label& label : labels)
    tallest = std::max(tallest, set_label(label, columns, limit, measure).height);
  return tallest;
}

/// The composition of one page.
class Page {
 public:
  Page(const MatingFacts& facts, const MatingPictureOptions& options, const TextMeasure& measure)
      : facts_(facts), options_(options), measure_(measure) {
    scene_.width = options.width;
    scene_.height = options.height;
    scene_.title = title_of(facts);
    scene_.description = describe(facts, options.view);
    field_ = {gutter, title_height + 2.5, options.width - panel_width - gap,
              options.height - foot_height - 2};
    for (const Lead& lead : facts.plug.leads) codes_.push_back(to_code(lead.colour));
    for (std::size_t i = 0; i < facts.then.cavity.size(); ++i) {
      if (facts.then.cavity[i] <= 0) spares_.push_back(static_cast<int>(i));
    }
    flags_ = std::any_of(facts.flagged.begin(), facts.flagged.end(),
                         [](const Flagged& f) { return f.number > 0; });
  }

  Scene compose() {
    add_title();
    add_foot();
    add_panel();
    Grid probe;
    probe.positions = facts_.plug.positions;
    probe.rows = facts_.plug.rows;
    if (columns(probe) > most_columns) {
      Group group{"not drawn", {}};
      add_lines(
          group,
          wrap(format(
                   "A plug of {} positions is too long to be drawn on one page with readable type. The text "
                   "report lists every lead.",
                   facts_.plug.positions),
               field_.right - field_.left, {style::caption_type, false}, measure_),
          {field_.left, field_.top + 20}, {style::caption_type, false}, style::text);
      scene_.groups.push_back(std::move(group));
      return scene_;
    }
    add_frames(choose_layout());
    return scene_;
  }

 private:
  bool moves() const { return facts_.plan != nullptr; }

  /// Between the housings: for the arcs, and for leads that lie beside the housing.
  double band() const {
    const std::size_t rows = spares_.size() <= 3 ? spares_.size() : (spares_.size() + 1) / 2;
    return std::max(move_band(facts_.plan->steps),
                    spares_.empty() ? 0.0 : 12 + spare_row * static_cast<double>(rows));
  }

  Layout layout_at(double scale, double tallest) const {
    Layout l;
    l.scale = scale;
    l.tallest = tallest;
    l.plug = plug_size(facts_.plug_family, facts_.plug.rows, scale);
    l.header = header_size(facts_.header_family, facts_.header.rows, scale);
    l.plug_grid = {facts_.plug.positions,
                   facts_.plug.rows,
                   facts_.plug.numbering,
                   options_.view,
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
    const double room = field_.right - field_.left;
    const int count = std::max(label_slots(l.plug_grid), label_slots(l.header_grid));
    std::vector<Label> all = labels_.now;
    if (moves()) all.insert(all.end(), labels_.then.begin(), labels_.then.end());
    for (int n = 1; n <= facts_.header.positions; ++n) {
      if (shown(l.header_grid, n)) all.push_back(labels_.pins[static_cast<std::size_t>(n) - 1]);
    }
    l.columns = choose_columns(count, l.plug.pitch / l.plug_grid.rows, room, all, measure_);
    l.columns.centre = (field_.left + field_.right) / 2;
    l.zone = lead_zone(l.plug_grid, l.columns, codes_, measure_);
    if (moves()) l.zone.fan = std::min(l.zone.fan, 8.0);
    l.now_labels = tallest_of(labels_.now, l.columns, tallest, measure_) + (flags_ ? flag_room : 0);
    l.then_labels = moves() ? tallest_of(labels_.then, l.columns, tallest, measure_) : 0;
    std::vector<Label> pins;
    for (int n = 1; n <= facts_.header.positions; ++n) {
      if (shown(l.header_grid, n)) pins.push_back(labels_.pins[static_cast<std::size_t>(n) - 1]);
    }
    l.pin_labels = tallest_of(pins, l.columns, tallest, measure_) + (flags_ ? flag_room : 0);

    const double housing = housing_height(l.plug_grid, l.plug, facts_.plug_family);
    const double header = header_height(l.header_grid, l.header) + leader_height(l.header_grid, l.columns);
    l.total = l.now_labels + l.zone.height() + housing + header + l.pin_labels + 6;
    if (moves()) l.total += band() + housing + l.zone.height() + l.then_labels;
    return l;
  }

  bool fits(const Layout& l) const {
    if (l.total > field_.bottom - field_.top) return false;
    const double room = field_.right - field_.left;
    const double plug = (drawn_columns(l.plug_grid) - 1) * l.plug.pitch + 2 * l.plug.side;
    const double header = (drawn_columns(l.header_grid) - 1) * l.header.pitch + 2 * l.header.side;
    if (std::max(plug, header) + 8 > room) return false;
    if (l.columns.width * l.columns.count > room + 0.01) return false;
    if (!spares_.empty() && plug + (spares_.size() > 3 ? 2 : 1) * 2 * spare_room / 2 > room) return false;
    return true;
  }

  /// The largest scale at which everything fits, with labels up to `tallest` mm; else false and the smallest.
  bool best_scale(double tallest, Layout& layout) const {
    const double least_pitch = facts_.plug.rows > 1 || facts_.header.rows > 1 ? 6.6 : 4.2;
    for (const double scale : scales) {
      const Layout l = layout_at(scale, tallest);
      if (std::max(l.plug.pitch, l.header.pitch) > widest_pitch) continue;
      if (std::max(l.plug.half_depth, l.header.half_depth) > deepest / 2 && l.plug.pitch > 8) continue;
      if (std::min(l.plug.pitch, l.header.pitch) < least_pitch) break;
      layout = l;
      if (fits(layout)) return true;
    }
    return false;
  }

  Layout choose_layout() {
    Layout last;
    for (const Detail detail : {Detail::Full, Detail::Short, Detail::Least}) {
      labels_ = make_labels(facts_, detail);
      if (best_scale(60, last)) return last;
    }
    // Names are shortened only when no scale would do otherwise.
    for (double tallest = 56; tallest >= 8; tallest -= 4) {
      if (best_scale(tallest, last)) return last;
    }
    return last;
  }

  void add_title() {
    Group group{"title", {}};
    const double room = options_.width - 64;
    const Type big{style::title_type, true};
    std::vector<std::string> lines{format("{}, plug {}", facts_.fitting.harness->title,
                                          facts_.plug.label.empty() ? facts_.plug.id : facts_.plug.label)};
    const std::string second =
        format("→ {}{}, header {}", facts_.fitting.board->title,
               facts_.fitting.board->revision.empty() ? ", revision not stated"
                                                      : ", revision " + facts_.fitting.board->revision,
               header_name(facts_.header));
    group.add(Words{{inset, 6.5},
                    shorten(lines[0], room, big, measure_),
                    big.points,
                    true,
                    style::text,
                    Anchor::Start,
                    0});
    group.add(Words{{inset, 13.5},
                    shorten(second, room, {style::caption_type, false}, measure_),
                    style::caption_type,
                    false,
                    style::text,
                    Anchor::Start,
                    0});
    scene_.groups.push_back(std::move(group));
    scene_.groups.push_back(
        verdict_shape(facts_.advice.verdict, {options_.width - 58, 1, options_.width - inset, 15}, measure_));
    Group rule{"rule", {}};
    rule.add(
        polyline({{0, title_height}, {options_.width, title_height}}, stroked(style::outline, style::fine)));
    scene_.groups.push_back(std::move(rule));
  }

  void add_foot() {
    Group group{"limits", {}};
    const double y = options_.height - foot_height;
    group.add(polyline({{0, y}, {options_.width, y}}, stroked(style::outline, style::fine)));
    group.add(Words{
        {inset, y + 5.2},
        "plugward cannot see a bad crimp, a mislabelled board or a dead part. Power off before you plug.",
        style::small_type,
        true,
        style::text,
        Anchor::Start,
        0});
    // A ruler to check that the page was printed at its own size.
    const double right = options_.width - inset, left = right - 50;
    group.add(polyline({{left, y + 5.6}, {right, y + 5.6}}, stroked(style::outline, style::line)));
    for (int i = 0; i <= 5; ++i) {
      const double x = left + 10 * i;
      group.add(
          polyline({{x, y + 5.6}, {x, y + (i % 5 == 0 ? 3.2 : 4.4)}}, stroked(style::outline, style::fine)));
    }
    group.add(Words{{left - 1.5, y + 5.6}, "50 mm", style::small_type, false, style::text, Anchor::End, 0});
    scene_.groups.push_back(std::move(group));
  }

  void add_panel() {
    const double left = options_.width - panel_width;
    const Box room{left, title_height + 3, options_.width - inset, field_.bottom};
    const int header = facts_.fitting.placements[static_cast<std::size_t>(options_.placement)].header;
    BoardMap map = draw_board_map(*facts_.fitting.board, header, *facts_.fitting.catalogue,
                                  {room.left + 1, room.top, room.right - 1, room.top + 42});
    const Box box = map.box;
    scene_.groups.push_back(std::move(map.group));
    Group group{"words beside the picture", {}};
    std::vector<Paragraph> text{
        {Paragraph::Mark::None, "",
         format("Board from above; {} is the filled header{}.", facts_.header.id,
                facts_.header.underside ? ", on the underside" : ", its dot is pin 1"),
         false}};
    for (Paragraph& p : panel_text(facts_)) text.push_back(std::move(p));
    add_paragraphs(group, text, {room.left, box.bottom + 2, room.right, room.bottom},
                   "more: see the text report", measure_);
    scene_.groups.push_back(std::move(group));
    Group rule{"panel edge", {}};
    rule.add(polyline(
        {{left - gap / 2 - 0.5, title_height}, {left - gap / 2 - 0.5, options_.height - foot_height}},
        stroked(style::outline, style::fine)));
    scene_.groups.push_back(std::move(rule));
  }

  void add_caption(const std::string& head, const std::vector<std::string>& texts, bool with_eye,
                   double middle) {
    Group group{"caption " + head, {}};
    const Type bold{style::caption_type, true}, small{style::small_type, false};
    std::vector<std::string> lines;
    for (const std::string& text : texts) {
      for (std::string& line : wrap_at_most(text, gutter - 3 - inset, 5, small, measure_))
        lines.push_back(std::move(line));
    }
    const double eye_height = with_eye ? 6 : 0;
    const std::vector<std::string> heads = wrap_at_most(head, gutter - 3 - inset, 2, bold, measure_);
    const double head_height = static_cast<double>(heads.size()) * style::line_height(bold.points);
    const double height =
        head_height + eye_height + static_cast<double>(lines.size()) * style::line_height(small.points);
    double y =
        std::clamp(middle - height / 2, caption_floor_, std::max(caption_floor_, field_.bottom - height));
    add_lines(group, heads, {inset, y + 4}, bold, style::text);
    y += head_height;
    if (with_eye) append(group, eye({inset + 4.2, y + 2.6}, 8));
    y += eye_height;
    y = add_lines(group, lines, {inset, y + 3}, small, style::quiet);
    caption_floor_ = y;
    scene_.groups.push_back(std::move(group));
  }

  void draw_plug(const Housing& h, const Layout& l, const Arrangement& arrangement,
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
      for (Group& g : groups) scene_.groups.push_back(std::move(g));
    };
    // Wires towards the reader lie over the housing; seen into the mating face they lie behind it.
    const bool behind = h.grid.view == View::MatingFace;
    if (behind) put(leads);
    scene_.groups.push_back(draw_body(h, name));
    put(cavities);
    if (!behind) put(leads);
    put(words);
  }

  std::string scale_words(const Layout& l) const {
    std::string text = format("drawn {:g}:1", l.scale);
    if (!l.plug.stated || !l.header.stated) text += ", outline assumed";
    return text;
  }

  std::vector<std::string> plug_caption() const {
    std::vector<std::string> texts{view_words(options_.view == View::WireSide)};
    const KeySide key = facts_.plug_family ? key_side(*facts_.plug_family) : KeySide::NotStated;
    if (key == KeySide::NotStated) texts.emplace_back("side of key or latch not stated");
    if (key == KeySide::None) texts.emplace_back("no key");
    if (key == KeySide::Near || key == KeySide::Far)
      texts.push_back(format("{} {}", key_word(*facts_.plug_family), key_on_top(key) ? "above" : "below"));
    if (facts_.plug.key == KeyState::Removed) texts.emplace_back("key removed");
    return texts;
  }

  std::vector<std::string> header_caption(const Layout& l, const HeaderPicture& h) const {
    std::vector<std::string> texts{facts_.header.underside ? "underside of the board, pins towards you"
                                                           : "board from above, pins towards you",
                                   scale_words(l)};
    if (drawn_columns(l.header_grid) < columns(l.header_grid))
      texts.push_back(format("goes on to pin {}", facts_.header.positions));
    if (h.edge_near()) texts.emplace_back("thick green: edge of the board");
    return texts;
  }

  /// Leads out of the housing for good lie beside it; returns where each begins.
  std::vector<SpareEnd> add_spares(const Housing& then) {
    std::vector<SpareEnd> ends;
    double y[2] = {numbers_edge(then) - 4, numbers_edge(then) - 4};
    int k = 0;
    for (const int index : spares_) {
      const bool right = spares_.size() <= 3 || k % 2 == 0;
      double& row = y[right ? 0 : 1];
      ++k;
      const double d = right ? 1 : -1;
      const double start = right ? then.body.right + 9 : then.body.left - 9;
      const Lead& lead = facts_.lead(index);
      Group group{format("spare lead {}", to_code(lead.colour)), {}};
      add_wire(group, polyline({{start, row}, {start + d * 26, row}}, {}), lead.colour, 1.8);
      // The sleeve over its end.
      group.add(rectangle({right ? start - 1 : start - 4, row - 1.7}, 5, 3.4,
                          outlined(style::quiet, style::outline, style::fine), 1.2));
      add_tag(group, to_code(lead.colour), {start + d * 16, row}, false, measure_);
      const std::string text =
          (lead.to ? facts_.fitting.harness->terminal_name(*lead.to) : std::string("not known")) +
          ": insulated, tagged";
      const double room = right ? field_.right - start : start - field_.left;
      group.add(Words{{start - d * 1, row - 2.9},
                      shorten(text, room, {style::small_type, false}, measure_),
                      style::small_type,
                      false,
                      style::text,
                      right ? Anchor::Start : Anchor::End,
                      0});
      ends.push_back({index, {start - d * 1.6, row}});
      row -= spare_row;
      scene_.groups.push_back(std::move(group));
    }
    return ends;
  }

  /// Dotted lines from the cavities down to the pins that they will meet.
  void add_drops(const Housing& h, const HeaderPicture& header) {
    if (h.grid.view == View::MatingFace) return;
    Group group{"which pin each cavity will meet", {}};
    for (int cavity = 1; cavity <= facts_.plug.positions; ++cavity) {
      if (cavity > facts_.header.positions || !shown(header.grid, cavity)) continue;
      const std::vector<Point> out = way_out(h, cavity);
      if (out.size() > 1 || std::abs(out.back().x - centre(header.grid, cavity).x) > 0.01) continue;
      group.add(polyline({out.back(), {out.back().x, header.body.top - 0.5}},
                         stroked(style::quiet, style::fine, {0.5, 0.9})));
    }
    scene_.groups.push_back(std::move(group));
  }

  void add_header(const Layout& l, const HeaderPicture& h) {
    for (Group& g : draw_header(h, facts_.header, facts_.header_family))
      scene_.groups.push_back(std::move(g));
    const double y = draw_leaders(scene_.groups, h, l.columns);
    for (int n = 1; n <= facts_.header.positions; ++n) {
      if (!shown(h.grid, n)) continue;
      Group group{format("header label of pin {}", n), {}};
      const SetLabel set =
          set_label(labels_.pins[static_cast<std::size_t>(n) - 1], l.columns, l.tallest, measure_);
      add_label(group, set, l.columns, label_slot(h.grid, n), y, false, measure_);
      const std::string sign = flags_of_pin(facts_, n);
      if (!sign.empty()) {
        const double foot =
            y + set.height +
            (l.columns.turned ? text_width(sign, {style::small_type, true}, measure_) + 4.6 : 5.8);
        add_flag(group, sign, {slot_x(l.columns, label_slot(h.grid, n)), foot}, l.columns.turned, measure_);
      }
      scene_.groups.push_back(std::move(group));
    }
  }

  void add_frames(Layout l) {
    // What height is left goes between the parts.
    const double spare = std::max(0.0, field_.bottom - field_.top - l.total);
    const double centre_x = l.columns.centre;
    const int shared = std::max(drawn_columns(l.plug_grid), drawn_columns(l.header_grid));
    const double left = centre_x - (shared - 1) * l.plug.pitch / 2;
    l.plug_grid.origin.x = options_.view == View::WireSide
                               ? left
                               : centre_x - (drawn_columns(l.plug_grid) - 1) * l.plug.pitch / 2;
    l.header_grid.origin.x = l.header.pitch == l.plug.pitch
                                 ? left
                                 : centre_x - (drawn_columns(l.header_grid) - 1) * l.header.pitch / 2;
    const double stretch = std::min(spare * 0.5, 14.0);

    double y = field_.top + (moves() ? std::min(spare * 0.15, 5.0) : std::max(0.0, spare - stretch) / 2) +
               l.now_labels + l.zone.height();
    const Housing now = place_housing(l.plug_grid, l.plug, facts_.plug_family, y, true);
    y += housing_height(l.plug_grid, l.plug, facts_.plug_family);

    caption_floor_ = field_.top;
    add_caption(moves() ? "NOW" : "PLUG", plug_caption(), true, (now.body.top + now.body.bottom) / 2);
    if (moves()) {
      y += band() + stretch;
      const Housing then = place_housing(l.plug_grid, l.plug, facts_.plug_family, y, false);
      y += housing_height(l.plug_grid, l.plug, facts_.plug_family) + l.zone.height() + l.then_labels;
      add_caption("THEN", {view_words(options_.view == View::WireSide)}, true,
                  (then.body.top + then.body.bottom) / 2);
      draw_plug(now, l, facts_.now, labels_.now, "now", false);
      draw_plug(then, l, facts_.then, labels_.then, "then", false);
      const std::vector<SpareEnd> ends = add_spares(then);
      for (Group& g : draw_moves(facts_.plan->steps, now, then, {field_.left, field_.right}, ends, measure_))
        scene_.groups.push_back(std::move(g));
      y += 3 + std::min(spare * 0.2, 4.0);
    } else {
      draw_plug(now, l, facts_.now, labels_.now, "now", true);
      y += 6 + stretch;
    }
    const HeaderPicture header = place_header(l.header_grid, l.header, y, l.scale, facts_.header,
                                              *facts_.fitting.board, field_.left, field_.right - 1);
    add_header(l, header);
    if (!moves()) add_drops(now, header);
    add_caption("HEADER " + facts_.header.id, header_caption(l, header), true,
                (header.body.top + header.body.bottom) / 2);
  }

  const MatingFacts& facts_;
  const MatingPictureOptions& options_;
  const TextMeasure& measure_;
  Labels labels_;
  Scene scene_;
  Box field_;  ///< where housings, moves and header go
  std::vector<std::string> codes_;
  std::vector<int> spares_;
  bool flags_ = false;
  double caption_floor_ = 0;
};

}  // namespace

Scene mating_picture(const Fitting& fitting, const Advice& advice, const MatingPictureOptions& options,
                     const TextMeasure& measure) {
  const MatingFacts facts = gather(fitting, advice, options.placement);
  return Page(facts, options, measure).compose();
}

}  // namespace plugward
