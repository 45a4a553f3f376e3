// SPDX-License-Identifier: MIT
// One plug of many in one image: its tag and verdict, the housing now and then with its header, and the words
// that belong to it, as small as it may be.
#pragma once

#include "draw/grid.h"
#include "draw/placement_facts.h"

namespace plugward {

/// As wide as half of `width`, or the whole of it where half is too narrow; as high as it needs.
Scene plug_panel(const PlacementFacts&, int placement, View, double width, const TextMeasure&);

}  // namespace plugward
