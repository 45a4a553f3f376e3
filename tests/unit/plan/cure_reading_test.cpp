// SPDX-License-Identifier: MIT
#include "plan/cure_reading.h"

#include <doctest/doctest.h>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// 5 V on a divider of 10 kohm and 10 kohm, whose middle meets a pin that may be pulled up.
Bench divided(const std::string& pull) {
  return Bench(
      board_of(header_of_pins("spare", 3,
                              "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/>"
                              "<pin n='3' function='input' signal='data' rail='3V3' withstands='-0.3..3.6 V' "
                              "low-below='0.8 V' high-above='2 V'" +
                                  pull + "/>")),
      harness_of("<device id='d' use='spare'><terminal id='V' function='supply'/>"
                 "<terminal id='G' function='ground'/><terminal id='S' function='output' signal='data'/>"
                 "<terminal id='O'/><load plus='V' minus='G' needs='4.5..5.5 V' draws='1 mA'/>"
                 "<driver terminal='O' plus='V' minus='G' kind='push-pull' drop='0.1 V'/>"
                 "<resistor a='O' b='S' ohms='10 kohm'/><resistor a='S' b='G' ohms='10 kohm'/></device>" +
                 plug_of_leads("V G S")));
}

ReadingPlace pin_three() {
  ReadingPlace place;
  place.header = 0;
  place.pin = 3;
  place.middle = Volts(1.4);
  return place;
}

}  // namespace

TEST_CASE("what a meter reads at a divider, in both states") {
  // Half of 5 V, and of 5 V less 0.1 V; low, nothing flows and nothing drops (Ohm's law).
  const Bench plain = divided("");
  Readings alone;
  add_readings(plain.fitting({{"p", "J1"}}), pin_three(), alone);
  CHECK(to_words(alone) == "2.44..2.50 V when high and 0.00 V when low");

  // 10 kohm to 3.3 V beside it: (5 + 3.3) / 3 and (4.9 + 3.3) / 3; 3.3 / 3 and 3.4 / 3.
  const Bench pulled = divided(" pull='up' pull-ohms='10 kohm'");
  Readings together;
  add_readings(pulled.fitting({{"p", "J1"}}), pin_three(), together);
  CHECK(to_words(together) == "2.73..2.77 V when high and 1.10..1.14 V when low");

  // Its signal contact off the board: as without the pull.
  Readings off;
  add_readings_alone(pulled.fitting({{"p", "J1"}}), pin_three(), off);
  CHECK(to_words(off) == to_words(alone));
}

TEST_CASE("a state that does not occur is not told") {
  const Bench plain = divided("");
  ReadingPlace place = pin_three();
  place.middle = Volts(4);
  Readings readings;
  add_readings(plain.fitting({{"p", "J1"}}), place, readings);
  CHECK_FALSE(readings.high.has_value());
  CHECK(to_words(readings) == "0.00..2.50 V when low");
  CHECK(to_words(Readings{}).empty());
}
