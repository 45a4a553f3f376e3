// SPDX-License-Identifier: MIT
// Which elements are open at a place in a text that is not well-formed. Runs only when an error is told.
#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace plugward {

struct OpenTag {
  std::string_view name;
  std::size_t at = 0;  ///< offset of the name
};

/// The elements that are open just before `offset`, outermost first. Good guesses for broken text.
std::vector<OpenTag> open_tags(std::string_view text, std::size_t offset);

}  // namespace plugward
