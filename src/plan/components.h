// SPDX-License-Identifier: MIT
// A loom falls into clusters: plugs that share a device, over any number of plugs. What one cluster needs
// does not hang on another, save through rails that both draw from. So each is planned by itself, and all are
// judged together at the end.
//
//   for (const Cluster& c : clusters(harness)) ... c.harness, c.plugs
//   if (auto advice = advise_apart(fitting, options)) ...   // nothing: it is one cluster
#pragma once

#include <optional>
#include <vector>

#include "plan/repin.h"

namespace plugward {

/// A part of a harness that stands by itself.
struct Cluster {
  std::vector<int> plugs;    ///< indices into the whole harness; cluster.harness.plugs[i] is plugs[i]
  std::vector<int> devices;  ///< as plugs; -1: an empty device that keeps names as they are in the whole
  Harness harness;           ///< terminals have the same names in it as in the whole harness
};

/// Every plug is in exactly one, every device with a lead too; in the order of their first plugs.
std::vector<Cluster> clusters(const Harness&);

/// `finding` of a cluster, its indices those of the whole harness.
Finding in_whole(const Cluster&, Finding finding);

/// The placed plugs cluster by cluster, then judged together with all contacts moved: as `advise`, and as
/// quick as the sum of its parts. Nothing when only one cluster has placed plugs.
std::optional<Advice> advise_apart(const Fitting&, const AdviseOptions&);

}  // namespace plugward
