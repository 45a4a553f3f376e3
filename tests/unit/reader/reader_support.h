// SPDX-License-Identifier: MIT
// Reads a text as a description and keeps all that came of it.
#pragma once

#include <string>
#include <string_view>

#include "base/format.h"
#include "reader/descriptions.h"

namespace plugward::test {

struct Read {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  Description description;

  explicit Read(std::string_view text, const ReaderLimits& limits = {}) {
    add_builtin_families(catalogue);
    const FileId file = sources.add("t.xml", std::string(text));
    description = read_description(sources, file, catalogue, diagnostics, limits);
  }
  /// "1:5 message [rule]; " of each diagnostic.
  std::string faults() const {
    std::string text;
    for (const Diagnostic& d : diagnostics.all()) {
      const auto [line, column] = line_column(sources, d.span.file, d.span.begin);
      text += format("{}:{} {} [{}]; ", line, column, d.message, rule_info(d.rule).id);
    }
    return text;
  }
};

/// A board around `headers`: rails 24V, 5V, 3V3, jumper JP2, evidence print, drawing (maker's) and meter
/// (measurement).
inline std::string board_around(std::string_view headers) {
  return format(
      "<board id=\"b\" title=\"B\" width=\"90 mm\" height=\"60 mm\" evidence=\"print\">"
      "<evidence id=\"print\" kind=\"board-print\"/><evidence id=\"drawing\" kind=\"makers-drawing\"/>"
      "<evidence id=\"meter\" kind=\"measurement\"/>"
      "<rail id=\"24V\" volts=\"22..26 V\" limit=\"10 A\"/><rail id=\"5V\" volts=\"4.75..5.25 V\"/>"
      "<rail id=\"3V3\" volts=\"3.2..3.4 V\"/><jumper id=\"JP2\" rails=\"5V 24V\"/>{}</board>",
      headers);
}

inline std::string header_around(std::string_view pins) {
  return board_around(
      format("<header id=\"J1\" use=\"probe\" family=\"pin-2.54\" positions=\"4\">{}</header>", pins));
}

inline std::string harness_around(std::string_view inside) {
  return format(
      "<harness id=\"h\" title=\"H\" evidence=\"seen\"><evidence id=\"seen\" "
      "kind=\"measurement\"/>{}</harness>",
      inside);
}

}  // namespace plugward::test
