// SPDX-License-Identifier: MIT
#include "numeric/linear.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace plugward;

TEST_CASE("solve_spd solves a system worked by hand") {
  // 4x + y = 1, x + 3y = 2: y = 7/11, x = 1/11.
  const std::vector<double> a = {4, 1, 1, 3};
  const std::vector<double> b = {1, 2};
  const std::vector<double> x = solve_spd(a, b);
  REQUIRE(x.size() == 2);
  CHECK(x[0] == doctest::Approx(1.0 / 11).epsilon(1e-14));
  CHECK(x[1] == doctest::Approx(7.0 / 11).epsilon(1e-14));
}

TEST_CASE("solve_spd refuses what is not positive definite") {
  const std::vector<double> b = {1, 2};
  CHECK(solve_spd(std::vector<double>{1, 2, 2, 1}, b).empty());  // eigenvalues 3 and -1
  CHECK(solve_spd(std::vector<double>{0, 0, 0, 0}, b).empty());
  CHECK(solve_spd(std::vector<double>{}, std::vector<double>{}).empty());
}

TEST_CASE("solve_conductances: the example of its file") {
  std::vector<double> g = {1, 2, 0, 0};
  std::vector<double> x = {0, 3};
  solve_conductances(g, x);
  CHECK(x[0] == doctest::Approx(3.0).epsilon(1e-15));
  CHECK(x[1] == doctest::Approx(4.5).epsilon(1e-15));
}

TEST_CASE("solve_conductances keeps a leak of 1e-12 S beside contacts of 100 S") {
  // A chain of contacts that hangs on nothing but leaks: 1 pA into the far end of three nodes must give
  // exactly 1e-12 / 3e-12 V at all of them.
  std::vector<double> g = {1e-12, 100, 0, 0, 1e-12, 100, 0, 0, 1e-12};
  std::vector<double> x = {0, 0, 1e-12};
  solve_conductances(g, x);
  for (const double v : x) CHECK(v == doctest::Approx(1.0 / 3).epsilon(1e-12));
}

TEST_CASE("both solvers agree on random networks") {
  constexpr unsigned seed = 20260302;
  CAPTURE(seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> decade(-3, 2), volts(-1, 1);
  for (int round = 0; round < 300; ++round) {
    const std::size_t n = 1 + static_cast<std::size_t>(round % 12);
    std::vector<double> g(n * n, 0.0), a(n * n, 0.0), b(n);
    for (std::size_t i = 0; i < n; ++i) {
      g[i * n + i] = std::pow(10.0, decade(random));
      a[i * n + i] += g[i * n + i];
      b[i] = volts(random);
      for (std::size_t j = i + 1; j < n; ++j) {
        if (random() % 3 == 0) continue;
        const double s = g[i * n + j] = std::pow(10.0, decade(random));
        a[i * n + i] += s;
        a[j * n + j] += s;
        a[i * n + j] -= s;
        a[j * n + i] -= s;
      }
    }
    const std::vector<double> expected = solve_spd(a, b);
    solve_conductances(g, b);
    REQUIRE(expected.size() == n);
    CAPTURE(round);
    for (std::size_t i = 0; i < n; ++i) CHECK(b[i] == doctest::Approx(expected[i]).epsilon(1e-8));
  }
}
