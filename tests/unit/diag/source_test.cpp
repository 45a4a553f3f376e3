// SPDX-License-Identifier: MIT
#include "diag/source.h"

#include <doctest/doctest.h>

#include <array>
#include <string>

using plugward::FileId;
using plugward::line_at;
using plugward::line_column;
using plugward::place_name;
using plugward::Sources;
using plugward::Span;

TEST_CASE("line and column of an offset") {
  struct Row {
    const char* name;
    std::string_view text;
    std::uint32_t offset;
    int line, column;
    std::string_view shown;  // the line's text
  };
  constexpr std::array rows{
      Row{"empty file", "", 0, 1, 1, ""},
      Row{"first byte", "ab\ncd\n", 0, 1, 1, "ab"},
      Row{"the line end belongs to its line", "ab\ncd\n", 2, 1, 3, "ab"},
      Row{"first byte of the second line", "ab\ncd\n", 3, 2, 1, "cd"},
      Row{"after the last line end", "ab\ncd\n", 6, 3, 1, ""},
      Row{"beyond the end", "ab\ncd", 99, 2, 3, "cd"},
      Row{"empty lines", "\n\n\nx", 2, 3, 1, ""},
      Row{"a tab counts one", "\t\tx", 2, 1, 3, "\t\tx"},
      Row{"CRLF", "ab\r\ncd\r\n", 5, 2, 2, "cd"},
      Row{"at CR", "ab\r\ncd", 2, 1, 3, "ab"},
      Row{"at LF of CRLF", "ab\r\ncd", 3, 1, 4, "ab"},
      Row{"CR alone ends no line", "a\rb\nc", 2, 1, 3, "a\rb"},
      Row{"two bytes count one",
          "\xC3\xBC"
          "b",
          2, 1, 2,
          "\xC3\xBC"
          "b"},
      Row{"four bytes count one",
          "x\xF0\x9F\x94\x8C"
          "b",
          5, 1, 3,
          "x\xF0\x9F\x94\x8C"
          "b"},
      Row{"multibyte on the line before", "\xC3\xBC\xC3\xBC\nab", 6, 2, 2, "ab"},
      Row{"a byte-order mark counts nothing", "\xEF\xBB\xBF<a>", 4, 1, 2, "<a>"},
      Row{"inside the byte-order mark", "\xEF\xBB\xBF<a>", 1, 1, 1, "<a>"},
      Row{"second line after a byte-order mark",
          "\xEF\xBB\xBF"
          "a\nb",
          5, 2, 1, "b"},
      Row{"byte-order mark alone", "\xEF\xBB\xBF", 3, 1, 1, ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Sources sources;
    const FileId file = sources.add("a.xml", std::string(row.text));
    const auto place = line_column(sources, file, row.offset);
    CHECK(place.line == row.line);
    CHECK(place.column == row.column);
    CHECK(line_at(sources, file, row.offset).text == row.shown);
  }
}

TEST_CASE("where a line begins") {
  Sources sources;
  const FileId file = sources.add("a.xml",
                                  "\xEF\xBB\xBF"
                                  "ab\r\ncd");
  CHECK(line_at(sources, file, 4).begin == 3);
  CHECK(line_at(sources, file, 8).begin == 7);
}

TEST_CASE("texts stay where they are when more are added") {
  Sources sources;
  const FileId first = sources.add("first.xml", "short");
  const char* const bytes = sources.file(first).text.data();
  for (int i = 0; i < 1000; ++i) sources.add("more.xml", "more");
  CHECK(sources.size() == 1001);
  CHECK(sources.file(first).text.data() == bytes);
  CHECK(sources.file(first).path == "first.xml");
}

TEST_CASE("the bytes and the name of a place") {
  Sources sources;
  const FileId file = sources.add("boards/m7.xml", "<board>\n\t<pin/>\n</board>\n");
  const Span pin{file, 10, 13};
  CHECK(sources.text(pin) == "pin");
  CHECK(place_name(sources, pin) == "boards/m7.xml:2:3");
  CHECK(sources.text(Span{}) == "");
  CHECK(place_name(sources, Span{}) == "");
  CHECK(!Span{}.known());
}
