// SPDX-License-Identifier: MIT
// Cures that need neither tool nor part: another position of a jumper, or the plug turned round.
#pragma once

#include <string>
#include <vector>

#include "model/fitting.h"

namespace plugward {

/// Whole sentences, best first; each was tried on the model and judged clean. Empty when there is none.
std::vector<std::string> softer_cures(const Fitting&);

}  // namespace plugward
