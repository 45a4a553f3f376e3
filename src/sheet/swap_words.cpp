// SPDX-License-Identifier: MIT
// Tested in tests/cases (swap-*).
#include "sheet/swap_words.h"

#include <algorithm>
#include <vector>

#include "base/format.h"
#include "sheet/words.h"

namespace plugward {
namespace {

/// "8 as they are, 6 re-pinned; 1 finds no header".
std::string going_over(const SwapPlan& plan) {
  const int straight = plan.count(Transfer::Straight);
  const int moved = plan.count(Transfer::Repin);
  const int parts = plan.count(Transfer::Adapt);
  const int off = plan.count(Transfer::Off);
  const int none = plan.count(Transfer::NoPlace);
  std::vector<std::string> over, rest;
  if (straight > 0) over.push_back(count_of(straight, "{} as it is", "{} as they are", straight));
  if (moved > 0) over.push_back(format("{} re-pinned", moved));
  if (parts > 0) over.push_back(format("{} with a part added", parts));
  if (off > 0)
    rest.push_back(count_of(off, "{} stays off until something is known or had",
                            "{} stay off until something is known or had", off));
  if (none > 0) rest.push_back(count_of(none, "{} finds no header", "{} find no header", none));
  std::vector<std::string> all;
  if (!over.empty()) all.push_back(format("{}", join(over, ", ")));
  all.insert(all.end(), rest.begin(), rest.end());
  return format("{}", join(all, "; "));
}

/// "" of a plan that ends in a clean state.
std::string not_to_follow(const SwapPlan& plan) {
  if (plan.result.clean()) return "";
  const auto worst = std::find_if(plan.result.findings.begin(), plan.result.findings.end(),
                                  [](const Finding& f) { return f.weight != Weight::Note; });
  return format("DO NOT FOLLOW THIS PLAN AS IT IS: {}; ", worst->message);
}

}  // namespace

std::string swap_count(const SwapPlan& plan) {
  const int over = plan.count(Transfer::Straight) + plan.count(Transfer::Repin) + plan.count(Transfer::Adapt);
  return format("{} of {} plugs", over, plan.plugs.size());
}

std::string swap_details(const SwapPlan& plan) {
  return not_to_follow(plan) + going_over(plan);
}

std::string swap_summary(const SwapPlan& plan) {
  const bool any =
      plan.count(Transfer::NoPlace) + plan.count(Transfer::Off) < static_cast<int>(plan.plugs.size());
  return format("{}{} go over{} {}", not_to_follow(plan), swap_count(plan), any ? ":" : ";",
                going_over(plan));
}

bool swap_is_whole(const SwapPlan& plan) {
  return plan.result.clean() && std::all_of(plan.plugs.begin(), plan.plugs.end(),
                                            [](const PlugTransfer& t) { return t.goes_over() || !t.from; });
}

std::string runner_up_words(const SwapPlan& plan) {
  if (!plan.runner_up) return "";
  std::vector<std::string> differs;
  for (const Placement& p : plan.runner_up->placements) {
    if (plan.of(p.plug).to != p.header)
      differs.push_back(
          format("'{}' on {}", plug_at(*plan.machine, p.plug).id, header_at(plan.after, p.header).id));
  }
  if (differs.empty()) return "";
  const std::string where = join(differs, ", ");
  return plan.runner_up_equal ? format("{}; it is {}", where, plan.why_it_lost)
                              : format("{}; it lost because the plan above {}", where, plan.why_it_lost);
}

std::string_view way_back_sentence(bool proven) {
  return proven
             ? tr("Carried out on the model, these steps end in the machine as it was: every lead in its "
                  "cavity, every plug on its header, every jumper at its rail.")
             : tr("Carried out on the model, these steps do not end in the machine as it was. Go by the old "
                  "loom and its photographs, plug by plug.");
}

}  // namespace plugward
