// SPDX-License-Identifier: MIT
// "Currents": what comes near its limit, the worst first, and what follows from it, for the bench.
#pragma once

#include "judge/budget.h"
#include "report/layout.h"

namespace plugward {

/// `planned`: the currents are those after the moves and parts of the plan. Nothing when the budget is empty.
/// Rails that give anything are always named; of the rest what takes a quarter of its limit or more, or more
/// than 0.1 A with no limit known. One line for each pin, with the narrowest of pin, contact and wire; pins
/// of one plug that carry the same against the same share a line.
void write_budget(Paper&, const Fitting&, const Budget&, bool planned = false);

}  // namespace plugward
