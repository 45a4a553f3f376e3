// SPDX-License-Identifier: MIT
// A decision path, built greedily from the front: of all measurements the one whose readings leave fewest
// causes on average (sum of squares over the number of causes), plus its effort. An optimal tree would have
// to try every order of measurements and saves a hand little: causes are few and most readings end the
// search. For machines with more than a few plugs in question the measurements are made anew for each group
// that is left, so that only plugs that still matter are measured.
//
// Tested in tests/unit/plan/causes_test.cpp: every cause's own readings lead to it.
#include "plan/tell_apart.h"

#include <algorithm>
#include <map>

#include "base/format.h"
#include "plan/trial.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

constexpr double effort_weight = 0.6;

struct Path {
  const Observer& observer;
  const std::vector<Cause>& causes;
  Symptom asked;
  std::vector<TellingStep> steps{};

  bool dangerous(const std::vector<int>& group) const {
    return std::any_of(group.begin(), group.end(), [&](int i) {
      const Cause& cause = causes[at(i)];
      return !cause.harms.empty() ||
             std::any_of(cause.shows.begin(), cause.shows.end(), [](const Showing& s) {
               return s.symptom == Symptom::Dies || s.symptom == Symptom::HeatsByItself;
             });
    });
  }

  static double left(const Trial& trial) {
    std::map<std::string, int> count;
    for (const std::string& says : trial.says) ++count[says];
    double squares = 0;
    for (const auto& [says, n] : count) squares += n * n;
    return squares / static_cast<double>(trial.says.size());
  }

  /// The step that begins with these causes; -1 when nothing tells them apart.
  int step_for(const std::vector<int>& group, int depth) {
    if (group.empty() || (group.size() == 1 && depth > 0) || depth > 12) return -1;
    std::vector<Cause> mine;
    for (const int i : group) mine.push_back(causes[at(i)]);
    const std::vector<Trial> all = trials(observer, mine, asked);
    const bool risky = dangerous(group);
    const Trial* best = nullptr;
    double best_score = 0;
    for (const Trial& trial : all) {
      if (risky && trial.live) continue;
      const double score = left(trial) + effort_weight * trial.effort;
      if (best != nullptr && score >= best_score) continue;
      best = &trial;
      best_score = score;
    }
    if (best == nullptr) return -1;
    return write(*best, group, depth);
  }

  int write(const Trial& trial, const std::vector<int>& group, int depth) {
    const int index = static_cast<int>(steps.size());
    TellingStep step{trial.power, trial.action, {}};
    for (std::size_t i = 0; i < group.size(); ++i) {
      auto found = std::find_if(step.readings.begin(), step.readings.end(),
                                [&](const TellingReading& r) { return r.words == trial.says[i]; });
      if (found == step.readings.end()) {
        step.readings.push_back({trial.says[i], trial.says[i] == trial.healthy, {}, -1});
        found = std::prev(step.readings.end());
      }
      found->causes.push_back(group[i]);
    }
    const bool told = std::any_of(step.readings.begin(), step.readings.end(),
                                  [](const TellingReading& r) { return r.healthy; });
    if (!told) step.readings.push_back({trial.healthy, true, {}, -1});
    // What is wrong first, what is right last.
    std::stable_partition(step.readings.begin(), step.readings.end(),
                          [](const TellingReading& r) { return !r.healthy; });
    steps.push_back(step);
    for (std::size_t r = 0; r < step.readings.size(); ++r) {
      const int next = step_for(step.readings[r].causes, depth + 1);
      steps[at(index)].readings[r].next = next;
    }
    return index;
  }
};

}  // namespace

std::vector<TellingStep> tell_apart(const Observer& observer, const std::vector<Cause>& causes,
                                    Symptom asked) {
  Path path{observer, causes, asked};
  std::vector<int> all;
  for (std::size_t i = 0; i < causes.size(); ++i) all.push_back(static_cast<int>(i));
  path.step_for(all, 0);
  return std::move(path.steps);
}

}  // namespace plugward
