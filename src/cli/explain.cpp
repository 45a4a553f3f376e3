// SPDX-License-Identifier: MIT
// explain: one rule at length. Tested in tests/cases.
#include <vector>

#include "base/edit_distance.h"
#include "base/format.h"
#include "cli/options.h"
#include "diag/rule.h"
#include "report/list_text.h"

namespace plugward {

Outcome run_explain(const Options& options) {
  const std::string& id = options.words[0];
  if (const std::optional<Rule> rule = find_rule(id)) {
    return {ExitStatus::Fine, rule_text(rule_info(*rule), {.colour = options.colour_out}), ""};
  }
  std::vector<std::string_view> ids;
  for (const RuleInfo& rule : all_rules()) ids.push_back(rule.id);
  const std::string near = nearest(id, std::span<const std::string_view>(ids));
  const std::vector<std::string> like = near.empty() ? containing(id, ids) : std::vector<std::string>{near};
  throw UsageError(format("unknown rule '{}'{}", id, meant(like, "'plugward list rules' names them")));
}

}  // namespace plugward
