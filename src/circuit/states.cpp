// SPDX-License-Identifier: MIT
// States are counted like an odometer, the fastest wheel a knob, the slowest a rail; one state differs little
// from the one before, so that the solver, which begins at the last solution, mostly needs a single step.
//
// When an island has more states than `most_states`, each knob is turned alone from rest, and all together to
// their first and their last choice; the judgement is then marked as cut short.
#include "circuit/islands.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
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
    for (std::size_t k = 0; powered && k < set.size(); ++k) {
      if (!knob(k).choices[set[k]].with_power) return;
    }
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

Solved solve_states(Circuit circuit) {
  Solved solved;
  solved.circuit = std::move(circuit);
  Division division = divide(solved.circuit);
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
