// SPDX-License-Identifier: MIT
// Internal to budget.cpp: what follows from the currents for leads, heaters, LED strings and fuses.
#pragma once

#include <vector>

#include "circuit/flows.h"
#include "judge/budget.h"

namespace plugward {

/// Leads whose gauge and length are stated and that carry something.
std::vector<LeadLoss> lead_losses(const Fitting&, const Flows&, Celsius warm);
std::vector<HeaterBudget> heater_budgets(const Fitting&, const Flows&);
std::vector<StringBudget> string_budgets(const Fitting&, const Flows&);
/// For plugs that feed a heater or sit on a header for a heater, a bed or a supply.
std::vector<FuseBudget> fuse_budgets(const Fitting&, const std::vector<BudgetRow>&);

}  // namespace plugward
