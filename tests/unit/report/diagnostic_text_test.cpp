// SPDX-License-Identifier: MIT
#include "report/diagnostic_text.h"

#include <doctest/doctest.h>

#include <string>

namespace plugward {
namespace {

struct Texts {
  Sources sources;
  Diagnostics diagnostics;

  FileId file(std::string path, std::string text) { return sources.add(std::move(path), std::move(text)); }
  std::string written(const DiagnosticTextOptions& options = {}) const {
    return diagnostics_text(sources, diagnostics, options);
  }
};

TEST_CASE("nothing at all when all is well") {
  CHECK(Texts().written() == "");
}

TEST_CASE("heading, excerpt, notes with their own excerpt, helps, summary") {
  Texts t;
  const FileId board = t.file("boards/b.xml", "<board>\n  <rail id=\"5V\"/>\n</board>\n");
  const FileId harness = t.file("h.xml", "first\n\tsecond 5v\n");
  t.diagnostics.add(Rule::UndeclaredReference, {harness, 14, 16}, "rail '5v' is not declared")
      .note({board, 20, 22}, "there is '5V'")
      .note({}, "a fact without a place")
      .help("did you mean '5V'?")
      .help("or nothing");
  t.diagnostics.add(Rule::NoEvidence, {board, 0, 7}, "a warning");
  CHECK(t.written() ==
        "h.xml:2:9: error: rail '5v' is not declared [undeclared-reference]\n"
        "\tsecond 5v\n"
        "\t       ^~\n"
        "boards/b.xml:2:13: note: there is '5V'\n"
        "  <rail id=\"5V\"/>\n"
        "            ^~\n"
        "note: a fact without a place\n"
        "help: did you mean '5V'?\n"
        "help: or nothing\n"
        "boards/b.xml:1:1: warning: a warning [no-evidence]\n"
        "<board>\n"
        "^~~~~~~\n"
        "1 error, 1 warning\n");
}

TEST_CASE("the caret stands under its code point, whatever stands before it") {
  struct Row {
    const char* name;
    std::string text;
    std::uint32_t begin;
    std::uint32_t end;
    const char* expected;
  };
  const Row rows[] = {
      {"empty span", "abc\n", 1, 1, "f:1:2: error: m [bad-id]\nabc\n ^\n"},
      {"code points of two, three and four bytes", "\xC3\xA4\xE2\x82\xAC\xF0\x9F\x94\x8Cx\n", 9, 10,
       "f:1:4: error: m [bad-id]\n\xC3\xA4\xE2\x82\xAC\xF0\x9F\x94\x8Cx\n   ^\n"},
      {"span of such code points", "a\xC3\xA4\xE2\x82\xACz", 1, 6,
       "f:1:2: error: m [bad-id]\na\xC3\xA4\xE2\x82\xACz\n ^~\n"},
      {"span over the end of the line", "ab\ncd\n", 1, 5, "f:1:2: error: m [bad-id]\nab\n ^\n"},
      {"end of the file", "ab", 2, 2, "f:1:3: error: m [bad-id]\nab\n  ^\n"},
      {"empty file", "", 0, 0, "f:1:1: error: m [bad-id]\n\n^\n"},
      {"byte-order mark", "\xEF\xBB\xBFx", 3, 4, "f:1:1: error: m [bad-id]\nx\n^\n"},
      {"Windows line end", "ab\r\ncd\r\n", 4, 6, "f:2:1: error: m [bad-id]\ncd\n^~\n"},
      {"control characters", "a\x1B[2Jb", 5, 6, "f:1:6: error: m [bad-id]\na?[2Jb\n     ^\n"},
      {"not UTF-8: no excerpt", "a\xFF", 1, 2, "f:1:2: error: m [bad-id]\n"},
      {"very long line: no excerpt", std::string(401, 'x'), 0, 1, "f:1:1: error: m [bad-id]\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Texts t;
    const FileId file = t.file("f", row.text);
    t.diagnostics.add(Rule::BadId, {file, row.begin, row.end}, "m");
    CHECK(t.written() == std::string(row.expected) + "1 error, 0 warnings\n");
  }
}

TEST_CASE("messages cannot carry control characters to a terminal") {
  Texts t;
  t.diagnostics.add(Rule::BadId, {}, "'\x1B[31m\n' is no id");
  CHECK(t.written() == "error: '?[31m?' is no id [bad-id]\n1 error, 0 warnings\n");
}

TEST_CASE("errors of one rule are capped, warnings and other rules are not") {
  Texts t;
  for (int i = 0; i < 4; ++i) {
    t.diagnostics.add(Rule::BadId, {}, "e");
    t.diagnostics.add(Rule::NoEvidence, {}, "w");
  }
  t.diagnostics.add(Rule::BadWord, {}, "x");
  DiagnosticTextOptions options;
  options.per_rule = 2;
  CHECK(t.written(options) ==
        "error: e [bad-id]\nwarning: w [no-evidence]\nerror: e [bad-id]\nwarning: w [no-evidence]\n"
        "warning: w [no-evidence]\nwarning: w [no-evidence]\nerror: x [bad-word]\n"
        "... and 2 more [bad-id]\n5 errors, 4 warnings\n");
  options.per_rule = 0;
  CHECK(t.written(options).find("more") == std::string::npos);
}

TEST_CASE("colour adds to the text and takes nothing away") {
  Texts t;
  const FileId file = t.file("f", "ab\n");
  t.diagnostics.add(Rule::BadId, {file, 0, 2}, "m").help("h");
  DiagnosticTextOptions options;
  options.colour = true;
  CHECK(t.written(options) ==
        "\x1b[1mf:1:1:\x1b[0m \x1b[1;31merror:\x1b[0m m [bad-id]\nab\n\x1b[1;32m^~\x1b[0m\n"
        "\x1b[1;36mhelp:\x1b[0m h\n1 error, 0 warnings\n");
}

}  // namespace
}  // namespace plugward
