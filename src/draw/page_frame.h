// SPDX-License-Identifier: MIT
// What stands around every picture: title and verdict above, limits and a ruler below, map of the board and
// words at the right.
#pragma once

#include "draw/mating_facts.h"
#include "draw/scene.h"
#include "draw/sheet_frame.h"

namespace plugward {

/// Takes the flags away from findings that the panel has no room to list. REQUIRES: width and height of the
/// scene are set.
void add_page_frame(Scene&, MatingFacts&, const SheetPlace&, const TextMeasure&);

}  // namespace plugward
