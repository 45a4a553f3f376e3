// SPDX-License-Identifier: MIT
// The order of work of a board swap: every step with what must be seen, what a wrong reading points to, a box
// to tick and a blank for the reading; cautions stand at the step they belong to.
//
//   for (const WorkStep& step : order_of_work(plan)) ... step.act, step.readings, step.cautions
//
// Why in this order. An error in the wiring must show before power reaches it: a plug in the hand tells what
// it is by its colours and its ohms, an empty header by its volts on the bare board, a jumper by the volts at
// the header that it feeds, a seated plug by the colours over the pins. work_catch.h tries that on the model.
// Plugs go on in stages, those that can burn last.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/meter.h"
#include "plan/swap.h"

namespace plugward {

/// In this order.
enum class WorkStage {
  Before,     ///< what has to be had; the old state saved
  Isolate,    ///< mains out, lamps out
  Record,     ///< photographs, tags
  Unplug,     ///
  Fit,        ///< the new board on its standoffs, the leads of the supply
  Jumpers,    ///
  Contacts,   ///< re-pinning, added parts
  MeterOff,   ///< meter checks, power off
  BareBoard,  ///< power on, nothing plugged in
  PlugIn,     ///< in stages, heaters last, PowerOn after each; power off while a plug is set
  PowerOn,    ///< checks with power
  Settings,   ///
  Calibrate,  ///
  Close,      ///
  File        ///< the new loom file, the difference, the way back
};

/// In which plugs go on.
enum class PlugStage { Signals = 1, Motors, Loads, Heaters };

struct WorkStep {
  WorkStage stage{};
  std::optional<PlugStage> plug_stage;    ///< PlugIn, PowerOn
  std::string act;                        ///< what to do
  std::string see;                        ///< what must be seen
  std::string wrong;                      ///< what it points to when it is not seen
  std::vector<std::string> cautions;      ///< before it is done
  std::vector<ExpectedReading> readings;  ///< a blank each
  std::vector<int> plugs;                 ///< the plugs it is about
  std::optional<int> header;              ///< of the new board
  bool moves_contacts = false;            ///< Contacts: as PlugTransfer::moves of its plug tells
  bool power = false;                     ///< power is on during this step
  std::string code;                       ///< public G-codes that check it ("M119"), "" when there are none
  std::string not_proved;                 ///< what that check does not prove
};

std::vector<WorkStep> order_of_work(const SwapPlan&);

/// When this plug goes on: heaters last, by what its devices are.
PlugStage stage_of_plug(const Harness&, int plug);

struct TimeRow {
  std::string what;                      ///< "12 plugs over"
  double practised = 0, first_time = 0;  ///< minutes
};

/// How long the hands are busy, for a practised person and for the first time. work_time.cpp tells how it is
/// counted.
struct WorkTime {
  int practised = 0, first_time = 0;                ///< minutes: plugs, jumpers, contacts, parts
  int practised_checks = 0, first_time_checks = 0;  ///< minutes: all around it, board and meter
  std::vector<TimeRow> rows, check_rows;
};
WorkTime work_time(const SwapPlan&, const std::vector<WorkStep>&);

std::string_view to_word(WorkStage);  ///< "before", "isolate", ...
std::string_view to_word(PlugStage);  ///< "signals", "motors", "fans, lights, displays", "heaters"

}  // namespace plugward
