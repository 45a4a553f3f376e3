// SPDX-License-Identifier: MIT
// Tested through parse_quantity in tests/unit/quantity/quantity_test.cpp.
#include "quantity/unit_table.h"

#include <algorithm>
#include <array>

#include "base/format.h"

namespace plugward {
namespace {

constexpr auto units = std::to_array<UnitInfo>({
    {"V", "a voltage", "24 V", true},
    {"A", "a current", "0.5 A", true},
    {"ohm", "a resistance", "4.7 kohm", true},
    {"W", "a power", "40 W", true},
    {"mm", "a length", "60 mm", false},
    {"mm2", "a cross-section", "0.14 mm2", false},
    {"C", "a temperature", "25 C", false},
    {"K", "a B constant", "3950 K", false},
});

/// Other spellings that people use, to name the right one in the fault.
struct Spelling {
  std::string_view symbol;
  std::string_view other;
};

constexpr auto spellings = std::to_array<Spelling>({
    {"V", "volt"},
    {"V", "volts"},
    {"A", "amp"},
    {"A", "amps"},
    {"A", "ampere"},
    {"ohm", "ohms"},
    {"ohm", "\xCE\xA9"},      // Greek capital omega
    {"ohm", "\xE2\x84\xA6"},  // ohm sign
    {"W", "watt"},
    {"W", "watts"},
    {"mm2", "mm^2"},
    {"mm2", "mm\xC2\xB2"},  // superscript two
    {"C", "\xC2\xB0\x43"},  // degree sign and C
    {"C", "degC"},
});

constexpr auto prefixes = std::to_array<Prefix>({
    {"u", "\xC2\xB5", 1.0, 1e6},
    {"m", "", 1.0, 1e3},
    {"", "", 1.0, 1.0},
    {"k", "", 1e3, 1.0},
    {"M", "", 1e6, 1.0},
});
constexpr auto no_prefix = std::to_array<Prefix>({{"", "", 1.0, 1.0}});

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

}  // namespace

std::span<const UnitInfo> all_units() {
  return units;
}

const UnitInfo* find_unit(std::string_view symbol) {
  const auto found =
      std::find_if(units.begin(), units.end(), [&](const UnitInfo& unit) { return unit.symbol == symbol; });
  return found == units.end() ? nullptr : &*found;
}

std::span<const Prefix> prefixes_of(const UnitInfo& unit) {
  if (unit.prefixed) return prefixes;
  return no_prefix;
}

const Prefix* exact_prefix(std::string_view text, const UnitInfo& unit) {
  for (const Prefix& prefix : prefixes_of(unit)) {
    if (text.size() == prefix.sign.size() + unit.symbol.size() && text.starts_with(prefix.sign) &&
        text.ends_with(unit.symbol)) {
      return &prefix;
    }
  }
  return nullptr;
}

std::string meant_unit(std::string_view text, const UnitInfo& unit) {
  const auto names_unit = [&](std::string_view name) {
    if (lower(name) == lower(unit.symbol)) return true;
    return std::any_of(spellings.begin(), spellings.end(), [&](const Spelling& spelling) {
      return spelling.symbol == unit.symbol && lower(name) == lower(spelling.other);
    });
  };
  for (const bool any_case : {false, true}) {
    for (const Prefix& prefix : prefixes_of(unit)) {
      for (const std::string_view sign : {prefix.sign, prefix.other}) {
        const std::string_view begin = text.substr(0, sign.size());
        const bool same = any_case ? lower(begin) == lower(sign) : begin == sign;
        if (same && sign.empty() == prefix.sign.empty() && names_unit(text.substr(sign.size()))) {
          return verbatim("{}{}", prefix.sign, unit.symbol);
        }
      }
    }
  }
  return "";
}

}  // namespace plugward
