// SPDX-License-Identifier: MIT
#include "report/json.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

namespace plugward {

TEST_CASE("json: members keep their order, bad bytes are replaced, a line end stands last") {
  Json json;
  json["z"] = 1;
  json["a"] = "\xFF\"";
  CHECK(json_text(json) == "{\n  \"z\": 1,\n  \"a\": \"\xEF\xBF\xBD\\\"\"\n}\n");
}

TEST_CASE("json: numbers have six digits and are finite") {
  CHECK(number_or_null(0.1 + 0.2).dump() == "0.3");
  CHECK(number_or_null(-24.0).dump() == "-24.0");
  CHECK(number_or_null(1.0 / 3.0).dump() == "0.333333");
  CHECK(number_or_null(std::nullopt).dump() == "null");
  CHECK(number_or_null(std::numeric_limits<double>::infinity()).dump() == "null");
  CHECK(number_or_null(std::nan("")).dump() == "null");
}

TEST_CASE("json: places and empty texts") {
  Sources sources;
  const FileId file = sources.add("a.xml", "<a>\n<b x=\"1\"/>\n</a>");
  CHECK(place(sources, {file, 4, 14}).dump() ==
        R"({"file":"a.xml","line":2,"column":1,"end_line":2,"end_column":11})");
  CHECK(place(sources, {}).dump() == "null");
  CHECK(text_or_null("").dump() == "null");
  CHECK(text_or_null("x").dump() == "\"x\"");
}

}  // namespace plugward
