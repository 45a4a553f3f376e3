// SPDX-License-Identifier: MIT
// As causes_text.h, for programs; the schema is schemas/causes.json.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/causes.h"

namespace plugward {

/// Without a symptom only what is possible is listed, and `all` is empty.
std::string causes_json(const Fitting&, std::optional<Symptom>, const std::vector<PossibleSymptom>&,
                        const std::vector<PlugCauses>& all, int errors);

}  // namespace plugward
