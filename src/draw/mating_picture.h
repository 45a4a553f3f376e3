// SPDX-License-Identifier: MIT
// The picture of one plug and its header: the header as it lies on the board, the housing now and then from the
// wire side (or the mating face), the moves as numbered arcs, the verdict.
#pragma once

#include "draw/scene.h"
#include "plan/repin.h"

namespace plugward {

enum class View { WireSide, MatingFace };

struct MatingPictureOptions {
  View view = View::WireSide;
  int placement = 0;  ///< index into fitting.placements
  double width = 277, height = 190;  ///< mm; A4 landscape less 10 mm margins
};

Scene mating_picture(const Fitting&, const Advice&, const MatingPictureOptions&, const TextMeasure&);

}  // namespace plugward
