// SPDX-License-Identifier: MIT
// What the firmware must be told about inputs: the level at rest and when the switch or sensor works.
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

std::vector<Setting> input_senses(const Fitting&, std::span<const Contact>);

}  // namespace plugward
