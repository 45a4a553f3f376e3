// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/{cure,repin}_text_test.cpp.
#include "sheet/step_words.h"

#include <algorithm>

#include "base/format.h"
#include "sheet/words.h"

namespace plugward {
namespace {

const Lead* lead_at(const Plug& plug, const Arrangement& arrangement, int cavity) {
  for (std::size_t i = 0; i < plug.leads.size(); ++i) {
    // A lead that a cure adds comes after those that are arranged, and stays where it is put.
    const int here = i < arrangement.cavity.size() ? arrangement.cavity[i] : plug.leads[i].cavity;
    if (here == cavity) return &plug.leads[i];
  }
  return nullptr;
}

}  // namespace

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

std::string component_words(const Component& c) {
  std::string words = c.kind;
  if (!c.value.empty()) words += " " + c.value;
  if (!c.demands.empty()) words += ", " + c.demands;
  if (!c.between.empty()) words += "; " + c.between;
  return words;
}

std::string_view cures_sentence() {
  return tr(
      "Judged on the model together, with every resistor at both ends of its tolerance: nothing is left "
      "against it.");
}

Fitting planned_fitting(const Fitting& fitting, const Advice& advice) {
  Fitting planned = fitting;
  if (advice.cured) planned.harness = &*advice.cured;
  return planned;
}

bool moves_contacts(const RepinPlan& plan) {
  return std::any_of(plan.plugs.begin(), plan.plugs.end(),
                     [](const PlugPlan& p) { return !p.steps.empty(); });
}

std::vector<CavityRow> cavity_rows(const Fitting& fitting, const Placement& placement, const PlugPlan& plan) {
  const Plug& plug = plug_at(fitting, plan.plug);
  const std::vector<int> pins = home_pins(fitting, placement);
  std::vector<CavityRow> rows;
  for (int cavity = 1; cavity <= plug.positions; ++cavity) {
    CavityRow row{cavity, lead_at(plug, plan.before, cavity), lead_at(plug, plan.after, cavity),
                  pins[static_cast<std::size_t>(cavity) - 1], false};
    row.changed = row.now != row.then;
    rows.push_back(row);
  }
  return rows;
}

}  // namespace plugward
