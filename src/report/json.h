// SPDX-License-Identifier: MIT
// The one place that names the JSON library. Members stand in the order in which they were put in.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "diag/source.h"

namespace plugward {

using Json = nlohmann::ordered_json;

/// Two blanks of indent, ending in a line end. Bytes that are not UTF-8 become U+FFFD.
std::string json_text(const Json&);

/// A string, or null when it is empty: "not stated" is never an empty string.
Json text_or_null(std::string_view);

/// Six significant digits, so that equal results give equal bytes; null when there is none or it is not
/// finite.
Json number_or_null(std::optional<double>);

/// {"file", "line", "column", "end_line", "end_column"}; null when the span is not known. Lines and columns
/// from 1, columns in code points, the end one past the last.
Json place(const Sources&, Span);

}  // namespace plugward
