// SPDX-License-Identifier: MIT
// Internal. What becomes of the plugs of one device, or of devices that share plugs, on their new headers.
#pragma once

#include <vector>

#include "plan/components.h"
#include "plan/swap.h"

namespace plugward {

struct ClusterTransfer {
  std::vector<PlugTransfer> plugs;  ///< in the order of the cluster's; indices those of the whole harness
  Harness harness;                  ///< the cluster's, with new housings where those are needed
  bool proven = false;              ///< with contacts moved and cures built in, nothing is left against it
};

/// `placements`: of the cluster's plugs on the new board, by index into the whole harness.
ClusterTransfer transfer_of(const Cluster&, const Fitting& on_new_board);

}  // namespace plugward
