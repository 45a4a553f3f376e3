// SPDX-License-Identifier: MIT
#include "judge/led_string.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "circuit/network.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

TEST_CASE("the far end against a ladder of every single LED") {
  for (const int count : {1, 2, 10, 60, 300}) {
    CAPTURE(count);
    const double amps = 0.01 * count, loop = 0.8;
    Network n(count + 2);  // 1: near end, 2.. : LEDs
    n.fixed.push_back({1, 5.0});
    for (int k = 1; k <= count; ++k) {
      n.resistors.push_back({k, k + 1, loop / count});
      n.currents.push_back({k + 1, 0, amps / count});
    }
    const double exact = solve(n).volts.back();
    // Of N LEDs the loss is I R (N + 1) / (2 N).
    CHECK(exact == doctest::Approx(5.0 - amps * loop * (count + 1) / (2.0 * count)).epsilon(1e-9));
    CHECK(far_end(Volts(5), Amps(amps), Ohms(loop)).value ==
          doctest::Approx(exact + amps * loop / (2.0 * count)).epsilon(1e-9));
  }
}

TEST_CASE("brightness is a setting, a far end that gets too little a fault, tracks not stated a note") {
  const std::string header = header_of_pins(
      "led", 3,
      "<pin n='1' function='supply' rail='5V' limit='2 A'/><pin n='2' function='output' signal='led-data' "
      "rail='5V' high='4.4..5 V' limit='8 mA'/><pin n='3' function='ground'/>");
  struct Row {
    std::string line, expected;
  };
  const std::vector<Row> rows{
      {"<led-string id='bar' count='20' needs='4.5..5.5 V'/>", ""},
      {"<led-string id='bar' count='20' needs='4.5..5.5 V' brightness='100 %'/>", ""},
      {"<led-string id='bar' count='20' needs='4.5..5.5 V' brightness='0.5'/>",
       "setting: keep the brightness of 'bar' at 50 % or less, from the first moment on (its 20 LEDs are "
       "counted with 0.6 A; all at full white they take 1.2 A)\n"},
      {"<led-string id='bar' count='60' needs='4.5..5.5 V' brightness='25 %'/>",
       "note supply-too-low: what the tracks of the 60 LEDs of 'bar' lose is not stated: with all of them "
       "white, measure volts between plus and ground at the last one; below 4.5 V feed the far end as "
       "well\nsetting: keep the brightness of 'bar' at 25 % or less, from the first moment on (its 60 LEDs "
       "are counted with 0.9 A; all at full white they take 3.6 A)\n"},
      {"<led-string id='bar' count='60' needs='4.5..5.5 V' brightness='25 %' loop='0.4 ohm'/>",
       "setting: keep the brightness of 'bar' at 25 % or less, from the first moment on (its 60 LEDs are "
       "counted with 0.9 A; all at full white they take 3.6 A)\n"},
      {"<led-string id='bar' count='20' needs='4.5..5.5 V' loop='1.2 ohm'/>",
       "fault supply-too-low: the far end of 'bar' gets 4.195 V, and needs 4.5 V: of 4.915 V at its near "
       "end, half of 1.2 A x 1.2 ohm is lost in its tracks\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const Bench bench(board_of(header), harness_of(row.line + plug_of_leads("V D G")));
    CHECK(told(assess(bench.fitting({{"p", "J1"}}))) == row.expected);
  }
}
