// SPDX-License-Identifier: MIT
// One plug of many in one image: its tag and verdict, the housing now and then with its header, and the words
// that belong to it, as small as it may be.
#pragma once

#include "draw/grid.h"
#include "draw/placement_facts.h"

namespace plugward {

/// As wide as half of `width`, or the whole of it where half is too narrow; as high as it needs.
Scene plug_panel(const PlacementFacts&, int placement, View, double width, const TextMeasure&);

/// In a document: exactly as wide as `width`, no higher than `height`; the words stand beside the drawing
/// where there is room, else below it. What has no room there is counted in a last line.
Scene plug_panel_in(const PlacementFacts&, int placement, View, double width, double height,
                    const TextMeasure&);
/// Does its drawing fit at a readable scale?
bool plug_panel_fits(const PlacementFacts&, int placement, View, double width, double height,
                     const TextMeasure&);

}  // namespace plugward
