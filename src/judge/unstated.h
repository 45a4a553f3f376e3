// SPDX-License-Identifier: MIT
// What a file leaves out about things that meet, and that the circuit would therefore pass over in silence:
// a supply terminal of which nothing says what it takes, an output of which nothing says how it drives, or
// whether it is pulled up to more than the board's input withstands.
//
//   <terminal id="V" function="supply"/> and no <load plus="V" .../>   on a supply pin: a doubt, not a pass
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

std::vector<Finding> unstated(const Fitting&, std::span<const Contact>);

}  // namespace plugward
