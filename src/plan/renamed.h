// SPDX-License-Identifier: MIT
// Which header of the new board goes by the name of the one that a plug comes from. The circuit cannot tell
// motor X from motor Y, nor the sensor of the nozzle from that of the bed; the firmware can, and a heater
// that is watched by the wrong sensor is a fire.
//
//   how.renamed = renamed(machine, board);      // for place(): [plug][header]
#pragma once

#include <vector>

#include "model/fitting.h"

namespace plugward {

/// A fan that always ran and is now switched, or the other way round, weighs more than any name.
inline constexpr int other_switching = 3;

/// [plug][header of `to`]: 0 the same label; 1 shares a word with the old label or the plug's own name that
/// tells it from the others of its use ("BED" of "THERM BED"); 2 neither. 3 more when one of the two headers
/// switches what it feeds and the other does not: a fan that must always run, or must not.
std::vector<std::vector<int>> renamed(const Fitting& machine, const Board& to);

}  // namespace plugward
