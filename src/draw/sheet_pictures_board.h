// SPDX-License-Identifier: MIT
// The board for a room too narrow for callouts at its sides: the board as large as it may be, a tag and the
// header's id for each plug beside it, and what the tags mean in two columns below.
#pragma once

#include "draw/placement_facts.h"
#include "draw/sheet_pictures.h"

namespace plugward {

/// `tags`: numbers of the plugs, by placement. `judged`: with verdicts.
Scene board_above_list(PlacementFacts, const std::vector<int>& tags, PictureRoom, bool judged,
                       const TextMeasure&);

}  // namespace plugward
