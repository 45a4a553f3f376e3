// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/documents_test.cpp.
#include "sheet/numbering.h"

#include "base/format.h"

namespace plugward::sheet {

Step Numbering::step(std::string act) {
  Step step;
  step.number = ++last_;
  step.id = verbatim("s{}", step.number);
  step.act = std::move(act);
  return step;
}

void Numbering::add_blanks(Step& step, const std::vector<ExpectedReading>& readings) {
  for (const ExpectedReading& r : readings) {
    step.blanks.push_back({.id = verbatim("r{}-{}", step.number, step.blanks.size() + 1),
                           .points = r.points,
                           .expect = r.expect,
                           .low = r.low,
                           .high = r.high,
                           .unit = r.unit,
                           .too_low = r.too_low,
                           .too_high = r.too_high});
  }
}

}  // namespace plugward::sheet
