// SPDX-License-Identifier: MIT
// A DC network of resistors, piecewise-linear diodes and current sources between nodes, some of which are
// held at a fixed voltage; and its solution.
//
//   Network n(3);                       // nodes 0 (ground), 1, 2
//   n.fixed.push_back({1, 5.0});
//   n.resistors.push_back({1, 2, 10e3});
//   n.resistors.push_back({2, 0, 20e3});
//   solve(n).volts[2] == 3.333
#pragma once

#include <vector>

namespace plugward {

struct Network {
  using Node = int;  ///< 0 is ground and always fixed at 0 V

  struct Resistance { Node a = 0, b = 0; double ohms = 0; };
  /// No current below `drop` volts (but for a leak of 1e-12 S), then (v - drop) / ohms.
  struct Rectifier { Node anode = 0, cathode = 0; double drop = 0, ohms = 1; };
  struct Current { Node from = 0, to = 0; double amps = 0; };
  struct Fixed { Node node = 0; double volts = 0; };

  explicit Network(int node_count = 1) : nodes(node_count) {}

  int nodes;
  std::vector<Resistance> resistors;
  std::vector<Rectifier> diodes;
  std::vector<Current> currents;
  std::vector<Fixed> fixed;
};

struct Solution {
  std::vector<double> volts;  ///< by node
  bool converged = true;      ///< false never happens for a network that meets the requirements

  double resistor_amps(const Network&, std::size_t index) const;  ///< from a to b
  double diode_amps(const Network&, std::size_t index) const;     ///< from anode to cathode
};

/// The one solution. REQUIRES: all resistances > 0, no node fixed twice. Every node also has 1e-12 S to
/// ground, so that a node connected to nothing reads 0 V.
Solution solve(const Network&);

}  // namespace plugward
