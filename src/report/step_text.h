// SPDX-License-Identifier: MIT
// The steps of a re-pinning in words.
#pragma once

#include <string>

#include "report/layout.h"
#include "sheet/step_words.h"

namespace plugward {

/// Numbered steps of one plug with their reasons. Returns the next number.
int write_steps(Paper&, const Harness&, const std::vector<Step>&, int first_number = 1);

}  // namespace plugward
