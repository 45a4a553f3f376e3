// SPDX-License-Identifier: MIT
// A count with its noun.
//
//   counted(1, "plug")      // "1 plug"
//   counted(3, "plug")      // "3 plugs"
#pragma once

#include <concepts>
#include <string>
#include <string_view>

#include "base/format.h"

namespace plugward {

std::string counted(std::integral auto n, std::string_view one) {
  return format("{} {}{}", n, one, n == 1 ? "" : "s");
}

}  // namespace plugward
