// SPDX-License-Identifier: MIT
// Would the order of work show this error, and before power reaches it? Every reading of the steps is
// computed again on the machine with the error carried out, and compared with what the sheet says.
//
//   const CaughtAt c = caught_at(plan, steps, fault);
//   c.in_time()      // steps[*c.step].readings[*c.reading] differs for certain, and stands before c.power
#pragma once

#include <optional>
#include <vector>

#include "plan/machine_fault.h"
#include "plan/work.h"

namespace plugward {

/// How a plug came to a header that is not its own.
enum class Mixup {
  Set,    ///< its tag is right, and it was set on another header
  Tagged  ///< its tag is wrong: whoever reads the tag sees nothing
};

struct CaughtAt {
  std::optional<std::size_t> step;     ///< the first whose reading differs for certain
  std::optional<std::size_t> reading;  ///< index into its readings; nothing: its tag does not fit the header
  std::optional<std::size_t> power;    ///< the first with power on at what is wrong; nothing: none

  bool in_time() const { return step && (!power || *step < *power); }
};

/// `fault` is one of plan.after: possible_faults(plan.after, {}).
CaughtAt caught_at(const SwapPlan&, const std::vector<WorkStep>&, const MachineFault& fault,
                   Mixup how = Mixup::Set);

}  // namespace plugward
