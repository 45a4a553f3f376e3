// SPDX-License-Identifier: MIT
// Internal. What can be told of a swap before anything is bought: do supply and currents suit, how must the
// jumpers sit and why, what is missing.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "plan/swap.h"

namespace plugward {

/// The supply's voltage, every rail, every motor and whatever is beyond its limit.
std::vector<Suit> suits(const SwapPlan&);

/// Of all jumpers of the new board. `chosen` holds all of them, `stated` those of the user.
std::vector<JumperChoice> jumper_choices(const SwapPlan&, const std::map<std::string, std::string>& chosen,
                                         const std::map<std::string, std::string>& stated);

/// Parts, housings, headers and knowledge that are lacking, a sentence each.
std::vector<std::string> missing(const SwapPlan&);

}  // namespace plugward
