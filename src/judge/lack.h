// SPDX-License-Identifier: MIT
// What a circuit that is not yet whole may lack: a lead that goes nobody knows where, or a plug that is not
// placed, may bring it, and then it is no fault of its own.
//
//   V of a device meets 5V, its G has no lead: "terminal 'G' has no lead" is said, "it gets 0 V" is not
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

/// Is `finding`, made from `excess`, only a consequence of what is not connected yet? What does harm never
/// is. `functions`: what was found about functions.
bool follows_from_a_lack(const Fitting&, std::span<const Contact>, const std::vector<Finding>& functions,
                         const Excess& excess, const Finding& finding);

}  // namespace plugward
