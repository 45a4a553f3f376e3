// SPDX-License-Identifier: MIT
// Internal. The circuit falls into islands that share no node but ground, rails and other fixed nodes: what
// happens in one has no influence on another. Each is solved in every state: all positions of its knobs, with
// the rails that touch it at either end of their tolerance; and, when some device has a supply of its own,
// with the board off.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/assembly.h"

namespace plugward::circuit {

struct Island {
  std::vector<Node> nodes;  ///< nodes of the circuit: ground, fixed ones, free ones
  std::vector<int> local;   ///< by node of the circuit: index into `nodes`, -1 when it is elsewhere
  Network network;          ///< over local nodes
  std::vector<int> resistors, diodes;        ///< by branch of `network`: the branch of the circuit
  std::vector<int> knobs;                    ///< indices into Circuit::knobs
  std::vector<std::vector<Change>> changes;  ///< for network: [first_choice[k] + choice]
  std::vector<int> first_choice;
  std::vector<int> rails;       ///< rails that touch, indices into Board::rails
  std::uint64_t rail_mask = 0;  ///< the same as bits: of rails that have a tolerance

  struct State {
    std::uint64_t corner = 0;  ///< bit r: rail r is at its highest
    bool powered = true;
    bool rest = true;      ///< possible while the firmware does not run
    bool shorted = false;  ///< set by the judgement of short circuits
  };
  std::vector<State> states;
  std::vector<std::uint8_t> choices;  ///< [state x knobs + k]
  std::vector<double> volts;          ///< [state x nodes + local node]
  std::vector<double> rail_amps;      ///< [state x rails + r]: out of the rail
  bool cut_short = false;             ///< too many states: only some were looked at

  double volts_at(int state, Node node) const;  ///< REQUIRES: the node is here
  int choice(int state, int k) const {
    return choices[static_cast<std::size_t>(state) * knobs.size() + static_cast<std::size_t>(k)];
  }
};

struct Solved {
  Circuit circuit;
  std::vector<Island> islands;
  std::vector<int> island_of;  ///< by node; -1: fixed or without any branch
};

struct Division {
  std::vector<Island> islands;
  std::vector<int> island_of;  ///< by node, as in Solved
};

/// The islands with their branches, rails and knobs; no states yet.
Division divide(const Circuit&);

/// Divides the circuit and solves every state of every island.
Solved solve_states(Circuit);

/// The island's network with the values that hold in a state.
Network network_in(const Solved&, const Island&, int state);

}  // namespace plugward::circuit
