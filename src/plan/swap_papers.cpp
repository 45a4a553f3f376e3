// SPDX-License-Identifier: MIT
// Tested in tests/cases (swap-*).
#include "plan/swap_papers.h"

namespace plugward {

SwapPapers swap_papers(const SwapPlan& plan) {
  SwapPapers papers;
  papers.plan = &plan;
  papers.alike = look_alikes(plan);
  papers.firmware = firmware_settings(plan.after, plan.machine);
  papers.work = order_of_work(plan);
  papers.time = work_time(plan, papers.work);
  return papers;
}

}  // namespace plugward
