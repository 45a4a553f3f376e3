// SPDX-License-Identifier: MIT
#include "diag/rule.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

using plugward::all_rules;
using plugward::find_rule;
using plugward::Rule;
using plugward::rule_info;
using plugward::RuleInfo;
using plugward::RuleKind;
using plugward::Severity;

namespace {

std::size_t sentences(std::string_view text) {
  std::size_t count = text.ends_with('.') ? 1 : 0;
  for (std::size_t at = text.find(". "); at != text.npos; at = text.find(". ", at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("every rule has its texts") {
  REQUIRE(!all_rules().empty());
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(!rule.summary.empty());
    CHECK(!rule.why.empty());
    CHECK(!rule.example.empty());
    CHECK(!rule.cure.empty());
  }
}

TEST_CASE("a summary is one short line that follows 'error: '") {
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(rule.summary.size() <= 80);
    CHECK(rule.summary.find('\n') == rule.summary.npos);
    CHECK(!rule.summary.ends_with('.'));
    CHECK(!(rule.summary.front() >= 'A' && rule.summary.front() <= 'Z'));
  }
}

TEST_CASE("why and cure are one to three whole sentences") {
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    for (const std::string_view text : {rule.why, rule.cure}) {
      CHECK(text.ends_with('.'));
      CHECK(sentences(text) >= 1);
      CHECK(sentences(text) <= 3);
      CHECK(text.find("  ") == text.npos);
    }
  }
}

TEST_CASE("ids are unique, of small letters and hyphens, and lead back to their rule") {
  std::set<std::string_view> seen;
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(seen.insert(rule.id).second);
    CHECK(rule.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == rule.id.npos);
    CHECK(find_rule(rule.id) == rule.rule);
    CHECK(&rule_info(rule.rule) == &rule);
  }
  CHECK(!find_rule(""));
  CHECK(!find_rule("Overvoltage"));
}

TEST_CASE("no two rules share a text") {
  std::set<std::string_view> seen;
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    for (const std::string_view text : {rule.summary, rule.why, rule.example, rule.cure}) {
      CHECK(seen.insert(text).second);
    }
  }
}

TEST_CASE("reading rules stand before judging rules") {
  const auto rules = all_rules();
  CHECK(std::is_sorted(rules.begin(), rules.end(),
                       [](const RuleInfo& a, const RuleInfo& b) { return a.kind < b.kind; }));
  CHECK(rule_info(Rule::UnknownElement).kind == RuleKind::Reading);
  CHECK(rule_info(Rule::Overvoltage).kind == RuleKind::Judging);
  CHECK(rule_info(Rule::ReservedColour).severity == Severity::Warning);
}
