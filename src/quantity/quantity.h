// SPDX-License-Identifier: MIT
// Values that know their unit. A bare number is never a quantity.
//
//   const Volts rail{5.0};
//   to_text(rail)                      == "5 V"
//   parse_quantity<Ohms>("4.7 kohm")   holds Ohms{4700}
//   parse_range<Volts>("4.75..5.25 V") holds {4.75 V, 5.25 V}
//   parse_quantity<Volts>("5")         holds a Fault: "'5' has no unit: write '5 V'"
#pragma once

#include <algorithm>
#include <compare>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>

namespace plugward {

/// A double in the SI unit (millimetres and square millimetres excepted) named by `Unit::symbol`.
template <class Unit>
struct Quantity {
  double value = 0.0;

  constexpr Quantity() = default;
  constexpr explicit Quantity(double v) : value(v) {}
  friend constexpr auto operator<=>(const Quantity&, const Quantity&) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value + b.value); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value - b.value); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value); }
  friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value * k); }
  friend constexpr Quantity operator*(double k, Quantity a) { return Quantity(a.value * k); }
  friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value / k); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value / b.value; }
};

namespace unit {
struct Volt { static constexpr std::string_view symbol = "V"; };
struct Ampere { static constexpr std::string_view symbol = "A"; };
struct Ohm { static constexpr std::string_view symbol = "ohm"; };
struct Watt { static constexpr std::string_view symbol = "W"; };
struct Millimetre { static constexpr std::string_view symbol = "mm"; };
struct SquareMillimetre { static constexpr std::string_view symbol = "mm2"; };
struct Celsius { static constexpr std::string_view symbol = "C"; };
struct Kelvin { static constexpr std::string_view symbol = "K"; };  ///< of a thermistor's B constant
}  // namespace unit

using Volts = Quantity<unit::Volt>;
using Amps = Quantity<unit::Ampere>;
using Ohms = Quantity<unit::Ohm>;
using Watts = Quantity<unit::Watt>;
using Millimetres = Quantity<unit::Millimetre>;
using SquareMillimetres = Quantity<unit::SquareMillimetre>;
using Celsius = Quantity<unit::Celsius>;
using Kelvins = Quantity<unit::Kelvin>;

constexpr Amps operator/(Volts u, Ohms r) { return Amps(u.value / r.value); }
constexpr Volts operator*(Amps i, Ohms r) { return Volts(i.value * r.value); }
constexpr Watts operator*(Volts u, Amps i) { return Watts(u.value * i.value); }
constexpr Ohms operator/(Volts u, Amps i) { return Ohms(u.value / i.value); }

/// From `min` to `max`, both included. A single value is a range of no width.
template <class Q>
struct Range {
  Q min{};
  Q max{};

  static constexpr Range of(Q a, Q b) { return a < b ? Range{a, b} : Range{b, a}; }
  static constexpr Range at(Q v) { return Range{v, v}; }
  constexpr bool holds(Q v) const { return min <= v && v <= max; }
  constexpr Q middle() const { return (min + max) / 2.0; }
  friend constexpr bool operator==(const Range&, const Range&) = default;
};

/// Why a text is not a quantity, and which bytes of it are at fault.
struct Fault {
  std::string message;  ///< complete: "'5' has no unit: write '5 V'"
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Either the value or the reason why there is none.
template <class T>
using Parsed = std::variant<T, Fault>;

/// "24 V", "4.7 kohm", "0.5 mA", "-0.3 V". One space between number and unit, or none; prefixes
/// u m k M where the unit takes them (V, A, ohm, W); mm, mm2, C, K take none. No other locale, no exponent, nothing
/// before or after. Not NaN, not infinite, at most 1e9 in magnitude.
template <class Q>
Parsed<Q> parse_quantity(std::string_view text);

/// "4.75..5.25 V" (one unit, at the end) or a single value, which is a range of no width.
/// The first number must not be larger than the second.
template <class Q>
Parsed<Range<Q>> parse_range(std::string_view text);

/// Shortest text that reads well: up to four significant digits, prefix chosen so that 1 <= number < 1000
/// where the unit takes prefixes; a tenth and more is written without one ("0.3 V"): "24 V", "0 V", "66 mA", "4.7 kohm", "3.335 V".
template <class Q>
std::string to_text(Q value);

/// "4.75..5.25 V", or as a single value when the range has no width.
template <class Q>
std::string to_text(Range<Q> range);

}  // namespace plugward
