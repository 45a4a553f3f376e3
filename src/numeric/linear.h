// SPDX-License-Identifier: MIT
// Solution of the linear systems that a network of resistances makes.
//
//   std::vector<double> g = {1, 2,     // node 0: 1 S to the outside, 2 S to node 1
//                            2, 0};    // node 1: nothing to the outside
//   std::vector<double> x = {0, 3};    // 3 A into node 1
//   solve_conductances(g, x);          // x == {3, 4.5}
//
// The matrix library is named in linear.cpp only.
#pragma once

#include <span>
#include <vector>

namespace plugward {

/// Solves A x = b for symmetric positive definite A, row-major n x n, n = b.size().
/// Returns x; empty when A is not positive definite to working precision.
std::vector<double> solve_spd(std::span<const double> a, std::span<const double> b);

/// Node voltages of a resistive network, by star-mesh elimination. `g` is n x n, row-major, n = x.size():
/// g[i * n + j], i < j, is the conductance between nodes i and j (the lower half is not read), g[i * n + i]
/// that from node i to the outside at 0 V. `x` holds the currents into the nodes and receives the voltages;
/// `g` is overwritten. Nothing is allocated. REQUIRES: every conductance >= 0, and every node has a way to
/// the outside. O(n^3).
void solve_conductances(std::span<double> g, std::span<double> x);

}  // namespace plugward
