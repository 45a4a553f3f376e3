// SPDX-License-Identifier: MIT
#include "report/lint.h"

#include <doctest/doctest.h>

#include <utility>

namespace plugward {
namespace {

/// A board with one unknown pin, a harness, a file with one error and one warning, a family file.
struct Linted {
  Linted() {
    Description board;
    board.board = std::make_unique<Board>();
    board.board->id = "b";
    board.board->headers.resize(1);
    board.board->headers[0].pins.resize(2);
    board.board->headers[0].pins[0].function = PinFunction::Ground;
    Description harness;
    harness.harness = std::make_unique<Harness>();
    harness.harness->id = "h";
    harness.harness->devices.resize(1);
    harness.harness->plugs.resize(2);
    Description families;
    families.families = true;
    files.push_back(linted(sources.add("b.xml", "<board/>"), board));
    files.push_back(linted(sources.add("h.xml", "<harness/>"), harness));
    files.push_back(linted(sources.add("x.xml", "<bord/>"), {}));
    files.push_back(linted(sources.add("f.xml", "<families/>"), families));
    const FileId bad = files[2].file;
    diagnostics.add(Rule::WrongRoot, {bad, 1, 5}, "unknown root 'bord'").help("did you mean 'board'?");
    diagnostics.add(Rule::NoEvidence, {bad, 0, 7}, "no evidence").note({files[0].file, 0, 8}, "as here");
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

namespace {

/// A loom with one plug on a header, one loose and one that is not mentioned, and what was found about it.
struct LintedLoom {
  LintedLoom() {
    const FileId file = sources.add("l.xml", "<loom id='w'/> a/p b/p");
    const FileId other = sources.add("h.xml", "<harness/>");
    Description one;
    one.loom = std::make_unique<Loom>();
    one.loom_files = std::make_unique<LoomFiles>();
    Loom& loom = *one.loom;
    loom.id = "w";
    loom.span = {file, 0, 14};
    loom.id_span = {file, 10, 11};
    loom.harnesses.resize(1);
    loom.seats.resize(2);
    loom.seats[0].state = SeatState::OnHeader;
    loom.seats[0].header = "J1";
    loom.seats[0].plug_span = {file, 15, 18};
    loom.seats[1].state = SeatState::Loose;
    board.headers.resize(1);
    board.headers[0].id = "J1";
    harness.plugs.resize(3);
    one.loom_files->harnesses.push_back(harness);
    Assessment now;
    now.findings.push_back(finding(Rule::Overvoltage, Weight::Harm, "24 V on 'P'", {other, 0, 10}));
    now.findings.back().at.header = 0;
    now.findings.back().state = "switch closed";
    now.findings.push_back(finding(Rule::Assumed, Weight::Doubt, "that 'a/p' sits there", {file, 15, 18}));
    now.findings.back().measurement = Measurement{"look", "J1: fine", 0, ""};
    now.findings.push_back(finding(Rule::RailOverload, Weight::Fault, "2 A out of '5V'", {}));
    now.findings.push_back(finding(Rule::AlwaysOn, Weight::Note, "runs always", {other, 0, 10}));
    const Fitting fitting{&board, &harness, nullptr, {{0, 0}}, {}};
    lint_loom(loom, fitting, now, diagnostics);
    files.push_back(linted(file, one));
  }
  static Finding finding(Rule rule, Weight weight, std::string message, Span first) {
    Finding made;
    made.rule = rule;
    made.weight = weight;
    made.message = std::move(message);
    made.first = first;
    return made;
  }

  Sources sources;
  Board board;
  Harness harness;
  Diagnostics diagnostics;
  std::vector<LintedFile> files;
};

}  // namespace

TEST_CASE("a loom: its line, and what was found as warnings at its seats") {
  const LintedLoom linted;
  CHECK(lint_text(linted.sources, linted.files, linted.diagnostics) ==
        "l.xml: loom 'w': 1 harness, 1 plug on headers, 1 loose, 1 not known; as it stands: 3 warnings\n");
  REQUIRE(linted.diagnostics.all().size() == 3);
  const Diagnostic& harm = linted.diagnostics.all()[0];
  CHECK(harm.message == "as it stands, harm: 24 V on 'P' (when switch closed)");
  CHECK(harm.severity == Severity::Warning);
  CHECK(linted.sources.text(harm.span) == "a/p");
  REQUIRE(harm.notes.size() == 1);
  CHECK(harm.notes[0].message == "it is about this");
  const Diagnostic& doubt = linted.diagnostics.all()[1];
  CHECK(doubt.message == "as it stands, not known: that 'a/p' sits there");
  CHECK(doubt.notes.empty());
  CHECK(doubt.helps == std::vector<std::string>{"look: J1: fine"});
  const Diagnostic& fault = linted.diagnostics.all()[2];
  CHECK(fault.message == "as it stands, fault: 2 A out of '5V'");
  CHECK(linted.sources.text(fault.span) == "w");
  CHECK(!linted.diagnostics.has_errors());
}

}  // namespace plugward
