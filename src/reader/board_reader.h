// SPDX-License-Identifier: MIT
// The meaning of a board file. The format is told in boards/README.md.
#pragma once

#include <memory>

#include "model/board.h"
#include "reader/common_reader.h"
#include "reader/reading.h"

namespace plugward {

/// REQUIRES: the root is named "board". What is bad is reported; the board then lacks it.
std::unique_ptr<Board> read_board(const Reading&);

/// What a pin may refer to.
struct BoardNames {
  Ids evidences{"evidence"};
  Ids rails{"rail"};
  Ids jumpers{"jumper"};
};

/// Reads the header's 'pin' elements into header.pins, settles rival statements about one position.
/// `positions` as in Outline: 0 when not known; then only the pins themselves are checked.
void read_pins(const Reading&, XmlTree::Index header_element, const Board&, const BoardNames&, Header&);

}  // namespace plugward
