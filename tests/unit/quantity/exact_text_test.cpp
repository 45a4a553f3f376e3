// SPDX-License-Identifier: MIT
#include "quantity/exact_text.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "base/format.h"

using namespace plugward;

namespace {

template <class Q>
Q read(const std::string& text) {
  const Parsed<Q> parsed = parse_quantity<Q>(text);
  REQUIRE_MESSAGE(std::holds_alternative<Q>(parsed), text);
  return std::get<Q>(parsed);
}

/// Whatever a description may hold is written so that it is read back equal.
template <class Q>
void come_back(std::string_view symbol, const std::vector<std::string>& prefixes, std::mt19937& random) {
  for (int i = 0; i < 4000; ++i) {
    const int decimals = static_cast<int>(random() % 7);
    const double size = std::pow(10.0, static_cast<double>(random() % 6));
    const double number = static_cast<double>(random()) / 4294967296.0 * size;
    const std::string written =
        format("{:.{}f} {}{}", number, decimals, prefixes[random() % prefixes.size()], symbol);
    CAPTURE(written);
    const Q value = read<Q>(written);
    const std::string text = exact_text(value);
    CAPTURE(text);
    CHECK(read<Q>(text) == value);
    CHECK(exact_text(read<Q>(text)) == text);
  }
}

}  // namespace

TEST_CASE("the shortest text that is read back equal") {
  CHECK(exact_text(Volts(24)) == "24 V");
  CHECK(exact_text(Volts(-0.3)) == "-0.3 V");
  CHECK(exact_text(Volts(0)) == "0 V");
  CHECK(exact_text(Ohms(4700)) == "4.7 kohm");
  CHECK(exact_text(Ohms(4702.5)) == "4702.5 ohm");
  CHECK(exact_text(Amps(0.066)) == "66 mA");
  CHECK(exact_text(Amps(0.00001)) == "10 uA");
  CHECK(exact_text(Watts(0.125)) == "0.125 W");
  CHECK(exact_text(Kelvins(3950)) == "3950 K");
  CHECK(exact_text(Kelvins(3434.75)) == "3434.75 K");
  CHECK(exact_text(Millimetres(1234.5)) == "1234.5 mm");
  CHECK(exact_text(Amps(0.5663666666666)) == "0.5663666666666 A");  // as many digits as are taken
  CHECK(exact_text(read<Amps>("0.5666666666667 mA")) == "0.5666666666667 mA");
  CHECK(exact_text(Range<Volts>{Volts(4.75), Volts(5.25)}) == "4.75..5.25 V");
  CHECK(exact_text(Range<Volts>{Volts(-0.3), Volts(5.5)}) == "-0.3..5.5 V");
  CHECK(exact_text(Range<Volts>::at(Volts(12.3456))) == "12.3456 V");
  CHECK(exact_text(std::get<Gauge>(parse_gauge("26 AWG"))) == "26 AWG");
  CHECK(exact_text(std::get<Gauge>(parse_gauge("0.14159 mm2"))) == "0.14159 mm2");
}

TEST_CASE("a value that takes more digits than a description may have is rounded once") {
  const Volts third(1.0 / 3.0);
  const std::string text = exact_text(third);
  CHECK(text == "0.3333333333333 V");
  CHECK(exact_text(read<Volts>(text)) == text);
  CHECK(exact_text(Volts(3.3 * 0.95)) == "3.135 V");  // the product is one ulp off
}

TEST_CASE("a very small and a very large end need different decimals") {
  const auto parsed = parse_range<Amps>("-0.9999035..09999999906.05 mA");
  const auto* range = std::get_if<Range<Amps>>(&parsed);
  REQUIRE(range != nullptr);
  CHECK(exact_text(*range) == "-0.9999035..9999999906.05 mA");
}

TEST_CASE("shares") {
  CHECK(percent_text(0.4) == "40 %");
  CHECK(percent_text(1.0) == "100 %");
  CHECK(percent_text(0.07) == "7 %");
  CHECK(percent_text(0.123456) == "12.3456 %");
  CHECK(share_text(0.7) == "0.7");
  CHECK(share_text(0.333333) == "0.333333");
}

TEST_CASE("every value that can be written in a description comes back") {
  std::mt19937 random(20261125);
  come_back<Volts>("V", {"", "m", "u", "k"}, random);
  come_back<Amps>("A", {"", "m", "u"}, random);
  come_back<Ohms>("ohm", {"", "k", "m"}, random);
  come_back<Watts>("W", {"", "m", "k"}, random);
  come_back<Millimetres>("mm", {""}, random);
  come_back<Kelvins>("K", {""}, random);
}
