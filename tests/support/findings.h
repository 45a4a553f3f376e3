// SPDX-License-Identifier: MIT
// Descriptions from their bodies, and what the judge says about them as lines of text.
//
//   const Bench bench(board_of("<header ...>...</header>"), harness_of("<fan .../><plug ...>...</plug>"));
//   CHECK(told(assess(bench.fitting({{"p", "J1"}}))) == "harm short-circuit: ...\n");
#pragma once

#include <string>
#include <string_view>

#include "base/format.h"
#include "judge/judgement.h"

namespace plugward::test {

/// A board with rails of 24 V, 12 V, 5 V and 3.3 V without tolerance, all with a limit, stated by
/// measurement.
inline std::string board_of(std::string_view body) {
  return format(
      "<board id='b' title='B' width='100 mm' height='80 mm' evidence='e'>"
      "<evidence id='e' kind='measurement'/><evidence id='guess' kind='assumption'/>"
      "<evidence id='print' kind='board-print'/><evidence id='drawing' kind='makers-drawing'/>"
      "<rail id='24V' volts='24 V' limit='10 A'/><rail id='12V' volts='12 V' limit='10 A'/>"
      "<rail id='5V' volts='5 V' limit='2 A'/><rail id='3V3' volts='3.3 V' limit='0.3 A'/>"
      "<jumper id='JP' label='V' rails='5V 24V'/>{}</board>",
      body);
}

inline std::string harness_of(std::string_view body) {
  return format(
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>"
      "<evidence id='guess' kind='assumption'/>{}</harness>",
      body);
}

/// A header J1 (22 AWG contacts of the XH family carry 3 A) with the given pins.
inline std::string header_of_pins(std::string_view use, int positions, std::string_view pins,
                                  std::string_view family = "xh-2.50") {
  return format("<header id='J1' use='{}' family='{}' positions='{}'>{}</header>", use, family, positions,
                pins);
}

/// A plug p whose cavities 1, 2, ... hold leads to these terminals; "-" leaves a cavity empty, "?" is a lead
/// that goes nobody knows where.
inline std::string plug_of_leads(std::string_view terminals, std::string_view family = "xh-2.50",
                                 std::string_view more = "") {
  std::string leads;
  int cavity = 0;
  std::size_t begin = 0;
  while (begin < terminals.size()) {
    const std::size_t end = std::min(terminals.find(' ', begin), terminals.size());
    const std::string_view name = terminals.substr(begin, end - begin);
    begin = end + 1;
    ++cavity;
    if (name == "-") continue;
    const std::string to = name == "?" ? "" : format(" to='{}'", name);
    leads += format("<lead cavity='{}' colour='BK' gauge='22 AWG' length='300 mm'{}/>", cavity, to);
  }
  return format("<plug id='p' family='{}' positions='{}'{}>{}</plug>", family, cavity, more, leads);
}

/// "harm overvoltage: 24 V on 'S' ... | state | path" and, of a doubt, its measurement on a line of its own.
inline std::string told(const Finding& finding) {
  std::string text =
      format("{} {}: {}", to_word(finding.weight), rule_info(finding.rule).id, finding.message);
  if (!finding.state.empty() || !finding.path.empty())
    text += format(" | {} | {}", finding.state, finding.path);
  text += '\n';
  if (finding.measurement) {
    const Measurement& m = *finding.measurement;
    text += format("  {} => {} ({}, cost {})\n", m.action, m.expect, m.settles, m.cost);
  }
  return text;
}

inline std::string told(const Assessment& assessment) {
  std::string text;
  for (const Finding& finding : assessment.findings) text += told(finding);
  for (const Setting& setting : assessment.settings)
    text += format("setting: {} ({})\n", setting.what, setting.why);
  return text;
}

}  // namespace plugward::test
