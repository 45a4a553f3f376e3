// SPDX-License-Identifier: MIT
// What text and JSON of a swap both say.
#pragma once

#include <string>
#include <string_view>

#include "plan/swap.h"

namespace plugward {

/// "17 of 19 plugs go over: 8 as they are, 6 re-pinned, 3 with a part added; 1 stays off; 1 finds no header".
std::string swap_summary(const SwapPlan&);
/// "18 of 20 plugs": how many go over.
std::string swap_count(const SwapPlan&);
/// What the summary says beside that count.
std::string swap_details(const SwapPlan&);

/// Every plug that sits on the old board goes over, and the whole is judged clean.
bool swap_is_whole(const SwapPlan&);

/// "'motor-x/motor' on J3; it lost because the plan above moves 2 contacts instead of 3"; "" when there is
/// none.
std::string runner_up_words(const SwapPlan&);
/// What was proved about the way back.
std::string_view way_back_sentence(bool proven);

}  // namespace plugward
