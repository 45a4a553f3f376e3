// SPDX-License-Identifier: MIT
// The root of every file kind may point at its schema; the prefix for that must be the one everybody knows.
#pragma once

#include "reader/reading.h"

namespace plugward {

void check_schema_link(const Reading&);

}  // namespace plugward
