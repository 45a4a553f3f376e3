// SPDX-License-Identifier: MIT
// UTF-8 by hand, no locale: is it valid, how many code points, where is the fault, what of it can be shown.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace plugward {

/// Byte offset of the first byte that is not valid UTF-8 (RFC 3629: no overlong forms, no surrogates,
/// nothing above U+10FFFF), or nothing when all of `text` is valid.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);

/// Number of code points in `text`. REQUIRES: valid UTF-8 (an invalid byte counts as one).
std::size_t count_code_points(std::string_view text);

/// What a terminal and a page can show: a '?' for every control character but the newline, and for every byte
/// that is not valid UTF-8.
std::string printable(std::string_view text);

}  // namespace plugward
