// SPDX-License-Identifier: MIT
// The answer of `place` for people: the verdict of the whole, one row a plug, the runner-up, the other
// headers, and the command to go on with.
#pragma once

#include <string>

#include "plan/place.h"
#include "report/layout.h"

namespace plugward {

struct PlaceTextOptions {
  TextOptions text{};
  std::string
      check_command;  ///< "plugward check ... --at ..." with the headers that were chosen; "" when none
};

/// `fitting` is what place() was given: its placements are those the person has fixed.
std::string place_text(const Fitting&, const PlacementPlan&, const PlaceTextOptions& = {});

/// Which of the plan's options is the chosen one of its plug; nullptr: it is fixed, or on no header.
const PlaceOption* chosen_option(const PlacementPlan&, int plug);
/// The header that the plan gives the plug; -1: none.
int chosen_header(const PlacementPlan&, int plug);

}  // namespace plugward
