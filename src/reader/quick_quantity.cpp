// SPDX-License-Identifier: MIT
// A decimal of up to twelve digits is an integer over a power of ten, both exact as doubles, so one division
// gives the nearest double (W. D. Clinger, "How to read floating point numbers accurately", 1990), as
// from_chars does. Tested in tests/unit/reader/quick_quantity_test.cpp.
#include "reader/quick_quantity.h"

#include <array>
#include <cstdint>

namespace plugward {
namespace {

constexpr int most_digits = 12;
constexpr std::array<double, most_digits + 1> powers{1e0, 1e1, 1e2, 1e3,  1e4,  1e5, 1e6,
                                                     1e7, 1e8, 1e9, 1e10, 1e11, 1e12};

/// Reads "-12.5" at `at` and moves behind it; false when it is no such number.
bool read_number(const char*& at, const char* end, double& value) {
  const bool minus = at != end && *at == '-';
  if (minus) ++at;
  std::uint64_t digits = 0;
  const char* const first = at;
  while (at != end && *at >= '0' && *at <= '9')
    digits = digits * 10 + static_cast<std::uint64_t>(*at++ - '0');
  auto count = at - first;
  if (count == 0 || count > most_digits) return false;
  std::size_t decimals = 0;
  if (end - at > 1 && at[0] == '.' && at[1] >= '0' && at[1] <= '9') {
    const char* const point = at++;
    while (at != end && *at >= '0' && *at <= '9' && at - point <= most_digits) {
      digits = digits * 10 + static_cast<std::uint64_t>(*at++ - '0');
    }
    decimals = static_cast<std::size_t>(at - point - 1);
    count += at - point - 1;
    if (count > most_digits) return false;
  }
  value = static_cast<double>(digits) / powers[decimals];
  if (minus) value = 0.0 - value;
  return true;
}

}  // namespace

std::optional<QuickRange> quick_quantity(std::string_view text, std::string_view symbol, bool range_wanted) {
  constexpr double largest = 1e5;  // times the prefix k still far below the limit of quantities
  const char* at = text.data();
  const char* const end = at + text.size();
  QuickRange both;
  if (!read_number(at, end, both.min)) return std::nullopt;
  both.max = both.min;
  if (end - at > 2 && at[0] == '.' && at[1] == '.') {
    at += 2;
    if (!range_wanted || !read_number(at, end, both.max) || both.max < both.min) return std::nullopt;
  }
  if (both.min < -largest || both.max > largest) return std::nullopt;
  if (at != end && *at == ' ') ++at;
  const std::string_view unit(at, static_cast<std::size_t>(end - at));
  if (unit == symbol) return both;
  const bool prefixed = symbol == "V" || symbol == "A" || symbol == "ohm" || symbol == "W";
  if (!prefixed || unit.size() != symbol.size() + 1 || unit.substr(1) != symbol) return std::nullopt;
  if (unit[0] == 'm') return QuickRange{both.min / 1e3, both.max / 1e3};
  if (unit[0] == 'k') return QuickRange{both.min * 1e3, both.max * 1e3};
  return std::nullopt;
}

}  // namespace plugward
