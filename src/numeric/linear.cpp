// SPDX-License-Identifier: MIT
// Star-mesh elimination: a node k with conductances g_k1 .. g_km to its neighbours (the outside among them)
// is replaced by conductances g_ki g_kj / G between every two of them, G = g_k1 + .. + g_km; a current into
// it is shared out as g_ki / G. With no node left, the voltages follow backwards.
//
//   g: 0 -1 S- outside, 0 -2 S- 1; 3 A into 1.  Eliminate 0: 1 -(2 x 1 / 3)- outside, so v1 = 3 / (2/3)
//   = 4.5, then v0 = 2 x 4.5 / 3 = 3.
//
// This is Gaussian elimination of the nodal matrix, but the diagonal is never formed by subtraction, so that
// a leak of 1e-12 S beside a contact of 100 S keeps all its digits; an ordinary factorisation (solve_spd)
// loses them. n^3 / 3 operations. Reference for the subtraction-free form: Grassmann, Taksar, Heyman,
// "Regenerative analysis and steady state distributions for Markov chains", Operations Research 33 (1985).
#include "numeric/linear.h"

#include <Eigen/Cholesky>
#include <cassert>
#include <cstddef>

namespace plugward {

std::vector<double> solve_spd(std::span<const double> a, std::span<const double> b) {
  assert(a.size() == b.size() * b.size());
  const auto n = static_cast<Eigen::Index>(b.size());
  const Eigen::Map<const Eigen::MatrixXd> matrix(a.data(), n, n);
  const Eigen::Map<const Eigen::VectorXd> right(b.data(), n);
  const Eigen::LDLT<Eigen::MatrixXd> factors(matrix);
  if (factors.info() != Eigen::Success || (n > 0 && factors.vectorD().minCoeff() <= 0.0)) return {};
  std::vector<double> x(b.size());
  Eigen::Map<Eigen::VectorXd>(x.data(), n) = factors.solve(right);
  return x;
}

void solve_conductances(std::span<double> g, std::span<double> x) {
  const std::size_t n = x.size();
  assert(g.size() == n * n);
  for (std::size_t k = 0; k < n; ++k) {
    double* const row = &g[k * n];
    double sum = row[k];
    for (std::size_t j = k + 1; j < n; ++j) sum += row[j];
    assert(sum > 0.0);
    for (std::size_t i = k + 1; i < n; ++i) {
      if (row[i] == 0.0) continue;
      const double share = row[i] / sum;
      double* const mesh = &g[i * n];
      x[i] += share * x[k];
      mesh[i] += share * row[k];
      for (std::size_t j = i + 1; j < n; ++j) mesh[j] += share * row[j];
    }
    row[k] = sum;  // kept for the way back
  }
  for (std::size_t k = n; k-- > 0;) {
    const double* const row = &g[k * n];
    double current = x[k];
    for (std::size_t j = k + 1; j < n; ++j) current += row[j] * x[j];
    x[k] = current / row[k];
  }
}

}  // namespace plugward
