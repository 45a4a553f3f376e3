// SPDX-License-Identifier: MIT
// Tested in tests/cases (swap-*).
#include "report/swap_words.h"

#include <algorithm>
#include <vector>

#include "base/format.h"

namespace plugward {

std::string swap_summary(const SwapPlan& plan) {
  const int straight = plan.count(Transfer::Straight);
  const int moved = plan.count(Transfer::Repin);
  const int parts = plan.count(Transfer::Adapt);
  const int off = plan.count(Transfer::Off);
  const int none = plan.count(Transfer::NoPlace);
  std::vector<std::string> over, rest;
  if (straight > 0) over.push_back(format("{} as {}", straight, straight == 1 ? "it is" : "they are"));
  if (moved > 0) over.push_back(format("{} re-pinned", moved));
  if (parts > 0) over.push_back(format("{} with a part added", parts));
  if (off > 0)
    rest.push_back(format("{} {} off until something is known or had", off, off == 1 ? "stays" : "stay"));
  if (none > 0) rest.push_back(format("{} {} no header", none, none == 1 ? "finds" : "find"));
  std::string text = format("{} of {} plugs go over", straight + moved + parts, plan.plugs.size());
  if (!over.empty()) text += format(": {}", join(over, ", "));
  for (const std::string& one : rest) text += "; " + one;
  if (plan.result.clean()) return text;
  const auto worst = std::find_if(plan.result.findings.begin(), plan.result.findings.end(),
                                  [](const Finding& f) { return f.weight != Weight::Note; });
  return format("DO NOT FOLLOW THIS PLAN AS IT IS: {}; {}", worst->message, text);
}

bool swap_is_whole(const SwapPlan& plan) {
  return plan.result.clean() && std::all_of(plan.plugs.begin(), plan.plugs.end(),
                                            [](const PlugTransfer& t) { return t.goes_over() || !t.from; });
}

}  // namespace plugward
