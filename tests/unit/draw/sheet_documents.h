// SPDX-License-Identifier: MIT
// Documents written by hand and by chance, apart from what builds those of the program.
#pragma once

#include "sheet/document.h"

namespace plugward::test {

/// One of every kind of block, with pictures of the board, of `placements` plugs and at true size.
sheet::Document every_block(int placements, bool old_board = false);

/// Sections by chance: long words, Cyrillic and Chinese names, empty cells, steps longer than a page;
/// pictures as every_block() has them.
sheet::Document random_document(unsigned seed, int placements, bool old_board = false);

}  // namespace plugward::test
