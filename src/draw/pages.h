// SPDX-License-Identifier: MIT
// A whole placement on paper or as one image.
//
//   const auto measure = make_text_measure();
//   write_file("loom.pdf", render_pages(placement_pages(fitting, advise(fitting), {}, *measure), {}));
//
// On paper the first sheet is the board with all plugs; a list follows where that sheet had to shorten
// something; then the sheet of each plug, in the order of the tags, and behind it the words for which there
// was no room beside its picture. As one image the same board stands at the top and a panel a plug below, two
// side by side where they are narrow: whole sheets below each other would be twice as high.
#pragma once

#include <vector>

#include "draw/grid.h"
#include "draw/placement_facts.h"

namespace plugward {

struct PlacementPictureOptions {
  SheetSize sheet = a4_landscape;
  View view = View::WireSide;
};

/// REQUIRES: at least one placement. Never empty.
std::vector<Scene> placement_pages(const Fitting&, const Advice&, const PlacementPictureOptions&,
                                   const TextMeasure&);
Scene placement_image(const Fitting&, const Advice&, const PlacementPictureOptions&, const TextMeasure&);

}  // namespace plugward
