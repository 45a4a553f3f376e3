// SPDX-License-Identifier: MIT
// What is to be done with each plug of a whole placement, from the advice on all of them.
//
//   for (const PlugAdvice& one : advice_by_plug(fitting, advise(fitting)).plugs) ... one.advice.verdict,
//   one.moves
//
// Where the whole is MATE or REPIN, the plan for the whole holds: a plug with moves is REPIN, one without is
// MATE. Otherwise plugs that share no device with others are advised by themselves, so that one doubt does
// not hide the plans for all the rest. What only the placement as a whole brings about (a rail that all
// together overload) then counts against every plug that it touches, and if no plug carries the verdict of
// the whole, all do: no plug looks better than it is.
#pragma once

#include <vector>

#include "plan/repin.h"

namespace plugward {

/// One for each of fitting.placements, in that order.
struct PlugAdvice {
  int placement = 0;
  Advice advice;  ///< for this plug: its verdict, and only findings and wrong seatings that concern it
  int moves = 0;  ///< contacts of this plug that are moved
};

struct AdviceByPlug {
  std::vector<PlugAdvice> plugs;
  std::vector<Finding> together;  ///< what only the whole brings about; notes left out
};

AdviceByPlug advice_by_plug(const Fitting&, const Advice& whole);

/// Indices into fitting.placements, those that share a device together; in the order of their first plug.
std::vector<std::vector<int>> placements_by_device(const Fitting&);

/// Does the finding tell of this plug, of one of its leads, of a device at their far end, or of a pin of its
/// header?
bool touches(const Finding&, const Fitting&, const Placement&);

}  // namespace plugward
