// SPDX-License-Identifier: MIT
// Published tables are checked in tests/outside/quantity_test.cpp.
#include "quantity/gauge.h"

#include <doctest/doctest.h>

#include <array>
#include <string>

#include "base/format.h"

using namespace plugward;

namespace {

std::string shown(std::string_view text) {
  const auto parsed = parse_gauge(text);
  if (const auto* fault = std::get_if<Fault>(&parsed)) {
    return format("{} [{},{})", fault->message, fault->begin, fault->end);
  }
  return to_text(std::get<Gauge>(parsed));
}

}  // namespace

TEST_CASE("what is read as a gauge") {
  struct Row {
    std::string_view text, expected;
  };
  constexpr std::array rows{
      Row{"26 AWG", "26 AWG"},
      Row{"26AWG", "26 AWG"},
      Row{"0 AWG", "0 AWG"},
      Row{"44 AWG", "44 AWG"},
      Row{"0.14 mm2", "0.14 mm2"},
      Row{"2.5mm2", "2.5 mm2"},
      Row{"", "the gauge is empty: a gauge is written like '26 AWG' or '0.14 mm2' [0,0)"},
      Row{"26", "'26' has no unit: write '26 AWG' or '26 mm2' [0,2)"},
      Row{"26 awg", "unknown unit 'awg' in '26 awg': write '26 AWG' [0,6)"},
      Row{"AWG 26", "'AWG 26' is written the wrong way round: write '26 AWG' [0,6)"},
      Row{"awg26", "'awg26' is written the wrong way round: write '26 AWG' [0,5)"},
      Row{"45 AWG", "'45 AWG' is outside 0..44 AWG: write its cross-section in mm2 [0,6)"},
      Row{"026 AWG", "'026 AWG' is no gauge: a gauge is written like '26 AWG' or '0.14 mm2' [0,7)"},
      Row{"99999999999 AWG",
          "'99999999999 AWG' is no gauge: a gauge is written like '26 AWG' or '0.14 mm2' [0,15)"},
      Row{"0000 AWG",
          "'0000 AWG' is thicker than 0 AWG, the thickest taken: write its cross-section, as in '85 mm2' "
          "[0,8)"},
      Row{"26  AWG", "'26  AWG' is no gauge: a gauge is written like '26 AWG' or '0.14 mm2' [0,7)"},
      Row{"-1 AWG", "'-1 AWG' is no gauge: a gauge is written like '26 AWG' or '0.14 mm2' [0,6)"},
      Row{"0.14", "'0.14' is no gauge: a gauge is written like '26 AWG' or '0.14 mm2' [0,4)"},
      Row{"0,14 mm2", "'0,14 mm2' has a decimal comma: write '0.14 mm2' [1,2)"},
      Row{"0 mm2", "'0 mm2' is outside 0.001..1000 mm2 [0,5)"},
      Row{"-1 mm2", "'-1 mm2' is outside 0.001..1000 mm2 [0,6)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(shown(row.text) == row.expected);
  }
}

TEST_CASE("nearest AWG number undoes the area") {
  for (int n = 0; n <= 44; ++n) {
    CAPTURE(n);
    CHECK(nearest_awg(awg_area(n)) == n);
    CHECK(awg(n).awg == n);
  }
  CHECK(nearest_awg(SquareMillimetres(0.14)) == 26);
  CHECK(nearest_awg(SquareMillimetres(0.25)) == 23);
  CHECK(nearest_awg(SquareMillimetres(1000.0)) == 0);
  CHECK(nearest_awg(SquareMillimetres(1e-6)) == 44);
}

TEST_CASE("currents are tabulated, never invented") {
  CHECK(chassis_current(awg(26)) == Amps(2.2));
  CHECK(!chassis_current(awg(25)));
  CHECK(!chassis_current(awg(8)));
  CHECK(!chassis_current(awg(34)));
  CHECK(bundled_current(awg(24)) == Amps(2.0));
  CHECK(!bundled_current(awg(26)));
  CHECK(general_bundled_current(awg(22)) == Amps(5.0));
  CHECK(general_bundled_current(awg(12)) == Amps(23.0));
  CHECK(!general_bundled_current(awg(10)));
  CHECK(!general_bundled_current(awg(24)));
  CHECK(!military_current(awg(16)));
  CHECK(military_current(Gauge{std::nullopt, SquareMillimetres(1.0)}) == Amps(15.4));  // 18 AWG has 0.823 mm2
}

TEST_CASE("a size in mm2 carries what the next thinner tabulated AWG size carries") {
  const auto square = [](double area) { return Gauge{std::nullopt, SquareMillimetres(area)}; };
  CHECK(chassis_current(square(0.14)) == Amps(2.2));   // 26 AWG has 0.129 mm2
  CHECK(chassis_current(square(0.128)) == Amps(1.4));  // a little thinner than 26 AWG
  CHECK(chassis_current(square(0.25)) == Amps(3.5));
  CHECK(chassis_current(square(10.0)) == Amps(55.0));
  CHECK(!chassis_current(square(0.03)));
  CHECK(bundled_current(square(0.25)) == Amps(2.0));
}

TEST_CASE("resistance grows with length and temperature and falls with area") {
  const Gauge one_mm2{std::nullopt, SquareMillimetres(1.0)};
  CHECK(wire_resistance(one_mm2, Millimetres(1000.0)).value == doctest::Approx(0.017241));
  CHECK(wire_resistance(one_mm2, Millimetres(2000.0)).value == doctest::Approx(0.034482));
  CHECK(wire_resistance(one_mm2, Millimetres(0.0)).value == 0.0);
  CHECK(wire_resistance(one_mm2, Millimetres(1000.0), Celsius(120.0)).value ==
        doctest::Approx(0.017241 * 1.393));
}
