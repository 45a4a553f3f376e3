// SPDX-License-Identifier: MIT
// Union-find over the free nodes along every branch that can ever conduct, in whatever state: nodes in
// different sets never exchange a current. Almost linear in the number of branches.
#include "circuit/islands.h"

#include <algorithm>
#include <numeric>

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

struct Groups {
  std::vector<int> parent;
  explicit Groups(int count) : parent(at(count)) { std::iota(parent.begin(), parent.end(), 0); }
  int find(int x) {
    while (parent[at(x)] != x) x = parent[at(x)] = parent[at(parent[at(x)])];
    return x;
  }
  void join(int a, int b) { parent[at(find(a))] = find(b); }
};

std::vector<bool> fixed_nodes(const Network& n) {
  std::vector<bool> fixed(at(n.nodes), false);
  fixed[0] = true;
  for (const auto& f : n.fixed) fixed[at(f.node)] = true;
  return fixed;
}

/// Calls `visit(a, b)` for every branch.
template <class Visit>
void for_each_branch(const Network& n, Visit visit) {
  for (const auto& r : n.resistors) visit(r.a, r.b);
  for (const auto& d : n.diodes) visit(d.anode, d.cathode);
  for (const auto& c : n.currents) visit(c.from, c.to);
}

Division groups_of(const Circuit& c) {
  const Network& n = c.network;
  const std::vector<bool> fixed = fixed_nodes(n);
  Groups groups(n.nodes);
  std::vector<bool> used(at(n.nodes), false);
  for_each_branch(n, [&](int a, int b) {
    used[at(a)] = used[at(b)] = true;
    if (!fixed[at(a)] && !fixed[at(b)]) groups.join(a, b);
  });
  Division division;
  division.island_of.assign(at(n.nodes), -1);
  std::vector<int> number(at(n.nodes), -1);
  for (Node node = 0; node < n.nodes; ++node) {
    if (fixed[at(node)] || !used[at(node)]) continue;
    int& island = number[at(groups.find(node))];
    if (island < 0) {
      island = static_cast<int>(division.islands.size());
      division.islands.emplace_back();
      division.islands.back().nodes = {0};
      division.islands.back().local.assign(at(n.nodes), -1);
      division.islands.back().local[0] = 0;
    }
    division.island_of[at(node)] = island;
  }
  return division;
}

/// The local number of a node, which is added when it is new.
int take(Island& island, Node node) {
  int& local = island.local[at(node)];
  if (local < 0) {
    local = static_cast<int>(island.nodes.size());
    island.nodes.push_back(node);
  }
  return local;
}

/// Copies the branches into the islands. Returns, by branch of the circuit, its local index.
struct LocalIndex {
  std::vector<int> island_of_resistor, resistor, island_of_diode, diode, island_of_current, current;
};

LocalIndex distribute(const Circuit& c, Division& division) {
  const Network& n = c.network;
  const auto island_of = [&](int a, int b) {
    const int first = division.island_of[at(a)];
    return first >= 0 ? first : division.island_of[at(b)];
  };
  LocalIndex index;
  for (std::size_t i = 0; i < n.resistors.size(); ++i) {
    const auto& r = n.resistors[i];
    const int where = island_of(r.a, r.b);
    index.island_of_resistor.push_back(where);
    index.resistor.push_back(where < 0 ? -1 : static_cast<int>(division.islands[at(where)].resistors.size()));
    if (where < 0) continue;
    Island& island = division.islands[at(where)];
    island.resistors.push_back(static_cast<int>(i));
    island.network.resistors.push_back({take(island, r.a), take(island, r.b), r.ohms});
  }
  for (std::size_t i = 0; i < n.diodes.size(); ++i) {
    const auto& d = n.diodes[i];
    const int where = island_of(d.anode, d.cathode);
    index.island_of_diode.push_back(where);
    index.diode.push_back(where < 0 ? -1 : static_cast<int>(division.islands[at(where)].diodes.size()));
    if (where < 0) continue;
    Island& island = division.islands[at(where)];
    island.diodes.push_back(static_cast<int>(i));
    island.network.diodes.push_back({take(island, d.anode), take(island, d.cathode), d.drop, d.ohms});
  }
  for (const auto& s : n.currents) {
    const int where = island_of(s.from, s.to);
    index.island_of_current.push_back(where);
    index.current.push_back(
        where < 0 ? -1 : static_cast<int>(division.islands[at(where)].network.currents.size()));
    if (where < 0) continue;
    Island& island = division.islands[at(where)];
    island.network.currents.push_back({take(island, s.from), take(island, s.to), s.amps});
  }
  return index;
}

/// Fixed nodes, rails and knobs of each island, with the changes in local numbers.
void equip(const Circuit& c, const LocalIndex& index, Division& division) {
  std::vector<std::vector<int>> local_fixed(division.islands.size(),
                                            std::vector<int>(c.network.fixed.size(), -1));
  for (std::size_t i = 0; i < division.islands.size(); ++i) {
    Island& island = division.islands[i];
    island.network.nodes = static_cast<int>(island.nodes.size());
    for (std::size_t f = 0; f < c.network.fixed.size(); ++f) {
      const auto& fixed = c.network.fixed[f];
      if (island.local[at(fixed.node)] < 0) continue;
      local_fixed[i][f] = static_cast<int>(island.network.fixed.size());
      island.network.fixed.push_back({island.local[at(fixed.node)], fixed.volts});
      if (f >= c.rails.size()) continue;
      island.rails.push_back(static_cast<int>(f));
      const auto& volts = c.rail(static_cast<int>(f)).volts;
      if (volts.min != volts.max && f < 64) island.rail_mask |= std::uint64_t{1} << f;
    }
  }
  const auto localise = [&](const Change& change) {
    Change local = change;
    int island = -1;
    switch (change.what) {
      case Change::What::ResistorOhms:
        island = index.island_of_resistor[at(change.index)];
        local.index = index.resistor[at(change.index)];
        break;
      case Change::What::DiodeOhms:
      case Change::What::DiodeDrop:
        island = index.island_of_diode[at(change.index)];
        local.index = index.diode[at(change.index)];
        break;
      case Change::What::CurrentAmps:
        island = index.island_of_current[at(change.index)];
        local.index = index.current[at(change.index)];
        break;
      case Change::What::FixedVolts:
        for (std::size_t i = 0; i < local_fixed.size(); ++i) {
          if (local_fixed[i][at(change.index)] < 0) continue;
          island = static_cast<int>(i);
          local.index = local_fixed[i][at(change.index)];
        }
        break;
    }
    return std::pair(island, local);
  };
  for (std::size_t k = 0; k < c.knobs.size(); ++k) {
    int owner = -1;
    for (std::size_t choice = 0; choice < c.knobs[k].choices.size(); ++choice) {
      for (const Change& change : c.knobs[k].choices[choice].changes) {
        owner = std::max(owner, localise(change).first);
      }
    }
    if (owner < 0) continue;
    Island& island = division.islands[at(owner)];
    island.knobs.push_back(static_cast<int>(k));
    island.first_choice.push_back(static_cast<int>(island.changes.size()));
    for (const Choice& choice : c.knobs[k].choices) {
      std::vector<Change>& local = island.changes.emplace_back();
      for (const Change& change : choice.changes) {
        const auto [where, moved] = localise(change);
        if (where == owner) local.push_back(moved);
      }
    }
  }
}

}  // namespace

double Island::volts_at(int state, Node node) const {
  return volts[at(state) * nodes.size() + at(local[at(node)])];
}

Division divide(const Circuit& c) {
  Division division = groups_of(c);
  const LocalIndex index = distribute(c, division);
  equip(c, index, division);
  return division;
}

}  // namespace plugward::circuit
