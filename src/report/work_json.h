// SPDX-License-Identifier: MIT
// The order of work, the firmware's settings and the time as parts of a JSON answer.
#pragma once

#include <vector>

#include "plan/firmware.h"
#include "plan/work.h"
#include "report/json.h"

namespace plugward {

/// [{"stage", "plug_stage", "act", "see", "wrong", "cautions", "readings", ...}]
Json work_json(const SwapPlan&, const std::vector<WorkStep>&);
/// [{"role", "plug", "header", "pin", "net", "tell", "was", "changed", ...}]
Json firmware_json(const SwapPlan&, const std::vector<FirmwareSetting>&);
/// {"practised", "first_time", "practised_checks", "first_time_checks", "rows"}, minutes
Json work_time_json(const WorkTime&);

}  // namespace plugward
