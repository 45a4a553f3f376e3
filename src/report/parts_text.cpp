// SPDX-License-Identifier: MIT
// RFC 4180 is cited from memory; tests/cases/parts-csv reads the result back with another program.
// Tested in tests/unit/report/parts_text_test.cpp.
#include "report/parts_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/advice_text.h"

namespace plugward {
namespace {

void write_section(Paper& paper, std::string_view heading, const PartsList& list, bool tools) {
  std::vector<std::vector<std::string>> rows;
  for (const PartItem& item : list.items) {
    if ((item.kind == PartKind::Tool) != tools) continue;
    rows.push_back({"[ ]", format("{:>3}", item.buy()), part_words(item)});
  }
  if (rows.empty()) return;
  paper.heading(heading);
  paper.table(rows);
}

}  // namespace

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
    paper.paragraph(spares_sentence());
  }
  return paper.text();
}

std::string csv_field(std::string_view text) {
  std::string field(text);
  if (!field.empty() && std::string_view("=+-@\t\r").find(field.front()) != std::string_view::npos) {
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
