// SPDX-License-Identifier: MIT
// The answer of `check` and `repin` for programs. Schema: schemas/advice.json; the member "version"
// rises when a member changes its meaning or goes; new members do not raise it.
#pragma once

#include <string>

#include "diag/source.h"
#include "plan/repin.h"

namespace plugward {

std::string advice_json(const Sources&, const Fitting&, const Advice&);

}  // namespace plugward
