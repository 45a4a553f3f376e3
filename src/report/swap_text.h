// SPDX-License-Identifier: MIT
// The answer of `swap` for people: what becomes of every plug, jumpers, what suits and what is missing, the
// headers that look alike, contacts to move, parts to build in, settings, and the order of work.
#pragma once

#include <string>

#include "plan/swap_papers.h"
#include "report/layout.h"

namespace plugward {

struct SwapTextOptions {
  TextOptions text{};
  std::string record_command;  ///< how to write the new loom down; "" when that was done
};

std::string swap_text(const SwapPapers&, const SwapTextOptions& = {});

}  // namespace plugward
