// SPDX-License-Identifier: MIT
// The budget for programs: all rows, and what follows from them.
#pragma once

#include "judge/budget.h"
#include "report/json.h"

namespace plugward {

/// Puts the members "budget", "lead_losses", "heaters", "led_strings" and "fuses", all arrays.
void put_budget(Json&, const Fitting&, const Budget&);

}  // namespace plugward
