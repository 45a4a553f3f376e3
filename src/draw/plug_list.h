// SPDX-License-Identifier: MIT
// The plugs of a placement as a list that goes on over as many sheets as it needs: where the sheet of the
// board had to leave something out.
#pragma once

#include <vector>

#include "draw/placement_facts.h"

namespace plugward {

/// In the order of the tags. `before`: sheets before the first of these; `pages`: of the whole set.
std::vector<Scene> plug_list(const PlacementFacts&, int before, int pages, const TextMeasure&);

}  // namespace plugward
