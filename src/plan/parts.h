// SPDX-License-Identifier: MIT
// The added part, housing or supply that may cure a harm or fault, in words.
#pragma once

#include <string>

#include "judge/judgement.h"
#include "model/fitting.h"

namespace plugward {

/// Can an added part cure every harm and fault of the assessment?
bool curable(const Assessment&);

/// "a level buffer ..." for one finding. REQUIRES: finding.part is not empty.
std::string part_words(const Fitting&, const Finding&);

}  // namespace plugward
