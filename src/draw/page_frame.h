// SPDX-License-Identifier: MIT
// What stands around every picture: title and verdict above, limits and a ruler below, map of the board and
// words at the right; and the sheets that take up the words for which there is no room beside the picture.
#pragma once

#include <vector>

#include "draw/mating_facts.h"
#include "draw/scene.h"
#include "draw/sheet_frame.h"

namespace plugward {

/// What the panel has no room for is returned, its last heading repeated; with `rest_follows` the panel says
/// that it is on the next page, else it refers to the text report, and flags that nothing explains are taken
/// away. REQUIRES: width and height of the scene are set.
std::vector<Paragraph> add_page_frame(Scene&, MatingFacts&, const SheetPlace&, bool rest_follows,
                                      const TextMeasure&);

/// Sheets with these words alone, below the same title: those that the sheet of the picture refers to.
/// `before`: the place of the sheet before them.
std::vector<Scene> word_sheets(const MatingFacts&, std::vector<Paragraph>, SheetPlace before, double width,
                               double height, const TextMeasure&);

}  // namespace plugward
