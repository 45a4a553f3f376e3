// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/json_test.cpp.
#include "report/json.h"

#include <cmath>
#include <cstdlib>

#include "base/format.h"

namespace plugward {

std::string json_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json text_or_null(std::string_view text) {
  return text.empty() ? Json(nullptr) : Json(std::string(text));
}

Json number_or_null(std::optional<double> value) {
  if (!value || !std::isfinite(*value)) return nullptr;
  return std::strtod(format("{:.6g}", *value).c_str(), nullptr);
}

Json place(const Sources& sources, Span span) {
  if (!span.known() || sources.file(span.file).in_words) return nullptr;
  const LineColumn begin = line_column(sources, span.file, span.begin);
  const LineColumn end = line_column(sources, span.file, span.end);
  Json json;
  json["file"] = sources.file(span.file).path;
  json["line"] = begin.line;
  json["column"] = begin.column;
  json["end_line"] = end.line;
  json["end_column"] = end.column;
  return json;
}

}  // namespace plugward
