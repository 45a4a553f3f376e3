// SPDX-License-Identifier: MIT
// The board for a room too narrow for callouts at its sides: the board as large as it may be, round it a tag
// and the header's id for each plug, and what the tags mean in two columns below.
#pragma once

#include "draw/placement_facts.h"
#include "draw/sheet_pictures.h"

namespace plugward {

/// `judged`: with verdicts.
Scene board_above_list(PlacementFacts, PictureRoom, bool judged, const TextMeasure&);

}  // namespace plugward
