// SPDX-License-Identifier: MIT
// The steps of a plan as numbered arcs between the housing now (above) and then (below).
//   move             one arc, full line
//   park             a dashed bow to an empty cavity of the housing now; the next step goes on from there
//   hold, insert     a dashed arc to a place beside the housing and on from there
//   insulate         an arc to the lead lying beside the housing
#pragma once

#include <vector>

#include "draw/housing.h"
#include "plan/repin.h"

namespace plugward {

struct MoveField {
  double left = 0, right = 0;  ///< how far arcs may go
};

/// Where the lead that is insulated for good lies: its near end.
struct SpareEnd {
  int lead = 0;
  Point end;
};

/// One group a step, "step 2", the arc its first shape; then the numbers, "number of step 2".
std::vector<Group> draw_moves(const std::vector<Step>&, const Housing& now, const Housing& then,
                              const MoveField&, const std::vector<SpareEnd>&, const TextMeasure&);

/// Least height between the housings for so many steps.
double move_band(const std::vector<Step>&);

}  // namespace plugward
