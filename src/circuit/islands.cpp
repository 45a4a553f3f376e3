// SPDX-License-Identifier: MIT
// Division: union-find over the free nodes along every branch that can ever conduct, in whatever state.
// States are counted like an odometer, the fastest wheel a knob, the slowest a rail; one state differs little
// from the one before, so that the solver, which begins at the last solution, mostly needs a single step.
//
// When an island has more states than `most_states`, each knob is turned alone from rest, and all together to
// their first and their last choice; the judgement is then marked as cut short.
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

struct Division {
  std::vector<Island> islands;
  std::vector<int> island_of;
};

Division divide(const Circuit& c) {
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

void apply(Network& n, const Change& change) {
  const std::size_t i = at(change.index);
  switch (change.what) {
    case Change::What::ResistorOhms:
      n.resistors[i].ohms = change.value;
      break;
    case Change::What::DiodeOhms:
      n.diodes[i].ohms = change.value;
      break;
    case Change::What::DiodeDrop:
      n.diodes[i].drop = change.value;
      break;
    case Change::What::FixedVolts:
      n.fixed[i].volts = change.value;
      break;
    case Change::What::CurrentAmps:
      n.currents[i].amps = change.value;
      break;
  }
}

void turn(Network& n, const Island& island, std::size_t k, int choice) {
  for (const Change& change : island.changes[at(island.first_choice[k] + choice)]) apply(n, change);
}

/// Rails come first among the fixed nodes of an island, in the order of Island::rails.
void set_rails(Network& n, const Circuit& c, const Island& island, std::uint64_t corner, bool powered) {
  for (std::size_t r = 0; r < island.rails.size(); ++r) {
    const auto& volts = c.rail(island.rails[r]).volts;
    const bool tolerant = volts.min != volts.max;
    const bool high = !tolerant || (corner >> island.rails[r] & 1) != 0;
    n.fixed[r].volts = !powered ? 0.0 : high ? volts.max.value : volts.min.value;
  }
}

/// Solves states of one island and keeps the results.
struct Recorder {
  const Circuit& c;
  Island& island;
  Network network;
  NetworkSolver solver;
  std::vector<std::uint8_t> set;  ///< choice of each knob as `network` has it

  Recorder(const Circuit& circuit, Island& i)
      : c(circuit), island(i), network(i.network), solver(i.network), set(i.knobs.size(), 255) {}

  const Knob& knob(std::size_t k) const { return c.knobs[at(island.knobs[k])]; }

  void turn_to(std::size_t k, int choice) {
    if (set[k] == choice) return;
    set[k] = static_cast<std::uint8_t>(choice);
    turn(network, island, k, choice);
  }

  void record(std::uint64_t corner, bool powered) {
    const std::vector<double>& volts = solver.solve(network);
    island.volts.insert(island.volts.end(), volts.begin(), volts.end());
    island.choices.insert(island.choices.end(), set.begin(), set.end());
    Island::State state;
    state.corner = corner;
    state.powered = powered;
    for (std::size_t k = 0; k < set.size(); ++k) state.rest &= knob(k).choices[set[k]].rest;
    island.states.push_back(state);
    const std::size_t first = island.rail_amps.size();
    island.rail_amps.resize(first + island.rails.size(), 0.0);
    const auto add = [&](int node, double amps_out) {
      for (std::size_t r = 0; r < island.rails.size(); ++r) {
        if (island.network.fixed[r].node == node) island.rail_amps[first + r] += amps_out;
      }
    };
    for (const auto& r : network.resistors) {
      if (r.ohms == open_circuit) continue;
      const double amps = (volts[at(r.a)] - volts[at(r.b)]) / r.ohms;
      add(r.a, amps);
      add(r.b, -amps);
    }
    for (const auto& d : network.diodes) {
      const double beyond = volts[at(d.anode)] - volts[at(d.cathode)] - d.drop;
      if (d.ohms == open_circuit || beyond <= 0.0) continue;
      add(d.anode, beyond / d.ohms);
      add(d.cathode, -beyond / d.ohms);
    }
  }

  /// The next state of the odometer; false after the last.
  bool advance(bool powered) {
    for (std::size_t k = 0; k < set.size(); ++k) {
      if (!powered && knob(k).on_board) continue;
      const int next = set[k] + 1;
      if (next < static_cast<int>(knob(k).choices.size())) {
        turn_to(k, next);
        return true;
      }
      turn_to(k, 0);
    }
    return false;
  }

  void all_states(std::uint64_t corner, bool powered) {
    // Choice 0 of a knob on the board is always the one that is off.
    for (std::size_t k = 0; k < set.size(); ++k) turn_to(k, 0);
    do record(corner, powered);
    while (advance(powered));
  }

  void some_states(std::uint64_t corner, bool powered) {
    const auto rest = [&] {
      for (std::size_t k = 0; k < set.size(); ++k)
        turn_to(k, powered || !knob(k).on_board ? knob(k).base : 0);
    };
    rest();
    record(corner, powered);
    for (std::size_t k = 0; k < set.size(); ++k) {
      if (!powered && knob(k).on_board) continue;
      for (std::size_t choice = 0; choice < knob(k).choices.size(); ++choice) {
        if (static_cast<int>(choice) == knob(k).base) continue;
        turn_to(k, static_cast<int>(choice));
        record(corner, powered);
      }
      rest();
    }
    if (!powered) return;
    for (const bool last : {false, true}) {
      for (std::size_t k = 0; k < set.size(); ++k) {
        turn_to(k, last ? static_cast<int>(knob(k).choices.size()) - 1 : 0);
      }
      record(corner, powered);
    }
  }
};

void solve_island(const Circuit& c, Island& island) {
  std::vector<int> tolerant;
  for (const int r : island.rails) {
    if ((island.rail_mask >> r & 1) != 0) tolerant.push_back(r);
  }
  double count = 1;
  for (const int k : island.knobs) count *= static_cast<double>(c.knobs[at(k)].choices.size());
  for (std::size_t i = 0; i < tolerant.size(); ++i) count *= 2;
  island.cut_short = count > c.defaults.most_states;

  Recorder recorder(c, island);
  const auto run = [&](std::uint64_t corner, bool powered) {
    set_rails(recorder.network, c, island, corner, powered);
    if (island.cut_short) {
      recorder.some_states(corner, powered);
    } else {
      recorder.all_states(corner, powered);
    }
  };
  for (std::uint64_t bits = 0; bits >> tolerant.size() == 0; ++bits) {
    std::uint64_t corner = 0;
    for (std::size_t i = 0; i < tolerant.size(); ++i) {
      if ((bits >> i & 1) != 0) corner |= std::uint64_t{1} << tolerant[i];
    }
    run(corner, true);
  }
  if (c.has_source) run(0, false);
}

}  // namespace

double Island::volts_at(int state, Node node) const {
  return volts[at(state) * nodes.size() + at(local[at(node)])];
}

Solved solve_states(Circuit circuit) {
  Solved solved;
  solved.circuit = std::move(circuit);
  Division division = divide(solved.circuit);
  const LocalIndex index = distribute(solved.circuit, division);
  equip(solved.circuit, index, division);
  for (Island& island : division.islands) solve_island(solved.circuit, island);
  solved.islands = std::move(division.islands);
  solved.island_of = std::move(division.island_of);
  return solved;
}

Network network_in(const Solved& solved, const Island& island, int state) {
  Network n = island.network;
  const Island::State& s = island.states[at(state)];
  set_rails(n, solved.circuit, island, s.corner, s.powered);
  for (std::size_t k = 0; k < island.knobs.size(); ++k)
    turn(n, island, k, island.choice(state, static_cast<int>(k)));
  return n;
}

}  // namespace plugward::circuit
