// SPDX-License-Identifier: MIT
// Published tables are checked in tests/outside/quantity_test.cpp.
#include "quantity/temperature_sensor.h"

#include <doctest/doctest.h>

using namespace plugward;

TEST_CASE("a thermistor has its nominal resistance at 25 C and falls with temperature") {
  CHECK(thermistor_resistance(Ohms(1e5), Kelvins(3950.0), Celsius(25.0)).value == doctest::Approx(1e5));
  CHECK(thermistor_resistance(Ohms(1e4), Kelvins(3435.0), Celsius(25.0)).value == doctest::Approx(1e4));
  Ohms before(1e12);
  for (int t = -50; t <= 300; t += 10) {
    const Ohms now = thermistor_resistance(Ohms(1e5), Kelvins(3950.0), Celsius(t));
    CAPTURE(t);
    CHECK(now < before);
    before = now;
  }
}

TEST_CASE("a platinum sensor has its nominal resistance at 0 C and rises with temperature") {
  CHECK(platinum_resistance(Ohms(1000.0), Celsius(0.0)) == Ohms(1000.0));
  Ohms before(0.0);
  for (int t = 0; t <= 850; t += 10) {
    const Ohms now = platinum_resistance(Ohms(100.0), Celsius(t));
    CAPTURE(t);
    CHECK(now > before);
    before = now;
  }
}
