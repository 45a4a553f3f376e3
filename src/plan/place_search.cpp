// SPDX-License-Identifier: MIT
// Idea: with the headers of all anchors fixed, what a plug costs on a header hangs on nothing else, and the
// cheapest placing is an assignment of rows to headers; Murty's ranking gives the next ones. While an anchor
// is open, the distance to the nearest header that it could take is a lower bound. A queue holds branches by
// their bound; the cheapest one is either opened further (one more anchor fixed, in every way) or gives its
// next placing.
//
//   two probes with two plugs each, headers A1 A2 ... B1 B2 far away: bound 8 mm + 8 mm; first anchor on A1:
//   still 16 mm; second anchor on B1: 16 mm, and its best placing is the answer
//
// Levels: the eight fields of a cost become digits of one integer, each digit as wide as the sum over all
// rows can become, so a higher level outweighs all lower ones whatever they sum up to. Should they not fit
// into 61 bits, the order of the board file is dropped, then distances are rounded; never anything above.
//
// Complexity: one assignment of O(rows^2 x headers) for each branch opened or placing given.
// Not taken: quadratic assignment at large; only plugs of one device pull at each other.
// Reference: K. G. Murty, Operations Research 16 (1968) 682; A. H. Land, A. G. Doig, Econometrica 28 (1960)
// 497. Tested in tests/unit/plan/place_search_test.cpp against all placings, and against glpsol in
// tests/outside/optimum.
#include "plan/place_search.h"

#include <algorithm>
#include <array>
#include <utility>

namespace plugward {
namespace {

constexpr PlaceCost unplaced_cost{1, 0, 0, 0, 0, 0, 0, 0};
constexpr std::size_t distance_level = 7;
constexpr std::size_t order_level = 8;
constexpr Cost most_packed = Cost{1} << 61;

std::array<Cost, 8> digits(const PlaceCost& c) {
  return {c.unplaced, c.unknown, c.parts, c.housings, c.renamed, c.moves, c.settings, c.distance};
}

/// The product of the radices, or nothing when it does not fit.
bool fits(const std::vector<Cost>& radix) {
  Cost product = 1;
  for (const Cost r : radix) {
    if (product > most_packed / r) return false;
    product *= r;
  }
  return true;
}

}  // namespace

bool RankedPlacings::Later::operator()(const Branch& a, const Branch& b) const {
  if (a.bound != b.bound) return a.bound > b.bound;
  if (a.anchors.size() != b.anchors.size()) return a.anchors.size() < b.anchors.size();
  return a.order > b.order;
}

RankedPlacings::RankedPlacings(PlacingProblem problem)
    : problem_(std::move(problem)), headers_(problem_.distance.size()) {
  for (std::size_t row = 0; row < problem_.cost.size(); ++row) {
    const auto at = static_cast<std::size_t>(problem_.anchor[row]);
    const bool known = std::find(anchor_rows_.begin(), anchor_rows_.end(), at) != anchor_rows_.end();
    if (at != row && !known) anchor_rows_.push_back(at);
  }
  measure_levels();
  open({});
}

void RankedPlacings::measure_levels() {
  std::vector<Cost> most(order_level + 1, 0);
  const auto rows = static_cast<Cost>(problem_.cost.size());
  Cost farthest = 0;
  for (const auto& line : problem_.distance) {
    for (const int d : line) farthest = std::max<Cost>(farthest, d);
  }
  for (std::size_t row = 0; row < problem_.cost.size(); ++row) {
    std::array<Cost, 8> row_most{1, 0, 0, 0, 0, 0, 0, 0};
    for (const auto& cost : problem_.cost[row]) {
      if (!cost) continue;
      const auto here = digits(*cost);
      for (std::size_t i = 0; i < here.size(); ++i) row_most[i] = std::max(row_most[i], here[i]);
    }
    const bool counts = problem_.anchor[row] != static_cast<int>(row) || problem_.fixed_anchor[row] >= 0;
    if (counts) row_most[distance_level] = farthest;
    for (std::size_t i = 0; i < row_most.size(); ++i) most[i] += row_most[i];
  }
  most[order_level] = rows * rows * static_cast<Cost>(headers_);
  radix_.clear();
  for (const Cost m : most) radix_.push_back(m + 1);
  if (!fits(radix_)) {
    ordered_ = false;
    radix_[order_level] = 1;
  }
  while (!fits(radix_) && radix_[distance_level] > 1) {
    ++distance_shift_;
    radix_[distance_level] = (radix_[distance_level] + 1) / 2;
  }
}

Cost RankedPlacings::packed(const PlaceCost& cost, int row, int header) const {
  auto values = digits(cost);
  values[distance_level] >>= distance_shift_;
  Cost sum = 0;
  for (std::size_t i = 0; i < values.size(); ++i) sum = sum * radix_[i] + values[i];
  const auto rows = static_cast<Cost>(problem_.cost.size());
  const Cost order = ordered_ && header >= 0 ? (rows - row) * header : 0;
  return sum * radix_[order_level] + order;
}

/// From the anchor's header where that is fixed; else from the nearest one that it may take.
int RankedPlacings::least_distance(std::size_t row, int header, const std::vector<int>& anchors) const {
  const auto to = static_cast<std::size_t>(header);
  if (problem_.fixed_anchor[row] >= 0)
    return problem_.distance[static_cast<std::size_t>(problem_.fixed_anchor[row])][to];
  const auto anchor = static_cast<std::size_t>(problem_.anchor[row]);
  if (anchor == row) return 0;
  const auto place = std::find(anchor_rows_.begin(), anchor_rows_.end(), anchor) - anchor_rows_.begin();
  if (place < static_cast<std::ptrdiff_t>(anchors.size())) {
    const int from = anchors[static_cast<std::size_t>(place)];
    return from < 0 ? 0 : problem_.distance[static_cast<std::size_t>(from)][to];
  }
  int least = 0;
  bool any = false;
  for (std::size_t h = 0; h < headers_; ++h) {
    if (h == to || !problem_.cost[anchor][h]) continue;
    least = any ? std::min(least, problem_.distance[h][to]) : problem_.distance[h][to];
    any = true;
  }
  return least;
}

/// If the anchor finds no header, no distance to it counts: so much may then have been charged too much.
Cost RankedPlacings::most_distance_of_followers(std::size_t anchor_row,
                                                const std::vector<int>& anchors) const {
  Cost sum = 0;
  for (std::size_t row = 0; row < problem_.cost.size(); ++row) {
    if (row == anchor_row || problem_.anchor[row] != static_cast<int>(anchor_row)) continue;
    Cost most = 0;
    for (std::size_t h = 0; h < headers_; ++h) {
      if (problem_.cost[row][h])
        most = std::max<Cost>(most, least_distance(row, static_cast<int>(h), anchors) >> distance_shift_);
    }
    sum += most;
  }
  return sum * radix_[order_level];
}

void RankedPlacings::open(std::vector<int> anchors) {
  std::vector<std::vector<Cost>> cost;
  for (std::size_t row = 0; row < problem_.cost.size(); ++row) {
    std::vector<Cost> line(headers_ + problem_.cost.size(), forbidden);
    const auto found = std::find(anchor_rows_.begin(), anchor_rows_.end(), row);
    const auto place = static_cast<std::size_t>(found - anchor_rows_.begin());
    const bool set = place < anchors.size();
    for (std::size_t h = 0; h < headers_; ++h) {
      if (!problem_.cost[row][h] || (set && anchors[place] != static_cast<int>(h))) continue;
      PlaceCost here = *problem_.cost[row][h];
      here.distance = least_distance(row, static_cast<int>(h), anchors);
      line[h] = packed(here, static_cast<int>(row), static_cast<int>(h));
    }
    if (!set || anchors[place] < 0) line[headers_ + row] = packed(unplaced_cost, static_cast<int>(row), -1);
    if (!set && place < anchor_rows_.size()) line[headers_ + row] -= most_distance_of_followers(row, anchors);
    cost.push_back(std::move(line));
  }
  Branch branch{std::move(anchors), std::make_shared<RankedAssignments>(std::move(cost)), 0, made_++};
  const Assignment* first = branch.ranked->peek();
  if (first == nullptr) return;
  branch.bound = first->cost;
  branches_.push(std::move(branch));
}

RankedPlacing RankedPlacings::placing_of(const Assignment& assignment) const {
  RankedPlacing placing;
  for (const int column : assignment.columns) {
    placing.headers.push_back(column < static_cast<int>(headers_) ? column : -1);
  }
  for (std::size_t row = 0; row < placing.headers.size(); ++row) {
    const int header = placing.headers[row];
    if (header < 0) {
      placing.cost = placing.cost + unplaced_cost;
      continue;
    }
    PlaceCost here = *problem_.cost[row][static_cast<std::size_t>(header)];
    const auto anchor = static_cast<std::size_t>(problem_.anchor[row]);
    const int from = problem_.fixed_anchor[row] >= 0 ? problem_.fixed_anchor[row]
                     : anchor == row                 ? -1
                                                     : placing.headers[anchor];
    here.distance =
        from < 0 ? 0 : problem_.distance[static_cast<std::size_t>(from)][static_cast<std::size_t>(header)];
    placing.cost = placing.cost + here;
  }
  return placing;
}

std::optional<RankedPlacing> RankedPlacings::next() {
  while (!branches_.empty()) {
    Branch branch = branches_.top();
    branches_.pop();
    if (branch.anchors.size() < anchor_rows_.size()) {
      const std::size_t row = anchor_rows_[branch.anchors.size()];
      for (int h = -1; h < static_cast<int>(headers_); ++h) {
        if (h >= 0 && !problem_.cost[row][static_cast<std::size_t>(h)]) continue;
        std::vector<int> anchors = branch.anchors;
        anchors.push_back(h);
        open(std::move(anchors));
      }
      continue;
    }
    const Assignment* found = branch.ranked->peek();
    if (found == nullptr) continue;
    if (found->cost > branch.bound) {  // another branch may be cheaper now
      branch.bound = found->cost;
      branches_.push(std::move(branch));
      continue;
    }
    const RankedPlacing placing = placing_of(*branch.ranked->next());
    branches_.push(std::move(branch));
    return placing;
  }
  return std::nullopt;
}

}  // namespace plugward
