// SPDX-License-Identifier: MIT
// Idea of the jumpers: with all of them stated, the cheapest placing by the sum of its plugs is a lower bound
// that costs one assignment (plan/placer); what a plug costs on a header is judged once for each position of
// the jumpers that feed it. Combinations are taken in the order of their bounds and searched in full until
// the best found costs no more than the next bound.
//
//   a fan for 24 V and a header whose jumper chooses 12 V or 24 V: at 12 V it is too weak, bound "one plug
//   without a header"; at 24 V it is 0, which the search meets: done after one of two
//
// Complexity: combinations x one assignment, and a full search for the few that may win.
// Not taken: jumper by jumper; two that feed one device hang together.
// Tested in tests/unit/plan/place_jumpers_test.cpp against a search of all combinations.
#include "plan/place.h"

#include <algorithm>

#include "plan/placer.h"

namespace plugward {
namespace {

/// Positions of all jumpers, and how good they are at the least.
struct Combination {
  std::map<std::string, std::string> jumpers;
  PlaceCost bound;
  double volts = 0;  ///< sum over the rails chosen
};

double volts_of(const Board& board, const std::string& rail) {
  const Rail* found = board.rail(rail);
  return found == nullptr ? 0 : found->volts.max.value;
}

std::vector<Combination> combinations(const Fitting& fitting) {
  std::vector<Combination> all{{fitting.jumpers, {}, 0}};
  for (const Jumper& jumper : fitting.board->jumpers) {
    if (fitting.jumpers.contains(jumper.id)) continue;
    if (all.size() * jumper.rails.size() > most_settings) break;
    std::vector<Combination> more;
    for (const Combination& one : all) {
      for (const std::string& rail : jumper.rails) {
        more.push_back(one);
        more.back().jumpers[jumper.id] = rail;
        more.back().volts += volts_of(*fitting.board, rail);
      }
    }
    if (!more.empty()) all = std::move(more);
  }
  return all;
}

bool before(const Combination& a, const Combination& b) {
  return a.bound != b.bound ? a.bound < b.bound : a.volts < b.volts;
}

}  // namespace

PlacementPlan place(const Fitting& fitting, const PlaceOptions& options) {
  PlaceJudge judge(fitting, options.reasons);
  return Placer(fitting, options, judge).run();
}

SetAndPlaced place_with_jumpers(const Fitting& fitting, const PlaceOptions& options) {
  Fitting trial = fitting;
  PlaceJudge judge(trial, options.reasons);
  std::vector<Combination> all = combinations(fitting);
  if (all.size() > 1) {
    for (Combination& one : all) {
      trial.jumpers = one.jumpers;
      one.bound = Placer(trial, options, judge).bound();
    }
    std::stable_sort(all.begin(), all.end(), before);
  }
  std::optional<SetAndPlaced> best;
  Combination of_best;
  for (const Combination& one : all) {
    if (best && !before(one, of_best)) break;
    trial.jumpers = one.jumpers;
    Placer placer(trial, options, judge);
    SetAndPlaced found{one.jumpers, placer.run()};
    Combination reached{one.jumpers, placer.reached(found.plan), one.volts};
    if (best && !before(reached, of_best)) continue;
    best = std::move(found);
    of_best = std::move(reached);
  }
  return *best;
}

}  // namespace plugward
