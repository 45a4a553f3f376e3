// SPDX-License-Identifier: MIT
// The plain form of a quantity, "24 V" or "4.75..5.25 V" or "20 mA", read without ceremony. Whatever looks
// different in any way is left to parse_quantity() and parse_range(), which know why it is wrong. What is
// read here is read to the same double; a test proves it. It exists because two thirds of a board file's
// attributes are such values.
//
//   quick_quantity("4.7 kohm", "ohm", false)  holds {4700, 4700}
//   quick_quantity("4.7 kOhm", "ohm", false)  holds nothing: ask parse_quantity()
#pragma once

#include <optional>
#include <string_view>

namespace plugward {

struct QuickRange {
  double min = 0.0;
  double max = 0.0;
};

std::optional<QuickRange> quick_quantity(std::string_view text, std::string_view symbol, bool range_wanted);

}  // namespace plugward
