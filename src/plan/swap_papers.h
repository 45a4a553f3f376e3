// SPDX-License-Identifier: MIT
// Everything that is said about a move to another board, gathered once for every kind of paper.
//
//   const SwapPapers papers = swap_papers(plan);      // points to the plan
#pragma once

#include <vector>

#include "plan/firmware.h"
#include "plan/look_alike.h"
#include "plan/swap.h"
#include "plan/work.h"

namespace plugward {

struct SwapPapers {
  const SwapPlan* plan = nullptr;
  std::vector<LookAlike> alike;           ///< worst first
  std::vector<FirmwareSetting> firmware;  ///< of the plugs that go over
  std::vector<WorkStep> work;
  WorkTime time;
};

SwapPapers swap_papers(const SwapPlan&);

}  // namespace plugward
