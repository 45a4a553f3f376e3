// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/repin_text_test.cpp.
#include "report/step_text.h"

#include "base/format.h"

namespace plugward {

int write_steps(Paper& paper, const Harness& harness, const std::vector<Step>& steps, int first_number) {
  int number = first_number;
  for (const Step& step : steps) {
    paper.paragraph(step_words(harness, step), {format("{:>3}. ", number++), "     "});
    if (!step.why.empty()) paper.paragraph(step.why, {"     why: ", "          "});
  }
  return number;
}

}  // namespace plugward
