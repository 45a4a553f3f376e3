// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/advice_text_test.cpp.
#include "report/finding_text.h"

#include "base/format.h"
#include "report/words.h"

namespace plugward {
namespace {

constexpr std::string_view inner = "     ";

void write_fact(Paper& paper, std::string_view name, std::string_view text) {
  if (text.empty()) return;
  paper.paragraph(text, {format("{}{:<7}", inner, name), std::string(inner.size() + 7, ' ')});
}

void write_finding(Paper& paper, const Sources& sources, const Finding& finding, int number) {
  paper.paragraph(format("{} [{}]", finding.message, rule_info(finding.rule).id),
                  {format("{:>3}. ", number), std::string(inner)});
  write_fact(paper, "when", finding.state);
  write_fact(paper, "path", finding.path);
  write_fact(paper, "see", place_name(sources, finding.first));
  if (finding.second.known()) {
    const std::string_view comma = finding.second_says.empty() ? "" : ", ";
    write_fact(paper, finding.first.known() ? "and" : "see",
               format("{}{}{}", place_name(sources, finding.second), comma, finding.second_says));
  }
}

}  // namespace

void write_findings(Paper& paper, const Sources& sources, const std::vector<Finding>& findings) {
  int number = 0;
  for (const Weight weight : {Weight::Harm, Weight::Fault, Weight::Doubt, Weight::Note}) {
    bool first = true;
    for (const Finding& finding : findings) {
      if (finding.weight != weight) continue;
      if (first) {
        paper.line();
        paper.line(painted(to_word(weight), tone_of(weight), paper.options()) + ": " +
                   std::string(meaning(weight)));
      }
      first = false;
      write_finding(paper, sources, finding, ++number);
    }
  }
}

}  // namespace plugward
