// SPDX-License-Identifier: MIT
// What a judgement of some headers of a board depends on. Two boards that are alike there are judged once:
// the names of headers, rails and jumpers are replaced by stand-ins, and put back into what the judge says.
//
//   const Likeness like = likeness(board, {4, 9});     // like.key is equal: the judgement is equal
//   const Board part = part_of(board, like);           // two headers, their rails and jumpers, stand-in
//   names with_names(advice.summary, board, like)            // "'control' on 'J9'" again
//
// Depends on: the headers in this order without their place on the board, the rails that their pins name in
// the order of the board, the jumpers with all their rails, and of what kind each pin's evidence is.
// Neighbours are not in it: a judgement of wrong seatings needs the whole board.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "fit/match.h"
#include "model/board.h"
#include "model/fitting.h"

namespace plugward {

struct Likeness {
  std::vector<int> headers;  ///< as asked for
  std::vector<int> rails;    ///< indices into Board::rails, ascending
  std::vector<int> jumpers;  ///< indices into Board::jumpers, ascending
  std::string key;           ///< bytes
};

Likeness likeness(const Board&, const std::vector<int>& headers);

/// headers[i] of it is header like.headers[i] of the board, at the origin, without labels.
Board part_of(const Board&, const Likeness& like);

/// Of these stated positions, those of jumpers in the part, by their stand-ins.
JumperPositions stated_in(const Board&, const Likeness&, const Board& part, const JumperPositions& stated);

/// What the stated positions add to the key.
std::string jumper_key(const Board&, const Likeness&, const JumperPositions& stated);

/// What an assessment with every plug at home depends on, whatever the pins and cavities are numbered: for
/// each lead what the pin is that it meets. Where it is equal, and the harness the same but for the cavities,
/// the assessments differ in the names of pins and cavities, and in the order of findings, and in nothing
/// else.
std::string wiring(const Fitting&);

/// `text` with the board's names for the stand-ins.
std::string with_names(std::string_view text, const Board&, const Likeness&);

}  // namespace plugward
