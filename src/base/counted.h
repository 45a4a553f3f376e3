// SPDX-License-Identifier: MIT
// A count with its noun, by the rule of the language that is spoken.
//
//   counted(1, "{} plug", "{} plugs")      // "1 plug"
//   counted(3, "{} plug", "{} plugs")      // "3 plugs"
#pragma once

#include "base/format.h"

namespace plugward {

template <std::integral Count>
std::string counted(Count n, fmt::format_string<Count&> one, fmt::format_string<Count&> many) {
  return count_of<Count&>(n, one, many, n);
}

}  // namespace plugward
