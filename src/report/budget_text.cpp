// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/budget_text_test.cpp.
#include "report/budget_text.h"

#include "report/words.h"
#include "sheet/budget_words.h"

namespace plugward {

void write_budget(Paper& paper, const Fitting& fitting, const Budget& budget, bool planned) {
  const BudgetWords words = budget_words(fitting, budget);
  if (!words.any) return;
  paper.heading(planned ? "Currents once that is mended, each at its worst" : "Currents, each at its worst");
  std::vector<std::vector<std::string>> table;
  for (const BudgetLine& line : words.lines) {
    const std::string share =
        line.over ? painted(line.share + " over", tone_of(Weight::Harm), paper.options()) : line.share;
    table.push_back({line.what, line.amps, line.limit.empty() ? "" : "of " + line.limit, share, line.basis});
  }
  paper.table(table);
  if (!words.left_out.empty()) paper.line("  " + words.left_out);
  for (const std::string& remark : words.remarks) paper.paragraph(remark, {"  - ", "    "});
}

}  // namespace plugward
