// SPDX-License-Identifier: MIT
// The members are the published tables ("Standard resistors table"), not a formula: E24 departs from
// round(10^(i/24)) in eight places. A test compares both.
//
// The series repeats in every decade, so one step outside the decade of `value` on either side is enough to
// hold its neighbours.
#include "quantity/preferred.h"

#include <array>
#include <cassert>
#include <cmath>

namespace plugward {
namespace {

constexpr auto e12 = std::to_array({1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2});

constexpr auto e24 = std::to_array({1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0,
                                    3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1});

constexpr auto e96 = std::to_array(
    {1.00, 1.02, 1.05, 1.07, 1.10, 1.13, 1.15, 1.18, 1.21, 1.24, 1.27, 1.30, 1.33, 1.37, 1.40, 1.43,
     1.47, 1.50, 1.54, 1.58, 1.62, 1.65, 1.69, 1.74, 1.78, 1.82, 1.87, 1.91, 1.96, 2.00, 2.05, 2.10,
     2.15, 2.21, 2.26, 2.32, 2.37, 2.43, 2.49, 2.55, 2.61, 2.67, 2.74, 2.80, 2.87, 2.94, 3.01, 3.09,
     3.16, 3.24, 3.32, 3.40, 3.48, 3.57, 3.65, 3.74, 3.83, 3.92, 4.02, 4.12, 4.22, 4.32, 4.42, 4.53,
     4.64, 4.75, 4.87, 4.99, 5.11, 5.23, 5.36, 5.49, 5.62, 5.76, 5.90, 6.04, 6.19, 6.34, 6.49, 6.65,
     6.81, 6.98, 7.15, 7.32, 7.50, 7.68, 7.87, 8.06, 8.25, 8.45, 8.66, 8.87, 9.09, 9.31, 9.53, 9.76});

/// Values within this share of a member count as the member: 4700.0000001 is 4.7 k.
constexpr double same = 1e-9;

struct Neighbours {
  double below = 0.0;  // largest member not above the value
  double above = 0.0;  // smallest member not below it
};

/// member x 10^decade, as the double that its decimal text would give.
double in_decade(double member, int decade) {
  const double hundreds = std::round(member * 100.0);
  const int power = decade - 2;
  return power >= 0 ? hundreds * std::pow(10.0, power) : hundreds / std::pow(10.0, -power);
}

Neighbours neighbours(double value, Series series) {
  assert(value > 0.0);
  const int decade = static_cast<int>(std::floor(std::log10(value)));
  Neighbours found;
  for (int d = decade - 1; d <= decade + 1; ++d) {
    for (const double member : members(series)) {
      const double candidate = in_decade(member, d);
      if (candidate <= value * (1.0 + same)) found.below = candidate;
      if (candidate >= value * (1.0 - same)) {
        found.above = candidate;
        return found;
      }
    }
  }
  return found;
}

}  // namespace

std::span<const double> members(Series series) {
  switch (series) {
    case Series::E12:
      return e12;
    case Series::E24:
      return e24;
    case Series::E96:
      return e96;
  }
  return {};
}

Ohms nearest_preferred(Ohms value, Series series) {
  const auto [below, above] = neighbours(value.value, series);
  return Ohms(value.value / below <= above / value.value ? below : above);
}

Ohms preferred_at_least(Ohms value, Series series) {
  return Ohms(neighbours(value.value, series).above);
}

Ohms preferred_at_most(Ohms value, Series series) {
  return Ohms(neighbours(value.value, series).below);
}

}  // namespace plugward
