// SPDX-License-Identifier: MIT
// What text and JSON of a swap both say.
#pragma once

#include <string>

#include "plan/swap.h"

namespace plugward {

/// "17 of 19 plugs go over: 8 as they are, 6 re-pinned, 3 with a part added; 1 stays off; 1 finds no header".
std::string swap_summary(const SwapPlan&);

/// Every plug that sits on the old board goes over, and the whole is judged clean.
bool swap_is_whole(const SwapPlan&);

}  // namespace plugward
