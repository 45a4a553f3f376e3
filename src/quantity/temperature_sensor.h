// SPDX-License-Identifier: MIT
// What a temperature sensor reads on an ohmmeter.
#pragma once

#include "quantity/quantity.h"

namespace plugward {

/// R = r25 exp(beta (1/T - 1/298.15 K)). REQUIRES: t > -273.15 C.
Ohms thermistor_resistance(Ohms r25, Kelvins beta, Celsius t);

/// Platinum sensor, IEC 60751: R = r0 (1 + 3.9083e-3 t - 5.775e-7 t^2), 0 C <= t <= 850 C.
Ohms platinum_resistance(Ohms r0, Celsius t);

}  // namespace plugward
