// SPDX-License-Identifier: MIT
// Cures that need neither tool nor part: another position of a jumper, the plug turned round, LEDs less
// bright, the header beside.
#pragma once

#include <string>
#include <vector>

#include "model/fitting.h"

namespace plugward {

/// Whole sentences, best first; each was tried on the model and judged clean (a jumper: at least once
/// contacts are moved). Empty when there is none. `elsewhere`: also look at the neighbouring headers.
std::vector<std::string> softer_cures(const Fitting&, bool elsewhere);

}  // namespace plugward
