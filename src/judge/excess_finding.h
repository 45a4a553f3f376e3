// SPDX-License-Identifier: MIT
// From a limit that the circuit leaves to a finding in words, with its weight and the part that may cure it.
#pragma once

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

Finding finding_of(const Fitting&, const Excess&);

/// An unknown limit that is no voltage: an input whose thresholds are not stated.
bool lacks_thresholds(const Excess&);

}  // namespace plugward
