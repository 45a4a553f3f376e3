// SPDX-License-Identifier: MIT
// The one place that names the formatting library.
//
//   format("{} of {}", 3, name)
#pragma once

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace plugward {

using fmt::format;
using fmt::join;
using fmt::runtime;

}  // namespace plugward
