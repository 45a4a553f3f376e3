// SPDX-License-Identifier: MIT
// What every sheet of a set shares: title and verdict above, limits and a ruler below. And the cable tag: the
// number by which a plug is found again on every sheet.
//
//   add_title_bar(scene, {.tag = 3, .first = "Kite bed probe, plug control", .second = "→ Heron M7, J9",
//                         .verdict = Verdict::Repin, .place = {2, 15}}, measure);
#pragma once

#include <string>

#include "draw/text_fit.h"
#include "judge/judgement.h"

namespace plugward {

/// "page 2 of 15"; nothing is said when there is one page.
struct PagePlace {
  int page = 1, pages = 1;
};

/// Of a sheet about one plug among others.
struct SheetPlace {
  int tag = 0;  ///< number of the plug; 0: it is the only one
  PagePlace page{};
};

struct TitleBar {
  int tag = 0;  ///< of the plug that the sheet is about; 0: none
  std::string first, second;
  Verdict verdict{};
  PagePlace place{};
};

/// REQUIRES: the width of the scene is set. The bar is page::title_height (page_plan.h) high.
void add_title_bar(Scene&, const TitleBar&, const TextMeasure&);
/// REQUIRES: width and height of the scene are set. The foot is page::foot_height high.
void add_foot(Scene&);
/// 50 mm long, to check that the page was printed at its own size; its words stand left of it.
void add_ruler(Group&, Point right_end);

/// A cable tag with a number, its left edge and its middle height at `at`. Returns the space it takes.
Box add_cable_tag(Group&, int number, Point at, const TextMeasure&);
/// How wide tags of so many digits are.
double cable_tag_width(int number, const TextMeasure&);
inline constexpr double cable_tag_height = 4.4;  ///< mm

}  // namespace plugward
