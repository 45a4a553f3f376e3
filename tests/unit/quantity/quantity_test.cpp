// SPDX-License-Identifier: MIT
#include "quantity/quantity.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "base/format.h"

using namespace plugward;

namespace {

template <class Q>
std::string shown(const Parsed<Q>& parsed) {
  if (const auto* fault = std::get_if<Fault>(&parsed)) {
    return format("{} [{},{})", fault->message, fault->begin, fault->end);
  }
  return format("{}", std::get<Q>(parsed).value);
}

template <class Q>
std::string shown(const Parsed<Range<Q>>& parsed) {
  if (const auto* fault = std::get_if<Fault>(&parsed)) {
    return format("{} [{},{})", fault->message, fault->begin, fault->end);
  }
  const auto& range = std::get<Range<Q>>(parsed);
  return format("{} to {}", range.min.value, range.max.value);
}

struct Row {
  std::string_view text, expected;
};

}  // namespace

TEST_CASE("volts") {
  constexpr std::array rows{
      Row{"24 V", "24"},
      Row{"24V", "24"},
      Row{"-0.3 V", "-0.3"},
      Row{"-0 V", "0"},
      Row{"66 mV", "0.066"},
      Row{"12 uV", "1.2e-05"},
      Row{"3 kV", "3000"},
      Row{"1000 MV", "1000000000"},
      Row{"0.000000000001 V", "1e-12"},
      Row{"5", "'5' has no unit: write '5 V' [0,1)"},
      Row{"-0.3", "'-0.3' has no unit: write '-0.3 V' [0,4)"},
      Row{"", "the value is empty: a voltage is written like '24 V' [0,0)"},
      Row{"V", "no number where one should begin in 'V': a voltage is written like '24 V' [0,1)"},
      Row{"-", "no number where one should begin in '-': a voltage is written like '24 V' [0,1)"},
      Row{"--5 V", "no number where one should begin in '--5 V': a voltage is written like '24 V' [0,5)"},
      Row{"nan V", "no number where one should begin in 'nan V': a voltage is written like '24 V' [0,5)"},
      Row{"inf V", "no number where one should begin in 'inf V': a voltage is written like '24 V' [0,5)"},
      Row{"five V", "no number where one should begin in 'five V': a voltage is written like '24 V' [0,6)"},
      Row{"5 v", "unknown unit 'v' in '5 v': write '5 V' [2,3)"},
      Row{"5 mv", "unknown unit 'mv' in '5 mv': write '5 mV' [2,4)"},
      Row{"5 Kv", "unknown unit 'Kv' in '5 Kv': write '5 kV' [2,4)"},
      Row{"5 volts", "unknown unit 'volts' in '5 volts': write '5 V' [2,7)"},
      Row{"5 GV", "unknown unit 'GV' in '5 GV': a voltage is written like '24 V' [2,4)"},
      Row{"5 Vdc", "unknown unit 'Vdc' in '5 Vdc': a voltage is written like '24 V' [2,5)"},
      Row{"5 A", "'5 A' is a current: a voltage is written like '24 V' [2,3)"},
      Row{"5 mm2", "'5 mm2' is a cross-section: a voltage is written like '24 V' [2,5)"},
      Row{"5  V", "stray space in '5  V': write '5 V' [1,4)"},
      Row{"5 V ", "stray space in '5 V ': write '5 V' [1,4)"},
      Row{" 5 V", "stray space in ' 5 V': write '5 V' [0,4)"},
      Row{"5\tV", "stray space in '5\tV': write '5 V' [1,3)"},
      Row{"5 ", "stray space in '5 ': write '5' [1,2)"},
      Row{".5 V", "'.5 V' has no digit before the point: write '0.5 V' [0,1)"},
      Row{"+5 V", "'+5 V' has a plus sign: write '5 V' [0,1)"},
      Row{"4,7 V", "'4,7 V' has a decimal comma: write '4.7 V' [1,2)"},
      Row{"5. V", "'5. V' is no number with a unit: a voltage is written like '24 V' [1,4)"},
      Row{"1.2.3 V", "'1.2.3 V' is no number with a unit: a voltage is written like '24 V' [3,7)"},
      Row{"1e3 V", "'1e3 V' has an exponent: write the number out [1,5)"},
      Row{"1E-3 V", "'1E-3 V' has an exponent: write the number out [1,6)"},
      Row{"4..5 V", "'4..5 V' is a range where one value belongs: a voltage is written like '24 V' [0,6)"},
      Row{"1000.1 MV", "'1000.1 MV' is out of all proportion: at most 1e9 V is taken [0,6)"},
      Row{"1234567890123456 V", "'1234567890123456 V' has too many digits: write at most 15 [0,16)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(shown(parse_quantity<Volts>(row.text)) == row.expected);
  }
}

TEST_CASE("every unit reads its own symbol and refuses the others") {
  CHECK(shown(parse_quantity<Amps>("1.5 A")) == "1.5");
  CHECK(shown(parse_quantity<Ohms>("4.7 kohm")) == "4700");
  CHECK(shown(parse_quantity<Watts>("40 W")) == "40");
  CHECK(shown(parse_quantity<Millimetres>("61 mm")) == "61");
  CHECK(shown(parse_quantity<SquareMillimetres>("0.14 mm2")) == "0.14");
  CHECK(shown(parse_quantity<Celsius>("-20 C")) == "-20");
  CHECK(shown(parse_quantity<Kelvins>("3950 K")) == "3950");
  CHECK(shown(parse_quantity<Kelvins>("3950")) == "'3950' has no unit: write '3950 K' [0,4)");
  CHECK(shown(parse_quantity<Millimetres>("3 V")) ==
        "'3 V' is a voltage: a length is written like '60 mm' [2,3)");
}

TEST_CASE("units that take no prefix") {
  CHECK(shown(parse_quantity<Millimetres>("3 m")) ==
        "unknown unit 'm' in '3 m': a length is written like '60 mm' [2,3)");
  CHECK(shown(parse_quantity<Millimetres>("3 umm")) ==
        "unknown unit 'umm' in '3 umm': a length is written like '60 mm' [2,5)");
  CHECK(shown(parse_quantity<Kelvins>("4 kK")) ==
        "unknown unit 'kK' in '4 kK': a B constant is written like '3950 K' [2,4)");
}

TEST_CASE("other spellings of a unit are named, not taken") {
  struct Spelled {
    std::string_view text, meant;
  };
  constexpr std::array rows{
      Spelled{"4.7 k\xCE\xA9", "4.7 kohm"}, Spelled{"4.7 k\xE2\x84\xA6", "4.7 kohm"},
      Spelled{"4.7 Kohm", "4.7 kohm"},      Spelled{"4.7 kOhms", "4.7 kohm"},
      Spelled{"4.7 MOHM", "4.7 Mohm"},      Spelled{"4.7 Ohm", "4.7 ohm"},
      Spelled{"4.7\xCE\xA9", "4.7 ohm"},
  };
  for (const Spelled& row : rows) {
    CAPTURE(row.text);
    const auto parsed = parse_quantity<Ohms>(row.text);
    REQUIRE(std::holds_alternative<Fault>(parsed));
    const std::string expected = format("write '{}'", row.meant);
    CHECK(std::get<Fault>(parsed).message.ends_with(expected));
  }
  CHECK(shown(parse_quantity<Amps>("5 \xC2\xB5"
                                   "A")) ==
        "unknown unit '\xC2\xB5"
        "A' in '5 \xC2\xB5"
        "A': write '5 uA' [2,5)");
  CHECK(shown(parse_quantity<Celsius>("25 \xC2\xB0"
                                      "C")) ==
        "unknown unit '\xC2\xB0"
        "C' in '25 \xC2\xB0"
        "C': write '25 C' [3,6)");
}

TEST_CASE("ranges") {
  constexpr std::array rows{
      Row{"4.75..5.25 V", "4.75 to 5.25"},
      Row{"4.75..5.25V", "4.75 to 5.25"},
      Row{"-0.3..5.5 V", "-0.3 to 5.5"},
      Row{"-5..-4 mV", "-0.005 to -0.004"},
      Row{"24 V", "24 to 24"},
      Row{"5..5 V", "5 to 5"},
      Row{"5.25..4.75 V", "'5.25..4.75 V' runs backwards: write '4.75..5.25 V' [0,10)"},
      Row{"4.75-5.25 V", "'4.75-5.25 V' is no range: write '4.75..5.25 V' [4,5)"},
      Row{"4.75..5.25", "'4.75..5.25' has no unit: write '4.75..5.25 V' [0,10)"},
      Row{"4.75 V..5.25 V", "'4.75 V..5.25 V' names its unit before the end: write '4.75..5.25 V' [4,6)"},
      Row{"4.75..", "no number where one should begin in '4.75..': a voltage is written like '24 V' [6,6)"},
      Row{"..5 V", "no number where one should begin in '..5 V': a voltage is written like '24 V' [0,5)"},
      Row{"4...5 V", "'4...5 V' has no digit before the point: write '4..0.5 V' [3,4)"},
      Row{"4..5..6 V", "'4..5..6 V' is no number with a unit: a voltage is written like '24 V' [4,9)"},
      Row{"4 .. 5 V", "stray space in '4 .. 5 V': write '4..5 V' [1,8)"},
      Row{"4..5 v", "unknown unit 'v' in '4..5 v': write '4..5 V' [5,6)"},
      Row{"4..5 A", "'4..5 A' is a current: a voltage is written like '24 V' [5,6)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(shown(parse_range<Volts>(row.text)) == row.expected);
  }
}

TEST_CASE("a value is written with up to four significant digits and a prefix that reads well") {
  CHECK(to_text(Volts(24.0)) == "24 V");
  CHECK(to_text(Volts(0.0)) == "0 V");
  CHECK(to_text(Volts(-0.0)) == "0 V");
  CHECK(to_text(Volts(3.335)) == "3.335 V");
  CHECK(to_text(Volts(3.33333)) == "3.333 V");
  CHECK(to_text(Volts(-0.3)) == "-0.3 V");
  CHECK(to_text(Volts(23.9999)) == "24 V");
  CHECK(to_text(Amps(0.066)) == "66 mA");
  CHECK(to_text(Amps(0.0000756)) == "75.6 uA");
  CHECK(to_text(Amps(1e-9)) == "0.001 uA");
  CHECK(to_text(Amps(1e-18)) == "0 A");
  CHECK(to_text(Amps(-1e-18)) == "0 A");
  CHECK(to_text(Ohms(4700.0)) == "4.7 kohm");
  CHECK(to_text(Ohms(999.94)) == "999.9 ohm");
  CHECK(to_text(Ohms(999.96)) == "1 kohm");
  CHECK(to_text(Ohms(1e6)) == "1 Mohm");
  CHECK(to_text(Ohms(1e9)) == "1000 Mohm");
  CHECK(to_text(Watts(160.04)) == "160 W");
  CHECK(to_text(Millimetres(0.36)) == "0.36 mm");
  CHECK(to_text(Millimetres(12345.6)) == "12346 mm");
  CHECK(to_text(SquareMillimetres(0.00005)) == "0.00005 mm2");
  CHECK(to_text(Celsius(-20.0)) == "-20 C");
  CHECK(to_text(Kelvins(3950.0)) == "3950 K");
  CHECK(to_text(Amps(std::numeric_limits<double>::infinity())) == "inf A");
}

TEST_CASE("a range is written with one unit, that of its larger end") {
  CHECK(to_text(Range<Volts>{Volts(4.75), Volts(5.25)}) == "4.75..5.25 V");
  CHECK(to_text(Range<Volts>::at(Volts(5.0))) == "5 V");
  CHECK(to_text(Range<Volts>{Volts(-0.3), Volts(5.5)}) == "-0.3..5.5 V");
  CHECK(to_text(Range<Amps>{Amps(0.1), Amps(1.5)}) == "0.1..1.5 A");
  CHECK(to_text(Range<Volts>{Volts(-0.3), Volts(0.0)}) == "-0.3..0 V");
  CHECK(to_text(Range<Volts>{Volts(0.0), Volts(0.0)}) == "0 V");
}

TEST_CASE("what is written reads back as nearly the same value") {
  std::mt19937 random(20260503);
  std::uniform_real_distribution<double> exponent(-5.9, 8.9);
  std::uniform_real_distribution<double> sign(-1.0, 1.0);
  for (int i = 0; i < 20000; ++i) {
    const Ohms value(std::copysign(std::pow(10.0, exponent(random)), sign(random)));
    const std::string text = to_text(value);
    const auto parsed = parse_quantity<Ohms>(text);
    CAPTURE(text);
    REQUIRE(std::holds_alternative<Ohms>(parsed));
    REQUIRE(std::get<Ohms>(parsed) / value == doctest::Approx(1.0).epsilon(6e-4));
    REQUIRE(to_text(std::get<Ohms>(parsed)) == text);
  }
}

TEST_CASE("no text makes the reader fail or read past its end") {
  std::mt19937 random(7);
  constexpr std::string_view letters = "0159.-+, eEVmkuMAohm2C\t\xC2\xB5";
  std::uniform_int_distribution<std::size_t> letter(0, letters.size() - 1);
  std::uniform_int_distribution<std::size_t> length(0, 12);
  for (int i = 0; i < 50000; ++i) {
    std::string text(length(random), ' ');
    for (char& c : text) c = letters[letter(random)];
    CAPTURE(text);
    for (const auto& parsed : {parse_range<Volts>(text), parse_range<Volts>(text + " V")}) {
      if (const auto* fault = std::get_if<Fault>(&parsed)) {
        REQUIRE(!fault->message.empty());
        REQUIRE(fault->begin <= fault->end);
        REQUIRE(fault->end <= text.size() + 2);
      } else {
        REQUIRE(std::get<Range<Volts>>(parsed).min <= std::get<Range<Volts>>(parsed).max);
      }
    }
  }
}

TEST_CASE("arithmetic keeps the units right") {
  CHECK((Volts(24.0) / Ohms(14.4)).value == doctest::Approx(1.6667).epsilon(1e-4));
  CHECK(Amps(2.0) * Ohms(3.0) == Volts(6.0));
  CHECK(Volts(12.0) * Amps(2.0) == Watts(24.0));
  CHECK(Volts(3.0) / Amps(1.5) == Ohms(2.0));
  CHECK(Volts(3.0) / Volts(1.5) == 2.0);
  CHECK(Range<Volts>::of(Volts(5.0), Volts(3.0)) == Range<Volts>{Volts(3.0), Volts(5.0)});
  CHECK(Range<Volts>{Volts(3.0), Volts(5.0)}.holds(Volts(5.0)));
  CHECK(!Range<Volts>{Volts(3.0), Volts(5.0)}.holds(Volts(5.01)));
  CHECK(Range<Volts>{Volts(3.0), Volts(5.0)}.middle() == Volts(4.0));
}
