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

PlacementPicture placement_picture(const PlacementFacts&, const PagePlace&, const TextMeasure&);

}  // namespace plugward
