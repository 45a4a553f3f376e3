// SPDX-License-Identifier: MIT
// Which plug goes on which header: as stated, or where there is only one choice.
#pragma once

#include <string>
#include <vector>

#include "cli/options.h"
#include "model/fitting.h"

namespace plugward {

struct PlacementChoice {
  std::vector<Placement> placements;  ///< in the order of the harness's plugs
  std::vector<std::string> notes;     ///< plugs that stay on no header, and why
  std::string error;                  ///< not empty: a usage error, complete, and nothing else counts
};

/// What --at states wins. A plug that is not named goes to the only free header whose `use` is the use of the
/// plug's devices and which has as many positions. Several such headers, or two plugs for one, are an error
/// that lists them; none leaves the plug on no header. No plug on any header is an error.
PlacementChoice choose_placements(const Board&, const Harness&, const std::vector<NamedValue>& at);

/// Only what --at states; no placement is not an error.
PlacementChoice stated_placements(const Board&, const Harness&, const std::vector<NamedValue>& at);

}  // namespace plugward
