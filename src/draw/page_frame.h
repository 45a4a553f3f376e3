// SPDX-License-Identifier: MIT
// What stands around every picture: title and verdict above, limits and a ruler below, map of the board and
// words at the right.
#pragma once

#include "draw/mating_facts.h"
#include "draw/scene.h"

namespace plugward {

/// REQUIRES: width and height of the scene are set.
void add_page_frame(Scene&, const MatingFacts&, const TextMeasure&);

}  // namespace plugward
