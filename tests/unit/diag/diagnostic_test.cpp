// SPDX-License-Identifier: MIT
#include "diag/diagnostic.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using plugward::Diagnostic;
using plugward::Diagnostics;
using plugward::Rule;
using plugward::Severity;
using plugward::Span;

namespace {

std::vector<std::string> messages(const Diagnostics& diagnostics) {
  std::vector<std::string> result;
  for (const Diagnostic& diagnostic : diagnostics.all()) result.push_back(diagnostic.message);
  return result;
}

}  // namespace

TEST_CASE("a diagnostic is data with its notes and helps") {
  Diagnostics diagnostics;
  diagnostics.add(Rule::DoubledId, Span{1, 10, 14}, "a second header 'J9'")
      .note(Span{1, 2, 6}, "the first is here")
      .help("give one of them another id");
  REQUIRE(diagnostics.all().size() == 1);
  const Diagnostic& only = diagnostics.all().front();
  CHECK(only.rule == Rule::DoubledId);
  CHECK(only.severity == Severity::Error);
  CHECK(only.span == Span{1, 10, 14});
  CHECK(only.message == "a second header 'J9'");
  REQUIRE(only.notes.size() == 1);
  CHECK(only.notes[0].span == Span{1, 2, 6});
  CHECK(only.notes[0].message == "the first is here");
  CHECK(only.helps == std::vector<std::string>{"give one of them another id"});
}

TEST_CASE("errors and warnings are counted by the rule's severity") {
  Diagnostics diagnostics;
  CHECK(!diagnostics.has_errors());
  diagnostics.add(Rule::NoEvidence, Span{1, 0, 1}, "no evidence");
  CHECK(!diagnostics.has_errors());
  CHECK(diagnostics.warnings() == 1);
  diagnostics.add(Rule::BadQuantity, Span{1, 5, 6}, "'5' has no unit: write '5 V'");
  CHECK(diagnostics.has_errors());
  CHECK(diagnostics.errors() == 1);
  CHECK(diagnostics.warnings() == 1);
}

TEST_CASE("sorting by file and offset keeps the order of equals") {
  Diagnostics diagnostics;
  diagnostics.add(Rule::BadWord, Span{2, 1, 2}, "e");
  diagnostics.add(Rule::BadWord, Span{1, 30, 31}, "c");
  diagnostics.add(Rule::BadWord, Span{1, 30, 35}, "d");
  diagnostics.add(Rule::BadWord, Span{1, 4, 9}, "b");
  diagnostics.add(Rule::BadWord, Span{}, "a");
  diagnostics.sort();
  CHECK(messages(diagnostics) == std::vector<std::string>{"a", "b", "c", "d", "e"});
}

TEST_CASE("the same thing at the same place is said once, also when another stood between") {
  Diagnostics diagnostics;
  const Span here{1, 4, 9};
  diagnostics.add(Rule::BadWord, here, "same");
  diagnostics.add(Rule::BadWord, here, "other words");
  diagnostics.add(Rule::BadWord, here, "same");
  diagnostics.add(Rule::BadNumber, here, "same");
  diagnostics.add(Rule::BadWord, Span{1, 5, 9}, "same");
  diagnostics.sort();
  CHECK(messages(diagnostics) == std::vector<std::string>{"same", "other words", "same", "same"});
}
