// SPDX-License-Identifier: MIT
// What is done at a housing, in words: contacts that move, parts that are built in, cavity by cavity.
//
//   step_words(harness, step)         // "move cavity 2 -> 3: lead RD to 'V'"
//   for (const CavityRow& row : cavity_rows(fitting, placement, plan)) ... row.now, row.then, row.pin
#pragma once

#include <string>
#include <vector>

#include "plan/repin.h"

namespace plugward {

/// "move cavity 2 -> 3: lead RD to 'V'".
std::string step_words(const Harness&, const Step&);
/// "resistor 6.8 kohm, 1 %, 0.125 W or more; in the lead from terminal 'Q'".
std::string component_words(const Component&);
/// Why cures may be trusted: how they were judged.
std::string_view cures_sentence();

/// The fitting with the harness that the plan of the advice speaks of: the cured one, when there is one.
Fitting planned_fitting(const Fitting&, const Advice&);

/// Does the plan move any contact?
bool moves_contacts(const RepinPlan&);

/// One row a cavity: what sits there now, what then, and which pin it meets.
struct CavityRow {
  int cavity = 0;
  const Lead* now = nullptr;  ///< nullptr: empty
  const Lead* then = nullptr;
  int pin = 0;  ///< of the header, plug at home; 0: none
  bool changed = false;
};
/// REQUIRES: the arrangements are of the plug that is placed.
std::vector<CavityRow> cavity_rows(const Fitting&, const Placement&, const PlugPlan&);

}  // namespace plugward
