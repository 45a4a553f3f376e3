// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/work_test.cpp and way_back_test.cpp.
#include "plan/power_in.h"

#include "base/format.h"

namespace plugward {
namespace {

const Header& header_at_index(const Board& board, int header) {
  return board.headers[static_cast<std::size_t>(header)];
}

int pin_with(const Header& header, PinFunction function) {
  for (const Pin& pin : header.pins) {
    if (pin.function == function) return pin.number;
  }
  return 0;
}

/// "pin 1 (+)".
std::string pin_words(const Header& header, int pin) {
  const std::string& label = header.pin(pin).label;
  return label.empty() ? format("pin {}", pin) : format("pin {} ({})", pin, label);
}

}  // namespace

int power_header(const Board& board) {
  for (std::size_t h = 0; h < board.headers.size(); ++h) {
    if (board.headers[h].use == "supply" && pin_with(board.headers[h], PinFunction::Supply) > 0)
      return static_cast<int>(h);
  }
  return -1;
}

std::string landing_words(const Board& board, int header) {
  const Header& h = header_at_index(board, header);
  const int minus = pin_with(h, PinFunction::Ground);
  const std::string plus = format("plus on {}", pin_words(h, pin_with(h, PinFunction::Supply)));
  return minus == 0 ? plus : format("{}, minus on {}", plus, pin_words(h, minus));
}

std::string landing_caution(const Board& before, const Board& now, const std::string& was) {
  const int from = power_header(before), to = power_header(now);
  if (from < 0 || to < 0) return "";
  const int old_pin = pin_with(header_at_index(before, from), PinFunction::Supply);
  const int pin = pin_with(header_at_index(now, to), PinFunction::Supply);
  if (old_pin == pin) return "";
  return format("{} on pin {} of {}, here it is on pin {}", was, old_pin, header_at_index(before, from).id,
                pin);
}

}  // namespace plugward
