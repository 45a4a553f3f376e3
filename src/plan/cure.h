// SPDX-License-Identifier: MIT
// Added parts with their values, found and judged on the model.
//
//   if (auto cured = find_cures(fitting, arrangements, assessment)) ...   // cured->cures, cured->harness
//
// A cure edits a copy of the harness: parts are put between a lead's terminal and what hung on it. The cured
// harness is judged like any other, with every added resistor at either end of its tolerance; what is
// returned was clean in all of these corners.
#pragma once

#include <optional>
#include <vector>

#include "plan/repin.h"

namespace plugward {

struct Cured {
  Harness harness;  ///< with the cures built in and every contact where it is before anything moves
  std::vector<Arrangement> arrangements;  ///< by placement: where the contacts belong
  std::vector<Cure> cures;
};

/// `arrangements` says where the contacts will be, by placement; `assessment` is what speaks against that.
/// Nothing when no values could be proved.
std::optional<Cured> find_cures(const Fitting&, const std::vector<Arrangement>& arrangements,
                                const Assessment& assessment);

}  // namespace plugward
