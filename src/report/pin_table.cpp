// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/pin_table_test.cpp; tests/cases/check-csv reads the result with another
// program.
#include "report/pin_table.h"

#include <algorithm>
#include <vector>

#include "base/format.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "report/parts_text.h"
#include "sheet/step_words.h"
#include "sheet/words.h"

namespace plugward {
namespace {

using Record = std::vector<std::string>;

std::string record(const Record& fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i) line += (i > 0 ? "," : "") + csv_field(fields[i]);
  return line + "\r\n";
}

/// Colour, mark, gauge, terminal and its function; empty cells for an empty cavity.
Record lead_fields(const Harness& harness, const Lead* lead) {
  if (lead == nullptr) return Record(5);
  return {to_code(lead->colour), lead->mark, lead->gauge ? to_text(*lead->gauge) : "",
          lead->to ? harness.terminal_name(*lead->to) : "",
          lead->to ? std::string(to_word(harness.terminal(*lead->to).function)) : "unknown"};
}

/// Header, pin, label, net and function.
Record pin_fields(const Header& header, int number) {
  if (number == 0) return {header.id, "", "", "", ""};
  const Pin& pin = header.pins[static_cast<std::size_t>(number) - 1];
  return {header.id, verbatim("{}", number), pin.label, pin.net, to_words(pin)};
}

void append(Record& to, const Record& from) {
  to.insert(to.end(), from.begin(), from.end());
}

/// Colour and terminal after the moves. Without a plan they are known of a plug that may go on as it is.
Record then_fields(const Harness& harness, const Lead* lead) {
  const Record all = lead_fields(harness, lead);
  return {all[0], all[1], all[3]};
}

}  // namespace

std::string check_csv(const Fitting& fitting, const Advice& advice) {
  std::string text =
      "plug,cavity,colour,mark,gauge,terminal,function_at_plug,header,pin,label,net,function_at_header,"
      "colour_then,"
      "mark_then,terminal_then\r\n";
  const Fitting planned = planned_fitting(fitting, advice);
  for (const Placement& placement : fitting.placements) {
    const Plug& plug = plug_at(fitting, placement.plug);
    const Header& header = header_at(fitting, placement.header);
    const Seating home = home_seating(plug, placement.header, *fitting.board);
    const PlugPlan* plan = nullptr;
    if (advice.plan) {
      for (const PlugPlan& one : advice.plan->plugs) {
        if (one.plug == placement.plug) plan = &one;
      }
    }
    std::vector<CavityRow> rows;
    if (plan != nullptr) rows = cavity_rows(planned, placement, *plan);
    const bool stays = plan == nullptr && (advice.plan || advice.verdict == Verdict::Mate);
    for (int cavity = 1; cavity <= plug.positions; ++cavity) {
      const Lead* now = plug.lead_in(cavity);
      const auto row =
          std::find_if(rows.begin(), rows.end(), [&](const CavityRow& r) { return r.cavity == cavity; });
      const Lead* then = row != rows.end() ? row->then : stays ? now : nullptr;
      Record fields{plug.id, verbatim("{}", cavity)};
      append(fields, lead_fields(*fitting.harness, now));
      append(fields, pin_fields(header, home.pin_of_cavity[static_cast<std::size_t>(cavity) - 1]));
      append(fields, then_fields(row != rows.end() ? *planned.harness : *fitting.harness, then));
      text += record(fields);
    }
  }
  return text;
}

}  // namespace plugward
