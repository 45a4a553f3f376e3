// SPDX-License-Identifier: MIT
// The texts of the rules. A test proves that every rule has them and that the ids are unique.
#include "diag/rule.h"

#include <array>
#include <cassert>

namespace plugward {
namespace {

/// What a person is told about a rule at length.
struct RuleText {
  Rule rule;
  std::string_view summary;
  std::string_view why;
  std::string_view example;
  std::string_view cure;
};

constexpr auto texts = std::to_array<RuleText>({
#include "diag/rule_texts.inc"
});

constexpr auto rows = [] {
  constexpr auto bare = std::to_array<RuleInfo>({
#define PLUGWARD_RULE(name, id, kind, severity) \
  {Rule::name, id, RuleKind::kind, Severity::severity, "", "", "", ""},
#include "diag/rule.def"
#undef PLUGWARD_RULE
  });
  auto full = bare;
  for (const RuleText& text : texts) {
    RuleInfo& row = full[static_cast<std::size_t>(text.rule)];
    row.summary = text.summary;
    row.why = text.why;
    row.example = text.example;
    row.cure = text.cure;
  }
  return full;
}();

}  // namespace

const RuleInfo& rule_info(Rule rule) {
  const auto index = static_cast<std::size_t>(rule);
  assert(index < rows.size());
  return rows[index];
}

std::span<const RuleInfo> all_rules() { return rows; }

std::optional<Rule> find_rule(std::string_view id) {
  for (const RuleInfo& row : rows) {
    if (row.id == id) return row.rule;
  }
  return std::nullopt;
}

}  // namespace plugward
