// SPDX-License-Identifier: MIT
// What must hold of a file's bytes before they are read as XML: size, encoding, characters, XML declaration.
//
//   const std::optional<std::size_t> body = check_text(sources, id, limits, diagnostics);
//   if (!body) return;   // one diagnostic was added
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "diag/diagnostic.h"
#include "diag/source.h"
#include "reader/limits.h"

namespace plugward {

/// Where the document begins behind a byte-order mark; nothing (and one diagnostic) when it cannot be read.
std::optional<std::size_t> check_text(const Sources&, FileId, const ReaderLimits&, Diagnostics&);

/// Why a text is not what XML asks for, and which bytes are at fault.
struct TextFault {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string message;
  std::string help;
};

/// The first reference in `raw` (an attribute's value as written, without its quotes) that XML 1.0 does not
/// know: an entity other than lt gt amp quot apos, a lonely '&', a character that XML does not have.
/// A reference to a line break or tab is refused as well: every value is one line.
std::optional<TextFault> check_references(std::string_view raw);

}  // namespace plugward
