// SPDX-License-Identifier: MIT
// Idea: leads that are out of place form chains, which end in an empty cavity, and rings, which do not. A
// chain is worked from its empty end: every lead goes straight to its goal. A ring of k leads needs one place
// more: when some cavity is empty, one lead is parked there; when the housing is full, one lead is held
// beside it, and the cavity that this frees serves all other rings for parking. Either way a ring takes k + 1
// steps. Leads that leave the housing for good go first: they free cavities.
//
//   1:A 2:B 3:-  ->  1:B 2:A    park A in 3, B to 1, A to 2
//   1:A 2:B      ->  1:B 2:A    hold A, B to 1, A into 2
//
// The order is least by (steps, leads held): each misplaced lead takes a step, and a ring cannot be begun
// without one that brings no lead home. At most one lead is ever loose. O(leads x positions).
// Not taken: search over arrangements (exponential); it is the twin in tests/unit/plan/moves_test.cpp.
#include <algorithm>

#include "plan/repin.h"

namespace plugward {
namespace {

class Mover {
 public:
  Mover(const Arrangement& before, const Arrangement& after, int positions)
      : at_(before.cavity),
        goal_(after.cavity),
        holds_(static_cast<std::size_t>(positions) + 1, -1),
        frozen_(at_.size(), false) {
    for (std::size_t l = 0; l < at_.size(); ++l) {
      if (at_[l] > 0) holds_[static_cast<std::size_t>(at_[l])] = static_cast<int>(l);
    }
  }

  std::vector<Step> run() {
    for (std::size_t l = 0; l < at_.size(); ++l) {
      if (goal_[l] == 0 && at_[l] > 0) take_out(static_cast<int>(l), StepKind::Insulate, 0);
    }
    for (;;) {
      work_chains();
      const int lead = first_misplaced();
      if (lead < 0) break;
      if (const int spare = empty_cavity(); spare > 0) {
        take_out(lead, StepKind::Park, spare);
      } else {
        work_full_housing(lead);
      }
    }
    return std::move(steps_);
  }

 private:
  /// No cavity is empty: hold `lead`; its cavity serves the other rings before its own is closed.
  void work_full_housing(int lead) {
    const int freed = at(lead);
    freeze_ring(lead);
    take_out(lead, StepKind::Hold, 0);
    for (int other = first_misplaced(); other >= 0; other = first_misplaced()) {
      take_out(other, StepKind::Park, freed);
      work_chains();
    }
    frozen_.assign(frozen_.size(), false);
    work_chains();
    put_in(lead);
  }

  /// Marks the leads of the ring that `lead` is in.
  void freeze_ring(int lead) {
    for (int next = lead; !frozen_[static_cast<std::size_t>(next)]; next = holder(goal(next))) {
      frozen_[static_cast<std::size_t>(next)] = true;
    }
  }

  int goal(int lead) const { return goal_[static_cast<std::size_t>(lead)]; }
  int at(int lead) const { return at_[static_cast<std::size_t>(lead)]; }
  int& holder(int cavity) { return holds_[static_cast<std::size_t>(cavity)]; }

  /// Every lead whose goal is empty goes there, until none can.
  void work_chains() {
    for (bool moved = true; moved;) {
      moved = false;
      for (int lead = 0; lead < static_cast<int>(at_.size()); ++lead) {
        if (!misplaced(lead) || holder(goal(lead)) >= 0) continue;
        take_out(lead, StepKind::Move, goal(lead));
        moved = true;
      }
    }
  }

  bool misplaced(int lead) const {
    return !frozen_[static_cast<std::size_t>(lead)] && at(lead) > 0 && goal(lead) > 0 &&
           at(lead) != goal(lead);
  }

  int first_misplaced() const {
    for (int lead = 0; lead < static_cast<int>(at_.size()); ++lead) {
      if (misplaced(lead)) return lead;
    }
    return -1;
  }

  int empty_cavity() {
    for (int cavity = 1; cavity < static_cast<int>(holds_.size()); ++cavity) {
      if (holder(cavity) < 0) return cavity;
    }
    return 0;
  }

  void take_out(int lead, StepKind kind, int to) {
    steps_.push_back({kind, 0, lead, at(lead), to, ""});
    holder(at(lead)) = -1;
    at_[static_cast<std::size_t>(lead)] = to > 0 ? to : (kind == StepKind::Hold ? -1 : 0);
    if (to > 0) holder(to) = lead;
  }

  void put_in(int lead) {
    steps_.push_back({StepKind::Insert, 0, lead, 0, goal(lead), ""});
    at_[static_cast<std::size_t>(lead)] = goal(lead);
    holder(goal(lead)) = lead;
  }

  std::vector<int> at_;
  std::vector<int> goal_;
  std::vector<int> holds_;
  std::vector<bool> frozen_;  ///< leads that must wait
  std::vector<Step> steps_;
};

}  // namespace

std::vector<Step> order_moves(const Arrangement& before, const Arrangement& after, int positions) {
  return Mover(before, after, positions).run();
}

std::optional<Arrangement> carry_out(const Arrangement& before, const std::vector<Step>& steps,
                                     int positions) {
  Arrangement now = before;
  const auto taken = [&](int cavity) {
    return std::find(now.cavity.begin(), now.cavity.end(), cavity) != now.cavity.end();
  };
  const auto inside = [&](int cavity) { return cavity >= 1 && cavity <= positions; };
  for (const Step& step : steps) {
    if (step.lead < 0 || step.lead >= static_cast<int>(now.cavity.size())) return std::nullopt;
    int& cavity = now.cavity[static_cast<std::size_t>(step.lead)];
    switch (step.kind) {
      case StepKind::Move:
      case StepKind::Park:
        if (cavity != step.from || !inside(step.from) || !inside(step.to) || taken(step.to))
          return std::nullopt;
        cavity = step.to;
        break;
      case StepKind::Hold:
        if (cavity != step.from || !inside(step.from) || taken(-1)) return std::nullopt;
        cavity = -1;
        break;
      case StepKind::Insert:
        if (cavity != -1 || !inside(step.to) || taken(step.to)) return std::nullopt;
        cavity = step.to;
        break;
      case StepKind::Insulate:
        if (cavity != step.from || !inside(step.from)) return std::nullopt;
        cavity = 0;
        break;
    }
  }
  if (taken(-1)) return std::nullopt;
  return now;
}

}  // namespace plugward
