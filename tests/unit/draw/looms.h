// SPDX-License-Identifier: MIT
// Placements of several plugs: of shipped files, of a small board written here, and of boards made by chance.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "reader/descriptions.h"

namespace plugward::test {

/// Owns everything that its fitting points to.
struct Loom {
  std::string name;
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Board board;
  Harness harness;
  Fitting fitting;
  Advice advice;

  Loom() = default;
  Loom(const Loom&) = delete;
  Loom& operator=(const Loom&) = delete;
};
using LoomPtr = std::unique_ptr<Loom>;

/// The first `plugs` (1..14) of a whole "Wren" on the board "Heron M7".
LoomPtr shipped_loom(int plugs);

/// Four fans: on a header in line, on one turned by 90 degrees with its leads exchanged, on a two-row one
/// turned by 180 degrees, and on one on the underside turned by 270 degrees.
LoomPtr four_fans();

/// A board of 64 headers in rows, of many families, turned by chance, some on the underside; fans on the
/// first `plugs` of them (1..64), as they should be, exchanged, of the wrong voltage, or behind a jumper not
/// stated.
LoomPtr generated_loom(unsigned seed, int plugs);

}  // namespace plugward::test
