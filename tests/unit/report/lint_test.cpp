// SPDX-License-Identifier: MIT
#include "report/lint.h"

#include <doctest/doctest.h>

#include <utility>

namespace plugward {
namespace {

/// A board with one unknown pin, a harness, a file with one error and one warning, a family file.
struct Linted {
  Linted() {
    LintedFile board{sources.add("b.xml", "<board/>"), {}};
    board.description.board = std::make_unique<Board>();
    board.description.board->id = "b";
    board.description.board->headers.resize(1);
    board.description.board->headers[0].pins.resize(2);
    board.description.board->headers[0].pins[0].function = PinFunction::Ground;
    LintedFile harness{sources.add("h.xml", "<harness/>"), {}};
    harness.description.harness = std::make_unique<Harness>();
    harness.description.harness->id = "h";
    harness.description.harness->devices.resize(1);
    harness.description.harness->plugs.resize(2);
    LintedFile bad{sources.add("x.xml", "<bord/>"), {}};
    diagnostics.add(Rule::WrongRoot, {bad.file, 1, 5}, "unknown root 'bord'").help("did you mean 'board'?");
    diagnostics.add(Rule::NoEvidence, {bad.file, 0, 7}, "no evidence").note({board.file, 0, 8}, "as here");
    LintedFile families{sources.add("f.xml", "<families/>"), {}};
    families.description.families = true;
    files.push_back(std::move(board));
    files.push_back(std::move(harness));
    files.push_back(std::move(bad));
    files.push_back(std::move(families));
  }

  Sources sources;
  Diagnostics diagnostics;
  std::vector<LintedFile> files;
};

}  // namespace

TEST_CASE("lint as text: a line a file") {
  const Linted linted;
  CHECK(lint_text(linted.sources, linted.files, linted.diagnostics) ==
        "b.xml: board 'b': 1 header, 2 pins, 1 not known\n"
        "h.xml: harness 'h': 2 plugs, 0 leads, 1 device\n"
        "x.xml: 1 error\n"
        "f.xml: connector families\n");
}

TEST_CASE("lint as JSON, whole") {
  const Linted linted;
  CHECK(lint_json(linted.sources, linted.files, linted.diagnostics) == R"({
  "format": "plugward-lint",
  "version": 1,
  "files": [
    {
      "file": "b.xml",
      "kind": "board",
      "errors": 0,
      "warnings": 0
    },
    {
      "file": "h.xml",
      "kind": "harness",
      "errors": 0,
      "warnings": 0
    },
    {
      "file": "x.xml",
      "kind": null,
      "errors": 1,
      "warnings": 1
    },
    {
      "file": "f.xml",
      "kind": "families",
      "errors": 0,
      "warnings": 0
    }
  ],
  "diagnostics": [
    {
      "rule": "wrong-root",
      "severity": "error",
      "message": "unknown root 'bord'",
      "place": {
        "file": "x.xml",
        "line": 1,
        "column": 2,
        "end_line": 1,
        "end_column": 6
      },
      "notes": [],
      "helps": [
        "did you mean 'board'?"
      ]
    },
    {
      "rule": "no-evidence",
      "severity": "warning",
      "message": "no evidence",
      "place": {
        "file": "x.xml",
        "line": 1,
        "column": 1,
        "end_line": 1,
        "end_column": 8
      },
      "notes": [
        {
          "message": "as here",
          "place": {
            "file": "b.xml",
            "line": 1,
            "column": 1,
            "end_line": 1,
            "end_column": 9
          }
        }
      ],
      "helps": []
    }
  ]
}
)");
}

}  // namespace plugward
