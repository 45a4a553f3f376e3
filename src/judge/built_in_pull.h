// SPDX-License-Identifier: MIT
// Many sinking sensors have a resistor from their output to their plus inside. On an input that withstands
// less than their supply it is the difference between a good join and a dead input, so it is not passed over
// when nobody has said that there is none.
//
//   <proximity kind="sinking" .../> on 24 V, its signal on a pin for 5.5 V    a doubt
//   <proximity kind="sinking" pull="none" .../>                               nothing
//   <proximity kind="sinking" pull="10 kohm" .../>                            nothing here: the circuit
//   judges it
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

std::vector<Finding> built_in_pulls(const Fitting&, std::span<const Contact>);

}  // namespace plugward
