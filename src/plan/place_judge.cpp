// SPDX-License-Identifier: MIT
// Idea: most pairs of plug and header are refused by words alone (plan/in_question), and of the others most
// are alike: a board has three limit headers, a loom six switches. A judgement hangs on the contents of the
// headers (plan/likeness), on the stated positions of their jumpers and on the contents of the cluster, and
// on no name.
//
// Tested in tests/unit/plan/place_test.cpp: with reasons and without, the same comes out.
#include "plan/place_judge.h"

#include <algorithm>

#include "base/format.h"
#include "judge/words.h"
#include "plan/likeness.h"

namespace plugward {
namespace {

/// Read from the same place, contacts in the same cavities, terminals by the same numbers.
std::string content_of(const Cluster& cluster) {
  const auto where = [](Span span) { return format("{}:{}:{};", span.file, span.begin, span.end); };
  std::string text;
  for (const Plug& plug : cluster.harness.plugs) {
    if (!plug.span.known()) return "";
    text += where(plug.span);
    for (const Lead& lead : plug.leads) {
      text += lead.to ? format("{}>{}.{},", lead.cavity, lead.to->device, lead.to->terminal)
                      : format("{}>?,", lead.cavity);
    }
  }
  for (const Device& device : cluster.harness.devices) text += where(device.span);
  return text;
}

}  // namespace

PlaceCost cost_of(const Advice& advice) {
  PlaceCost cost;
  cost.unknown = advice.verdict == Verdict::Measure ? 1 : 0;
  cost.housings = advice.new_housings;
  cost.parts = static_cast<int>(advice.parts.size()) - advice.new_housings;
  cost.moves = advice.moved;
  for (const Setting& setting : advice.settings) cost.settings += setting.inverts ? 1 : 0;
  return cost;
}

std::string reason_of(const Advice& advice) {
  const auto contacts = [&] { return count_of(advice.moved, "{} contact", "{} contacts", advice.moved); };
  switch (advice.verdict) {
    case Verdict::Mate: {
      for (const Setting& setting : advice.settings) {
        if (setting.inverts) return format("as it is; then {}", setting.what);
      }
      return tr("as it is");
    }
    case Verdict::Repin:
      return format("move {}", contacts());
    case Verdict::Adapt: {
      if (advice.parts.empty()) return tr("add a part");
      const std::string more =
          advice.parts.size() == 1 ? "" : format(", and {} more", advice.parts.size() - 1);
      return format("add {}{}{}", advice.parts.front(), more,
                    advice.moved == 0 ? "" : format("; move {}", contacts()));
    }
    case Verdict::Measure:
      return advice.measurements.empty() ? tr("something must be known first")
                                         : format("first {}", advice.measurements.front().action);
    case Verdict::Apart:
      return advice.now.findings.empty() ? tr("do not join these") : advice.now.findings.front().message;
  }
  return "";
}

PlaceJudge::PlaceJudge(const Fitting& fitting, bool reasons)
    : fitting_(fitting), reasons_(reasons), clusters_(clusters(*fitting.harness)) {
  cluster_of_.resize(fitting.harness->plugs.size());
  place_in_.resize(fitting.harness->plugs.size());
  for (std::size_t c = 0; c < clusters_.size(); ++c) {
    for (std::size_t i = 0; i < clusters_[c].plugs.size(); ++i) {
      cluster_of_[static_cast<std::size_t>(clusters_[c].plugs[i])] = static_cast<int>(c);
      place_in_[static_cast<std::size_t>(clusters_[c].plugs[i])] = static_cast<int>(i);
    }
    const std::string content = content_of(clusters_[c]);
    content_.push_back(content.empty() ? verbatim("cluster {}", c) : content);
    demands_.push_back(demands(clusters_[c].harness));
  }
}

PlaceOption PlaceJudge::recall(int cluster, std::vector<Placement> in_cluster) {
  std::vector<int> headers;
  for (const Placement& p : in_cluster) headers.push_back(p.header);
  const Likeness like = likeness(*fitting_.board, headers);
  std::string key = like.key + jumper_key(*fitting_.board, like, fitting_.jumpers);
  for (const Placement& p : in_cluster) key += format("/{}", p.plug);
  key += reasons_ ? verbatim("/c{}", cluster) : content_[static_cast<std::size_t>(cluster)];
  auto known = memo_.find(key);
  if (known == memo_.end()) {
    const Board part = part_of(*fitting_.board, like);
    for (std::size_t i = 0; i < in_cluster.size(); ++i) in_cluster[i].header = static_cast<int>(i);
    const Fitting small{&part, &clusters_[static_cast<std::size_t>(cluster)].harness, fitting_.catalogue,
                        in_cluster, stated_in(*fitting_.board, like, part, fitting_.jumpers)};
    AdviseOptions options;
    options.wrong_seatings = options.softer = options.cures = false;
    const Advice advice = advise(small, options);
    PlaceOption option;
    option.verdict = advice.verdict;
    option.cost = cost_of(advice);
    if (reasons_) option.reason = reason_of(advice);
    known = memo_.emplace(std::move(key), std::move(option)).first;
  }
  PlaceOption option = known->second;
  option.reason = with_names(option.reason, *fitting_.board, like);
  return option;
}

PlaceOption PlaceJudge::alone(int plug, int header) {
  const int cluster = cluster_of(plug);
  const int place = place_in_[static_cast<std::size_t>(plug)];
  const auto& wanted = demands_[static_cast<std::size_t>(cluster)][static_cast<std::size_t>(place)];
  PlaceOption option;
  if (!in_question(wanted, fitting_.harness->plugs[static_cast<std::size_t>(plug)], *fitting_.board,
                   header_of(fitting_, header))) {
    if (reasons_) {
      option.reason = format("meant for '{}'; its pins suit the plug's leads in no order",
                             header_of(fitting_, header).use);
    }
  } else {
    std::vector<Placement> placements;
    for (const Placement& fixed : fitting_.placements) {
      if (cluster_of(fixed.plug) == cluster)
        placements.push_back({place_in_[static_cast<std::size_t>(fixed.plug)], fixed.header});
    }
    placements.push_back({place, header});
    option = recall(cluster, std::move(placements));
  }
  option.plug = plug;
  option.header = header;
  return option;
}

PlaceOption PlaceJudge::together(int cluster, const std::vector<Placement>& placements) {
  std::vector<Placement> in_cluster;
  for (const Placement& p : placements)
    in_cluster.push_back({place_in_[static_cast<std::size_t>(p.plug)], p.header});
  PlaceOption option = recall(cluster, std::move(in_cluster));
  option.plug = placements.front().plug;
  option.header = placements.front().header;
  return option;
}

}  // namespace plugward
