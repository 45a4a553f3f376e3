// SPDX-License-Identifier: MIT
// Tested in plug_advice_test.cpp.
#include "plan/plug_advice.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::set<int> devices_of(const Fitting& fitting, const Placement& placement) {
  std::set<int> devices;
  for (const Lead& lead : plug_of(fitting, placement.plug).leads) {
    if (lead.to) devices.insert(lead.to->device);
  }
  return devices;
}

const PlugPlan* plan_of(const Advice& advice, int plug) {
  if (!advice.plan) return nullptr;
  for (const PlugPlan& plan : advice.plan->plugs) {
    if (plan.plug == plug && !plan.steps.empty()) return &plan;
  }
  return nullptr;
}

int moves_of(const PlugPlan& plan) {
  int moves = 0;
  for (std::size_t i = 0; i < plan.before.cavity.size(); ++i)
    moves += plan.before.cavity[i] != plan.after.cavity[i] ? 1 : 0;
  return moves;
}

bool same(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.weight == b.weight && a.message == b.message;
}

bool serious(const Finding& finding) {
  return finding.weight != Weight::Note;
}

bool settled(const Advice& advice) {
  return advice.verdict == Verdict::Mate || (advice.verdict == Verdict::Repin && advice.plan);
}

/// Settings have no place of their own; their words name header or plug in quotes.
bool names(const Setting& setting, const Fitting& fitting, const Placement& placement) {
  for (const std::string& id :
       {header_of(fitting, placement.header).id, plug_of(fitting, placement.plug).id}) {
    const std::string quoted = "'" + id + "'";
    if (setting.what.find(quoted) != std::string::npos || setting.why.find(quoted) != std::string::npos)
      return true;
  }
  return false;
}

/// Is it told of other placements only?
bool of_others(const Setting& setting, const Fitting& fitting, const Placement& placement) {
  return !names(setting, fitting, placement) &&
         std::any_of(fitting.placements.begin(), fitting.placements.end(),
                     [&](const Placement& other) { return names(setting, fitting, other); });
}

/// Does it name anything at all?
bool located(const Finding& finding) {
  const Locus& at = finding.at;
  return at.plug >= 0 || at.header >= 0 || at.device >= 0 || at.rail >= 0;
}

void keep_touching(Advice& advice, const Fitting& fitting, const Placement& placement) {
  // A jumper in another position was tried with this plug alone, or with all of them: not what a sheet may
  // say of one among others.
  if (fitting.placements.size() > 1) advice.softer.clear();
  // A note on nothing in particular belongs to the whole ("plug 'x' is on no header here").
  std::erase_if(advice.now.findings, [](const Finding& f) { return !serious(f) && !located(f); });
  std::erase_if(advice.settings, [&](const Setting& s) { return of_others(s, fitting, placement); });
  std::erase_if(advice.now.findings, [&](const Finding& f) { return !touches(f, fitting, placement); });
  std::erase_if(advice.wrong, [&](const SeatingJudgement& w) { return w.plug != placement.plug; });
}

/// A plug that stays as it is while others are re-pinned: judged as the plan leaves it.
void mate_after_plan(Advice& advice, const Fitting& fitting, const Placement& placement) {
  advice.verdict = Verdict::Mate;
  advice.now = advice.plan->after;
  advice.plan.reset();
  advice.moved = 0;
  advice.summary = format("'{}' on '{}': nothing moves in this plug", plug_of(fitting, placement.plug).id,
                          header_of(fitting, placement.header).id);
}

/// Findings of the whole that no entry of `each` repeats.
std::vector<Finding> found_only_together(const Advice& whole, const std::vector<PlugAdvice>& each) {
  std::vector<Finding> list;
  for (const Finding& finding : whole.now.findings) {
    const bool repeated = std::any_of(each.begin(), each.end(), [&](const PlugAdvice& one) {
      const auto& findings = one.advice.now.findings;
      return std::any_of(findings.begin(), findings.end(),
                         [&](const Finding& f) { return same(f, finding); });
    });
    if (serious(finding) && !repeated) list.push_back(finding);
  }
  return list;
}

/// A plug cannot go on a neighbour on which another one sits.
void leave_out_taken(Advice& advice, const Fitting& fitting) {
  std::erase_if(advice.wrong, [&](const SeatingJudgement& wrong) {
    return std::any_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& p) {
      return p.plug != wrong.plug && p.header == wrong.seating.header;
    });
  });
}

/// What is to be added, as far as it was found for a plug and those of its devices.
struct Added {
  std::set<std::string> parts, cures;
};

Added added_by(const Advice& advice) {
  Added added{{advice.parts.begin(), advice.parts.end()}, {}};
  for (const Cure& cure : advice.cures) added.cures.insert(cure.what);
  return added;
}

/// What stands on the sheets of other plugs only.
Added added_for_others(const std::vector<Added>& each, std::size_t mine) {
  Added others;
  for (const Added& one : each) {
    others.parts.insert(one.parts.begin(), one.parts.end());
    others.cures.insert(one.cures.begin(), one.cures.end());
  }
  for (const std::string& part : each[mine].parts) others.parts.erase(part);
  for (const std::string& cure : each[mine].cures) others.cures.erase(cure);
  return others;
}

/// The verdict of the whole on a plug that by itself would come off better.
void take_whole(Advice& advice, const Advice& whole, const Added& others, const Fitting& fitting,
                const Placement& placement) {
  advice.verdict = whole.verdict;
  if (advice.plan) {  // what was judged after a plan that is not told
    Fitting as_it_is = fitting;
    as_it_is.placements = {placement};
    advice.wrong = wrong_seatings(as_it_is);
  }
  advice.plan.reset();
  advice.measurements = whole.measurements;
  advice.parts = whole.parts;
  advice.cures = whole.cures;
  std::erase_if(advice.parts, [&](const std::string& part) { return others.parts.contains(part); });
  std::erase_if(advice.cures, [&](const Cure& cure) { return others.cures.contains(cure.what); });
  advice.summary = format("'{}' on '{}': not together with the other plugs",
                          plug_of(fitting, placement.plug).id, header_of(fitting, placement.header).id);
  for (const Finding& finding : whole.now.findings) {
    const auto known = [&](const Finding& f) { return same(f, finding); };
    if (serious(finding) && touches(finding, fitting, placement) &&
        std::none_of(advice.now.findings.begin(), advice.now.findings.end(), known))
      advice.now.findings.push_back(finding);
  }
  std::stable_sort(advice.now.findings.begin(), advice.now.findings.end(),
                   [](const Finding& a, const Finding& b) { return a.weight < b.weight; });
}

}  // namespace

std::vector<std::vector<int>> placements_by_device(const Fitting& fitting) {
  std::vector<int> group(fitting.placements.size());
  std::iota(group.begin(), group.end(), 0);
  for (std::size_t i = 0; i < group.size(); ++i) {
    const std::set<int> mine = devices_of(fitting, fitting.placements[i]);
    for (std::size_t k = 0; k < i; ++k) {
      const std::set<int> other = devices_of(fitting, fitting.placements[k]);
      const bool shared = std::any_of(mine.begin(), mine.end(), [&](int d) { return other.contains(d); });
      if (!shared || group[i] == group[k]) continue;
      const int from = std::max(group[i], group[k]), to = std::min(group[i], group[k]);
      std::replace(group.begin(), group.end(), from, to);
    }
  }
  std::vector<std::vector<int>> groups;
  for (std::size_t first = 0; first < group.size(); ++first) {
    if (group[first] != static_cast<int>(first)) continue;
    std::vector<int> members;
    for (std::size_t i = first; i < group.size(); ++i) {
      if (group[i] == static_cast<int>(first)) members.push_back(static_cast<int>(i));
    }
    groups.push_back(std::move(members));
  }
  return groups;
}

bool touches(const Finding& finding, const Fitting& fitting, const Placement& placement) {
  const Locus& at = finding.at;
  if (at.plug >= 0) return at.plug == placement.plug;
  if (at.header >= 0) return at.header == placement.header;
  if (at.device >= 0) return devices_of(fitting, placement).contains(at.device);
  if (at.rail >= 0) {
    const Rail& rail = fitting.board->rails[static_cast<std::size_t>(at.rail)];
    const std::vector<Pin>& pins = header_of(fitting, placement.header).pins;
    return std::any_of(pins.begin(), pins.end(), [&](const Pin& pin) {
      if (pin.rail == rail.id) return true;
      const auto stated = fitting.jumpers.find(pin.jumper);
      return stated != fitting.jumpers.end() && stated->second == rail.id;
    });
  }
  return true;
}

AdviceByPlug advice_by_plug(const Fitting& fitting, const Advice& whole) {
  AdviceByPlug result{std::vector<PlugAdvice>(fitting.placements.size()), {}};
  std::vector<PlugAdvice>& all = result.plugs;
  for (const std::vector<int>& members : placements_by_device(fitting)) {
    Advice shared = whole;
    if (!settled(whole) && members.size() < fitting.placements.size()) {
      Fitting alone = fitting;
      alone.placements.clear();
      for (const int i : members) alone.placements.push_back(fitting.placements[static_cast<std::size_t>(i)]);
      shared = advise(alone, {.softer = false});
    }
    for (const int i : members) all[static_cast<std::size_t>(i)] = {i, shared, 0};
  }
  result.together = found_only_together(whole, all);
  const auto share_of = [&](PlugAdvice& one) {
    const Placement& placement = fitting.placements[static_cast<std::size_t>(one.placement)];
    return std::any_of(result.together.begin(), result.together.end(),
                       [&](const Finding& f) { return touches(f, fitting, placement); });
  };
  const bool carried = std::any_of(all.begin(), all.end(), [&](PlugAdvice& one) {
    return one.advice.verdict >= whole.verdict || share_of(one);
  });
  std::vector<Added> added;
  for (const PlugAdvice& one : all) added.push_back(added_by(one.advice));
  for (PlugAdvice& one : all) {
    const Placement& placement = fitting.placements[static_cast<std::size_t>(one.placement)];
    if (!settled(whole) && one.advice.verdict < whole.verdict && (!carried || share_of(one)))
      take_whole(one.advice, whole, added_for_others(added, static_cast<std::size_t>(one.placement)), fitting,
                 placement);
    const PlugPlan* plan = plan_of(one.advice, placement.plug);
    if (plan != nullptr) one.moves = moves_of(*plan);
    if (one.advice.verdict == Verdict::Repin && one.advice.plan && plan == nullptr)
      mate_after_plan(one.advice, fitting, placement);
    keep_touching(one.advice, fitting, placement);
    leave_out_taken(one.advice, fitting);
    if (all.size() > 1 && settled(one.advice) && settled(whole)) {
      one.advice.summary =
          one.advice.verdict == Verdict::Repin
              ? count_of(one.moves, "'{}' on '{}': move {} contact first",
                         "'{}' on '{}': move {} contacts first", plug_of(fitting, placement.plug).id,
                         header_of(fitting, placement.header).id, one.moves)
              : format("'{}' on '{}': plug it in as it is", plug_of(fitting, placement.plug).id,
                       header_of(fitting, placement.header).id);
    }
  }
  return result;
}

}  // namespace plugward
