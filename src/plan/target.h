// SPDX-License-Identifier: MIT
// Where each lead should sit: the arrangement in which every terminal meets the function it wishes, at the
// least cost.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "fit/match.h"
#include "numeric/assignment.h"
#include "plan/repin.h"

namespace plugward {

/// A lead of a placed plug: index into fitting.placements, index into Plug::leads.
struct LeadId {
  int placement = 0;
  int lead = 0;
  friend auto operator<=>(const LeadId&, const LeadId&) = default;
};

/// A place that was tried and judged harmful.
struct Refused {
  LeadId lead;
  int cavity = 0;
  friend auto operator<=>(const Refused&, const Refused&) = default;
};

struct Target {
  std::vector<Arrangement> arrangements;  ///< by placement
  std::vector<Alternative> chosen;        ///< how each group is used
  Cost cost = 0;                          ///< moves, leads left out and settings, weighed
  int moved = 0;                          ///< contacts not in their cavity, insulated ones included
  bool proven = true;                     ///< false: the search was cut off; a cheaper one may exist
};

/// The cheapest target that uses no refused place; nothing when some terminal finds no pin it suits.
std::optional<Target> cheapest_target(const Fitting&, const std::set<Refused>& refused = {});
/// The same for who asks often. REQUIRES: `groups` are those of the harness.
std::optional<Target> cheapest_target(const Fitting&, const std::vector<WishGroup>& groups,
                                      const std::set<Refused>& refused);

}  // namespace plugward
