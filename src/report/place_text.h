// SPDX-License-Identifier: MIT
// The answer of `place` for people: the verdict of the whole, one row a plug, the runner-up, the other
// headers, and the command to go on with.
#pragma once

#include <string>

#include "plan/place.h"
#include "report/layout.h"
#include "sheet/place_words.h"

namespace plugward {

struct PlaceTextOptions {
  TextOptions text{};
  std::string
      check_command;  ///< "plugward check ... --at ..." with the headers that were chosen; "" when none
};

/// `fitting` is what place() was given: its placements are those the person has fixed.
std::string place_text(const Fitting&, const PlacementPlan&, const PlaceTextOptions& = {});

}  // namespace plugward
