// SPDX-License-Identifier: MIT
// Preferred numbers of IEC 60063 (E12, E24, E96).
#pragma once

#include <span>

#include "quantity/quantity.h"

namespace plugward {

enum class Series { E12, E24, E96 };

/// The series' members in one decade, 1.0 <= v < 10.
std::span<const double> members(Series);

/// The member nearest to `value` by ratio; next member not below / not above. REQUIRES: value > 0.
Ohms nearest_preferred(Ohms value, Series);
Ohms preferred_at_least(Ohms value, Series);
Ohms preferred_at_most(Ohms value, Series);

}  // namespace plugward
