// SPDX-License-Identifier: MIT
// Random networks of the kind that wiring makes: contacts of 10 mohm beside pull-ups of 100 kohm, two or
// three rails.
#pragma once

#include <cmath>
#include <random>

#include "circuit/network.h"

namespace plugward::test {

/// 2 .. most_nodes free nodes, up to most_diodes diodes. The same generator state gives the same network.
inline Network random_network(std::mt19937& random, int most_nodes, int most_diodes) {
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() % 1000001) / 1e6;
  };
  const int rails = 1 + below(3);
  const int free = 2 + below(most_nodes - 1);
  Network n(1 + rails + free);
  for (int r = 0; r < rails; ++r) n.fixed.push_back({1 + r, between(-5.0, 26.0)});
  const auto ends = [&] {
    const int a = 1 + rails + below(free);
    int b = below(n.nodes - 1);
    if (b >= a) ++b;
    return random() % 2 == 0 ? std::pair(a, b) : std::pair(b, a);
  };
  // Every free node hangs on an earlier node, so that leaks decide nothing.
  for (int i = 0; i < free; ++i)
    n.resistors.push_back({below(1 + rails + i), 1 + rails + i, std::pow(10.0, between(-2, 5))});
  const int more = below(2 * free);
  for (int i = 0; i < more; ++i) {
    const auto [a, b] = ends();
    n.resistors.push_back({a, b, std::pow(10.0, between(-2, 5))});
  }
  const int diodes = below(most_diodes + 1);
  for (int i = 0; i < diodes; ++i) {
    const auto [a, b] = ends();
    n.diodes.push_back({a, b, between(0.0, 1.5), std::pow(10.0, between(-1, 2))});
  }
  const int currents = below(3);
  for (int i = 0; i < currents; ++i) {
    const auto [a, b] = ends();
    n.currents.push_back({a, b, between(-0.01, 0.01)});
  }
  return n;
}

}  // namespace plugward::test
