// SPDX-License-Identifier: MIT
#include "reader/quick_quantity.h"

#include <doctest/doctest.h>

#include <random>
#include <string>

#include "base/format.h"
#include "quantity/quantity.h"

namespace plugward {
namespace {

TEST_CASE("what is read quickly is read to the same double") {
  std::mt19937 random(20260302);  // the seed
  const auto below = [&](unsigned bound) { return static_cast<unsigned>(random() % bound); };
  int quick = 0;
  for (int i = 0; i < 50000; ++i) {
    const auto number = [&] {
      std::string text = below(5) == 0 ? "-" : "";
      text += std::to_string(below(below(2) == 0 ? 30 : 99999));
      if (below(2) == 0) text += format(".{:0{}}", below(999), 1 + below(5));
      return text;
    };
    constexpr const char* units[] = {"V", " V", " mV", "kV", " MV", "uV", " v", "  V", "", "V "};
    const std::string text = number() + (below(2) == 0 ? ".." + number() : "") + units[below(10)];
    CAPTURE(text);
    const auto mine = quick_quantity(text, "V", true);
    if (!mine) continue;
    ++quick;
    const auto parsed = parse_range<Volts>(text);
    REQUIRE(std::holds_alternative<Range<Volts>>(parsed));
    CHECK(std::get<Range<Volts>>(parsed).min.value == mine->min);
    CHECK(std::get<Range<Volts>>(parsed).max.value == mine->max);
  }
  CHECK(quick > 10000);
}

TEST_CASE("whatever looks different is left to the parser") {
  for (const char* text : {"",      "5",        "V",      "-V",      ".5 V", "5. V", "5..V",
                           "5.. V", "1 V..2 V", "2..1 V", "1e3 V",   "5 v",  " 5 V", "5  V",
                           "5 V ",  "+5 V",     "0x5 V",  "5 kV5",   "5 uV", "5 MV", "1234567890123 V",
                           "5,5 V", "5 mmV",    "--5 V",  "100001 V"}) {
    CAPTURE(text);
    CHECK_FALSE(quick_quantity(text, "V", true));
  }
  CHECK_FALSE(quick_quantity("1..2 V", "V", false));
  CHECK_FALSE(quick_quantity("1 kmm", "mm", false));
  CHECK(quick_quantity("3..4mm", "mm", true)->max == 4.0);
}

}  // namespace
}  // namespace plugward
