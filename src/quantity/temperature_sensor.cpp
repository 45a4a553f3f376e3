// SPDX-License-Identifier: MIT
#include "quantity/temperature_sensor.h"

#include <cassert>
#include <cmath>

namespace plugward {
namespace {

constexpr double zero_celsius = 273.15;
constexpr double reference = zero_celsius + 25.0;

}  // namespace

Ohms thermistor_resistance(Ohms r25, Kelvins beta, Celsius t) {
  const double kelvin = t.value + zero_celsius;
  assert(kelvin > 0.0);
  return r25 * std::exp(beta.value * (1.0 / kelvin - 1.0 / reference));
}

Ohms platinum_resistance(Ohms r0, Celsius t) {
  assert(t.value >= 0.0 && t.value <= 850.0);
  return r0 * (1.0 + 3.9083e-3 * t.value - 5.775e-7 * t.value * t.value);
}

}  // namespace plugward
