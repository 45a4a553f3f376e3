// SPDX-License-Identifier: MIT
// The way back from a new board, step by step, for the bench.
#pragma once

#include <string>

#include "plan/way_back.h"
#include "report/layout.h"

namespace plugward {

std::string way_back_text(const SwapPlan&, const WayBack&, const TextOptions& = {});

}  // namespace plugward
