// SPDX-License-Identifier: MIT
// RFC 4180 is cited from memory; tests/cases/parts-csv reads the result back with another program.
// Tested in tests/unit/report/parts_text_test.cpp.
#include "report/parts_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/advice_text.h"

namespace plugward {
namespace {

/// "stranded wire, 26 AWG, BN (brown), 100 mm"
std::string description(const PartItem& item) {
  std::string text = item.what;
  if (item.kind == PartKind::Wire) {
    if (item.gauge) text += ", " + to_text(*item.gauge);
    if (item.colour.known()) text += format(", {} ({})", to_code(item.colour), to_words(item.colour));
    if (item.length) text += ", " + to_text(*item.length);
  }
  if (!item.value.empty()) text += " " + item.value;
  if (!item.demands.empty()) text += ", " + item.demands;
  return text;
}

std::string spares_words(const PartItem& item) {
  if (item.spares == 0) return "";
  const std::string spares = format("{} spare{}", item.spares, item.spares == 1 ? "" : "s");
  return item.needed == 0 ? format(" ({})", spares) : format(" ({} needed, {})", item.needed, spares);
}

void write_section(Paper& paper, std::string_view heading, const PartsList& list, bool tools) {
  std::vector<std::vector<std::string>> rows;
  for (const PartItem& item : list.items) {
    if ((item.kind == PartKind::Tool) != tools) continue;
    const std::string purpose = item.purpose.empty() ? "" : ": " + item.purpose;
    rows.push_back({"[ ]", format("{:>3}", item.buy()), description(item) + spares_words(item) + purpose});
  }
  if (rows.empty()) return;
  paper.heading(heading);
  paper.table(rows);
}

}  // namespace

std::string_view to_word(PartKind kind) {
  switch (kind) {
    case PartKind::Housing:
      return "housing";
    case PartKind::Counterpart:
      return "counterpart";
    case PartKind::Contact:
      return "contact";
    case PartKind::Wire:
      return "wire";
    case PartKind::Component:
      return "component";
    case PartKind::HeatShrink:
      return "heat-shrink";
    case PartKind::Other:
      return "other";
    case PartKind::Tool:
      return "tool";
  }
  return "";
}

std::string parts_text(const Fitting& fitting, const PartsList& list, const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(format("{}: {}", list.planned ? "parts" : "no parts list", list.summary), {"", "  "});
  write_subject(paper, fitting);
  if (!list.planned) {
    paper.line();
    paper.paragraph("There is no plan to buy for: 'plugward check' says why.");
    return paper.text();
  }
  if (list.items.empty()) {
    paper.line();
    paper.paragraph("Nothing is to be bought.");
    return paper.text();
  }
  write_section(paper, "To buy", list, false);
  write_section(paper, "To lay ready", list, true);
  if (std::any_of(list.items.begin(), list.items.end(),
                  [](const PartItem& item) { return item.kind == PartKind::Contact; })) {
    paper.line();
    paper.paragraph("Of contacts a fifth more than needed is listed, and at least two (common practice).");
  }
  return paper.text();
}

std::string csv_field(std::string_view text) {
  std::string field(text);
  if (!field.empty() && std::string_view("=+-@\t").find(field.front()) != std::string_view::npos) {
    field.insert(field.begin(), '\'');
  }
  if (field.find_first_of(",\"\r\n") == std::string::npos) return field;
  std::string quoted = "\"";
  for (const char c : field) {
    quoted += c;
    if (c == '"') quoted += c;
  }
  return quoted + "\"";
}

std::string parts_csv(const PartsList& list) {
  std::string text =
      "kind,item,family,positions,gauge,colour,length_mm,value,demands,needed,spares,buy,purpose\r\n";
  for (const PartItem& item : list.items) {
    const std::vector<std::string> fields{std::string(to_word(item.kind)),
                                          item.what,
                                          item.family,
                                          item.positions > 0 ? format("{}", item.positions) : "",
                                          item.gauge ? to_text(*item.gauge) : "",
                                          item.colour.known() ? to_code(item.colour) : "",
                                          item.length ? format("{:g}", item.length->value) : "",
                                          item.value,
                                          item.demands,
                                          format("{}", item.needed),
                                          format("{}", item.spares),
                                          format("{}", item.buy()),
                                          item.purpose};
    for (std::size_t i = 0; i < fields.size(); ++i) text += (i > 0 ? "," : "") + csv_field(fields[i]);
    text += "\r\n";
  }
  return text;
}

}  // namespace plugward
