// SPDX-License-Identifier: MIT
#include "circuit/probe.h"

#include <algorithm>

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// The terms of one island, in its own node numbers.
struct Share {
  int island = 0;
  std::vector<std::pair<int, double>> terms;

  double value(const Island& i, int state) const {
    double sum = 0;
    const std::size_t row = at(state) * i.nodes.size();
    for (const auto& [node, weight] : terms) sum += weight * i.volts[row + at(node)];
    return sum;
  }
};

/// Terms on rails go to the first island that the rail touches and that has another term.
std::vector<Share> shares_of(const Solved& s, const Probe& probe) {
  std::vector<Share> shares;
  const auto share_of = [&](int island) -> Share& {
    for (Share& p : shares) {
      if (p.island == island) return p;
    }
    return shares.emplace_back(Share{island, {}});
  };
  for (const Term& t : probe) {
    const int island = s.island_of[at(t.node)];
    if (island >= 0) share_of(island).terms.push_back({s.islands[at(island)].local[at(t.node)], t.weight});
  }
  for (const Term& t : probe) {
    if (t.node == 0 || s.island_of[at(t.node)] >= 0) continue;
    for (Share& p : shares) {
      const int local = s.islands[at(p.island)].local[at(t.node)];
      if (local < 0) continue;
      p.terms.push_back({local, t.weight});
      break;
    }
  }
  return shares;
}

bool better(Side side, double a, double b) {
  return side == Side::Highest ? a > b : a < b;
}

/// The best state of one island among those with the given power and rail corner.
Where best_in(const Solved& s, const Share& share, Side side, const Filter& filter, bool powered_only,
              std::uint64_t corner, std::uint64_t mask, double& best) {
  const Island& island = s.islands[at(share.island)];
  Where where{share.island, -1};
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    const Island::State& info = island.states[at(state)];
    if (info.powered != powered_only || (info.corner & mask) != (corner & mask)) continue;
    const double value = share.value(island, state);
    if (where.state >= 0 && !better(side, value, best)) continue;
    if (filter && !filter(share.island, island, state)) continue;  // last: it may be dear
    where.state = state;
    best = value;
  }
  return where;
}

Extreme extreme_of_one(const Solved& s, const Share& share, Side side, const Filter& filter) {
  Extreme result;
  const Island& island = s.islands[at(share.island)];
  int best = -1;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    const double value = share.value(island, state);
    if (best >= 0 && !better(side, value, result.value)) continue;
    if (filter && !filter(share.island, island, state)) continue;  // last: it may be dear
    best = state;
    result.value = value;
  }
  result.found = best >= 0;
  if (result.found) result.where = {{share.island, best}};
  return result;
}

}  // namespace

bool powered(int, const Island& island, int state) {
  return island.states[at(state)].powered;
}
bool unpowered(int, const Island& island, int state) {
  return !island.states[at(state)].powered;
}

Extreme extreme(const Solved& s, const Probe& probe, Side side, const Filter& filter) {
  const std::vector<Share> shares = shares_of(s, probe);
  if (shares.empty()) return {};
  if (shares.size() == 1) return extreme_of_one(s, shares.front(), side, filter);

  std::uint64_t mask = 0;
  for (const Share& p : shares) mask |= s.islands[at(p.island)].rail_mask;
  Extreme result;
  // Every corner of the rails that have a part in it, then the board without power.
  const auto consider = [&](bool with_power, std::uint64_t corner) {
    Extreme here;
    here.found = true;
    for (const Share& p : shares) {
      double best = 0;
      const Where where =
          best_in(s, p, side, filter, with_power, corner, s.islands[at(p.island)].rail_mask, best);
      if (where.state < 0) return;
      here.value += best;
      here.where.push_back(where);
    }
    if (!result.found || better(side, here.value, result.value)) result = here;
  };
  std::uint64_t corner = 0;
  do {
    consider(true, corner);
    corner = (corner - mask) & mask;  // the next subset of the mask
  } while (corner != 0);
  consider(false, 0);
  return result;
}

double value_in(const Solved& s, const Probe& probe, const std::vector<Where>& where) {
  double sum = 0;
  for (const Share& p : shares_of(s, probe)) {
    for (const Where& w : where) {
      if (w.island == p.island) sum += p.value(s.islands[at(p.island)], w.state);
    }
  }
  return sum;
}

}  // namespace plugward::circuit
