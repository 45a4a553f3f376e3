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

#include <cstddef>
#include <limits>
#include <vector>

namespace plugward {

/// The resistance of an open branch.
inline constexpr double open_circuit = std::numeric_limits<double>::infinity();
/// What flows through a diode that does not conduct, and from every node to ground. Siemens.
inline constexpr double leak_conductance = 1e-12;

struct Network {
  using Node = int;  ///< 0 is ground and always fixed at 0 V

  struct Resistance {
    Node a = 0, b = 0;
    double ohms = 0;
  };
  /// No current below `drop` volts (but for a leak of 1e-12 S), then (v - drop) / ohms beside the leak.
  struct Rectifier {
    Node anode = 0, cathode = 0;
    double drop = 0, ohms = 1;
  };
  struct Current {
    Node from = 0, to = 0;
    double amps = 0;
  };
  struct Fixed {
    Node node = 0;
    double volts = 0;
  };

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

/// The one solution. REQUIRES: all resistances > 0 (`open_circuit` is allowed), no node fixed twice, node 0
/// not fixed. Every node also has 1e-12 S to ground, so that a node connected to nothing reads 0 V.
Solution solve(const Network&);

/// Solves many networks of one shape without allocating: values may differ, ends of branches and the set of
/// fixed nodes may not. Each search begins at the last solution.
class NetworkSolver {
 public:
  explicit NetworkSolver(const Network& shape);
  /// By node; stays valid until the next call. REQUIRES: as solve(), and the shape given to the constructor.
  const std::vector<double>& solve(const Network&);
  bool converged() const { return converged_; }

 private:
  void load(const Network&);
  void switch_diodes(const Network&);
  bool same_side(const Network&, const std::vector<double>& volts) const;
  double step_length(const Network&);

  std::vector<int> place_;            // by node: row of the system, -1 when fixed
  std::vector<double> volts_, next_;  // by node
  std::vector<double> base_, matrix_, base_right_, right_;
  std::vector<char> on_;  // by diode
  struct Kink {
    double at = 0, slope = 0;
  };
  std::vector<Kink> kinks_;
  bool converged_ = true;
};

}  // namespace plugward
