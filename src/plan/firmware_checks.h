// SPDX-License-Identifier: MIT
// Internal. Which public code checks a setting, and what that check leaves open.
#pragma once

#include "plan/firmware.h"

namespace plugward {

/// Fills in code, check and not_proved. `signal`: of the board's pin.
void add_check(FirmwareSetting&, const std::string& signal);

}  // namespace plugward
