// SPDX-License-Identifier: MIT
// Internal. The steps of an order of work, stage by stage; work.cpp puts them together.
#pragma once

#include <string>
#include <vector>

#include "plan/firmware.h"
#include "plan/power_in.h"
#include "plan/work.h"

namespace plugward {

using WorkSteps = std::vector<WorkStep>;

void add_isolation(WorkSteps&, const SwapPlan&);  ///< Before, Isolate, Record, Unplug
void add_board(WorkSteps&, const SwapPlan&);      ///< Fit, Jumpers, Contacts
void add_meter(WorkSteps&, const SwapPlan&);      ///< MeterOff, BareBoard
void add_stages(WorkSteps&, const SwapPlan&, const std::vector<FirmwareSetting>&);   ///< PlugIn, PowerOn
void add_closing(WorkSteps&, const SwapPlan&, const std::vector<FirmwareSetting>&);  ///< Settings to File

/// A step that only says what to do and what must be seen.
WorkStep step_of(WorkStage, std::string act, std::string see = "", std::string wrong = "");
/// "J9 (PROBE)".
std::string header_words(const Board&, int header);
/// "'kite/control'".
std::string plug_words(const SwapPlan&, int plug);
/// "no power": the reading at the supply's terminals before anything is touched.
ExpectedReading dead_reading(const Board&);
/// Plugs that go over, in the order of the harness.
std::vector<int> plugs_over(const SwapPlan&);

}  // namespace plugward
