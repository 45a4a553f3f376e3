// SPDX-License-Identifier: MIT
// An adapter lead for the bench: what its ends are, lead by lead, how to build it and how to check it.
#pragma once

#include <string>

#include "plan/adapter_lead.h"
#include "report/layout.h"

namespace plugward {

/// `advice` is the one that the adapter was planned from. Without a plan it says why there is none.
std::string adapter_text(const Fitting&, const Advice& advice, const AdapterAdvice&, const TextOptions& = {});

}  // namespace plugward
