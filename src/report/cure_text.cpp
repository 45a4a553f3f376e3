// SPDX-License-Identifier: MIT
// Tested in tests/cases/cure-sensor and cure-fan-repin.
#include "report/cure_text.h"

#include "base/format.h"

namespace plugward {

void write_cures(Paper& paper, const std::vector<Cure>& cures) {
  if (cures.empty()) return;
  paper.heading("What to add");
  paper.paragraph(cures_sentence(), {"  ", "  "});
  int number = 0;
  for (const Cure& cure : cures) {
    paper.paragraph(cure.what, {format("  {}. ", ++number), "     "});
    paper.paragraph(cure.why, {"     why: ", "          "});
    if (!cure.next_best.empty()) paper.paragraph(cure.next_best, {"     not: ", "          "});
    for (const Component& c : cure.components) paper.paragraph(component_words(c), {"     - ", "       "});
    for (const std::string& step : cure.steps) paper.paragraph(step, {"     [ ] ", "         "});
  }
}

}  // namespace plugward
