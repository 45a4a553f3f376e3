// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/tree_test.cpp.
#include "reader/tag_trail.h"

#include <algorithm>

namespace plugward {
namespace {

/// Offset behind the next `closing` at or after `from`; the end of the text when there is none.
std::size_t behind(std::string_view text, std::string_view closing, std::size_t from) {
  const std::size_t at = text.find(closing, from);
  return at == text.npos ? text.size() : at + closing.size();
}

/// Offset of the '>' that ends the tag, quoted values skipped.
std::size_t tag_end(std::string_view text, std::size_t at) {
  for (; at < text.size() && text[at] != '>'; ++at) {
    if (text[at] != '"' && text[at] != '\'') continue;
    at = text.find(text[at], at + 1);
    if (at == text.npos) return text.size();
  }
  return at;
}

}  // namespace

std::vector<OpenTag> open_tags(std::string_view whole, std::size_t offset) {
  const std::string_view text = whole.substr(0, offset);
  std::vector<OpenTag> open;
  for (std::size_t at = text.find('<'); at < text.size(); at = text.find('<', at)) {
    const std::string_view rest = text.substr(at);
    if (rest.starts_with("<!--")) {
      at = behind(text, "-->", at);
    } else if (rest.starts_with("<![CDATA[")) {
      at = behind(text, "]]>", at);
    } else if (rest.starts_with("<?")) {
      at = behind(text, "?>", at);
    } else if (rest.starts_with("</")) {
      const std::size_t end = tag_end(text, at);
      if (end < text.size() && !open.empty()) open.pop_back();
      at = end;
    } else {
      const std::size_t end = tag_end(text, at + 1);
      const std::size_t stop = std::min(text.find_first_of(" \t\r\n/>", at + 1), text.size());
      const bool complete = end < text.size();
      if (complete && text[end - 1] != '/') open.push_back({text.substr(at + 1, stop - at - 1), at + 1});
      at = end;
    }
  }
  return open;
}

}  // namespace plugward
