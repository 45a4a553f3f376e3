// SPDX-License-Identifier: MIT
// What a re-housing says to the person who does it.
#pragma once

#include "plan/rehouse.h"
#include "plan/rehouse_draft.h"

namespace plugward {

/// Fills in summary, parts, cautions, steps and checks.
void tell(const Fitting&, const RehousingDraft&, Rehousing&);

}  // namespace plugward
