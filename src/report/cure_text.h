// SPDX-License-Identifier: MIT
// Added parts with their values, for people: what, why, what to buy, how to build it in.
#pragma once

#include "plan/repin.h"
#include "report/layout.h"

namespace plugward {

/// The section "What to add"; nothing when there are no cures.
void write_cures(Paper&, const std::vector<Cure>&);

/// The fitting with the harness that the plan of the advice speaks of: the cured one, when there is one.
Fitting planned_fitting(const Fitting&, const Advice&);

/// Does the plan move any contact?
bool moves_contacts(const RepinPlan&);

}  // namespace plugward
