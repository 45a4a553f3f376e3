// SPDX-License-Identifier: MIT
// An adapter lead as JSON, for programs; schemas/adapter.json is its schema.
#pragma once

#include <string>

#include "plan/adapter_lead.h"

namespace plugward {

std::string adapter_json(const Fitting&, const AdapterAdvice&);

}  // namespace plugward
