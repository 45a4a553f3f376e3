// SPDX-License-Identifier: MIT
// What a placement costs, as JSON, for every command that ranks placements.
#pragma once

#include "plan/place.h"
#include "report/json.h"

namespace plugward {

/// One member a level, most important first; the distance in mm.
Json cost_json(const PlaceCost&);

}  // namespace plugward
