// SPDX-License-Identifier: MIT
// A parts list as JSON, for programs; schemas/parts.json is its schema.
#pragma once

#include <string>

#include "plan/parts_list.h"

namespace plugward {

std::string parts_json(const Fitting&, const PartsList&);

}  // namespace plugward
