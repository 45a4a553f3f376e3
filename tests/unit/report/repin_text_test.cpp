// SPDX-License-Identifier: MIT
#include "report/repin_text.h"

#include <doctest/doctest.h>

#include "report/step_text.h"
#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("the procedure, whole") {
  const Sample sample;
  CHECK(repin_text(sample.fitting, sample.repin) == R"(REPIN
)");
}

TEST_CASE("no procedure, and why") {
  const Sample sample;
  CHECK(repin_text(sample.fitting, sample.mate) == R"(MATE
)");
  CHECK(repin_text(sample.fitting, sample.measure) == R"(MEASURE
)");
}

TEST_CASE("every kind of step has its words") {
  const Sample sample;
  const std::pair<Step, const char*> rows[] = {
      {{StepKind::Move, 0, 0, 1, 2, ""}, "move cavity 1 -> 2: lead BK to 'G'"},
      {{StepKind::Park, 0, 0, 1, 3, ""}, "park cavity 1 -> 3 for the time being: lead BK to 'G'"},
      {{StepKind::Hold, 0, 1, 2, 0, ""},
       "take out of cavity 2, hold beside the housing: lead RD marked '+' to 'V'"},
      {{StepKind::Insert, 0, 1, 0, 1, ""}, "insert the held one into cavity 1: lead RD marked '+' to 'V'"},
      {{StepKind::Insulate, 0, 0, 1, 0, ""},
       "take out of cavity 1 for good, insulate it singly and tag it: lead BK to 'G'"},
  };
  for (const auto& [step, expected] : rows) CHECK(step_words(sample.harness, step) == expected);
}

}  // namespace plugward
