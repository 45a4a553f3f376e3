// SPDX-License-Identifier: MIT
// The answer of `place` for programs; its schema is schemas/place.json.
#pragma once

#include <string>

#include "plan/place.h"

namespace plugward {

/// `fitting` is what place() was given.
std::string place_json(const Fitting&, const PlacementPlan&, const std::string& check_command);

}  // namespace plugward
