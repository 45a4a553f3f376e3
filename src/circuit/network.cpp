// SPDX-License-Identifier: MIT
// The node voltages minimise the co-content of the network, the sum over all branches of the integral of the
// branch current over the branch voltage (Millar 1951). With resistors, current sources and diodes of two
// straight pieces it is strictly convex and piecewise quadratic, so Newton's method with an exact line search
// ends after finitely many steps at the one minimum: solve as if every diode stayed on its present piece; if
// that is so, done; otherwise go along the direction found to the lowest point on it and begin again there.
//
//   5 V -1k- x -diode 0.7 V, 1 ohm- ground, from x = 0. Piece "off": x = 5. But at 5 V the diode conducts:
//   along 0 -> 5 the slope of the co-content changes sign at 0.7043 V. There the piece is "on", x = 0.7043,
//   done.
//
// One step costs n^3 / 3 for n free nodes; two or three steps are usual, one when the last solution is near.
// Not taken: trying all on/off patterns (the twin in the tests) and Newton on exponential diodes (no finite
// end). The line search needs no co-content: along the direction d its slope begins at -S and rises by S for
// each unit of length, S = sum of g (difference of d)^2, and every diode met on the way changes that rise.
// References: W. Millar, "Some general theorems for non-linear systems possessing resistance", Philosophical
// Magazine 42 (1951); L. Qi, J. Sun, "A nonsmooth version of Newton's method", Mathematical Programming 58
// (1993).
#include "circuit/network.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "numeric/linear.h"

namespace plugward {
namespace {

constexpr int most_steps = 500;
constexpr double settled = 1e-10;  // volts, and share of the largest voltage

std::size_t at(int node) {
  return static_cast<std::size_t>(node);
}

}  // namespace

double Solution::resistor_amps(const Network& n, std::size_t index) const {
  const auto& r = n.resistors[index];
  return (volts[at(r.a)] - volts[at(r.b)]) / r.ohms;
}

double Solution::diode_amps(const Network& n, std::size_t index) const {
  const auto& d = n.diodes[index];
  const double u = volts[at(d.anode)] - volts[at(d.cathode)];
  return leak_conductance * u + std::max(0.0, u - d.drop) / d.ohms;
}

NetworkSolver::NetworkSolver(const Network& shape)
    : place_(at(shape.nodes), 0),
      volts_(at(shape.nodes), 0.0),
      next_(at(shape.nodes), 0.0),
      on_(shape.diodes.size(), 0) {
  place_[0] = -1;
  for (const auto& f : shape.fixed) place_[at(f.node)] = -1;
  int free = 0;
  for (int& p : place_) {
    if (p == 0) p = free++;
  }
  right_.resize(at(free));
  base_right_.resize(at(free));
  base_.resize(at(free) * at(free));
  matrix_.resize(base_.size());
  kinks_.reserve(shape.diodes.size());
}

namespace {

/// The system of linear equations, upper half only.
struct System {
  const std::vector<int>& place;
  const std::vector<double>& volts;
  std::vector<double>& matrix;
  std::vector<double>& right;

  void inject(int node, double amps) {
    if (place[at(node)] >= 0) right[at(place[at(node)])] += amps;
  }
  void join(int a, int b, double conductance) {
    const int i = place[at(a)], j = place[at(b)];
    const std::size_t n = right.size();
    if (i >= 0 && j >= 0) {
      if (i != j) matrix[at(std::min(i, j)) * n + at(std::max(i, j))] += conductance;
    } else if (i >= 0) {
      matrix[at(i) * (n + 1)] += conductance;
      right[at(i)] += conductance * volts[at(b)];
    } else if (j >= 0) {
      matrix[at(j) * (n + 1)] += conductance;
      right[at(j)] += conductance * volts[at(a)];
    }
  }
};

}  // namespace

/// What does not depend on the diodes' pieces.
void NetworkSolver::load(const Network& n) {
  for (const auto& f : n.fixed) volts_[at(f.node)] = f.volts;
  std::fill(base_.begin(), base_.end(), 0.0);
  std::fill(base_right_.begin(), base_right_.end(), 0.0);
  System system{place_, volts_, base_, base_right_};
  for (std::size_t i = 0; i < base_right_.size(); ++i) base_[i * (base_right_.size() + 1)] = leak_conductance;
  for (const auto& r : n.resistors) {
    if (r.ohms != open_circuit) system.join(r.a, r.b, 1.0 / r.ohms);
  }
  for (const auto& c : n.currents) {
    if (c.amps == 0.0) continue;
    system.inject(c.from, -c.amps);
    system.inject(c.to, c.amps);
  }
  for (const auto& d : n.diodes) system.join(d.anode, d.cathode, leak_conductance);
}

void NetworkSolver::switch_diodes(const Network& n) {
  for (std::size_t i = 0; i < on_.size(); ++i) {
    const auto& d = n.diodes[i];
    on_[i] = d.ohms != open_circuit && volts_[at(d.anode)] - volts_[at(d.cathode)] > d.drop;
  }
}

bool NetworkSolver::same_side(const Network& n, const std::vector<double>& volts) const {
  for (std::size_t i = 0; i < on_.size(); ++i) {
    const auto& d = n.diodes[i];
    if (d.ohms == open_circuit) continue;
    if ((volts[at(d.anode)] - volts[at(d.cathode)] > d.drop) != static_cast<bool>(on_[i])) return false;
  }
  return true;
}

/// How far to go from volts_ towards next_, in units of that distance.
double NetworkSolver::step_length(const Network& n) {
  const auto change = [&](int a, int b) {
    return (next_[at(a)] - volts_[at(a)]) - (next_[at(b)] - volts_[at(b)]);
  };
  double rise = 0.0;
  for (std::size_t i = 0; i < place_.size(); ++i) {
    if (place_[i] >= 0)
      rise += leak_conductance * change(static_cast<int>(i), 0) * change(static_cast<int>(i), 0);
  }
  for (const auto& r : n.resistors) {
    if (r.ohms != open_circuit) rise += change(r.a, r.b) * change(r.a, r.b) / r.ohms;
  }
  kinks_.clear();
  for (std::size_t i = 0; i < on_.size(); ++i) {
    const auto& d = n.diodes[i];
    const double du = change(d.anode, d.cathode);
    rise += leak_conductance * du * du;
    if (d.ohms == open_circuit) continue;
    const double own = du * du / d.ohms;
    if (on_[i]) rise += own;
    const double gap = d.drop - (volts_[at(d.anode)] - volts_[at(d.cathode)]);
    // It leaves its piece on the way when it moves towards the kink.
    if (on_[i] ? du < 0.0 : du > 0.0) kinks_.push_back({std::max(0.0, gap / du), on_[i] ? -own : own});
  }
  std::sort(kinks_.begin(), kinks_.end(), [](const Kink& x, const Kink& y) { return x.at < y.at; });
  double slope = -rise, walked = 0.0;
  for (const Kink& kink : kinks_) {
    const double there = slope + rise * (kink.at - walked);
    if (there >= 0.0) break;
    slope = there;
    walked = kink.at;
    rise += kink.slope;
  }
  return walked - slope / rise;
}

const std::vector<double>& NetworkSolver::solve(const Network& n) {
  assert(at(n.nodes) == place_.size() && n.diodes.size() == on_.size());
  load(n);
  next_ = volts_;
  switch_diodes(n);
  converged_ = false;
  for (int step = 0; step < most_steps && !converged_; ++step) {
    matrix_ = base_;
    right_ = base_right_;
    System system{place_, volts_, matrix_, right_};
    for (std::size_t i = 0; i < on_.size(); ++i) {
      if (!on_[i]) continue;
      const auto& d = n.diodes[i];
      system.join(d.anode, d.cathode, 1.0 / d.ohms);
      system.inject(d.anode, d.drop / d.ohms);
      system.inject(d.cathode, -d.drop / d.ohms);
    }
    solve_conductances(matrix_, right_);
    double moved = 0.0, largest = 1.0;
    for (std::size_t i = 0; i < place_.size(); ++i) {
      if (place_[i] < 0) continue;
      next_[i] = right_[at(place_[i])];
      moved = std::max(moved, std::abs(next_[i] - volts_[i]));
      largest = std::max(largest, std::abs(next_[i]));
    }
    if (same_side(n, next_) || moved <= settled * largest) {
      converged_ = true;
      std::swap(volts_, next_);
    } else {
      const double t = step_length(n);
      for (std::size_t i = 0; i < place_.size(); ++i) {
        if (place_[i] >= 0) volts_[i] += t * (next_[i] - volts_[i]);
      }
      switch_diodes(n);
    }
  }
  return volts_;
}

Solution solve(const Network& n) {
  NetworkSolver solver(n);
  Solution solution;
  solution.volts = solver.solve(n);
  solution.converged = solver.converged();
  return solution;
}

}  // namespace plugward
