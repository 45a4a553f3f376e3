// SPDX-License-Identifier: MIT
// Idea: every plug is judged on every header by itself, once for all that are alike (plan/place_judge); that
// gives a cost for each pair. Placings come out in the order of the sum of these (plan/place_search) and are
// judged together, cluster by cluster and then as a whole, until the best that was judged is no dearer than
// the next sum can be. What plugs do to each other (a device that hangs on two plugs, a rail that all load)
// shows only then, and never makes a placing cheaper.
//
//   two limit switches, three limit headers: six placings of equal cost, of which the first two are judged
//
// Complexity: plugs x headers look-ups, a judgement for each pair of kinds, an assignment for each placing.
// Not taken: judging all placings (the twin in tests/unit/plan/place_test.cpp).
// Reference: E. L. Lawler, Management Science 18 (1972) 401, for ranking until the bound is met (from
// memory).
#include "plan/placer.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// Distance between the pins 1 of two headers, in 0.1 mm.
int distance(const Header& one, const Header& two) {
  return static_cast<int>(std::lround(10.0 * std::hypot((one.x - two.x).value, (one.y - two.y).value)));
}

std::vector<std::vector<int>> distances(const Board& board) {
  std::vector<std::vector<int>> all;
  for (const Header& one : board.headers) {
    std::vector<int> line;
    for (const Header& two : board.headers) line.push_back(distance(one, two));
    all.push_back(std::move(line));
  }
  return all;
}

}  // namespace

Placer::Placer(const Fitting& fitting, const PlaceOptions& options, PlaceJudge& judge)
    : fitting_(fitting), options_(options), judge_(judge) {
  for (int p = 0; p < static_cast<int>(fitting.harness->plugs.size()); ++p) {
    const bool left = std::find(options.leave.begin(), options.leave.end(), p) != options.leave.end();
    if (!fixed_header(p) && !left) free_.push_back(p);
  }
}

PlaceCost Placer::bound() {
  judge_options();
  PlaceCost cost;
  if (!free_.empty()) {
    if (const auto first = RankedPlacings(problem()).next()) cost = first->cost;
  }
  for (const auto& placed : fixed_clusters()) {
    const PlaceOption option = judge_.together(judge_.cluster_of(placed.front().plug), placed);
    cost = cost + (option.verdict == Verdict::Apart ? PlaceCost{.unplaced = 1} : option.cost);
  }
  return cost;
}

PlaceCost Placer::reached(const PlacementPlan& plan) {
  PlaceCost cost = plan.best ? plan.best->cost : PlaceCost{.unplaced = static_cast<int>(free_.size())};
  for (const auto& placed : fixed_clusters()) {
    if (judge_.together(judge_.cluster_of(placed.front().plug), placed).verdict == Verdict::Apart)
      ++cost.unplaced;
  }
  return cost;
}

/// The placements of clusters that the user has fixed wholly.
std::vector<std::vector<Placement>> Placer::fixed_clusters() const {
  std::map<int, std::vector<Placement>> by_cluster;
  for (const Placement& p : fitting_.placements) {
    const int cluster = judge_.cluster_of(p.plug);
    if (!has_free_plug(cluster)) by_cluster[cluster].push_back(p);
  }
  std::vector<std::vector<Placement>> all;
  for (auto& [cluster, placed] : by_cluster) all.push_back(std::move(placed));
  return all;
}

PlacementPlan Placer::run() {
  judge_options();
  search();
  for (const auto& list : options_of_) plan_.options.insert(plan_.options.end(), list.begin(), list.end());
  if (options_.rehouse) find_rehousings();
  return std::move(plan_);
}

std::optional<int> Placer::fixed_header(int plug) const {
  for (const Placement& p : fitting_.placements) {
    if (p.plug == plug) return p.header;
  }
  return std::nullopt;
}

int Placer::renamed(int plug, int header) const {
  return options_.renamed.empty()
             ? 0
             : options_.renamed[static_cast<std::size_t>(plug)][static_cast<std::size_t>(header)];
}

void Placer::judge_options() {
  if (options_of_.size() == free_.size()) return;
  for (const int plug : free_) {
    std::vector<PlaceOption> list;
    for (int h = 0; h < static_cast<int>(fitting_.board->headers.size()); ++h) {
      const bool taken = std::any_of(fitting_.placements.begin(), fitting_.placements.end(),
                                     [&](const Placement& p) { return p.header == h; });
      if (taken) continue;
      list.push_back(judge_.alone(plug, h));
      list.back().cost.renamed = renamed(plug, h);
    }
    std::stable_sort(list.begin(), list.end(), [](const PlaceOption& a, const PlaceOption& b) {
      const bool a_apart = a.verdict == Verdict::Apart;
      const bool b_apart = b.verdict == Verdict::Apart;
      return a_apart != b_apart ? b_apart : a.cost < b.cost;
    });
    options_of_.push_back(std::move(list));
  }
}

bool Placer::has_free_plug(int cluster) const {
  return std::any_of(free_.begin(), free_.end(), [&](int p) { return judge_.cluster_of(p) == cluster; });
}

/// Rows: free plugs.
PlacingProblem Placer::problem() const {
  PlacingProblem problem;
  problem.distance = distances(*fitting_.board);
  for (std::size_t row = 0; row < free_.size(); ++row) {
    const int cluster = judge_.cluster_of(free_[row]);
    std::vector<std::optional<PlaceCost>> line(fitting_.board->headers.size());
    for (const PlaceOption& option : options_of_[row]) {
      if (option.verdict == Verdict::Apart) continue;
      line[static_cast<std::size_t>(option.header)] = option.cost;
    }
    problem.cost.push_back(std::move(line));
    int anchor = static_cast<int>(row);
    for (std::size_t other = row; other-- > 0;) {
      if (judge_.cluster_of(free_[other]) == cluster) anchor = static_cast<int>(other);
    }
    int from = -1;
    for (const Placement& p : fitting_.placements) {
      if (from < 0 && judge_.cluster_of(p.plug) == cluster) from = p.header;
    }
    problem.anchor.push_back(from < 0 ? anchor : static_cast<int>(row));
    problem.fixed_anchor.push_back(from);
  }
  return problem;
}

std::vector<Placement> Placer::placements_of(const RankedPlacing& placing) const {
  std::vector<Placement> all = fitting_.placements;
  for (std::size_t row = 0; row < free_.size(); ++row) {
    if (placing.headers[row] >= 0) all.push_back({free_[row], placing.headers[row]});
  }
  std::sort(all.begin(), all.end(), [](const Placement& a, const Placement& b) { return a.plug < b.plug; });
  return all;
}

/// Cluster by cluster; nothing when one must not be joined.
std::optional<PlaceCost> Placer::cost_together(const std::vector<Placement>& placements) {
  PlaceCost sum;
  for (std::size_t c = 0; c < judge_.all().size(); ++c) {
    std::vector<Placement> mine;
    for (const Placement& p : placements) {
      if (judge_.cluster_of(p.plug) == static_cast<int>(c)) mine.push_back(p);
    }
    if (mine.empty()) continue;
    const PlaceOption option = judge_.together(static_cast<int>(c), mine);
    if (option.verdict == Verdict::Apart && has_free_plug(static_cast<int>(c))) return std::nullopt;
    PlaceCost cost = option.cost;
    cost.unknown = std::max(cost.unknown, unknown_alone(mine));
    sum = sum + cost;
  }
  return sum;
}

/// Plugs that must be measured first, each by itself.
int Placer::unknown_alone(const std::vector<Placement>& placements) const {
  int sum = 0;
  for (std::size_t row = 0; row < free_.size(); ++row) {
    for (const Placement& p : placements) {
      if (p.plug != free_[row]) continue;
      for (const PlaceOption& option : options_of_[row])
        sum += option.header == p.header ? option.cost.unknown : 0;
    }
  }
  return sum;
}

Advice Placer::advise_all(const std::vector<Placement>& placements, const AdviseOptions& options) const {
  Fitting joint = fitting_;
  joint.placements = placements;
  return advise(joint, options);
}

Advice Placer::advise_short(const std::vector<Placement>& placements) const {
  AdviseOptions options;
  options.wrong_seatings = options.softer = options.cures = false;
  return advise_all(placements, options);
}

std::optional<Placer::Judged> Placer::judged(const RankedPlacing& placing) {
  Judged result{placements_of(placing), {}};
  if (result.placements.empty()) return std::nullopt;
  const auto cost = cost_together(result.placements);
  if (!cost) return std::nullopt;
  result.cost = *cost;
  result.cost.unplaced = placing.cost.unplaced;
  result.cost.distance = placing.cost.distance;
  result.cost.renamed = placing.cost.renamed;
  return result;
}

void Placer::search() {
  if (free_.empty()) {
    if (fitting_.placements.empty()) return;
    PlacedHarness placed{fitting_.placements, {}, advise_all(fitting_.placements, options_.advice)};
    placed.cost = cost_of(placed.advice);
    plan_.best = std::move(placed);
    return;
  }
  RankedPlacings ranked(problem());
  std::vector<Judged> best;  // the best ones, cheapest first
  std::optional<Judged> overloaded;
  const std::size_t wanted = options_.runner_up ? 2 : 1;
  int tries = 0;
  while (const auto next = ranked.next()) {
    if (best.size() >= wanted && best[wanted - 1].cost <= next->cost) break;
    if (++tries > options_.joint_tries) {
      plan_.proven = false;
      break;
    }
    auto one = judged(*next);
    if (!one || (best.size() >= wanted && best[wanted - 1].cost <= one->cost)) continue;
    if (!holds_together(*one)) {
      if (!overloaded) overloaded = std::move(one);
      continue;
    }
    const auto place = std::upper_bound(best.begin(), best.end(), *one,
                                        [](const Judged& a, const Judged& b) { return a.cost < b.cost; });
    best.insert(place, std::move(*one));
    if (best.size() > wanted) best.pop_back();
    if (best.size() >= wanted && best[wanted - 1].cost <= next->cost) break;
  }
  if (best.empty() && overloaded && options_.even_overloaded) best.push_back(std::move(*overloaded));
  take(best);
}

/// The whole does not fail where its clusters do not; a rail that all load together costs an added part.
bool Placer::holds_together(Judged& one) const {
  const Advice advice = advise_short(one.placements);
  if (fails(advice, one.placements) && !fixed_fails()) return false;
  const PlaceCost whole = cost_of(advice);
  const int more = std::max(0, whole.parts - one.cost.parts);
  one.cost.parts += more;
  return true;
}

/// What the user has fixed may itself be what must not be joined.
bool Placer::fixed_fails() const {
  return !fitting_.placements.empty() && fails(advise_short(fitting_.placements), fitting_.placements);
}

/// What parts cure one by one may still be too much together: an added part draws current too.
bool Placer::fails(const Advice& without_cures, const std::vector<Placement>& placements) const {
  if (without_cures.verdict == Verdict::Mate || without_cures.verdict == Verdict::Repin) return false;
  if (without_cures.verdict == Verdict::Apart) return true;
  AdviseOptions options;
  options.wrong_seatings = options.softer = false;
  return advise_all(placements, options).verdict == Verdict::Apart;
}

void Placer::take(std::vector<Judged>& best) {
  if (best.empty()) return;
  if (best.size() > 1) {
    plan_.runner_up = PlacedHarness{best[1].placements, best[1].cost,
                                    options_.advise ? advise_short(best[1].placements) : Advice{}};
    plan_.why_it_lost = why_better(best[0].cost, best[1].cost);
    plan_.runner_up_equal = plan_.why_it_lost.empty();
    if (plan_.runner_up_equal)
      plan_.why_it_lost = tr("equal in all that counts; the board file names it later");
  }
  plan_.best = PlacedHarness{best[0].placements, best[0].cost,
                             options_.advise ? advise_all(best[0].placements, options_.advice) : Advice{}};
  find_equals();
}

/// Do both cost the same on every header, alone as they are on their devices?
bool Placer::equal_everywhere(std::size_t a, std::size_t b) const {
  const auto by_header = [&](std::size_t row) {
    std::vector<PlaceOption> list = options_of_[row];
    std::sort(list.begin(), list.end(),
              [](const PlaceOption& x, const PlaceOption& y) { return x.header < y.header; });
    return list;
  };
  const auto alone = [&](std::size_t row) {
    return judge_.all()[static_cast<std::size_t>(judge_.cluster_of(free_[row]))].plugs.size() == 1;
  };
  if (!alone(a) || !alone(b)) return false;
  const auto one = by_header(a);
  const auto two = by_header(b);
  return std::equal(
      one.begin(), one.end(), two.begin(), two.end(),
      [](const PlaceOption& x, const PlaceOption& y) { return x.verdict == y.verdict && x.cost == y.cost; });
}

void Placer::find_equals() {
  std::vector<bool> done(free_.size(), false);
  const auto is_placed = [&](std::size_t row) {
    const auto& all = plan_.best->placements;
    return std::any_of(all.begin(), all.end(), [&](const Placement& p) { return p.plug == free_[row]; });
  };
  for (std::size_t row = 0; row < free_.size(); ++row) {
    if (done[row] || !is_placed(row)) continue;
    std::vector<int> equal{free_[row]};
    for (std::size_t other = row + 1; other < free_.size(); ++other) {
      if (done[other] || !is_placed(other) || !equal_everywhere(row, other)) continue;
      done[other] = true;
      equal.push_back(free_[other]);
    }
    if (equal.size() > 1) plan_.equals.push_back(std::move(equal));
  }
}

/// Plugs that found no header, or only one of which something is not known: split, or joined with another
/// plug of the same device.
void Placer::find_rehousings() {
  Fitting rest = fitting_;
  if (plan_.best) rest.placements = plan_.best->placements;
  const auto badly_off = [&](int plug) {
    for (const Placement& p : rest.placements) {
      if (p.plug != plug) continue;
      return std::any_of(plan_.options.begin(), plan_.options.end(), [&](const PlaceOption& option) {
        return option.plug == plug && option.header == p.header && option.verdict == Verdict::Measure;
      });
    }
    return true;
  };
  std::vector<bool> done(fitting_.harness->plugs.size(), false);
  for (const int plug : free_) {
    if (done[static_cast<std::size_t>(plug)] || !badly_off(plug)) continue;
    std::optional<Rehousing> best = best_split(rest, plug);
    for (const int other : judge_.all()[static_cast<std::size_t>(judge_.cluster_of(plug))].plugs) {
      if (other == plug || fixed_header(other)) continue;
      auto joined = best_join(rest, plug, other);
      if (joined &&
          (!best || std::pair(joined->housings, joined->moves) < std::pair(best->housings, best->moves)))
        best = std::move(joined);
    }
    if (!best) continue;
    for (const int p : best->plugs) done[static_cast<std::size_t>(p)] = true;
    plan_.rehousings.push_back(std::move(*best));
  }
}

}  // namespace plugward
