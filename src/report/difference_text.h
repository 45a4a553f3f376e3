// SPDX-License-Identifier: MIT
// Old and new state of a machine side by side, for people.
#pragma once

#include <string>

#include "plan/loom_difference.h"
#include "report/layout.h"

namespace plugward {

/// "19 plugs: 18 over to the other board, 1 unplugged; contacts, leads, parts or housings of 4 differ".
std::string difference_summary(const LoomDifference&);

std::string difference_text(const LoomDifference&, const TextOptions& = {});

}  // namespace plugward
