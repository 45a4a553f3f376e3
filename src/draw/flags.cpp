// SPDX-License-Identifier: MIT
// Tested in tests/unit/draw/flags_test.cpp.
#include "draw/flags.h"

#include <algorithm>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/sheet_frame.h"
#include "draw/style.h"
#include "draw/text_fit.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr double cable_room = 8;  ///< mm between the halves: once round a cable of 2.5 mm
constexpr double inset = 1.6;
constexpr double half_width = 43, sheet_height = 22;  ///< of a flag on a sheet
constexpr double tape_height = 12;
constexpr double paper_margin = 10;
constexpr Type bold_type{9, true};
constexpr Type usual_type{9, false};

/// "J2 (MOTOR X)"; "-" for no header.
std::string place_words(const std::string& id, const std::string& label) {
  if (id.empty()) return "-";
  return label.empty() ? id : format("{} ({})", id, label);
}

/// "J2 → J3", "J2 → stays off".
std::string route(const Flag& flag) {
  const std::string from = flag.from.empty() ? "-" : flag.from;
  if (flag.to.empty() && flag.to_label.empty()) return from;
  return format("{} → {}", from, flag.to.empty() ? flag.to_label : flag.to);
}

void add_text(Group& group, Point at, const std::string& text, Type type) {
  group.add(Words{at, text, type.points, type.bold, style::text, Anchor::Start, 0});
}

std::string housing_words(const Flag& flag) {
  return format("{}, {}", flag.pins, flag.key);
}

/// At most five lines in a half of a sheet's flag: name, from, to, housing.
void add_half(Group& group, const Flag& flag, Point corner, const TextMeasure& measure) {
  const double width = half_width - 2 * inset, left = corner.x + inset;
  const Box tag = add_cable_tag(group, flag.number, {left, corner.y + 3.6}, measure);
  const double beside = tag.right + 1.2, line = style::line_height(usual_type.points);
  const auto name = wrap_at_most(flag.name, left + width - beside, 2, bold_type, measure);
  double y = add_lines(group, name, {beside, corner.y + 4.9}, bold_type, style::text);
  y = std::max(y, tag.bottom + 3.6);
  const std::string from = format("from {}", place_words(flag.from, flag.from_label));
  const std::string to =
      flag.to.empty() ? flag.to_label : format("to {}", place_words(flag.to, flag.to_label));
  for (const std::string& text :
       {flag.to.empty() && flag.to_label.empty() ? place_words(flag.from, flag.from_label) : from, to,
        housing_words(flag)}) {
    add_text(group, {left, y}, shorten(text, width, usual_type, measure), usual_type);
    y += text.empty() ? 0 : line;
  }
}

void add_fold(Group& group, double left, double top, double height) {
  for (const double x : {left, left + cable_room}) {
    group.add(polyline({{x, top}, {x, top + height}}, stroked(style::quiet, style::fine, {0.4, 0.8})));
  }
  group.add(circle({left + cable_room / 2, top + height / 2}, 1.5,
                   outlined(style::paper, style::quiet, style::fine)));
}

Group sheet_flag(const Flag& flag, Point corner, const TextMeasure& measure) {
  Group group{format("flag {}", flag.number), {}};
  const double width = 2 * half_width + cable_room;
  group.add(rectangle(corner, width, sheet_height, stroked(style::quiet, style::fine, {1.6, 1.2})));
  add_half(group, flag, corner, measure);
  add_half(group, flag, {corner.x + half_width + cable_room, corner.y}, measure);
  add_fold(group, corner.x + half_width, corner.y, sheet_height);
  return group;
}

std::vector<Scene> sheets(const std::vector<Flag>& flags, double width, double height,
                          const TextMeasure& measure) {
  constexpr double gap = 2, head = paper_margin + 14, foot = paper_margin + 8;
  const double flag_width = 2 * half_width + cable_room;
  const auto rows = static_cast<std::size_t>((height - head - foot) / (sheet_height + gap));
  const double left = (width - 2 * flag_width - gap) / 2;
  std::vector<Scene> pages;
  for (std::size_t first = 0; first < flags.size(); first += 2 * rows) {
    Scene page{width, height, "Flags for cables", "", {}};
    const std::size_t end = std::min(flags.size(), first + 2 * rows);
    Group title{"title", {}};
    add_text(title, {left, paper_margin + 5}, "Flags for cables", {style::title_type, true});
    add_text(
        title, {left, paper_margin + 10.5},
        "Print at 100 %. Cut along the dashes, fold the middle round the cable, stick the halves together.",
        usual_type);
    page.groups.push_back(std::move(title));
    for (std::size_t i = first; i < end; ++i) {
      const double x = left + static_cast<double>((i - first) % 2) * (flag_width + gap);
      const double y = head + static_cast<double>((i - first) / 2) * (sheet_height + gap);
      page.groups.push_back(sheet_flag(flags[i], {x, y}, measure));
      page.description += format("{}{}: {} {}, {}, {}", page.description.empty() ? "" : "; ", flags[i].number,
                                 flags[i].name, route(flags[i]), flags[i].family, housing_words(flags[i]));
    }
    Group ruler{"ruler", {}};
    add_ruler(ruler, {left + 2 * flag_width + gap, height - paper_margin - 1});
    page.groups.push_back(std::move(ruler));
    pages.push_back(std::move(page));
  }
  return pages;
}

/// Two lines, as long as the longer one.
Scene tape(const Flag& flag, const TextMeasure& measure) {
  const std::string way = format("{}, {}", route(flag), housing_words(flag));
  const double tag = cable_tag_width(flag.number, measure);
  const double half = 2 * inset + std::max(tag + 1.2 + text_width(flag.name, bold_type, measure),
                                           text_width(way, usual_type, measure));
  Scene page{2 * half + cable_room,
             tape_height,
             format("Flag {}", flag.number),
             format("{}: {} {}", flag.number, flag.name, way),
             {}};
  Group group{format("flag {}", flag.number), {}};
  for (const double left : {inset, half + cable_room + inset}) {
    const Box box = add_cable_tag(group, flag.number, {left, 3.4}, measure);
    add_text(group, {box.right + 1.2, 4.6}, flag.name, bold_type);
    add_text(group, {left, 9.6}, way, usual_type);
  }
  add_fold(group, half, 0, tape_height);
  page.groups.push_back(std::move(group));
  return page;
}

Flag flag_of(int number, const Plug& plug) {
  Flag flag;
  flag.number = number;
  flag.name = plug.id;
  flag.pins = format("{} pin{}", plug.positions, plug.positions == 1 ? "" : "s");
  flag.family = plug.family;
  flag.key = plug.key == KeyState::Intact    ? "key intact"
             : plug.key == KeyState::Removed ? "key cut off"
                                             : "key not looked at";
  return flag;
}

void set_header(const Board& board, std::optional<int> header, std::string& id, std::string& label) {
  if (!header) return;
  id = board.headers[static_cast<std::size_t>(*header)].id;
  label = board.headers[static_cast<std::size_t>(*header)].label;
}

}  // namespace

std::vector<Flag> flags_of(const SwapPlan& plan) {
  std::vector<Flag> flags;
  for (const PlugTransfer& t : plan.plugs) {
    Flag flag = flag_of(t.plug + 1, plan.housed.plugs[static_cast<std::size_t>(t.plug)]);
    set_header(*plan.machine->board, t.from, flag.from, flag.from_label);
    if (t.goes_over()) {
      set_header(*plan.board, t.to, flag.to, flag.to_label);
    } else {
      flag.to_label = "stays off";
    }
    flags.push_back(std::move(flag));
  }
  return flags;
}

std::vector<Flag> flags_of(const Fitting& fitting) {
  std::vector<Flag> flags;
  for (std::size_t p = 0; p < fitting.harness->plugs.size(); ++p) {
    Flag flag = flag_of(static_cast<int>(p) + 1, fitting.harness->plugs[p]);
    for (const Placement& placed : fitting.placements) {
      if (placed.plug == static_cast<int>(p))
        set_header(*fitting.board, placed.header, flag.from, flag.from_label);
    }
    flags.push_back(std::move(flag));
  }
  return flags;
}

std::vector<Scene> flag_pages(const std::vector<Flag>& flags, FlagPaper paper, const TextMeasure& measure) {
  if (paper == FlagPaper::A4) return sheets(flags, 210, 297, measure);
  if (paper == FlagPaper::Letter) return sheets(flags, 215.9, 279.4, measure);
  std::vector<Scene> pages;
  for (const Flag& flag : flags) pages.push_back(tape(flag, measure));
  return pages;
}

}  // namespace plugward
