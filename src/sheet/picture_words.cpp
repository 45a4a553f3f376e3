// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/picture_words_test.cpp.
#include "sheet/picture_words.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "fit/match.h"
#include "sheet/key_side.h"
#include "sheet/step_words.h"
#include "sheet/words.h"

namespace plugward::sheet {
namespace {

/// Lines that are sentences.
class Lines {
 public:
  void add(std::string line) {
    if (line.empty()) return;
    if (line.back() != '.') line += '.';
    if (!text_.empty()) text_ += '\n';
    text_ += line;
  }
  std::string text() && { return std::move(text_); }

 private:
  std::string text_;
};

std::string mm(Millimetres value) {
  return format("{:.4g}", value.value);
}

std::string_view row_words(int rotation) {
  switch (rotation) {
    case 90:
      return tr("up");
    case 180:
      return tr("to the left");
    case 270:
      return tr("down");
    default:
      return tr("to the right");
  }
}

std::string positions_words(int positions, int rows) {
  return rows == 1 ? format("{} positions in one row", positions)
                   : format("{} positions in {} rows", positions, rows);
}

std::string family_title(const Fitting& fitting, const std::string& id) {
  const Family* family = fitting.catalogue->find(id);
  return family == nullptr ? id : std::string(tr(std::string_view(family->title)));
}

std::string_view key_words(KeyState key) {
  switch (key) {
    case KeyState::Intact:
      break;
    case KeyState::Removed:
      return tr("Its key is cut off: nothing guides it.");
    case KeyState::Unknown:
      return tr("Whether its key is there is not known.");
  }
  return "";
}

/// What keeps the plug from going on turned, and where it is.
std::string guide_words(const Family& family) {
  const std::string key = key_word(family);
  switch (key_side(family)) {
    case KeySide::None:
      return tr("Nothing guides the plug: it goes on turned and shifted as well");
    case KeySide::NotStated:
      return format("Guided by its {}; on which side that is, no source tells", key);
    case KeySide::Near:
      return format("Guided by its {}, on the side nearest to you", key);
    case KeySide::Far:
      return format("Guided by its {}, on the side farthest from you", key);
  }
  return "";
}

void add_housing(Lines& lines, const Fitting& fitting, const Plug& plug) {
  lines.add(format("Housing of plug '{}': {}, {}", plug.id, family_title(fitting, plug.family),
                   positions_words(plug.positions, plug.rows)));
  lines.add(tr(
      "Seen from the wire side, where the leads go in, cavity 1 is at the left, in the row nearest to you; "
      "into the mating face left and right are exchanged"));
  const Family* family = fitting.catalogue->find(plug.family);
  if (family != nullptr) lines.add(guide_words(*family));
  lines.add(std::string(key_words(plug.key)));
  if (family != nullptr && family->first_cavity) {
    lines.add(format("How cavity 1 is marked: {}", tr(std::string_view(family->first_cavity->value))));
  } else {
    lines.add(
        tr("How cavity 1 is marked on this housing is not known to plugward: find it by its pin 1 on the "
           "header"));
  }
}

/// "RD to 'V' (supply)", "OG to 'P' (input servo)".
std::string lead_words(const Harness& harness, const Lead* lead) {
  if (lead == nullptr) return tr("empty");
  const std::string words = lead_with_terminal(harness, *lead);
  if (!lead->to) return words;
  const Terminal& terminal = harness.terminal(*lead->to);
  const std::string_view function = tr(to_word(terminal.function));
  return terminal.signal.empty() ? format("{} ({})", words, function)
                                 : format("{} ({} {})", words, function, terminal.signal);
}

/// What is known of the volts at a pin; "" for nothing.
std::string volts_at(const Fitting& fitting, const Pin& pin) {
  if (pin.contest) return "";
  if (pin.function == PinFunction::Supply) {
    const Rail* rail = rail_of(pin, *fitting.board, fitting.jumpers);
    return rail == nullptr ? "" : to_text(rail->volts);
  }
  if (pin.function == PinFunction::Output && pin.high)
    return format("gives {} when high", to_text(*pin.high));
  if (pin.function == PinFunction::Input && pin.withstands)
    return format("stands {}", to_text(pin.withstands->max));
  return "";
}

std::string pin_at(const Fitting& fitting, const Header& header, int pin) {
  if (pin == 0) return tr("no pin");
  const Pin& there = header.pin(pin);
  const std::string label = there.label.empty() ? "" : format(", printed '{}'", there.label);
  const std::string volts = volts_at(fitting, there);
  return format("{}.{}, {}{}{}", header.id, pin, pin_words(fitting, there), volts.empty() ? "" : ", " + volts,
                label);
}

/// Index of the lead; -1 for none.
int index_of(const Plug& plug, const Lead* lead) {
  for (std::size_t i = 0; i < plug.leads.size(); ++i) {
    if (&plug.leads[i] == lead) return static_cast<int>(i);
  }
  return -1;
}

/// What is said against this cavity as it is now.
std::string against(const Fitting& fitting, const Placement& placement, const CavityRow& row,
                    const std::vector<Finding>& findings) {
  const int lead = index_of(plug_at(fitting, placement.plug), row.now);
  for (const Finding& f : findings) {
    if (f.weight == Weight::Note) continue;
    const bool by_lead = lead >= 0 && f.at.plug == placement.plug && f.at.lead == lead;
    const bool by_pin = row.pin > 0 && f.at.header == placement.header && f.at.pin == row.pin;
    if (by_lead || (by_pin && f.at.lead < 0)) return format(" {}: {}.", tr(to_word(f.weight)), f.message);
  }
  return "";
}

void add_cavities(Lines& lines, const Fitting& fitting, const Placement& placement, const PlugPlan& plan,
                  const std::vector<Finding>& findings) {
  const Header& header = header_at(fitting, placement.header);
  for (const CavityRow& row : cavity_rows(fitting, placement, plan)) {
    const std::string now = lead_words(*fitting.harness, row.now);
    const std::string meets = pin_at(fitting, header, row.pin);
    lines.add((row.changed ? format("Cavity {}: now {}; then {}; meets {}.", row.cavity, now,
                                    lead_words(*fitting.harness, row.then), meets)
                           : format("Cavity {}: {}, stays; meets {}.", row.cavity, now, meets)) +
              against(fitting, placement, row, findings));
  }
  for (int pin = plug_at(fitting, placement.plug).positions + 1; pin <= header.positions; ++pin)
    lines.add(format("Beside the plug: {}", pin_at(fitting, header, pin)));
}

std::string place_words(const Header& header) {
  return format("pin 1 at {}, {} mm from the lower left corner, pins run {}{}", mm(header.x), mm(header.y),
                row_words(header.rotation), header.underside ? tr(", on the underside") : "");
}

/// "plug 'x'", several: "plugs 'x', 'y'"; "free".
std::string user_of(const Fitting& fitting, int header) {
  for (const Placement& p : fitting.placements) {
    if (p.header == header) return format("plug '{}', number {}", plug_at(fitting, p.plug).id, p.plug + 1);
  }
  return tr("not used here");
}

std::string revision_of(const Board& board) {
  return board.revision.empty() ? "" : format(", revision {}", board.revision);
}

std::string board_words(const Fitting& fitting, const std::vector<LookAlike>& alike) {
  const Board& board = *fitting.board;
  Lines lines;
  lines.add(format("{}{}: {} x {} mm, seen from above", board.title, revision_of(board), mm(board.width),
                   mm(board.height)));
  for (const Hole& hole : board.holes)
    lines.add(format("Hole of {} mm at {}, {} mm", mm(hole.diameter), mm(hole.x), mm(hole.y)));
  for (const Jumper& jumper : board.jumpers) {
    const auto at = fitting.jumpers.find(jumper.id);
    const std::string where =
        at == fitting.jumpers.end() ? std::string(tr("position not stated")) : format("at {}", at->second);
    lines.add(format("Jumper {}{} at {}, {} mm: {}", jumper.id,
                     jumper.label.empty() ? "" : format(" ({})", jumper.label), mm(jumper.x), mm(jumper.y),
                     where));
  }
  for (std::size_t i = 0; i < board.headers.size(); ++i) {
    const Header& header = board.headers[i];
    lines.add(format("{}: {}, {}; {}; {}", header_title(header), family_title(fitting, header.family),
                     positions_words(header.positions, header.rows), place_words(header),
                     user_of(fitting, static_cast<int>(i))));
  }
  for (const LookAlike& one : alike)
    lines.add(format("{} is easily taken for {}, the header of '{}'",
                     header_title(header_at(fitting, one.mistaken)),
                     header_title(header_at(fitting, one.meant)), plug_at(fitting, one.plug).id));
  return std::move(lines).text();
}

}  // namespace

const PlugPlan* plan_of(const Advice& advice, int plug) {
  if (!advice.plan) return nullptr;
  for (const PlugPlan& plan : advice.plan->plugs) {
    if (plan.plug == plug && !plan.steps.empty()) return &plan;
  }
  return nullptr;
}

std::string plug_picture_id(int placement) {
  return verbatim("plug-{}", placement + 1);
}

Picture plug_picture(const Fitting& fitting, int placement, const PlugPlan* moves,
                     const std::vector<Finding>& findings) {
  const Placement& placed = fitting.placements[static_cast<std::size_t>(placement)];
  const Plug& plug = plug_at(fitting, placed.plug);
  const Header& header = header_at(fitting, placed.header);
  PlugPlan stays;
  stays.plug = placed.plug;
  for (const Lead& lead : plug.leads) stays.before.cavity.push_back(lead.cavity);
  stays.after = stays.before;
  const PlugPlan& plan = moves == nullptr ? stays : *moves;
  Lines lines;
  lines.add(format("Number {} on its tag and its flag", placed.plug + 1));
  add_housing(lines, fitting, plug);
  lines.add(format("Header {}: {}, {}; {}", header_title(header), family_title(fitting, header.family),
                   positions_words(header.positions, header.rows), place_words(header)));
  add_cavities(lines, fitting, placed, plan, findings);
  int number = 0;
  for (const plugward::Step& step : plan.steps)
    lines.add(format("Move {}: {}", ++number, step_words(*fitting.harness, step)));
  return {.id = plug_picture_id(placement),
          .kind = PictureKind::Plug,
          .placement = placement,
          .title = format("Plug '{}' on {}", plug.id, header_title(header)),
          .words = std::move(lines).text()};
}

Picture board_picture(const Fitting& fitting, const std::vector<LookAlike>& alike) {
  return {.id = "board",
          .kind = PictureKind::Board,
          .placement = -1,
          .title = format("{}: where its headers are", fitting.board->title),
          .words = board_words(fitting, alike)};
}

Picture old_board_picture(const Fitting& machine) {
  return {.id = "old-board",
          .kind = PictureKind::OldBoard,
          .placement = -1,
          .title = format("{}: where the plugs sit today", machine.board->title),
          .words = board_words(machine, {})};
}

Picture true_size_picture(const Fitting& fitting) {
  Lines lines;
  lines.add(
      tr("Printed at 100 %, the rule is 50 mm long and every housing and header is as large as the part: lay "
         "the "
         "real one on the paper"));
  std::set<std::string> told;
  const auto add = [&](std::string_view what, const std::string& family_id, int positions, int rows,
                       const std::optional<Cited<Millimetres>> Family::*extra) {
    const Family* family = fitting.catalogue->find(family_id);
    if (family == nullptr || enters_one_way(family->profile)) return;
    const double span = (positions / rows - 1) * family->pitch.value;
    const std::string pitch = format("pitch {} mm, {} mm from the first position of a row to its last",
                                     mm(family->pitch), mm(Millimetres(span)));
    const auto& more = family->*extra;
    const std::string outer =
        more ? format("; {} mm over all", mm(Millimetres(span + more->value.value))) : std::string();
    std::string line = format("{}: {}, {}; {}{}", what, tr(std::string_view(family->title)),
                              positions_words(positions, rows), pitch, outer);
    if (told.insert(line).second) lines.add(std::move(line));
  };
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_at(fitting, p.plug);
    const Header& header = header_at(fitting, p.header);
    add(tr("Housing"), plug.family, plug.positions, plug.rows, &Family::plug_extra);
    add(tr("Header"), header.family, header.positions, header.rows, &Family::header_extra);
  }
  return {.id = "true-size",
          .kind = PictureKind::TrueSize,
          .placement = -1,
          .title = tr("Housings and headers, 1 to 1"),
          .words = std::move(lines).text()};
}

}  // namespace plugward::sheet
