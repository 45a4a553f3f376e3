// SPDX-License-Identifier: MIT
// A placement in words: which header each plug got, the runner-up, what is as good.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/place.h"

namespace plugward {

/// Which of the plan's options is the chosen one of its plug; nullptr: it is fixed, or on no header.
const PlaceOption* chosen_option(const PlacementPlan&, int plug);
/// The header that the plan gives the plug; -1: none.
int chosen_header(const PlacementPlan&, int plug);

/// What to add, with the values where they were computed.
std::vector<std::string> parts_of(const Advice&);
/// "'control' on J10: REPIN", and why it lost. REQUIRES: there are a best one and a runner-up.
std::vector<std::string> runner_up_words(const Fitting&, const PlacementPlan&);
/// That these plugs are as good in each other's place.
std::string equals_words(const Fitting&, const PlacementPlan&, const std::vector<int>& plugs);
std::string_view unproven_sentence();

}  // namespace plugward
