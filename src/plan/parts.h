// SPDX-License-Identifier: MIT
// The added part, housing or supply that may cure a harm or fault, in words.
#pragma once

#include <string>

#include "judge/judgement.h"
#include "model/fitting.h"

namespace plugward {

/// How many harms and faults no added part cures. A current that is only a consequence of too high a supply
/// counts as cured with it.
int incurable(const Assessment&);
/// Can added parts cure every harm and fault of the assessment?
bool curable(const Assessment&);

/// "a level buffer ..." for one finding. REQUIRES: finding.part is not empty.
std::string part_words(const Fitting&, const Finding&);

}  // namespace plugward
