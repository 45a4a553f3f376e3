// SPDX-License-Identifier: MIT
// The causes of a symptom and the path of measurements between them, for the bench.
#pragma once

#include <string>
#include <vector>

#include "plan/causes.h"
#include "report/layout.h"

namespace plugward {

/// The causes of one symptom, plug by plug. `errors`: how many errors were tried.
std::string causes_text(const Fitting&, Symptom, const std::vector<PlugCauses>&, int errors,
                        const TextOptions&);

/// Which symptoms the machine can show. `command`: asks for one of them, its word in place of "WORD".
std::string possible_text(const Fitting&, const std::vector<PossibleSymptom>&, int errors,
                          const std::string& command, const TextOptions&);

}  // namespace plugward
