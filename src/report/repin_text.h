// SPDX-License-Identifier: MIT
// The whole procedure of a re-pinning for the bench: cautions where they belong, the housing and its view,
// now and then cavity by cavity, the steps, how to free a contact, and the tests before power.
#pragma once

#include <string>

#include "plan/repin.h"
#include "report/layout.h"
#include "sheet/step_words.h"

namespace plugward {

/// For every verdict: without a plan it says why there is none.
std::string repin_text(const Fitting&, const Advice&, const TextOptions& = {});

}  // namespace plugward
