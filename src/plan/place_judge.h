// SPDX-License-Identifier: MIT
// What one cluster of plugs costs on some headers, each thing judged once.
//
//   PlaceJudge judge(fitting, true);
//   const PlaceOption o = judge.alone(2, 5);              // plug 2 on header 5, with the fixed plugs of its
//   device const PlaceOption t = judge.together(0, {{2, 5}, {3, 7}});  // cluster 0 as a whole
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "plan/components.h"
#include "plan/in_question.h"
#include "plan/place.h"

namespace plugward {

class PlaceJudge {
 public:
  /// With reasons, what is alike is judged once a cluster; without, once.
  PlaceJudge(const Fitting&, bool reasons);

  const std::vector<Cluster>& all() const { return clusters_; }
  int cluster_of(int plug) const { return cluster_of_[static_cast<std::size_t>(plug)]; }

  /// REQUIRES: the plug is not fixed, the header is free.
  PlaceOption alone(int plug, int header);

  /// The cluster's plugs where they are placed; plug and header of the answer are those of the first.
  PlaceOption together(int cluster, const std::vector<Placement>&);

 private:
  PlaceOption recall(int cluster, std::vector<Placement> in_cluster);

  const Fitting& fitting_;
  bool reasons_;
  std::vector<Cluster> clusters_;
  std::vector<int> cluster_of_;       ///< [plug]
  std::vector<int> place_in_;         ///< [plug]: index into the cluster's plugs
  std::vector<std::string> content_;  ///< [cluster]: equal when they were read from the same place
  std::vector<std::vector<PlugDemands>> demands_;  ///< [cluster]
  std::unordered_map<std::string, PlaceOption> memo_;
};

/// Levels of a cost that an advice on one cluster shows.
PlaceCost cost_of(const Advice&);

/// What is to be done, or what speaks against it, in one line.
std::string reason_of(const Advice&);

}  // namespace plugward
