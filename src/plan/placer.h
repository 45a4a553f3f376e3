// SPDX-License-Identifier: MIT
// Internal. One search for the best headers; plan/place.cpp says how.
#pragma once

#include <optional>
#include <vector>

#include "plan/place.h"
#include "plan/place_judge.h"
#include "plan/place_search.h"

namespace plugward {

class Placer {
 public:
  /// The judge may have served for other positions of the jumpers before. All must outlive this.
  Placer(const Fitting&, const PlaceOptions&, PlaceJudge&);

  /// No placement costs less. Judges every plug on every header.
  PlaceCost bound();

  PlacementPlan run();

  /// What the plan costs, plugs that the user has fixed where they must not be counted as without a header.
  PlaceCost reached(const PlacementPlan&);

 private:
  /// A placing that was judged.
  struct Judged {
    std::vector<Placement> placements;
    PlaceCost cost;
  };

  std::optional<int> fixed_header(int plug) const;
  int renamed(int plug, int header) const;
  void judge_options();
  std::vector<std::vector<Placement>> fixed_clusters() const;
  bool has_free_plug(int cluster) const;
  PlacingProblem problem() const;
  std::vector<Placement> placements_of(const RankedPlacing&) const;
  std::optional<PlaceCost> cost_together(const std::vector<Placement>&);
  int unknown_alone(const std::vector<Placement>&) const;
  Advice advise_all(const std::vector<Placement>&, const AdviseOptions&) const;
  Advice advise_short(const std::vector<Placement>&) const;
  std::optional<Judged> judged(const RankedPlacing&);
  void search();
  bool holds_together(Judged&) const;
  bool fixed_fails() const;
  bool fails(const Advice& without_cures, const std::vector<Placement>&) const;
  void take(std::vector<Judged>& best);
  bool equal_everywhere(std::size_t a, std::size_t b) const;
  void find_equals();
  void find_rehousings();

  const Fitting& fitting_;
  const PlaceOptions& options_;
  PlaceJudge& judge_;
  std::vector<int> free_;                             ///< plugs that are not fixed: the rows
  std::vector<std::vector<PlaceOption>> options_of_;  ///< [row], best first
  PlacementPlan plan_;
};

}  // namespace plugward
