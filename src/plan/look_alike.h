// SPDX-License-Identifier: MIT
// Headers of the new board that a person would take for the one that is meant, but which do something else
// with the plug.
//
//   for (const LookAlike& l : look_alikes(plan)) ... l.plug, l.meant, l.mistaken, l.reasons, l.happens
#pragma once

#include <string>
#include <vector>

#include "plan/swap.h"

namespace plugward {

struct LookAlike {
  int plug = 0;
  int meant = 0;     ///< header of the new board on which the plan puts the plug
  int mistaken = 0;  ///< header of the new board that it goes on as well
  std::vector<std::string>
      reasons;  ///< "bears the label of its old header", "sits where its old header sat", ...
  Weight weight = Weight::Note;
  bool same_circuit = false;  ///< only the firmware tells the two apart
  std::string happens;        ///< what the plug would do there; one sentence
};

/// Of all plugs that go over, with contacts moved and parts built in, worst first. Pairs for which nothing
/// speaks but the housing are left out, unless they lie side by side, are for the same use, or would heat for
/// ever.
std::vector<LookAlike> look_alikes(const SwapPlan&);

}  // namespace plugward
