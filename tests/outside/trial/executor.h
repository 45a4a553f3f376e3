// SPDX-License-Identifier: MIT
// A hand that carries out the steps of a plan, one by one, and refuses what a hand cannot do. It shares no
// code with src/plan.
#pragma once

#include <string>
#include <vector>

#include "plan/repin.h"

namespace plugward::test {

/// A housing on the bench: which lead sits in each cavity (-1: none), which one is in the hand, which are out
/// for good.
struct Hand {
  std::vector<int> lead_in;
  int held = -1;
  std::vector<int> out;

  Hand(const Arrangement& before, int positions) : lead_in(static_cast<std::size_t>(positions), -1) {
    for (std::size_t lead = 0; lead < before.cavity.size(); ++lead) {
      const int cavity = before.cavity[lead];
      if (cavity > 0) slot(cavity) = static_cast<int>(lead);
    }
  }

  int& slot(int cavity) { return lead_in.at(static_cast<std::size_t>(cavity) - 1); }

  /// "" when the step was possible.
  std::string carry_out(const Step& step) {
    const auto draw = [&] {
      if (step.from < 1 || slot(step.from) != step.lead) return false;
      slot(step.from) = -1;
      return true;
    };
    const auto push = [&] {
      if (step.to < 1 || slot(step.to) != -1) return false;
      slot(step.to) = step.lead;
      return true;
    };
    switch (step.kind) {
      case StepKind::Move:
      case StepKind::Park:
        if (!draw()) return "draws a lead from where it is not";
        return push() ? "" : "pushes a lead where one sits already";
      case StepKind::Hold:
        if (held != -1) return "holds two leads";
        held = step.lead;
        return draw() ? "" : "draws a lead from where it is not";
      case StepKind::Insert:
        if (held != step.lead) return "inserts a lead that is not in the hand";
        held = -1;
        return push() ? "" : "pushes a lead where one sits already";
      case StepKind::Insulate:
        out.push_back(step.lead);
        return draw() ? "" : "draws a lead from where it is not";
    }
    return "does what is not known";
  }

  Arrangement arrangement(std::size_t leads) const {
    Arrangement result{std::vector<int>(leads, held == -1 ? 0 : -1)};
    for (std::size_t i = 0; i < lead_in.size(); ++i) {
      if (lead_in[i] >= 0) result.cavity[static_cast<std::size_t>(lead_in[i])] = static_cast<int>(i) + 1;
    }
    return result;
  }
};

}  // namespace plugward::test
