// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/swap_test.cpp.
#include "plan/swap_transfer.h"

#include <algorithm>

#include "base/format.h"
#include "judge/words.h"
#include "plan/new_housing.h"
#include "plan/place_judge.h"
#include "plan/softer.h"
#include "plan/technique.h"

namespace plugward {
namespace {

constexpr AdviseOptions how_to_advise{.wrong_seatings = false, .softer = false};

/// The fitting of the cluster alone; its placements are those of its plugs.
Fitting fitting_of(const Cluster& cluster, const Fitting& whole) {
  Fitting own = whole;
  own.harness = &cluster.harness;
  own.placements.clear();
  for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
    for (const Placement& p : whole.placements) {
      if (p.plug == cluster.plugs[i]) own.placements.push_back({static_cast<int>(i), p.header});
    }
  }
  return own;
}

struct Housed {
  Harness harness;
  std::vector<std::string> parts;  ///< the new housings, in words
  Advice advice;
};

/// "2 GN to 'A', 3 BK to 'B'".
std::string cavity_words(const Harness& harness, const Plug& plug) {
  std::vector<const Lead*> leads;
  for (const Lead& lead : plug.leads) leads.push_back(&lead);
  std::stable_sort(leads.begin(), leads.end(),
                   [](const Lead* a, const Lead* b) { return a->cavity < b->cavity; });
  std::vector<std::string> words;
  for (const Lead* lead : leads) {
    if (lead->cavity <= 0) continue;
    const std::string to = lead->to ? format(" to '{}'", harness.terminal_name(*lead->to)) : "";
    words.push_back(format("{} {}{}", lead->cavity, to_code(lead->colour), to));
  }
  return format("{}", join(words, ", "));
}

/// Contacts that are crimped anew go into their last cavities at once.
void crimp_in_place(Housed& housed, const std::vector<int>& plugs, const Fitting& changed) {
  if (housed.advice.plan && !housed.advice.cured) {
    for (const int p : plugs) {
      auto& leads = housed.harness.plugs[static_cast<std::size_t>(p)].leads;
      const auto& then = housed.advice.plan->harness.plugs[static_cast<std::size_t>(p)].leads;
      for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = then[l].cavity;
    }
    housed.advice = advise(changed, how_to_advise);
  }
  for (std::size_t i = 0; i < plugs.size(); ++i) {
    housed.parts[i] += format(
        ": {}", cavity_words(housed.harness, housed.harness.plugs[static_cast<std::size_t>(plugs[i])]));
  }
}

/// The advice once every plug that must not keep its housing has another one; nothing when that does not
/// help.
std::optional<Housed> in_new_housings(const Fitting& fitting, const Advice& before) {
  Housed housed{*fitting.harness, {}, {}};
  std::vector<int> plugs;
  Fitting changed = fitting;
  changed.harness = &housed.harness;
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Family* family = fitting.catalogue->find(plug.family);
    const bool unfit =
        std::any_of(before.now.findings.begin(), before.now.findings.end(), [&](const Finding& f) {
          return f.part == "housing" && (f.first == plug.family_span || f.first == plug.span);
        });
    const bool stiff = before.now.clean() ? false : family != nullptr && !movable(*family);
    if (!unfit && !stiff) continue;
    auto other = with_new_housing(changed, p.plug);
    if (!other) return std::nullopt;
    housed.harness = std::move(other->harness);
    housed.parts.push_back(std::move(other->words));
    plugs.push_back(p.plug);
  }
  if (housed.parts.empty()) return std::nullopt;
  housed.advice = advise(changed, how_to_advise);
  crimp_in_place(housed, plugs, changed);
  const Advice& advice = housed.advice;
  const bool fine = advice.verdict == Verdict::Mate || (advice.verdict == Verdict::Repin && advice.plan) ||
                    (advice.verdict == Verdict::Adapt && advice.cured);
  return fine ? std::optional(std::move(housed)) : std::nullopt;
}

Transfer kind_of(const Advice& advice) {
  switch (advice.verdict) {
    case Verdict::Mate:
      return Transfer::Straight;
    case Verdict::Repin:
      return advice.plan ? Transfer::Repin : Transfer::Off;
    case Verdict::Adapt:
      return advice.cured ? Transfer::Adapt : Transfer::Off;
    case Verdict::Measure:
      return Transfer::Off;
    case Verdict::Apart:
      return Transfer::NoPlace;
  }
  return Transfer::NoPlace;
}

/// The moves of one plug, its index that of the whole harness.
PlugPlan moves_of(const Advice& advice, int plug, int whole) {
  PlugPlan moves;
  moves.plug = whole;
  if (!advice.plan) return moves;
  for (const PlugPlan& one : advice.plan->plugs) {
    if (one.plug != plug || one.steps.empty()) continue;
    moves = one;
    moves.plug = whole;
    for (Step& step : moves.steps) step.plug = whole;
  }
  return moves;
}

/// Why a plug stays off for which a part is needed that could not be built in on the model.
std::string lack_words(const Advice& advice, const std::vector<std::string>& softer) {
  if (!softer.empty()) return softer.front();
  const std::string& part = advice.parts.front();
  const bool values = advice.new_housings == 0;
  return format("needs {}{}", part, values ? tr(", of which no values could be proved") : "");
}

}  // namespace

ClusterTransfer transfer_of(const Cluster& cluster, const Fitting& on_new_board) {
  const Fitting fitting = fitting_of(cluster, on_new_board);
  ClusterTransfer result;
  result.harness = cluster.harness;
  Advice advice;
  std::vector<std::string> housings;
  std::string words;
  if (!fitting.placements.empty()) {
    advice = advise(fitting, how_to_advise);
    words = reason_of(advice);
    if (advice.verdict == Verdict::Adapt && !advice.cured) {
      if (auto housed = in_new_housings(fitting, advice)) {
        advice = std::move(housed->advice);
        housings = std::move(housed->parts);
        result.harness = std::move(housed->harness);
        words = format("{}{}", join(housings, tr(", and ")),
                       advice.verdict == Verdict::Mate ? "" : "; " + reason_of(advice));
      }
    }
    const Transfer kind = kind_of(advice);
    result.proven = kind == Transfer::Straight || kind == Transfer::Repin || kind == Transfer::Adapt;
  }
  bool first = true;
  for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
    PlugTransfer one;
    one.plug = cluster.plugs[i];
    one.moves.plug = one.plug;
    const auto placed = std::find_if(fitting.placements.begin(), fitting.placements.end(),
                                     [&](const Placement& p) { return p.plug == static_cast<int>(i); });
    if (placed == fitting.placements.end()) {
      result.plugs.push_back(std::move(one));
      continue;
    }
    one.to = placed->header;
    one.kind = kind_of(advice);
    one.why = words;
    one.moves = moves_of(advice, static_cast<int>(i), one.plug);
    one.measurements = advice.measurements;
    const bool uncured = advice.verdict == Verdict::Adapt && !advice.cured;
    if (first) {
      one.cures = advice.cures;
      one.settings = advice.settings;
      one.parts = housings;
      if (advice.verdict == Verdict::Adapt)
        one.parts.insert(one.parts.end(), advice.parts.begin(), advice.parts.end());
      if (advice.verdict == Verdict::Adapt || !housings.empty()) one.softer = softer_cures(fitting, false);
      if (uncured) one.why = lack_words(advice, one.softer);
    }
    // Where several plugs share a device, each tells only of its own.
    if (one.kind == Transfer::Repin && one.moves.steps.empty()) one.kind = Transfer::Straight;
    if (!housings.empty() && first && result.proven) one.kind = Transfer::Adapt;
    if (one.kind == Transfer::Adapt && !first)
      one.kind = one.moves.steps.empty() ? Transfer::Straight : Transfer::Repin;
    if (one.kind == Transfer::Straight) one.why = tr("as it is");
    if (one.kind == Transfer::Off && advice.now.has(Weight::Harm) && !advice.measurements.empty())
      one.why = format("it does harm as it is: {}; {}", advice.now.findings.front().message, words);
    if (one.kind == Transfer::Repin)
      one.why = count_of(one.moves.extractions, "move {} contact", "move {} contacts", one.moves.extractions);
    first = false;
    result.plugs.push_back(std::move(one));
  }
  for (PlugTransfer& one : result.plugs) {
    one.turned =
        std::any_of(one.settings.begin(), one.settings.end(), [](const Setting& s) { return s.inverts; });
    if (one.turned && one.kind == Transfer::Straight) one.why = reason_of(advice);
  }
  return result;
}

}  // namespace plugward
