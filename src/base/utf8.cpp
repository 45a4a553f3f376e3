// SPDX-License-Identifier: MIT
#include "base/utf8.h"

#include <cstdint>
#include <cstring>

namespace plugward {

std::optional<std::size_t> first_invalid_utf8(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  std::size_t i = 0;
  while (i < text.size()) {
    // Eight ASCII bytes at a time: descriptions are nearly all ASCII.
    std::uint64_t eight = 0;
    while (i + 8 <= text.size()) {
      std::memcpy(&eight, text.data() + i, 8);
      if ((eight & 0x8080808080808080U) != 0) break;
      i += 8;
    }
    if (i >= text.size()) break;
    const unsigned char lead = byte(i);
    if (lead < 0x80) {
      ++i;
      continue;
    }
    const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
    if (lead < 0xC2 || lead > 0xF4) return i;
    for (std::size_t k = 1; k <= more; ++k) {
      if (i + k >= text.size() || (byte(i + k) & 0xC0) != 0x80) return i;
    }
    const unsigned char second = byte(i + 1);
    const bool overlong = (lead == 0xE0 && second < 0xA0) || (lead == 0xF0 && second < 0x90);
    const bool surrogate = lead == 0xED && second >= 0xA0;
    const bool beyond = lead == 0xF4 && second >= 0x90;
    if (overlong || surrogate || beyond) return i;
    i += more + 1;
  }
  return std::nullopt;
}

std::size_t count_code_points(std::string_view text) {
  std::size_t count = 0;
  for (char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) ++count;
  }
  return count;
}

std::string printable(std::string_view text) {
  std::string shown;
  for (;;) {
    const std::size_t valid = first_invalid_utf8(text).value_or(text.size());
    for (const char c : text.substr(0, valid)) {
      const auto byte = static_cast<unsigned char>(c);
      shown += (byte < 0x20 && c != '\n') || byte == 0x7F ? '?' : c;
    }
    if (valid == text.size()) return shown;
    shown += '?';
    text.remove_prefix(valid + 1);
  }
}

}  // namespace plugward
