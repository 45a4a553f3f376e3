// SPDX-License-Identifier: MIT
#include "quantity/gauge.h"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <numbers>

#include "base/format.h"

namespace plugward {
namespace {

constexpr int thickest = 0;
constexpr int thinnest = 44;

struct CurrentRow {
  int awg = 0;
  double chassis = 0.0;  // A, "AWG Current Capacity"
  double bundled = 0.0;  // A, TFE wire, archived "wire table" page; 0: no row
  double general = 0.0;  // A, general table of the same page, bundled; 0: no row
};

/// Even sizes only: the odd ones and the bundled figures of 26 and 28 AWG have no source that was seen.
constexpr auto currents = std::to_array<CurrentRow>({
    {10, 55.0, 16.0, 0.0},
    {12, 41.0, 12.0, 23.0},
    {14, 32.0, 8.0, 17.0},
    {16, 22.0, 6.0, 13.0},
    {18, 16.0, 5.0, 10.0},
    {20, 11.0, 3.7, 7.5},
    {22, 7.0, 2.5, 5.0},
    {24, 3.5, 2.0, 0.0},
    {26, 2.2, 0.0, 0.0},
    {28, 1.4, 0.0, 0.0},
    {30, 0.86, 0.7, 0.0},
    {32, 0.53, 0.0, 0.0},
});

/// The row of an AWG size, or of the next thinner tabulated size for a size in mm2.
const CurrentRow* row_of(const Gauge& gauge) {
  for (const CurrentRow& row : currents) {
    if (gauge.awg ? row.awg == *gauge.awg : awg_area(row.awg).value <= gauge.area.value * 1.0001) return &row;
  }
  return nullptr;
}

Fault fault(std::string message, std::string_view text) {
  return {std::move(message), 0, text.size()};
}

constexpr std::string_view how = "a gauge is written like '26 AWG' or '0.14 mm2'";

/// "26 AWG", or the reason why the number is none.
Parsed<Gauge> parse_awg(std::string_view text, std::string_view number) {
  if (number.find_first_not_of('0') == std::string_view::npos && number.size() > 1) {
    return fault(
        verbatim("'{}' is thicker than 0 AWG, the thickest taken: write its cross-section, as in '85 mm2'",
                 text),
        text);
  }
  int n = 0;
  const char* end = number.data() + number.size();
  const auto [stop, error] = std::from_chars(number.data(), end, n);
  const bool leading_zero = number.size() > 1 && number.front() == '0';
  if (error != std::errc() || stop != end || leading_zero) {
    return fault(verbatim("'{}' is no gauge: {}", text, how), text);
  }
  if (n < thickest || n > thinnest) {
    return fault(
        verbatim("'{}' is outside {}..{} AWG: write its cross-section in mm2", text, thickest, thinnest),
        text);
  }
  return awg(n);
}

bool same_letters(std::string_view text, std::string_view upper) {
  if (text.size() != upper.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i] >= 'a' && text[i] <= 'z' ? static_cast<char>(text[i] - 'a' + 'A') : text[i];
    if (c != upper[i]) return false;
  }
  return true;
}

bool all_digits(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

}  // namespace

Millimetres awg_diameter(int n) {
  assert(n >= thickest && n <= thinnest);
  return Millimetres(0.127 * std::pow(92.0, (36.0 - n) / 39.0));
}

SquareMillimetres awg_area(int n) {
  const double d = awg_diameter(n).value;
  return SquareMillimetres(std::numbers::pi / 4.0 * d * d);
}

Gauge awg(int n) {
  return {n, awg_area(n)};
}

int nearest_awg(SquareMillimetres area) {
  assert(area.value > 0.0);
  const double diameter = std::sqrt(area.value * 4.0 / std::numbers::pi);
  const double n = 36.0 - 39.0 * std::log(diameter / 0.127) / std::log(92.0);
  return static_cast<int>(std::lround(std::clamp(n, double{thickest}, double{thinnest})));
}

double copper_resistivity(Celsius t) {
  return 0.017241 * (1.0 + 3.93e-3 * (t.value - 20.0));
}

Ohms wire_resistance(const Gauge& gauge, Millimetres length, Celsius t) {
  assert(gauge.area.value > 0.0);
  return Ohms(copper_resistivity(t) * length.value / 1000.0 / gauge.area.value);
}

std::optional<Amps> chassis_current(const Gauge& gauge) {
  const CurrentRow* row = row_of(gauge);
  if (row == nullptr) return std::nullopt;
  return Amps(row->chassis);
}

std::optional<Amps> bundled_current(const Gauge& gauge) {
  const CurrentRow* row = row_of(gauge);
  if (row == nullptr || row->bundled == 0.0) return std::nullopt;
  return Amps(row->bundled);
}

std::optional<double> bundle_factor(int wires) {
  constexpr auto factors = std::to_array<double>({1.0, 0.94, 0.89, 0.83, 0.76});
  assert(wires >= 1);
  const auto index = static_cast<std::size_t>(wires) - 1;
  if (index >= factors.size()) return std::nullopt;
  return factors[index];
}

std::optional<Amps> military_current(const Gauge& gauge) {
  struct Row {
    int awg;
    double amps;
  };
  constexpr auto rows =
      std::to_array<Row>({{8, 75.0}, {10, 55.0}, {12, 40.0}, {14, 31.2}, {18, 15.4}, {20, 8.33}, {22, 5.0}});
  for (const Row& row : rows) {
    if (gauge.awg ? row.awg == *gauge.awg : awg_area(row.awg).value <= gauge.area.value * 1.0001)
      return Amps(row.amps);
  }
  return std::nullopt;
}

std::optional<Amps> general_bundled_current(const Gauge& gauge) {
  const CurrentRow* row = row_of(gauge);
  if (row == nullptr || row->general == 0.0) return std::nullopt;
  return Amps(row->general);
}

Amps conservative_current(const Gauge& gauge) {
  // One circular mil is the area of a disc of 0.001 in (0.0254 mm) diameter.
  constexpr double circular_mil = std::numbers::pi / 4.0 * 0.0254 * 0.0254;
  return Amps(gauge.area.value / circular_mil / 700.0);
}

Parsed<Gauge> parse_gauge(std::string_view text) {
  if (text.empty()) return fault(verbatim("the gauge is empty: {}", how), text);
  if (all_digits(text))
    return fault(verbatim("'{}' has no unit: write '{} AWG' or '{} mm2'", text, text, text), text);
  if (text.ends_with("mm2")) {
    const Parsed<SquareMillimetres> area = parse_quantity<SquareMillimetres>(text);
    if (const auto* bad = std::get_if<Fault>(&area)) return *bad;
    const SquareMillimetres value = std::get<SquareMillimetres>(area);
    if (value.value < 0.001 || value.value > 1000.0) {
      return fault(verbatim("'{}' is outside 0.001..1000 mm2", text), text);
    }
    return Gauge{std::nullopt, value};
  }
  const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
  const std::string_view number = text.substr(0, digits);
  std::string_view unit = text.substr(digits);
  if (unit.starts_with(' ')) unit.remove_prefix(1);
  if (!number.empty() && unit == "AWG") return parse_awg(text, number);
  if (!number.empty() && same_letters(unit, "AWG")) {
    return fault(verbatim("unknown unit '{}' in '{}': write '{} AWG'", unit, text, number), text);
  }
  std::string_view tail = text;
  if (tail.size() > 3 && same_letters(tail.substr(0, 3), "AWG")) {
    tail.remove_prefix(3);
    if (tail.starts_with(' ')) tail.remove_prefix(1);
    if (all_digits(tail))
      return fault(verbatim("'{}' is written the wrong way round: write '{} AWG'", text, tail), text);
  }
  return fault(verbatim("'{}' is no gauge: {}", text, how), text);
}

std::string to_text(const Gauge& gauge) {
  if (gauge.awg) return verbatim("{} AWG", *gauge.awg);
  return to_text(gauge.area);
}

}  // namespace plugward
