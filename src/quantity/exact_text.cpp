// SPDX-License-Identifier: MIT
// The text that reads best is tried first, then ever more decimals with every prefix: the first that is read
// back equal is taken. At most 6 x 14 readings for a value that no short text gives; others take one.
#include "quantity/exact_text.h"

#include "base/format.h"
#include "quantity/unit_table.h"

namespace plugward {
namespace {

constexpr std::size_t most_characters = 15;  // of one number that parse_quantity takes
constexpr int most_decimals = 13;            // "0." and as many

/// `value` with `decimals` behind the point, without trailing zeros.
std::string rounded(double value, int decimals) {
  std::string text = verbatim("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    while (text.ends_with('0')) text.pop_back();
    if (text.ends_with('.')) text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

template <class Unit>
const UnitInfo& info_of(Quantity<Unit>) {
  return *find_unit(Unit::symbol);
}

template <class Q>
bool reads_as(const std::string& text, Range<Q> wanted) {
  const Parsed<Range<Q>> parsed = parse_range<Q>(text);
  const auto* read = std::get_if<Range<Q>>(&parsed);
  return read != nullptr && *read == wanted;
}

/// The number with the fewest decimals that is read back equal; "" when all of them get too long.
template <class Q>
std::string shortest(Q value, double number, const std::string& unit) {
  for (int decimals = 0; decimals <= most_decimals; ++decimals) {
    std::string text = rounded(number, decimals);
    if (text.size() > most_characters) continue;
    const Parsed<Q> parsed = parse_quantity<Q>(verbatim("{} {}", text, unit));
    const Q* read = std::get_if<Q>(&parsed);
    if (read != nullptr && *read == value) return text;
  }
  return "";
}

/// "" when the numbers get too long.
std::string numbers_text(double min, double max, int decimals, std::string_view unit) {
  const std::string low = rounded(min, decimals), high = rounded(max, decimals);
  if (low.size() > most_characters || high.size() > most_characters) return "";
  return low == high ? verbatim("{} {}", low, unit) : verbatim("{}..{} {}", low, high, unit);
}

}  // namespace

template <class Q>
std::string exact_text(Range<Q> range) {
  std::string best = to_text(range);
  if (reads_as(best, range)) return best;
  const UnitInfo& unit = info_of(Q{});
  for (int decimals = 0; decimals <= most_decimals; ++decimals) {
    const std::string plain = numbers_text(range.min.value, range.max.value, decimals, unit.symbol);
    if (!plain.empty()) best = plain;
    if (reads_as(best, range)) return best;
  }
  for (int decimals = 0; decimals <= most_decimals; ++decimals) {
    for (const Prefix& prefix : prefixes_of(unit)) {
      const std::string sign = verbatim("{}{}", prefix.sign, unit.symbol);
      const std::string text = numbers_text(range.min.value / prefix.times * prefix.over,
                                            range.max.value / prefix.times * prefix.over, decimals, sign);
      if (!text.empty() && reads_as(text, range)) return text;
    }
  }
  // A very small and a very large end: each with the decimals that it needs.
  for (const Prefix& prefix : prefixes_of(unit)) {
    const std::string sign = verbatim("{}{}", prefix.sign, unit.symbol);
    const std::string low = shortest(range.min, range.min.value / prefix.times * prefix.over, sign);
    const std::string high = shortest(range.max, range.max.value / prefix.times * prefix.over, sign);
    const std::string text = verbatim("{}..{} {}", low, high, sign);
    if (!low.empty() && !high.empty() && reads_as(text, range)) return text;
  }
  return best;
}

template <class Q>
std::string exact_text(Q value) {
  return exact_text(Range<Q>::at(value));
}

#define PLUGWARD_INSTANTIATE(Q)          \
  template std::string exact_text<Q>(Q); \
  template std::string exact_text<Q>(Range<Q>);
PLUGWARD_INSTANTIATE(Volts)
PLUGWARD_INSTANTIATE(Amps)
PLUGWARD_INSTANTIATE(Ohms)
PLUGWARD_INSTANTIATE(Watts)
PLUGWARD_INSTANTIATE(Millimetres)
PLUGWARD_INSTANTIATE(SquareMillimetres)
PLUGWARD_INSTANTIATE(Kelvins)
#undef PLUGWARD_INSTANTIATE

std::string exact_text(const Gauge& gauge) {
  return gauge.awg ? to_text(gauge) : exact_text(gauge.area);
}

std::string percent_text(double share) {
  return verbatim("{} %", rounded(share * 100.0, 6));
}

std::string share_text(double share) {
  return rounded(share, 6);
}

}  // namespace plugward
