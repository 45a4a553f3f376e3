// SPDX-License-Identifier: MIT
// Two descriptions of one board, side by side: what they say otherwise, and what settles each difference.
//
//   for (const BoardDifference& d : board_differences(a, "print.xml", b, "drawing.xml", catalogue)) ...
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/family.h"
#include "model/board.h"

namespace plugward {

struct BoardDifference {
  std::string where;  ///< "J9.1", "rail 5V", "the board"
  std::string what;   ///< "function", "volts", "limit"
  std::string first;  ///< as the first has it; "not stated"
  std::string second;
  std::string settle;   ///< what to do
  std::string reading;  ///< which outcome speaks for which: "a beep: print.xml; no beep: drawing.xml"
};

/// In the order of the first board; what only the second has comes last. `first_name` and `second_name` are
/// what the readings call them.
std::vector<BoardDifference> board_differences(const Board& first, std::string_view first_name,
                                               const Board& second, std::string_view second_name,
                                               const Catalogue&);

std::string board_differences_text(const std::vector<BoardDifference>&, std::string_view first_name,
                                   std::string_view second_name);

}  // namespace plugward
