// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/repin_text_test.cpp.
#include "report/step_text.h"

#include "base/format.h"
#include "report/words.h"

namespace plugward {

std::string step_words(const Harness& harness, const Step& step) {
  const Plug& plug = harness.plugs[static_cast<std::size_t>(step.plug)];
  const std::string lead = lead_with_terminal(harness, plug.leads[static_cast<std::size_t>(step.lead)]);
  switch (step.kind) {
    case StepKind::Move:
      return format("move cavity {} -> {}: lead {}", step.from, step.to, lead);
    case StepKind::Park:
      return format("park cavity {} -> {} for the time being: lead {}", step.from, step.to, lead);
    case StepKind::Hold:
      return format("take out of cavity {}, hold beside the housing: lead {}", step.from, lead);
    case StepKind::Insert:
      return format("insert the held one into cavity {}: lead {}", step.to, lead);
    case StepKind::Insulate:
      return format("take out of cavity {} for good, insulate it singly and tag it: lead {}", step.from,
                    lead);
  }
  return "";
}

int write_steps(Paper& paper, const Harness& harness, const std::vector<Step>& steps, int first_number) {
  int number = first_number;
  for (const Step& step : steps) {
    paper.paragraph(step_words(harness, step), {format("{:>3}. ", number++), "     "});
    if (!step.why.empty()) paper.paragraph(step.why, {"     why: ", "          "});
  }
  return number;
}

}  // namespace plugward
