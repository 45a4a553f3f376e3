// SPDX-License-Identifier: MIT
// The picture of one plug and its header: the housing now and then from the wire side (or the mating face),
// the moves as numbered arcs, the header as it lies on the board, a map of the board, the verdict.
//
//   const auto measure = make_text_measure();
//   const Scene scene = mating_picture(fitting, advise(fitting), {}, *measure);
//   write_file("probe.pdf", render(scene, {.format = PictureFormat::Pdf}));
#pragma once

#include <vector>

#include "draw/grid.h"
#include "draw/scene.h"
#include "draw/sheet_frame.h"
#include "plan/repin.h"

namespace plugward {

struct MatingPictureOptions {
  View view = View::WireSide;
  int placement = 0;                 ///< index into fitting.placements
  double width = 277, height = 190;  ///< mm; A4 landscape less 10 mm margins
  SheetPlace place;                  ///< among the sheets of a whole placement
};

/// Every text has at least 9 points; what does not fit is wrapped, turned upright or shortened, and the parts
/// are drawn at a smaller scale. Names that had to be shortened stand whole in Scene::description. A plug of
/// more than 40 columns is not drawn; the page then says so.
Scene mating_picture(const Fitting&, const Advice&, const MatingPictureOptions&, const TextMeasure&);

/// On paper: the picture, and sheets with the words for which there is no room beside it. Page numbers count
/// on from options.place; of one plug alone they are set here.
std::vector<Scene> mating_pages(const Fitting&, const Advice&, MatingPictureOptions, const TextMeasure&);

}  // namespace plugward
