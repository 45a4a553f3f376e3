// SPDX-License-Identifier: MIT
// Added parts with their values, for people: what, why, what to buy, how to build it in.
#pragma once

#include "plan/repin.h"
#include "report/layout.h"
#include "sheet/step_words.h"

namespace plugward {

/// The section "What to add"; nothing when there are no cures.
void write_cures(Paper&, const std::vector<Cure>&);

}  // namespace plugward
