// SPDX-License-Identifier: MIT
// Tested in tests/cases/cure-sensor and cure-fan-repin.
#include "report/cure_text.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {
namespace {

std::string component_words(const Component& c) {
  std::string words = c.kind;
  if (!c.value.empty()) words += " " + c.value;
  if (!c.demands.empty()) words += ", " + c.demands;
  if (!c.between.empty()) words += "; " + c.between;
  return words;
}

}  // namespace

void write_cures(Paper& paper, const std::vector<Cure>& cures) {
  if (cures.empty()) return;
  paper.heading("What to add");
  paper.paragraph(
      "Judged on the model together, with every resistor at both ends of its tolerance: nothing is left "
      "against it.",
      {"  ", "  "});
  int number = 0;
  for (const Cure& cure : cures) {
    paper.paragraph(cure.what, {format("  {}. ", ++number), "     "});
    paper.paragraph(cure.why, {"     why: ", "          "});
    if (!cure.next_best.empty()) paper.paragraph(cure.next_best, {"     not: ", "          "});
    for (const Component& c : cure.components) paper.paragraph(component_words(c), {"     - ", "       "});
    for (const std::string& step : cure.steps) paper.paragraph(step, {"     [ ] ", "         "});
  }
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

}  // namespace plugward
