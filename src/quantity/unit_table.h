// SPDX-License-Identifier: MIT
// How each unit is written, and what people write instead. Used by quantity.cpp only.
//
//   exact_prefix("kohm", *find_unit("ohm"))  the prefix k
//   meant_unit("KOhms", *find_unit("ohm"))   "kohm", for the fault
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace plugward {

struct UnitInfo {
  std::string_view symbol;
  std::string_view what;     ///< "a voltage"
  std::string_view example;  ///< "24 V"
  bool prefixed = false;     ///< takes u m k M
};

struct Prefix {
  std::string_view sign;   ///< "" for none
  std::string_view other;  ///< another spelling
  double times = 1.0;      ///< a number with it means number x times / over
  double over = 1.0;
};

std::span<const UnitInfo> all_units();
const UnitInfo* find_unit(std::string_view symbol);

/// Smallest first; only the empty one for a unit that takes none.
std::span<const Prefix> prefixes_of(const UnitInfo&);

/// The prefix of a unit text written exactly, or nullptr.
const Prefix* exact_prefix(std::string_view text, const UnitInfo&);

/// What a sloppily written unit must mean ("v", "KOhm", "mAmps"), or "". The prefix as it is written goes
/// before one in the other case, so that "mv" is a millivolt and "MOHM" a megaohm.
std::string meant_unit(std::string_view text, const UnitInfo&);

}  // namespace plugward
