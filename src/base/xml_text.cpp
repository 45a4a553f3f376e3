// SPDX-License-Identifier: MIT
// Tested through its users: tests/unit/model/loom_test.cpp and tests/unit/draw/canvas_test.cpp.
#include "base/xml_text.h"

namespace plugward {

std::string xml_escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

}  // namespace plugward
