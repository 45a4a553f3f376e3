// SPDX-License-Identifier: MIT
// One scanner reads "number [.. number] unit" for every unit; the templates only give the doubles their type.
//
// A number is  -? digits ( '.' digits )?  and nothing else: from_chars would also take "inf", "nan" and
// exponents, so the extent is found by hand and from_chars only converts it. A prefix below one divides: 66
// mA is 66 / 1e3, the double nearest to 0.066, which 66 * 1e-3 need not be.
#include "quantity/quantity.h"

#include <cassert>
#include <charconv>
#include <cmath>

#include "base/format.h"
#include "quantity/unit_table.h"

namespace plugward {
namespace {

constexpr double largest = 1e9;
constexpr std::size_t most_digits = 15;

template <class Unit>
const UnitInfo& info(Quantity<Unit>) {
  const UnitInfo* unit = find_unit(Unit::symbol);
  assert(unit != nullptr);
  return *unit;
}

template <class Q>
const UnitInfo& unit_of() {
  return info(Q{});
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Where the number that begins at `begin` ends; `begin` when there is none.
std::size_t number_end(std::string_view text, std::size_t begin) {
  std::size_t i = begin;
  if (i < text.size() && text[i] == '-') ++i;
  const std::size_t digits = i;
  while (i < text.size() && is_digit(text[i])) ++i;
  if (i == digits) return begin;
  if (i + 1 < text.size() && text[i] == '.' && is_digit(text[i + 1])) {
    ++i;
    while (i < text.size() && is_digit(text[i])) ++i;
  }
  return i;
}

double to_double(std::string_view number) {
  double value = 0.0;
  std::from_chars(number.data(), number.data() + number.size(), value, std::chars_format::fixed);
  return value + 0.0;  // never -0
}

std::string trimmed(std::string_view text) {
  std::string result;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (!space) {
      result += c;
    } else if (!result.empty() && result.back() != ' ') {
      result += ' ';
    }
  }
  while (result.ends_with(' ')) result.pop_back();
  return result;
}

struct Ends {
  double min = 0.0;
  double max = 0.0;
};
using Read = std::variant<Ends, Fault>;

/// What stands where the number should begin.
Fault no_number(std::string_view text, std::size_t at, const UnitInfo& unit) {
  const std::string_view rest = text.substr(at);
  if (text.empty())
    return {verbatim("the value is empty: {} is written like '{}'", unit.what, unit.example), 0, 0};
  if (at == 0 && trimmed(text) != text) {
    return {verbatim("stray space in '{}': write '{}'", text, trimmed(text)), 0, text.size()};
  }
  const bool point = rest.size() > 1 && rest[0] == '.' && is_digit(rest[1]);
  if (point) {
    return {verbatim("'{}' has no digit before the point: write '{}0{}'", text, text.substr(0, at), rest), at,
            at + 1};
  }
  const bool plus = rest.size() > 1 && rest[0] == '+' && is_digit(rest[1]);
  if (plus) {
    return {verbatim("'{}' has a plus sign: write '{}{}'", text, text.substr(0, at), rest.substr(1)), at,
            at + 1};
  }
  return {verbatim("no number where one should begin in '{}': {} is written like '{}'", text, unit.what,
                   unit.example),
          at, text.size()};
}

/// "4,9..5,2 V" as it is to be written.
std::string with_points(std::string_view text) {
  std::string out(text);
  for (std::size_t i = 0; i + 1 < out.size(); ++i) {
    if (out[i] == ',' && is_digit(out[i + 1])) out[i] = '.';
  }
  return out;
}

/// Why what follows the number at `at` cannot be a unit; nothing when it may be one.
std::optional<Fault> not_a_unit(std::string_view text, std::size_t at, const UnitInfo& unit,
                                bool range_wanted, bool is_range) {
  const std::string_view rest = text.substr(at);
  const std::string_view before = text.substr(0, at);
  if (rest.empty()) return Fault{verbatim("'{}' has no unit: write '{} {}'", text, text, unit.symbol), 0, at};
  const bool digit_next = rest.size() > 1 && is_digit(rest[1]);
  if (rest[0] == ',' && digit_next) {
    return Fault{verbatim("'{}' has a decimal comma: write '{}'", text, with_points(text)), at, at + 1};
  }
  if ((rest[0] == 'e' || rest[0] == 'E') &&
      (digit_next || (rest.size() > 2 && (rest[1] == '-' || rest[1] == '+') && is_digit(rest[2])))) {
    return Fault{verbatim("'{}' has an exponent: write the number out", text), at, text.size()};
  }
  if (range_wanted && !is_range && rest[0] == '-' && digit_next) {
    return Fault{verbatim("'{}' is no range: write '{}..{}'", text, before, rest.substr(1)), at, at + 1};
  }
  if (rest.starts_with("..") && !range_wanted) {
    return Fault{verbatim("'{}' is a range where one value belongs: {} is written like '{}'", text, unit.what,
                          unit.example),
                 0, text.size()};
  }
  if (std::string_view(".,-+/*;:").find(rest[0]) != std::string_view::npos) {
    return Fault{
        verbatim("'{}' is no number with a unit: {} is written like '{}'", text, unit.what, unit.example), at,
        text.size()};
  }
  return std::nullopt;
}

Fault unknown_unit(std::string_view text, std::size_t at, std::string_view number, const UnitInfo& unit) {
  const std::string_view written = text.substr(at);
  if (const std::string meant = meant_unit(written, unit); !meant.empty()) {
    return {verbatim("unknown unit '{}' in '{}': write '{} {}'", written, text, number, meant), at,
            text.size()};
  }
  for (const UnitInfo& other : all_units()) {
    if (exact_prefix(written, other) != nullptr) {
      return {verbatim("'{}' is {}: {} is written like '{}'", text, other.what, unit.what, unit.example), at,
              text.size()};
    }
  }
  return {
      verbatim("unknown unit '{}' in '{}': {} is written like '{}'", written, text, unit.what, unit.example),
      at, text.size()};
}

Read read(std::string_view text, const UnitInfo& unit, bool range_wanted) {
  const std::size_t first_end = number_end(text, 0);
  if (first_end == 0) return no_number(text, 0, unit);
  const std::string_view first = text.substr(0, first_end);
  std::string_view second = first;
  std::size_t end = first_end;
  if (range_wanted && text.substr(end).starts_with("..")) {
    const std::size_t begin = end + 2;
    end = number_end(text, begin);
    if (end == begin) return no_number(text, begin, unit);
    second = text.substr(begin, end - begin);
  }
  const bool is_range = end != first_end;
  if (auto fault = not_a_unit(text, end, unit, range_wanted, is_range)) return *fault;

  const std::string_view number = text.substr(0, end);
  std::size_t at = end;
  if (text[at] == ' ') ++at;
  if (const std::string tidy = trimmed(text); tidy != text) {
    return Fault{verbatim("stray space in '{}': write '{}'", text, tidy), end, text.size()};
  }
  if (const std::size_t dots = text.find("..", at); dots != std::string_view::npos) {
    const std::string joined = verbatim("{}..{}", number, trimmed(text.substr(dots + 2)));
    if (dots == at) return Fault{verbatim("stray space in '{}': write '{}'", text, joined), end, text.size()};
    return Fault{verbatim("'{}' names its unit before the end: write '{}'", text, joined), end, dots};
  }
  const Prefix* prefix = exact_prefix(text.substr(at), unit);
  if (prefix == nullptr) return unknown_unit(text, at, number, unit);

  if (first.size() > most_digits || second.size() > most_digits) {
    return Fault{verbatim("'{}' has too many digits: write at most {}", text, most_digits), 0, end};
  }
  const Ends ends{to_double(first) * prefix->times / prefix->over,
                  to_double(second) * prefix->times / prefix->over};
  if (std::abs(ends.min) > largest || std::abs(ends.max) > largest) {
    return Fault{verbatim("'{}' is out of all proportion: at most 1e9 {} is taken", text, unit.symbol), 0,
                 end};
  }
  if (ends.min > ends.max) {
    return Fault{verbatim("'{}' runs backwards: write '{}..{}{}'", text, second, first, text.substr(end)), 0,
                 end};
  }
  return ends;
}

/// `value` with up to four significant digits, without an exponent and trailing zeros.
std::string digits(double value) {
  if (value == 0.0) return "0";
  if (!std::isfinite(value)) return verbatim("{}", value);
  const int before_point = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  const int decimals = std::clamp(4 - before_point, 0, 9);
  std::string text = verbatim("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    while (text.ends_with('0')) text.pop_back();
    if (text.ends_with('.')) text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

double scaled(double value, const Prefix& prefix) {
  return value / prefix.times * prefix.over;
}

/// The largest prefix that leaves at least 1 before the point after rounding to four digits; without a prefix
/// a tenth is enough, since "0.3 V" reads better than "300 mV".
const Prefix& prefix_for(double magnitude, const UnitInfo& unit) {
  if (!std::isfinite(magnitude)) return *exact_prefix(unit.symbol, unit);
  const auto choices = prefixes_of(unit);
  for (std::size_t i = choices.size(); i-- > 1;) {
    const double least = choices[i].sign.empty() ? 0.099995 : 0.99995;
    if (scaled(magnitude, choices[i]) >= least) return choices[i];
  }
  return choices.front();
}

std::string write(double min, double max, const UnitInfo& unit) {
  const Prefix& prefix = prefix_for(std::max(std::abs(min), std::abs(max)), unit);
  const std::string low = digits(scaled(min, prefix));
  const std::string high = digits(scaled(max, prefix));
  if (low == "0" && high == "0") return verbatim("0 {}", unit.symbol);
  if (low == high) return verbatim("{} {}{}", low, prefix.sign, unit.symbol);
  return verbatim("{}..{} {}{}", low, high, prefix.sign, unit.symbol);
}

}  // namespace

template <class Q>
Parsed<Q> parse_quantity(std::string_view text) {
  const Read result = read(text, unit_of<Q>(), false);
  if (const auto* fault = std::get_if<Fault>(&result)) return *fault;
  return Q(std::get<Ends>(result).min);
}

template <class Q>
Parsed<Range<Q>> parse_range(std::string_view text) {
  const Read result = read(text, unit_of<Q>(), true);
  if (const auto* fault = std::get_if<Fault>(&result)) return *fault;
  return Range<Q>{Q(std::get<Ends>(result).min), Q(std::get<Ends>(result).max)};
}

template <class Q>
std::string to_text(Q value) {
  return write(value.value, value.value, unit_of<Q>());
}

template <class Q>
std::string to_text(Range<Q> range) {
  return write(range.min.value, range.max.value, unit_of<Q>());
}

#define PLUGWARD_INSTANTIATE(Q)                               \
  template Parsed<Q> parse_quantity<Q>(std::string_view);     \
  template Parsed<Range<Q>> parse_range<Q>(std::string_view); \
  template std::string to_text<Q>(Q);                         \
  template std::string to_text<Q>(Range<Q>);
PLUGWARD_INSTANTIATE(Volts)
PLUGWARD_INSTANTIATE(Amps)
PLUGWARD_INSTANTIATE(Ohms)
PLUGWARD_INSTANTIATE(Watts)
PLUGWARD_INSTANTIATE(Millimetres)
PLUGWARD_INSTANTIATE(SquareMillimetres)
PLUGWARD_INSTANTIATE(Celsius)
PLUGWARD_INSTANTIATE(Kelvins)
#undef PLUGWARD_INSTANTIATE

}  // namespace plugward
