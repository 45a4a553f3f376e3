// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/list_text_test.cpp.
#include "report/list_text.h"

#include "base/format.h"
#include "model/board.h"
#include "model/harness.h"
#include "quantity/colour.h"
#include "quantity/gauge.h"

namespace plugward {
namespace {

using Rows = std::vector<std::vector<std::string>>;

/// A row of a list: a word of the XML and what it says.
template <class T>
struct Meaning {
  T value;
  std::string_view says;
};

constexpr Meaning<PinFunction> pin_meanings[] = {
    {PinFunction::Supply, "a rail, always on"},
    {PinFunction::Ground, "ground"},
    {PinFunction::Output, "a logic output"},
    {PinFunction::Input, "a logic or analogue input"},
    {PinFunction::Switched, "joins the pin to ground when on; not ground itself"},
    {PinFunction::Coil, "one end of a motor driver's bridge pair"},
    {PinFunction::Unused, "connected to nothing"},
    {PinFunction::Unknown, "not known: to be measured"},
};

constexpr Meaning<TerminalFunction> terminal_meanings[] = {
    {TerminalFunction::Supply, "needs a rail"},
    {TerminalFunction::Ground, "needs ground itself, not a switched minus"},
    {TerminalFunction::Return, "minus of a load that may be switched: ground or a low-side switch"},
    {TerminalFunction::Input, "receives a signal from an output of the board"},
    {TerminalFunction::Output, "gives a signal to an input of the board"},
    {TerminalFunction::Passive,
     "end of a switch, heater, sensor or winding: what it should meet follows from the part"},
    {TerminalFunction::Spare, "connected, of no use here: must meet nothing"},
    {TerminalFunction::Unknown, "not known: to be measured"},
};

template <class T, std::size_t N>
Rows rows_of(const Meaning<T> (&meanings)[N]) {
  Rows rows;
  for (const Meaning<T>& row : meanings)
    rows.push_back({std::string(to_word(row.value)), std::string(row.says)});
  return rows;
}

std::string amps_or_dash(const std::optional<Amps>& amps) {
  return amps ? to_text(*amps) : "-";
}

}  // namespace

std::string functions_text(const TextOptions& options) {
  Paper paper(options);
  paper.heading("Functions of a board's pins");
  paper.table(rows_of(pin_meanings));
  paper.heading("Functions of a device's terminals");
  paper.table(rows_of(terminal_meanings));
  return paper.text();
}

std::string colours_text(const TextOptions& options) {
  Paper paper(options);
  Rows rows;
  for (const ColourInfo& info : all_colours())
    rows.push_back({std::string(info.code), std::string(info.name)});
  paper.table(rows);
  paper.line();
  paper.paragraph(
      "Letter codes of IEC 60757. Two colours are written one after the other, in either order "
      "(WHGN, GNWH); ? is a colour that is not known. GNYE is reserved for the protective "
      "conductor. A colour identifies a lead; it never proves a function.");
  return paper.text();
}

std::string gauges_text(const TextOptions& options) {
  Paper paper(options);
  Rows rows = {{"size", "diameter", "area", "per metre", "chassis", "bundled", "700 cmil/A"}};
  for (int number = 10; number <= 32; number += 2) {
    const Gauge gauge = awg(number);
    rows.push_back({to_text(gauge), format("{:.3f} mm", awg_diameter(number).value),
                    format("{:.3f} mm2", gauge.area.value),
                    format("{:.2f} mohm", wire_resistance(gauge, Millimetres(1000)).value * 1000),
                    amps_or_dash(chassis_current(gauge)), amps_or_dash(bundled_current(gauge)),
                    to_text(conservative_current(gauge))});
  }
  paper.table(rows);
  paper.line();
  paper.paragraph(
      "Diameter and area by ASTM B258; resistance of annealed copper (IEC 60028) at 20 C, one way. "
      "Chassis: one wire in free air (Handbook of Electronic Tables and Formulas, as copied in "
      "'AWG Current Capacity'); bundled: TFE wire in a bundle (archived 'wire table' page); last "
      "column: the 700 circular mils per ampere rule. The contact usually carries less than the wire.");
  return paper.text();
}

std::string rules_text(const TextOptions& options) {
  Paper paper(options);
  for (const RuleKind kind : {RuleKind::Reading, RuleKind::Judging}) {
    paper.heading(kind == RuleKind::Reading ? "Rules for descriptions" : "Rules for matings");
    Rows rows;
    for (const RuleInfo& rule : all_rules()) {
      if (rule.kind == kind) rows.push_back({std::string(rule.id), std::string(rule.summary)});
    }
    paper.table(rows);
  }
  paper.line();
  paper.line("At length: plugward explain RULE");
  return paper.text();
}

std::string rule_text(const RuleInfo& rule, const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(format("{}: {}", painted(rule.id, Tone::Strong, options), rule.summary));
  const Meaning<std::string_view> parts[] = {
      {"Why", rule.why}, {"Example", rule.example}, {"Cure", rule.cure}};
  for (const Meaning<std::string_view>& part : parts) {
    if (part.says.empty()) continue;
    paper.heading(part.value);
    paper.paragraph(part.says, {"  ", "  "});
  }
  return paper.text();
}

}  // namespace plugward
