// SPDX-License-Identifier: MIT
// Idea: the placement of the whole loom on the new board, jumpers included, is the optimum of plan/place.h
// with one level more, the names of the headers. What each device's plugs need there is then advised device
// by device, new housings put on where an added part is no more than that, and everything that is proven by
// itself is judged together once more, before and after the contacts are moved.
//
// Tested in tests/unit/plan/swap_test.cpp; whole machines in tests/outside/swap_trial.
#include "plan/swap.h"

#include <algorithm>

#include "base/format.h"
#include "judge/words.h"
#include "plan/renamed.h"
#include "plan/swap_suit.h"
#include "plan/swap_transfer.h"

namespace plugward {
namespace {

std::optional<int> header_of_plug(const std::vector<Placement>& placements, int plug) {
  for (const Placement& p : placements) {
    if (p.plug == plug) return p.header;
  }
  return std::nullopt;
}

/// The cluster's plugs, which have the same devices as before, into the whole.
void put_back(Harness& whole, const Cluster& cluster, const Harness& changed) {
  for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
    Plug& plug = whole.plugs[static_cast<std::size_t>(cluster.plugs[i])];
    const Plug& other = changed.plugs[i];
    plug.family = other.family;
    plug.positions = other.positions;
    plug.rows = other.rows;
    plug.numbering = other.numbering;
    plug.key = other.key;
  }
}

/// One line on why a plug finds no header: of the headers that came nearest.
std::string why_no_place(const PlacementPlan& plan, const Board& board, int plug) {
  for (const PlaceOption& option : plan.options) {
    if (option.plug != plug || option.reason.empty()) continue;
    const Header& header = board.headers[static_cast<std::size_t>(option.header)];
    if (option.verdict != Verdict::Apart) return format("{} suits, but other plugs need it", header.id);
  }
  for (const Rehousing& r : plan.rehousings) {
    if (std::find(r.plugs.begin(), r.plugs.end(), plug) != r.plugs.end()) return r.summary;
  }
  return "no header of the new board takes it";
}

class SwapPlanner {
 public:
  SwapPlanner(const Fitting& machine, const Board& to, const SwapOptions& options)
      : machine_(machine), to_(to), options_(options), plan_(std::make_unique<SwapPlan>()) {
    plan_->machine = &machine;
    plan_->board = &to;
    plan_->housed = *machine.harness;
    plan_->plugs.resize(machine.harness->plugs.size());
  }

  std::unique_ptr<SwapPlan> run() {
    place_all();
    transfer_all();
    judge_together();
    plan_->jumpers = jumper_choices(*plan_, placed_.jumpers, options_.jumpers);
    list_free_headers();
    plan_->suits = suits(*plan_);
    plan_->missing = missing(*plan_);
    return std::move(plan_);
  }

 private:
  void place_all() {
    const Fitting start{&to_, machine_.harness, machine_.catalogue, options_.fixed, options_.jumpers};
    PlaceOptions how;
    how.renamed = renamed(machine_, to_);
    how.advice.wrong_seatings = how.advice.softer = how.advice.cures = false;
    placed_ = place_with_jumpers(start, how);
    const PlacementPlan& found = placed_.plan;
    placements_ = found.best ? found.best->placements : options_.fixed;
    plan_->runner_up = found.runner_up;
    plan_->why_it_lost = found.why_it_lost;
    plan_->proven = found.proven;
  }

  void transfer_all() {
    Fitting on_new = machine_;
    on_new.board = &to_;
    on_new.placements = placements_;
    on_new.jumpers = placed_.jumpers;
    for (const Cluster& cluster : clusters(*machine_.harness)) {
      ClusterTransfer transfer = transfer_of(cluster, on_new);
      if (transfer.proven) put_back(plan_->housed, cluster, transfer.harness);
      for (PlugTransfer& one : transfer.plugs) {
        one.from = header_of_plug(machine_.placements, one.plug);
        if (!one.to) one.why = why_no_place(placed_.plan, to_, one.plug);
        plan_->plugs[static_cast<std::size_t>(one.plug)] = std::move(one);
      }
    }
  }

  /// Those that go over, as they are now and as they will be.
  void judge_together() {
    Fitting& before = plan_->before_moves;
    before = {&to_, &plan_->housed, machine_.catalogue, {}, placed_.jumpers};
    for (const Placement& p : placements_) {
      if (plan_->of(p.plug).goes_over()) before.placements.push_back(p);
    }
    plan_->after = before;
    plan_->after.harness = &plan_->harness;
    plan_->harness = plan_->housed;
    if (before.placements.empty()) return;
    plan_->advice = advise(before, {.wrong_seatings = false, .softer = false});
    if (plan_->advice.cured) {
      plan_->harness = *plan_->advice.cured;
    } else if (plan_->advice.plan) {
      plan_->harness = plan_->advice.plan->harness;
    }
    plan_->result = assess(plan_->after);
  }

  void list_free_headers() {
    for (int h = 0; h < static_cast<int>(to_.headers.size()); ++h) {
      const bool used = std::any_of(plan_->plugs.begin(), plan_->plugs.end(),
                                    [&](const PlugTransfer& t) { return t.goes_over() && t.to == h; });
      if (!used) plan_->free_headers.push_back(h);
    }
  }

  const Fitting& machine_;
  const Board& to_;
  const SwapOptions& options_;
  SetAndPlaced placed_;
  std::vector<Placement> placements_;
  std::unique_ptr<SwapPlan> plan_;
};

}  // namespace

int SwapPlan::count(Transfer kind) const {
  return static_cast<int>(
      std::count_if(plugs.begin(), plugs.end(), [&](const PlugTransfer& t) { return t.kind == kind; }));
}

std::unique_ptr<SwapPlan> plan_swap(const Fitting& machine, const Board& to, const SwapOptions& options) {
  return SwapPlanner(machine, to, options).run();
}

std::string_view to_word(Transfer kind) {
  switch (kind) {
    case Transfer::Straight:
      return "straight";
    case Transfer::Repin:
      return "re-pin";
    case Transfer::Adapt:
      return "part";
    case Transfer::Off:
      return "off";
    case Transfer::NoPlace:
      return "no place";
  }
  return "";
}

}  // namespace plugward
