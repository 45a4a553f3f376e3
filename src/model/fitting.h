// SPDX-License-Identifier: MIT
// What is to be judged: a harness, a board, which plug goes on which header, and the facts of the machine.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "catalogue/family.h"
#include "model/board.h"
#include "model/harness.h"

namespace plugward {

struct Placement {
  int plug = 0;    ///< index into Harness::plugs
  int header = 0;  ///< index into Board::headers
};

struct Fitting {
  const Board* board = nullptr;
  const Harness* harness = nullptr;
  const Catalogue* catalogue = nullptr;
  std::vector<Placement> placements;           ///< at most one a plug and one a header
  std::map<std::string, std::string> jumpers;  ///< stated positions: jumper id -> rail id
};

}  // namespace plugward
