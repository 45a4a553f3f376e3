// SPDX-License-Identifier: MIT
// Solution of symmetric positive definite systems: the only kind that a network of resistances makes.
// The one place that names the matrix library (linear.cpp).
#pragma once

#include <span>
#include <vector>

namespace plugward {

/// Solves A x = b for symmetric positive definite A, row-major n x n, n = b.size().
/// Returns x; empty when A is not positive definite to working precision.
std::vector<double> solve_spd(std::span<const double> a, std::span<const double> b);

}  // namespace plugward
