// SPDX-License-Identifier: MIT
// A move to another board in reverse: from every new header back to the old one, added parts out, contacts
// back in their old cavities, the old board's jumpers.
//
//   const WayBack back = way_back(plan);
//   back.proven          // carried out on the model, it ends in the machine as it was
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "plan/swap.h"

namespace plugward {

/// What one plug needs. Its leads are those of the machine as it stands: leads that a cure added come behind
/// them and are in `leads_out`.
struct PlugWayBack {
  int plug = 0;
  std::optional<int> from;            ///< header of the new board; nothing: it is on none
  std::optional<int> to;              ///< header of the old board; nothing: it was on none
  bool rebuilt = false;               ///< there are parts in its leads or its devices
  std::vector<std::string> take_out;  ///< these parts, by name; each at the first plug of its device
  std::vector<int> leads_out;         ///< cavities of leads that came with a part
  bool other_housing = false;         ///< the leads go back into a housing of the old kind
  Arrangement before, after;
  std::vector<Step> steps;    ///< in the housing; none when the housing changes
  std::vector<int> put_back;  ///< leads that were out for good: into after.cavity, once the steps are done

  bool at_bench() const { return rebuilt || other_housing || !steps.empty() || !put_back.empty(); }
};

struct WayBack {
  std::vector<PlugWayBack> plugs;  ///< those to which anything happens, in the order of the harness
  std::map<std::string, std::string> jumpers;  ///< of the old board
  std::vector<std::string> cautions;           ///< before anything is touched
  std::vector<std::string> technique;
  std::vector<std::string> checks;
  bool proven = false;  ///< carried out on the model it ends in exactly the machine as it was
};

WayBack way_back(const SwapPlan&);

/// The proof: true when the way back, carried out on the model, ends in exactly the machine as it was.
bool ends_as_it_was(const SwapPlan&, const WayBack&);

/// Carries the way back out on the model of the finished machine; the fitting points to `harness`, which
/// becomes what was reached. Nothing when a step is impossible.
std::optional<Fitting> carry_out(const SwapPlan&, const WayBack&, Harness& harness);

}  // namespace plugward
