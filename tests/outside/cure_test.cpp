// SPDX-License-Identifier: MIT
// Values of added parts against published ones; the published source stands beside each.
#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "plan/cure_values.h"

using namespace plugward;

namespace {

/// What a divider without any load gives.
double divided(double volts, double upper, double lower) {
  DividerNeeds n;
  n.high = Range<Volts>::at(Volts(volts));
  n.tolerance = 0;
  return divider(n, Ohms(upper), Ohms(lower)).high.max.value;
}

}  // namespace

TEST_CASE("published dividers") {
  struct Row {
    std::string source;
    double volts, upper, lower, expected, within;
  };
  const std::vector<Row> rows = {
      {"\"5V to 3V3 voltage divider\" calculator: about 3.3 V", 5, 10e3, 20e3, 3.333, 0.001},
      {"\"5V to 3.3V voltage divider\": 3.3 V", 5, 1e3, 1.94e3, 3.2993, 0.0001},
      {"the same with the nearest of E24, derived", 5, 1e3, 2e3, 3.333, 0.001},
      {"the same with E96, derived", 5, 1e3, 1.96e3, 3.311, 0.001},
      {"voltage-divider note: 4.77 V", 18, 36e3, 13e3, 4.7755, 0.0001},
      {"voltage-divider note: 3.65 V", 18, 51e3, 13e3, 3.6563, 0.0001},
      {"\"24V to 3.3V level conversion circuit\": 2.38 V", 24, 287e3, 31.6e3, 2.3804, 0.0001},
      {"\"24V to 3.3V level conversion circuit\": 2.98 V", 30, 287e3, 31.6e3, 2.9755, 0.0001},
      {"\"Sinking output switch\" thread: about 3 V", 24, 6.8e3, 1e3, 3.077, 0.001},
      {"the same at 30 V, derived: beyond 3.6 V", 30, 6.8e3, 1e3, 3.846, 0.001},
      {"the same sensor divider at 10 V less 3 V of drop, derived: never high", 7, 287e3, 31.6e3, 0.694,
       0.001},
  };
  for (const Row& row : rows) {
    CAPTURE(row.source);
    CHECK(std::abs(divided(row.volts, row.upper, row.lower) - row.expected) <= row.within);
  }
  // A voltage-divider note prints 0.877 V for 10k above 47k: that is the pair the other way round.
  CHECK(divided(5, 10e3, 47e3) == doctest::Approx(4.123).epsilon(0.001));
  CHECK(divided(5, 47e3, 10e3) == doctest::Approx(0.877).epsilon(0.001));
}

TEST_CASE("a published divider that does not match its supply is refused, and one that does is found") {
  // 287k / 31.6k ("24V to 3.3V level conversion circuit") from 10..30 V, drop of up to 3 V: 0.69..2.98 V.
  DividerNeeds n;
  n.high = {Volts(7), Volts(30)};
  n.most = Volts(3.6);
  n.high_above = Volts(2.0);
  n.low_below = Volts(0.8);
  CHECK_FALSE(meets(n, divider(n, Ohms(287e3), Ohms(31.6e3))));
  CHECK_FALSE(choose_divider(n).has_value());
  n.high = {Volts(21), Volts(26)};
  const auto found = choose_divider(n);
  REQUIRE(found.has_value());
  CHECK(found->high.max.value <= 3.6);
  CHECK(found->high.min.value >= 2.0);
  // 6.8k / 1k ("Sinking output switch" thread) at 30 V passes the 3.6 V of STM32F103x6 pins.
  n.high = Range<Volts>::at(Volts(30));
  CHECK_FALSE(meets(n, divider(n, Ohms(6.8e3), Ohms(1e3))));
}

TEST_CASE("a pull-up of 10 kohm to 3.3 V against published off-state currents") {
  struct Row {
    std::string source;
    double leak, expected;
  };
  const std::vector<Row> rows = {{"911276_eng: 10 uA or less", 1e-5, 3.20},
                                 {"catalogue of proximity switches: 0.1 mA or less", 1e-4, 2.30},
                                 {"NBB5-18GK50-E2-5M: 0.5 mA or less; not high", 5e-4, -1.7}};
  for (const Row& row : rows) {
    CAPTURE(row.source);
    const PullNeeds needs{Range<Volts>::at(Volts(3.3)), Amps(row.leak), {}, Volts(2), {}, 0};
    CHECK(pull(needs, Ohms(10e3)).level.value == doctest::Approx(row.expected));
  }
}

TEST_CASE("published resistors of optocouplers") {
  const Range<Volts> v24 = Range<Volts>::at(Volts(24));
  // "24V input optocoupler selection": VF 1.2 V, 10 mA: 2.28 kohm, 2.2 kohm.
  CHECK(opto_resistor(v24, {}, Amps(0.010)).ohms.value == doctest::Approx(2200));
  // An optocoupler note: 15 mA: 1520 ohm, 1.5 kohm, 0.337 W.
  const OptoChoice fifteen = opto_resistor(v24, {}, Amps(0.015), 0);
  CHECK(fifteen.ohms.value == doctest::Approx(1500));
  CHECK(0.015 * 0.015 * fifteen.ohms.value == doctest::Approx(0.337).epsilon(0.003));
  CHECK(fifteen.watts.value == doctest::Approx(22.8 * 22.8 / 1500));
}

TEST_CASE("resistance before a protection diode") {
  // (volts in - supply - 0.3) / 5 mA; limits: STM32F107 data sheet p. 55; arithmetic derived.
  CHECK(clamp_resistor(Volts(24), Volts(3.3), Volts(0.3), Amps(0.005))->value == doctest::Approx(4080));
  CHECK(clamp_resistor(Volts(5), Volts(3.3), Volts(0.3), Amps(0.005))->value == doctest::Approx(280));
  // Pins of the five-volt-tolerant kind stand +0 mA (STM32F107 p. 55, STM32F407 p. 109): no value helps.
  CHECK_FALSE(clamp_resistor(Volts(24), Volts(3.3), Volts(0.3), Amps(0)).has_value());
}
