// SPDX-License-Identifier: MIT
// The whole procedure of a re-pinning for the bench: cautions where they belong, the housing and its view,
// now and then cavity by cavity, the steps, how to free a contact, and the tests before power.
#pragma once

#include <string>

#include "plan/repin.h"
#include "report/layout.h"

namespace plugward {

/// For every verdict: without a plan it says why there is none.
std::string repin_text(const Fitting&, const Advice&, const TextOptions& = {});

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
