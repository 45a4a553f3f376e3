// SPDX-License-Identifier: MIT
// The answer of `swap` for programs. Its schema is schemas/swap.json.
#pragma once

#include <string>

#include "plan/swap_papers.h"

namespace plugward {

std::string swap_json(const SwapPapers&);

}  // namespace plugward
