// SPDX-License-Identifier: MIT
// The steps of a re-pinning in words.
#pragma once

#include <string>

#include "plan/repin.h"
#include "report/layout.h"

namespace plugward {

/// "move RD to 'V' from cavity 2 to cavity 3".
std::string step_words(const Harness&, const Step&);

/// Numbered steps of one plug with their reasons. Returns the next number.
int write_steps(Paper&, const Harness&, const std::vector<Step>&, int first_number = 1);

}  // namespace plugward
