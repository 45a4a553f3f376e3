// SPDX-License-Identifier: MIT
// Idea: two clusters touch only rails and ground, which are fixed voltages, so what is found in one does not
// change when the other is plugged in; save that a rail, or a pin that feeds one, may be overloaded by both.
// The worst verdict of the clusters is therefore that of the whole, unless the joint judgement finds more.
//
//   a motor that is to be re-pinned and a switch that fits: REPIN, two contacts; one judgement of both at the
//   end
//
// Complexity: the clusters one after the other and two judgements of the whole, instead of a search over the
// product of all that may be moved.
// Not taken: one search over all clusters (plan/advise.cpp does it within one); it is the twin in
// tests/unit/plan/components_test.cpp.
#include "plan/components.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "base/counted.h"
#include "base/format.h"
#include "judge/budget.h"
#include "judge/words.h"
#include "plan/parts.h"
#include "plan/softer.h"
#include "plan/technique.h"

namespace plugward {
namespace {

int whole_index(const std::vector<int>& map, int index) {
  return index < 0 || index >= static_cast<int>(map.size()) ? index : map[static_cast<std::size_t>(index)];
}

void add_once(std::vector<std::string>& list, const std::vector<std::string>& more) {
  for (const std::string& line : more) {
    if (std::find(list.begin(), list.end(), line) == list.end()) list.push_back(line);
  }
}

template <class T>
void append(std::vector<T>& list, const std::vector<T>& more) {
  list.insert(list.end(), more.begin(), more.end());
}

/// The cluster's plugs, leads and devices of `changed` into the whole. Devices that were added come at the
/// end.
void splice(Harness& whole, const Cluster& cluster, const Harness& changed) {
  std::vector<int> device_of = cluster.devices;
  for (std::size_t d = 0; d < changed.devices.size(); ++d) {
    if (d < cluster.devices.size()) {
      if (device_of[d] >= 0) whole.devices[static_cast<std::size_t>(device_of[d])] = changed.devices[d];
    } else {
      device_of.push_back(static_cast<int>(whole.devices.size()));
      whole.devices.push_back(changed.devices[d]);
    }
  }
  for (std::size_t p = 0; p < cluster.plugs.size(); ++p) {
    Plug plug = changed.plugs[p];
    for (Lead& lead : plug.leads) {
      if (lead.to) lead.to->device = whole_index(device_of, lead.to->device);
    }
    whole.plugs[static_cast<std::size_t>(cluster.plugs[p])] = std::move(plug);
  }
}

Fitting fitting_of(const Fitting& whole, const Cluster& cluster) {
  Fitting part = whole;
  part.harness = &cluster.harness;
  part.placements.clear();
  for (std::size_t p = 0; p < cluster.plugs.size(); ++p) {
    for (const Placement& placement : whole.placements) {
      if (placement.plug == cluster.plugs[p])
        part.placements.push_back({static_cast<int>(p), placement.header});
    }
  }
  return part;
}

int badness(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return 0;
    case Verdict::Repin:
      return 1;
    case Verdict::Adapt:
      return 2;
    case Verdict::Measure:
      return 3;
    case Verdict::Apart:
      return 4;
  }
  return 4;
}

std::string placed_names(const Fitting& fitting) {
  constexpr std::size_t most_named = 4;
  if (fitting.placements.size() > most_named) return format("{} plugs", fitting.placements.size());
  std::vector<std::string> names;
  for (const Placement& p : fitting.placements) {
    names.push_back(format("'{}' on '{}'", plug_of(fitting, p.plug).id, header_of(fitting, p.header).id));
  }
  return format("{}", join(names, tr(" and ")));
}

/// One advice out of those of the clusters.
class Joiner {
 public:
  explicit Joiner(const Fitting& fitting)
      : fitting_(fitting), after_(*fitting.harness), cured_(*fitting.harness) {}

  void add(const Cluster& cluster, const Fitting& part, Advice advice, bool wrong_seatings) {
    worst_ = badness(advice.verdict) > badness(worst_) ? advice.verdict : worst_;
    ++count_[static_cast<std::size_t>(badness(advice.verdict))];
    note_known(advice.now);
    if (advice.plan) note_known(advice.plan->after);
    whole_.moved += advice.moved;
    whole_.new_housings += advice.new_housings;
    append(whole_.housings, advice.housings);
    if (advice.cures.empty()) append(uncured_, advice.parts);
    append(whole_.parts, advice.parts);
    append(whole_.cures, advice.cures);
    append(whole_.settings, advice.settings);
    for (const Measurement& m : advice.measurements) {
      const auto& all = whole_.measurements;
      if (std::find(all.begin(), all.end(), m) == all.end()) whole_.measurements.push_back(m);
    }
    if (advice.plan) add_plan(cluster, *advice.plan, !advice.cured);
    if (advice.cured) {
      splice(cured_, cluster, *advice.cured);
      any_cured_ = true;
    } else if (advice.plan) {
      splice(cured_, cluster, advice.plan->harness);
    }
    if (wrong_seatings) add_wrong(cluster, part, std::move(advice.wrong));
  }

  Advice finish(const AdviseOptions& options) {
    whole_.now = assess(fitting_);
    Fitting changed = fitting_;
    changed.harness = any_cured_ ? &cured_ : &after_;
    const Assessment joint = assess(changed);
    std::vector<Finding> more;
    for (const Finding& f : joint.findings) {
      const bool known = known_.contains({f.rule, f.message}) || f.rule == Rule::UnstatedJumper;
      if (f.weight != Weight::Note && !known) more.push_back(f);
    }
    std::stable_sort(whole_.measurements.begin(), whole_.measurements.end(),
                     [](const Measurement& a, const Measurement& b) { return a.cost < b.cost; });
    std::stable_sort(whole_.wrong.begin(), whole_.wrong.end(),
                     [](const SeatingJudgement& a, const SeatingJudgement& b) { return a.worst < b.worst; });
    whole_.verdict = worst_;
    settle(more, joint);
    settle_rest(joint);
    if (options.softer && badness(whole_.verdict) > 0) {
      whole_.softer =
          softer_cures(fitting_, whole_.verdict == Verdict::Apart || whole_.verdict == Verdict::Adapt);
    }
    if (options.budget) whole_.budget = budget(changed);
    return std::move(whole_);
  }

 private:
  void note_known(const Assessment& assessment) {
    for (const Finding& f : assessment.findings) known_.insert({f.rule, f.message});
  }

  void add_plan(const Cluster& cluster, const RepinPlan& plan, bool moves_only) {
    any_plan_ = true;
    if (moves_only) splice(after_, cluster, plan.harness);
    for (PlugPlan one : plan.plugs) {
      for (const Step& step : one.steps) {
        const Plug& plug = cluster.harness.plugs[static_cast<std::size_t>(one.plug)];
        const auto& gauge = plug.leads[static_cast<std::size_t>(step.lead)].gauge;
        if (gauge) gauges_.push_back(*gauge);
      }
      one.plug = whole_index(cluster.plugs, one.plug);
      for (Step& step : one.steps) step.plug = one.plug;
      plan_.plugs.push_back(std::move(one));
    }
    add_once(plan_.cautions, plan.cautions);
    add_once(plan_.technique, plan.technique);
    add_once(plan_.tools, plan.tools);
  }

  /// The neighbour that another cluster's plug sits on is not free to be hit.
  void add_wrong(const Cluster& cluster, const Fitting& part, std::vector<SeatingJudgement> wrong) {
    for (SeatingJudgement& one : wrong) {
      const bool home = std::any_of(part.placements.begin(), part.placements.end(), [&](const Placement& p) {
        return p.plug == one.plug && p.header == one.seating.header;
      });
      const bool taken = std::any_of(fitting_.placements.begin(), fitting_.placements.end(),
                                     [&](const Placement& p) { return p.header == one.seating.header; });
      if (!home && taken) continue;
      one.plug = whole_index(cluster.plugs, one.plug);
      for (Finding& finding : one.findings) finding = in_whole(cluster, std::move(finding));
      whole_.wrong.push_back(std::move(one));
    }
  }

  /// Verdict, plan and summary, now that it is known what the joint judgement finds beyond the clusters' own.
  void settle(const std::vector<Finding>& more, const Assessment& joint) {
    const std::string names = placed_names(fitting_);
    Assessment extra;
    extra.findings = more;
    if (extra.has(Weight::Harm) || extra.has(Weight::Fault)) {
      // What is not known of one cluster comes before the part that the whole needs.
      whole_.verdict = badness(worst_) == 4 || !curable(extra) ? Verdict::Apart
                       : worst_ == Verdict::Measure            ? Verdict::Measure
                                                               : Verdict::Adapt;
      for (const Finding& f : more) {
        if (!f.part.empty() && f.weight != Weight::Note) add_once(whole_.parts, {part_words(fitting_, f)});
      }
      whole_.summary =
          format("{}: each by itself would do, but not all together: {}", names, more.front().message);
      if (badness(worst_) == 4) whole_.summary = format("{}: {}", names, apart_words());
      if (whole_.verdict == Verdict::Measure) whole_.summary = format("{}: {}", names, verdict_words());
      return;
    }
    if (!more.empty() && badness(worst_) < 3) {
      whole_.verdict = Verdict::Measure;
      for (const Finding& f : more) {
        if (f.measurement) whole_.measurements.push_back(*f.measurement);
      }
      whole_.summary =
          format("{}: all together, something must be known first: {}", names, more.front().message);
      whole_.settings.clear();
      return;
    }
    if (any_plan_ && badness(worst_) <= 2) {
      plan_.harness = any_cured_ ? cured_ : after_;
      plan_.after = joint;
      plan_.checks = checks_after(gauges_);
      // Proved as a whole only: with a part still to be had for one plug, there is no whole that is clean.
      if (joint.clean()) whole_.plan = std::move(plan_);
      if (joint.clean() && any_cured_) whole_.cured = cured_;
    }
    whole_.summary = format("{}: {}", names, verdict_words());
  }

  /// Only what the verdict leads to is told.
  void settle_rest(const Assessment& joint) {
    const Verdict verdict = whole_.verdict;
    if (verdict != Verdict::Measure) whole_.measurements.clear();
    if (verdict != Verdict::Adapt) {
      whole_.parts.clear();
      whole_.cures.clear();
      whole_.new_housings = 0;
      whole_.housings.clear();
    }
    if (verdict == Verdict::Measure || verdict == Verdict::Apart) whole_.settings.clear();
    if (verdict == Verdict::Mate || verdict == Verdict::Repin) whole_.settings = joint.settings;
    if (whole_.cured) return;
    // Proved one by one, and not all together: only the words are left.
    if (uncured_.empty()) whole_.cures.clear();
    if (!whole_.cures.empty()) whole_.uncured = uncured_;
  }

  std::string apart_words() const {
    return format("do not join {}; no move of contacts or added part cures {}",
                  count_[4] == 1 ? tr("one of these") : format("{} of these", count_[4]),
                  count_[4] == 1 ? tr("it") : tr("them"));
  }

  std::string verdict_words() const {
    const std::string contacts = counted(static_cast<std::size_t>(whole_.moved), "{} contact", "{} contacts");
    const std::size_t parts = whole_.parts.size();
    switch (whole_.verdict) {
      case Verdict::Mate:
        return tr("plug them in as they are");
      case Verdict::Repin:
        return format("move {} first", contacts);
      case Verdict::Adapt:
        return format("not as they are; they need {}{}",
                      parts == 1 ? tr("a part") : counted(parts, "{} part", "{} parts"),
                      whole_.moved > 0 ? format(", and {} moved", contacts) : "");
      case Verdict::Measure:
        return format(
            "{}something must be known first; {}",
            whole_.now.has(Weight::Harm) ? tr("it does harm as it is, and before a cure can be told ") : "",
            whole_.measurements.size() == 1
                ? tr("one measurement settles it")
                : format("{} measurements settle it, the cheapest first", whole_.measurements.size()));
      case Verdict::Apart:
        return apart_words();
    }
    return "";
  }

  const Fitting& fitting_;
  Advice whole_;
  RepinPlan plan_;
  Harness after_;                     ///< with the contacts moved that need nothing else
  Harness cured_;                     ///< and with the cures built in
  std::vector<std::string> uncured_;  ///< parts of clusters without computed values
  bool any_cured_ = false;
  bool any_plan_ = false;
  Verdict worst_ = Verdict::Mate;
  std::size_t count_[5] = {0, 0, 0, 0, 0};
  std::vector<Gauge> gauges_;
  std::set<std::pair<Rule, std::string>> known_;
};

}  // namespace

std::vector<Cluster> clusters(const Harness& harness) {
  const std::size_t plugs = harness.plugs.size();
  std::vector<std::size_t> parent(plugs);
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto find = [&](std::size_t i) {
    while (parent[i] != i) i = parent[i] = parent[parent[i]];
    return i;
  };
  std::vector<std::size_t> plug_at(harness.devices.size(), plugs);  // first plug that leads to the device
  for (std::size_t p = 0; p < plugs; ++p) {
    for (const Lead& lead : harness.plugs[p].leads) {
      if (!lead.to) continue;
      std::size_t& first = plug_at[static_cast<std::size_t>(lead.to->device)];
      if (first == plugs) first = p;
      const std::size_t a = find(first);
      const std::size_t b = find(p);
      parent[std::max(a, b)] = std::min(a, b);
    }
  }
  std::vector<Cluster> all;
  std::vector<std::size_t> cluster_of(plugs, plugs);
  for (std::size_t p = 0; p < plugs; ++p) {
    const std::size_t root = find(p);
    if (root == p) {
      cluster_of[p] = all.size();
      all.emplace_back();
    }
    all[cluster_of[root]].plugs.push_back(static_cast<int>(p));
  }
  for (Cluster& cluster : all) {
    Harness& part = cluster.harness;
    part.id = harness.id;
    part.title = harness.title;
    part.evidence = harness.evidence;
    part.evidences = harness.evidences;
    part.span = harness.span;
    if (harness.devices.size() > 1) {
      cluster.devices.push_back(-1);
      part.devices.emplace_back();
    }
    std::vector<int> device_of(harness.devices.size(), -1);
    for (std::size_t d = 0; d < harness.devices.size(); ++d) {
      const std::size_t plug = plug_at[d];
      // Without any lead a device is in the first cluster: it is missed there, once.
      const bool mine =
          plug == plugs ? &cluster == &all.front() : static_cast<int>(find(plug)) == cluster.plugs.front();
      if (!mine) continue;
      device_of[d] = static_cast<int>(part.devices.size());
      cluster.devices.push_back(static_cast<int>(d));
      part.devices.push_back(harness.devices[d]);
    }
    for (const int p : cluster.plugs) {
      part.plugs.push_back(harness.plugs[static_cast<std::size_t>(p)]);
      for (Lead& lead : part.plugs.back().leads) {
        if (lead.to) lead.to->device = device_of[static_cast<std::size_t>(lead.to->device)];
      }
    }
  }
  return all;
}

Finding in_whole(const Cluster& cluster, Finding finding) {
  finding.at.plug = whole_index(cluster.plugs, finding.at.plug);
  finding.at.device = whole_index(cluster.devices, finding.at.device);
  return finding;
}

std::optional<Advice> advise_apart(const Fitting& fitting, const AdviseOptions& options) {
  const std::vector<Cluster> all = clusters(*fitting.harness);
  std::vector<Fitting> parts;
  std::size_t placed = 0;
  for (const Cluster& cluster : all) {
    parts.push_back(fitting_of(fitting, cluster));
    if (!parts.back().placements.empty()) ++placed;
  }
  if (placed < 2) return std::nullopt;
  AdviseOptions alone = options;
  alone.softer = false;
  alone.budget = false;
  alone.now = true;         // what a cluster does as it stands is not told a second time for the whole
  alone.wirings = nullptr;  // a cluster is another harness
  Joiner joiner(fitting);
  for (std::size_t c = 0; c < all.size(); ++c) {
    if (!parts[c].placements.empty())
      joiner.add(all[c], parts[c], advise(parts[c], alone), options.wrong_seatings);
  }
  return joiner.finish(options);
}

}  // namespace plugward
