// SPDX-License-Identifier: MIT
// A whole placement on one sheet: the board to scale with every header that takes a plug, and beside it each
// plug with the number on its tag, its header, its verdict and what there is to do.
#pragma once

#include "draw/placement_facts.h"

namespace plugward {

struct PlacementPicture {
  Scene scene;
  bool whole = true;  ///< false: something was shortened or left out that a list should say
};

/// What the drawing's signs mean, and what only the whole brings about, in the 15 mm above the foot of the
/// sheet facts.sheet. `whole` becomes false when that is not all.
void add_placement_legend(Scene&, const PlacementFacts&, bool waves, bool& whole, const TextMeasure&);

/// The headers that take a plug, and those that look like one of them.
BoardMarks placement_marks(const PlacementFacts&);

/// The board, its callouts and its legend, where they are on the sheet facts.sheet; no title, no foot.
/// Returns whether all is said whole.
bool add_placement(Scene&, const PlacementFacts&, const TextMeasure&);

PlacementPicture placement_picture(const PlacementFacts&, const PagePlace&, const TextMeasure&);

}  // namespace plugward
