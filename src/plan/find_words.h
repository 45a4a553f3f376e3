// SPDX-License-Identifier: MIT
// What 'find' says of a plug on a header: one line each.
//
//   say(advice)                          "move 2 contacts first; then 1 setting in the firmware"
//   outcomes_by_position(fitting, how)   "JP2 at 5V: move 2 contacts first; JP2 at 24V: not at all"
#pragma once

#include <string>
#include <vector>

#include "plan/place.h"

namespace plugward {

/// What is to be done.
std::string say(const Advice&);

/// Of several plugs: what each part is for is told plug by plug.
std::string say_in_numbers(Verdict, const PlaceCost&);

/// What pins of a header must be measured first. REQUIRES: some are.
std::string find_out(const Header&, const std::vector<int>& pins);

/// What each position of the jumpers that are not stated leads to; "" when none makes a difference.
std::string outcomes_by_position(Fitting, const AdviseOptions& how);

}  // namespace plugward
