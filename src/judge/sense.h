// SPDX-License-Identifier: MIT
// What the firmware must be told about inputs: the level at rest and when the switch or sensor works.
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

std::vector<Setting> input_senses(const Fitting&, std::span<const Contact>);

/// Notes on inputs that the device at rest holds against their stated pull: read as triggered by firmware that
/// expects the device to work by pulling the input over.
std::vector<Finding> inverted_senses(const Fitting&, std::span<const Contact>);

}  // namespace plugward
