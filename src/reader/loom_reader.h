// SPDX-License-Identifier: MIT
// The meaning of a loom file. The format is told in harnesses/README.md. Reading the text opens nothing; what
// the text says of other files is checked by read_loom_files.
#pragma once

#include <memory>

#include "model/loom.h"
#include "reader/descriptions.h"
#include "reader/reading.h"

namespace plugward {

/// REQUIRES: the root is named "loom". What is bad is reported; the loom then lacks it.
std::unique_ptr<Loom> read_loom(const Reading&);

/// Reads the board and the harnesses that the loom names, each file once, and checks the loom against them:
/// jumpers and their positions, plugs, headers, cavities. What is bad is reported, a file that cannot be read
/// at the attribute that names it. A loom is never read through a loom, so that none can hold itself. Nothing
/// when the board or a harness could not be read.
std::unique_ptr<LoomFiles> read_loom_files(const Reading&, const Sources&, const Loom&, const OpenFile&);

/// As the second step of read_loom_files. `board` and the harnesses may be nullptr: what refers to them is
/// not checked then.
void check_loom(const Reading&, const Loom&, const Board* board,
                const std::vector<const Harness*>& harnesses);

}  // namespace plugward
