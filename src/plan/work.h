// SPDX-License-Identifier: MIT
// The order of work of a board swap: every step with what must be seen, what a wrong reading points to, a box
// to tick and a blank for the reading; cautions stand at the step they belong to.
//
//   for (const WorkStep& step : order_of_work(plan)) ... step.act, step.reading, step.cautions
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/swap.h"

namespace plugward {

enum class WorkStage {
  Before,   ///< what has to be had; the old state saved
  Isolate,  ///< mains out, lamps out
  Record,   ///< photographs, tags
  Unplug,
  Fit,  ///< the new board on its standoffs
  Jumpers,
  Contacts,   ///< re-pinning, added parts
  MeterOff,   ///< meter checks, power off
  BareBoard,  ///< power on, nothing plugged in
  PlugIn,     ///< in stages, heaters last; power off while a plug is set
  PowerOn,    ///< checks with power, stage by stage
  Settings,
  Calibrate,
  Close,
  File  ///< the new loom file, the difference, the way back
};

/// A reading that is expected, computed from the descriptions.
struct ExpectedReading {
  std::string points;  ///< "J9.2 to J9.3"
  double low = 0, high = 0;
  std::string unit;               ///< "V", "ohm"; "beep": continuity, "open": none
  std::string too_low, too_high;  ///< what such a reading points to
};

struct WorkStep {
  WorkStage stage{};
  int stage_of_plugs = 0;  ///< PlugIn, PowerOn: 1 signals, 2 motors, 3 fans and lights, 4 heaters
  std::string act;         ///< what to do
  std::string see;         ///< what must be seen
  std::string wrong;       ///< what it points to when it is not seen
  std::vector<std::string> cautions;
  std::optional<ExpectedReading> reading;
  std::vector<int> plugs;     ///< the plugs it is about
  std::optional<int> header;  ///< of the new board
  bool power = false;         ///< power is on during this step
  std::string code;           ///< a public G-code that checks it ("M119"), "" when there is none
  std::string not_proved;     ///< what that check does not prove
};

std::vector<WorkStep> order_of_work(const SwapPlan&);

/// How long the hands are busy; see work_time.cpp for the assumptions.
struct WorkTime {
  int practised = 0, first_time = 0;  ///< minutes
};
WorkTime work_time(const SwapPlan&, const std::vector<WorkStep>&);

std::string_view to_word(WorkStage);

}  // namespace plugward
