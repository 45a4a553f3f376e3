// SPDX-License-Identifier: MIT
// Housings and headers at their true size: a person lays the real part on the paper and sees at once whether
// it is the one that is meant. A rule of 50 mm tells whether the printer kept the scale.
//
//   for (const Scene& page : true_size_pages(true_size_parts(fitting), {190, 250}, *measure)) ...
//
// Pitches are those of the catalogue, and outlines where the catalogue has them; an outline that it does not
// have is dashed. Housings lie as seen from the wire side and headers as seen from above, position 1 at the
// left.
#pragma once

#include <string>
#include <vector>

#include "catalogue/family.h"
#include "draw/scene.h"
#include "draw/sheet_pictures.h"
#include "model/fitting.h"

namespace plugward {

/// One housing or header, and all places where the fitting has it.
struct TrueSizePart {
  bool header = false;
  std::string family;  ///< its id
  int positions = 0, rows = 1;
  Numbering numbering = Numbering::Zigzag;
  std::vector<std::string> names;  ///< "kite-probe/control", "J9 PROBE"
};

struct TrueSizeParts {
  const Catalogue* catalogue = nullptr;
  std::vector<TrueSizePart> parts;  ///< each differs from all others; housings first
};

TrueSizeParts true_size_parts(const Fitting&);

/// 1 mm of a scene is 1 mm on paper. Each page has a rule. Never empty; as many pages as the parts need.
std::vector<Scene> true_size_pages(const TrueSizeParts&, PictureRoom page, const TextMeasure&);

}  // namespace plugward
