// SPDX-License-Identifier: MIT
// The order of work of a board swap for the bench: a box a step, a blank a reading, cautions where they
// belong; what the firmware must be told; how long it takes.
//
//   [ ] 41. J9 (PROBE), empty
//             J9.2 to J9.3   4.9..5.2 V   ______ V   low a, high b
#pragma once

#include <vector>

#include "plan/firmware.h"
#include "plan/work.h"
#include "report/layout.h"

namespace plugward {

void write_work(Paper&, const SwapPlan&, const std::vector<WorkStep>&);
void write_firmware(Paper&, const SwapPlan&, const std::vector<FirmwareSetting>&);
void write_work_time(Paper&, const WorkTime&);

}  // namespace plugward
