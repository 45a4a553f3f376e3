// SPDX-License-Identifier: MIT
#include "circuit/network.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "numeric/linear.h"
#include "support/random_network.h"

using namespace plugward;

namespace {

std::size_t at(int i) {
  return static_cast<std::size_t>(i);
}

/// The twin: every pattern of conducting diodes, each a linear system for the library's solver; the one whose
/// voltages agree with the pattern is the solution.
std::vector<double> solve_by_patterns(const Network& n) {
  std::vector<int> place(at(n.nodes), 0);
  std::vector<double> held(at(n.nodes), 0.0);
  place[0] = -1;
  for (const auto& f : n.fixed) {
    place[at(f.node)] = -1;
    held[at(f.node)] = f.volts;
  }
  int free = 0;
  for (int& p : place) {
    if (p == 0) p = free++;
  }
  const std::size_t size = at(free);
  for (unsigned pattern = 0; pattern < 1u << n.diodes.size(); ++pattern) {
    std::vector<double> a(size * size, 0.0), b(size, 0.0);
    const auto inject = [&](int node, double amps) {
      if (place[at(node)] >= 0) b[at(place[at(node)])] += amps;
    };
    const auto join = [&](int x, int y, double g) {
      const int i = place[at(x)], j = place[at(y)];
      if (i >= 0) a[at(i) * size + at(i)] += g;
      if (j >= 0) a[at(j) * size + at(j)] += g;
      if (i >= 0 && j >= 0) {
        a[at(i) * size + at(j)] -= g;
        a[at(j) * size + at(i)] -= g;
      }
      if (i >= 0 && j < 0) inject(x, g * held[at(y)]);
      if (j >= 0 && i < 0) inject(y, g * held[at(x)]);
    };
    for (int node = 1; node < n.nodes; ++node) join(node, 0, leak_conductance);
    for (const auto& r : n.resistors) {
      if (r.a != r.b) join(r.a, r.b, 1 / r.ohms);
    }
    for (const auto& c : n.currents) {
      inject(c.from, -c.amps);
      inject(c.to, c.amps);
    }
    for (std::size_t d = 0; d < n.diodes.size(); ++d) {
      const auto& diode = n.diodes[d];
      join(diode.anode, diode.cathode, leak_conductance);
      if ((pattern >> d & 1) == 0) continue;
      join(diode.anode, diode.cathode, 1 / diode.ohms);
      inject(diode.anode, diode.drop / diode.ohms);
      inject(diode.cathode, -diode.drop / diode.ohms);
    }
    const std::vector<double> x = solve_spd(a, b);
    if (x.size() != size) continue;
    std::vector<double> volts = held;
    for (std::size_t i = 0; i < volts.size(); ++i) {
      if (place[i] >= 0) volts[i] = x[at(place[i])];
    }
    bool consistent = true;
    for (std::size_t d = 0; d < n.diodes.size(); ++d) {
      const double beyond = volts[at(n.diodes[d].anode)] - volts[at(n.diodes[d].cathode)] - n.diodes[d].drop;
      consistent &= (pattern >> d & 1) != 0 ? beyond > -1e-7 : beyond < 1e-7;
    }
    if (consistent) return volts;
  }
  return {};
}

}  // namespace

TEST_CASE("networks worked by hand") {
  SUBCASE("the example of the header: a divider") {
    Network n(3);
    n.fixed.push_back({1, 5.0});
    n.resistors.push_back({1, 2, 10e3});
    n.resistors.push_back({2, 0, 20e3});
    const Solution s = solve(n);
    CHECK(s.converged);
    CHECK(s.volts[2] == doctest::Approx(10.0 / 3).epsilon(1e-7));
    CHECK(s.resistor_amps(n, 0) == doctest::Approx(5.0 / 30e3).epsilon(1e-7));
  }
  SUBCASE("the example of the file head: a diode that conducts") {
    Network n(3);
    n.fixed.push_back({1, 5.0});
    n.resistors.push_back({1, 2, 1000});
    n.diodes.push_back({2, 0, 0.7, 1.0});
    const Solution s = solve(n);
    CHECK(s.volts[2] == doctest::Approx(0.7 + 4.3 / 1001).epsilon(1e-9));
    CHECK(s.diode_amps(n, 0) == doctest::Approx(4.3 / 1001).epsilon(1e-9));
  }
  SUBCASE("a diode that blocks passes only its leak") {
    Network n(3);
    n.fixed.push_back({1, 5.0});
    n.diodes.push_back({2, 1, 0.7, 1.0});
    n.resistors.push_back({2, 0, 1e6});
    const Solution s = solve(n);
    CHECK(s.volts[2] == doctest::Approx(5e-6).epsilon(1e-3));
    CHECK(s.diode_amps(n, 0) == doctest::Approx(-5e-12).epsilon(1e-3));
  }
  SUBCASE("a node connected to nothing reads 0 V") {
    CHECK(solve(Network(2)).volts[1] == 0.0);
  }
  SUBCASE("an open branch is no branch") {
    Network n(3);
    n.fixed.push_back({1, 5.0});
    n.resistors.push_back({1, 2, open_circuit});
    n.diodes.push_back({1, 2, 0.0, open_circuit});
    n.resistors.push_back({2, 0, 10.0});
    CHECK(solve(n).volts[2] == doctest::Approx(5e-11));
  }
  SUBCASE("a current into two diodes back to back") {
    // 10 mA into node 1; 0.7 V and 10 ohm to ground: 0.8 V.
    Network n(2);
    n.currents.push_back({0, 1, 0.01});
    n.diodes.push_back({1, 0, 0.7, 10.0});
    n.diodes.push_back({0, 1, 0.7, 10.0});
    CHECK(solve(n).volts[1] == doctest::Approx(0.8).epsilon(1e-9));
  }
}

TEST_CASE("the solution is the one consistent pattern of the diodes") {
  constexpr unsigned seed = 1951;
  CAPTURE(seed);
  std::mt19937 random(seed);
  for (int round = 0; round < 500; ++round) {
    const Network n = test::random_network(random, 6, 6);
    const Solution s = solve(n);
    CAPTURE(round);
    REQUIRE(s.converged);
    const std::vector<double> expected = solve_by_patterns(n);
    REQUIRE(expected.size() == s.volts.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
      CAPTURE(i);
      CHECK(s.volts[i] == doctest::Approx(expected[i]).epsilon(1e-6));
    }
  }
}

TEST_CASE("large networks with many diodes keep Kirchhoff's current law") {
  constexpr unsigned seed = 1847;
  CAPTURE(seed);
  std::mt19937 random(seed);
  for (int round = 0; round < 100; ++round) {
    const Network n = test::random_network(random, 30, 40);
    const Solution s = solve(n);
    CAPTURE(round);
    REQUIRE(s.converged);
    std::vector<double> sum(at(n.nodes), 0.0);
    double largest = 1e-9;
    const auto flow = [&](int a, int b, double amps) {
      sum[at(a)] -= amps;
      sum[at(b)] += amps;
      largest = std::max(largest, std::abs(amps));
    };
    for (std::size_t i = 0; i < n.resistors.size(); ++i)
      flow(n.resistors[i].a, n.resistors[i].b, s.resistor_amps(n, i));
    for (std::size_t i = 0; i < n.diodes.size(); ++i)
      flow(n.diodes[i].anode, n.diodes[i].cathode, s.diode_amps(n, i));
    for (const auto& c : n.currents) flow(c.from, c.to, c.amps);
    for (const auto& f : n.fixed) sum[at(f.node)] = 0.0;
    for (std::size_t i = 1; i < sum.size(); ++i) CHECK(std::abs(sum[i]) < 1e-7 * largest);
  }
}

TEST_CASE("a solver used for many networks gives what a fresh one gives") {
  std::mt19937 random(7);
  Network n = test::random_network(random, 8, 6);
  NetworkSolver solver(n);
  for (int round = 0; round < 50; ++round) {
    for (auto& f : n.fixed) f.volts = static_cast<double>(random() % 240) / 10.0;
    for (auto& r : n.resistors) r.ohms = round % 3 == 0 ? 10.0 : 1000.0;
    const std::vector<double> warm = solver.solve(n);
    const Solution fresh = solve(n);
    for (std::size_t i = 0; i < warm.size(); ++i)
      CHECK(warm[i] == doctest::Approx(fresh.volts[i]).epsilon(1e-9));
  }
}
