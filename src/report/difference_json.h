// SPDX-License-Identifier: MIT
// The difference of two looms as JSON; the schema is schemas/compare.json.
#pragma once

#include <string>

#include "plan/loom_difference.h"

namespace plugward {

std::string difference_json(const LoomDifference&);

}  // namespace plugward
