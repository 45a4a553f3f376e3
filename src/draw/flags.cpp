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

constexpr double cable_room = 12;  ///< mm between the halves: once round a cable of 3 mm
constexpr double inset = 1.6;
constexpr Type name_type{11, true};
constexpr Type usual_type{9, false};

/// How a flag is laid out.
struct Plan {
  double half = 40, height = 15;
  bool name_alone = true;  ///< name, headers and housing each have a line of their own
};
constexpr Plan on_sheet{40, 15, true};
constexpr double tape_height = 12;

/// "J2 (MOTOR X) → J3 (MOTOR X)", or without the labels when that is too wide.
std::string route(const Flag& flag, double width, const TextMeasure& measure) {
  const auto with = [](const std::string& id, const std::string& label) {
    if (id.empty()) return label.empty() ? std::string("-") : label;
    return label.empty() ? id : format("{} ({})", id, label);
  };
  const auto line = [&](bool labels) {
    const std::string from = with(flag.from, labels ? flag.from_label : "");
    if (flag.to.empty() && flag.to_label.empty()) return from;
    return format("{} → {}", from, with(flag.to, labels || flag.to.empty() ? flag.to_label : ""));
  };
  const std::string full = line(true);
  return text_width(full, usual_type, measure) <= width ? full : line(false);
}

void add_text(Group& group, Point at, const std::string& text, Type type) {
  group.add(Words{at, text, type.points, type.bold, style::text, Anchor::Start, 0});
}

std::string housing_words(const Flag& flag) {
  return format("{}, {}, {}", flag.pins, flag.family, flag.key);
}

/// Three lines in a half of a sheet's flag.
void add_half(Group& group, const Flag& flag, Point corner, const TextMeasure& measure) {
  const double width = on_sheet.half - 2 * inset;
  const Box tag = add_cable_tag(group, flag.number, {corner.x + inset, corner.y + 3.6}, measure);
  const double left = tag.right + 1.2;
  add_text(group, {left, corner.y + 5.0},
           shorten(flag.name, corner.x + inset + width - left, name_type, measure), name_type);
  add_text(group, {corner.x + inset, corner.y + 9.4},
           shorten(route(flag, width, measure), width, usual_type, measure), usual_type);
  add_text(group, {corner.x + inset, corner.y + 13.4},
           shorten(housing_words(flag), width, usual_type, measure), usual_type);
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
  const double width = 2 * on_sheet.half + cable_room;
  group.add(rectangle(corner, width, on_sheet.height, stroked(style::quiet, style::fine, {1.6, 1.2})));
  add_half(group, flag, corner, measure);
  add_half(group, flag, {corner.x + on_sheet.half + cable_room, corner.y}, measure);
  add_fold(group, corner.x + on_sheet.half, corner.y, on_sheet.height);
  return group;
}

std::vector<Scene> sheets(const std::vector<Flag>& flags, double width, double height,
                          const TextMeasure& measure) {
  constexpr double gap = 2, head = 14, foot = 14;
  const double flag_width = 2 * on_sheet.half + cable_room;
  const auto rows = static_cast<std::size_t>((height - head - foot) / (on_sheet.height + gap));
  const double left = (width - 2 * flag_width - gap) / 2;
  std::vector<Scene> pages;
  for (std::size_t first = 0; first < flags.size(); first += 2 * rows) {
    Scene page{width, height, "Flags for cables", "", {}};
    const std::size_t end = std::min(flags.size(), first + 2 * rows);
    Group title{"title", {}};
    add_text(title, {left, 5}, "Flags for cables", {style::title_type, true});
    add_text(
        title, {left, 10.5},
        "Print at 100 %. Cut along the dashes, fold the middle round the cable, stick the halves together.",
        usual_type);
    page.groups.push_back(std::move(title));
    for (std::size_t i = first; i < end; ++i) {
      const double x = left + static_cast<double>((i - first) % 2) * (flag_width + gap);
      const double y = head + static_cast<double>((i - first) / 2) * (on_sheet.height + gap);
      page.groups.push_back(sheet_flag(flags[i], {x, y}, measure));
      page.description += format("{}{}: {} {}, {}", page.description.empty() ? "" : "; ", flags[i].number,
                                 flags[i].name, route(flags[i], 1000, measure), housing_words(flags[i]));
    }
    add_foot(page);
    pages.push_back(std::move(page));
  }
  return pages;
}

/// Two lines, as long as the longer one.
Scene tape(const Flag& flag, const TextMeasure& measure) {
  const Type bold{9, true};
  const std::string way = format("{}, {}, {}", route(flag, 0, measure), flag.pins, flag.key);
  const double tag = cable_tag_width(flag.number, measure);
  const double half = 2 * inset + std::max(tag + 1.2 + text_width(flag.name, bold, measure),
                                           text_width(way, usual_type, measure));
  Scene page{2 * half + cable_room,
             tape_height,
             format("Flag {}", flag.number),
             format("{}: {} {}", flag.number, flag.name, way),
             {}};
  Group group{format("flag {}", flag.number), {}};
  for (const double left : {inset, half + cable_room + inset}) {
    const Box box = add_cable_tag(group, flag.number, {left, 3.4}, measure);
    add_text(group, {box.right + 1.2, 4.6}, flag.name, bold);
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
  // Less 10 mm margins, which render_pages() adds.
  if (paper == FlagPaper::A4) return sheets(flags, 190, 277, measure);
  if (paper == FlagPaper::Letter) return sheets(flags, 195.9, 259.4, measure);
  std::vector<Scene> pages;
  for (const Flag& flag : flags) pages.push_back(tape(flag, measure));
  return pages;
}

}  // namespace plugward
