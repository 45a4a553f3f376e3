// SPDX-License-Identifier: MIT
// Every rule the program can break a description or a mating on, in one table.
// `plugward explain RULE` prints a row of it; `plugward list rules` prints the ids.
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace plugward {

enum class Severity { Error, Warning };

/// Who applies the rule: the reader to a file, or the judge to a mating.
enum class RuleKind { Reading, Judging };

enum class Rule {
#define PLUGWARD_RULE(name, id, kind, severity) name,
#include "diag/rule.def"
#undef PLUGWARD_RULE
};

struct RuleInfo {
  Rule rule{};
  std::string_view id;  ///< stable, never reused: "unknown-element"
  RuleKind kind{};
  Severity severity{};       ///< of a reading rule; a judging rule's weight is in each finding
  std::string_view summary;  ///< one line, no full stop
  std::string_view why;      ///< why it matters
  std::string_view example;  ///< what breaks it
  std::string_view cure;     ///< what to do about it
};

const RuleInfo& rule_info(Rule);
std::span<const RuleInfo> all_rules();  ///< in the order of rule.def
std::optional<Rule> find_rule(std::string_view id);

}  // namespace plugward
