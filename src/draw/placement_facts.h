// SPDX-License-Identifier: MIT
// What the sheets of a whole placement are about, gathered once: the advice on each plug, the numbers on the
// cable tags, which headers look alike.
#pragma once

#include <string>
#include <vector>

#include "draw/board_picture.h"
#include "draw/callouts.h"
#include "plan/plug_advice.h"
#include "draw/sheet_frame.h"

namespace plugward {

/// A sheet less its margins, mm.
struct SheetSize {
  double width = 277, height = 190;
};
inline constexpr SheetSize a4_landscape{277, 190};      ///< less 10 mm margins
inline constexpr SheetSize letter_landscape{259, 196};  ///< 279.4 x 215.9 mm, likewise

struct PlacementFacts {
  const Fitting& fitting;
  const Advice& advice;  ///< on the whole
  SheetSize sheet;
  std::vector<PlugAdvice> plugs;        ///< by placement, as everything below
  std::vector<std::vector<int>> alike;  ///< headers that look the same
  std::vector<Finding> together;        ///< what only the whole brings about
  BoardPicture board;
  CalloutPlan callouts;  ///< with the tags
  std::vector<CalloutText> texts;
  std::vector<int> by_tag;  ///< placements in the order of their tags
};

/// REQUIRES: at least one placement.
PlacementFacts gather_placement(const Fitting&, const Advice&, SheetSize);
/// Lays the board and the callouts anew for a sheet of this size. A plug's tag is its number in the harness,
/// from 1, on every sheet and on the flags (flags.h).
void lay_placement(PlacementFacts&, SheetSize);

/// Words of a callout anew, once its advice was changed.
void retell(PlacementFacts&, std::size_t placement);

/// Columns of callouts left and right of the board on this sheet.
Box callout_column(const SheetSize&, bool right);
/// Where the board and the columns are, above the legend.
Box board_field(const SheetSize&);

/// "7 plugs: 4 MATE, 2 REPIN (5 contacts), 1 MEASURE".
std::string count_words(const PlacementFacts&);
/// The placement in words, plug by plug, for those who cannot see it.
std::string describe(const PlacementFacts&);

}  // namespace plugward
