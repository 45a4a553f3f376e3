// SPDX-License-Identifier: MIT
#include "base/utf8.h"

#include <doctest/doctest.h>

#include <array>
#include <optional>
#include <string>

using plugward::count_code_points;
using plugward::first_invalid_utf8;
using plugward::printable;

TEST_CASE("where a text stops being UTF-8") {
  struct Row {
    const char* name;
    std::string_view text;
    std::optional<std::size_t> fault;
  };
  // The sequences are those of RFC 3629 section 4 (first and last of each row, and just beyond).
  constexpr std::array rows{
      Row{"empty", "", {}},
      Row{"ASCII, longer than eight bytes", "a plain line of text", {}},
      Row{"first of two bytes", "\xC2\x80", {}},
      Row{"last of two bytes", "\xDF\xBF", {}},
      Row{"first of three bytes", "\xE0\xA0\x80", {}},
      Row{"before the surrogates", "\xED\x9F\xBF", {}},
      Row{"after the surrogates", "\xEE\x80\x80", {}},
      Row{"first of four bytes", "\xF0\x90\x80\x80", {}},
      Row{"U+10FFFF", "\xF4\x8F\xBF\xBF", {}},
      Row{"byte-order mark", "\xEF\xBB\xBFx", {}},
      Row{"stray follower", "ab\x80", 2},
      Row{"overlong slash", "\xC0\xAF", 0},
      Row{"overlong, C1", "a\xC1\xBF", 1},
      Row{"overlong, three bytes", "\xE0\x9F\xBF", 0},
      Row{"overlong, four bytes", "\xF0\x8F\xBF\xBF", 0},
      Row{"surrogate", "\xED\xA0\x80", 0},
      Row{"beyond U+10FFFF", "\xF4\x90\x80\x80", 0},
      Row{"F5", "\xF5\x80\x80\x80", 0},
      Row{"cut off after one of two", "x\xC3", 1},
      Row{"cut off after two of three", "\xE2\x82", 0},
      Row{"cut off after three of four", "\xF0\x9F\x94", 0},
      Row{"Latin-1 u umlaut, after eight bytes", "label=\"L\xFC\x66ter\"", 8},
      Row{"fault after a long valid run",
          "0123456789abcdef\xC3\xA4"
          "0123456789\xFF",
          28},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(first_invalid_utf8(row.text) == row.fault);
  }
}

TEST_CASE("every byte sequence of up to two bytes is judged as RFC 3629 says") {
  int wrong = 0;
  for (int a = 0; a < 256; ++a) {
    for (int b = 0; b < 256; ++b) {
      const std::string text{static_cast<char>(a), static_cast<char>(b)};
      const bool pair = a >= 0xC2 && a <= 0xDF && b >= 0x80 && b <= 0xBF;
      const bool valid = pair || (a < 0x80 && b < 0x80);
      wrong += first_invalid_utf8(text).has_value() == valid;
    }
  }
  CHECK(wrong == 0);
}

TEST_CASE("code points are counted, not bytes") {
  CHECK(count_code_points("") == 0);
  CHECK(count_code_points("pin") == 3);
  CHECK(count_code_points("L\xC3\xBC"
                          "fter") == 6);
  CHECK(count_code_points("4.7 k\xCE\xA9") == 6);
  CHECK(count_code_points("\xF0\x9F\x94\x8C") == 1);
}

TEST_CASE("what cannot be shown becomes question marks") {
  CHECK(printable("") == "");
  CHECK(printable("Lüfter 4.7 kΩ\n") == "Lüfter 4.7 kΩ\n");
  CHECK(printable("\x1B[31mred\x7F\t\r") == "?[31mred???");
  CHECK(printable("\xFF\xC3 \xE2\x82") == std::string(2, '?') + ' ' + std::string(2, '?'));
}
