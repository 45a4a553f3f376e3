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
#include "plan/power_in.h"
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

/// Housings of the cluster's plugs, and the cavities of their leads, into the whole.
void put_back(Harness& whole, const Cluster& cluster, const Harness& changed) {
  for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
    Plug& plug = whole.plugs[static_cast<std::size_t>(cluster.plugs[i])];
    const Plug& other = changed.plugs[i];
    plug.family = other.family;
    plug.positions = other.positions;
    plug.rows = other.rows;
    plug.numbering = other.numbering;
    plug.key = other.key;
    for (std::size_t l = 0; l < plug.leads.size(); ++l) plug.leads[l].cavity = other.leads[l].cavity;
  }
}

/// One line on why a plug finds no header: of the header that came nearest.
std::string why_no_place(const Fitting& on_new, int plug) {
  Fitting alone = on_new;
  alone.placements.clear();
  PlaceOptions how;
  how.runner_up = how.rehouse = false;
  how.advice = {.wrong_seatings = false, .softer = false, .cures = false};
  for (int p = 0; p < static_cast<int>(on_new.harness->plugs.size()); ++p) {
    if (p != plug) how.leave.push_back(p);
  }
  const PlacementPlan plan = place(alone, how);
  if (!plan.best || plan.best->placements.empty()) return tr("no header of the new board takes it");
  const int header = plan.best->placements.front().header;
  const std::string& id = header_of(on_new, header).id;
  const bool taken = std::any_of(on_new.placements.begin(), on_new.placements.end(),
                                 [&](const Placement& p) { return p.header == header; });
  if (taken) return format("{} would suit it, and another plug is on it", id);
  const bool sure = plan.best->advice.verdict != Verdict::Measure;
  return sure ? format("{} would suit it alone; with all other plugs it is too much for the board", id)
              : format("no header takes it for certain; {} might, once its pins are known", id);
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
  /// First what sits on the old board; what hangs loose today gets a header if one is left for it.
  void place_all() {
    Fitting start{&to_, machine_.harness, machine_.catalogue, options_.fixed, options_.jumpers};
    PlaceOptions how;
    names_ = renamed(machine_, to_);
    how.renamed = names_;
    how.even_overloaded = true;
    how.rehouse = how.advise = false;
    how.leave = loose_plugs();
    placed_ = place_with_jumpers(start, how);
    const PlacementPlan& found = placed_.plan;
    placements_ = found.best ? found.best->placements : options_.fixed;
    plan_->runner_up = found.runner_up;
    plan_->why_it_lost = found.why_it_lost;
    plan_->runner_up_equal = found.runner_up_equal;
    plan_->proven = found.proven;
    if (!how.leave.empty()) place_loose(start, how);
  }

  void place_loose(Fitting start, PlaceOptions how) {
    start.placements = placements_;
    start.jumpers = needed_jumpers();
    how.leave.clear();
    how.even_overloaded = how.runner_up = false;
    for (std::size_t p = 0; p < machine_.harness->plugs.size(); ++p) {
      const bool seated = header_of_plug(machine_.placements, static_cast<int>(p)).has_value();
      if (seated && !header_of_plug(placements_, static_cast<int>(p)))
        how.leave.push_back(static_cast<int>(p));
    }
    SetAndPlaced more = place_with_jumpers(start, how);
    if (!more.plan.best || more.plan.best->placements.size() <= placements_.size()) return;
    for (const Placement& p : more.plan.best->placements) {
      if (!header_of_plug(placements_, p.plug) && is_sure(more.plan, p)) placements_.push_back(p);
    }
    std::sort(placements_.begin(), placements_.end(),
              [](const Placement& a, const Placement& b) { return a.plug < b.plug; });
    placed_.jumpers = std::move(more.jumpers);
  }

  /// What hangs loose is not worth a measurement.
  static bool is_sure(const PlacementPlan& plan, const Placement& p) {
    return std::any_of(plan.options.begin(), plan.options.end(), [&](const PlaceOption& option) {
      return option.plug == p.plug && option.header == p.header && option.verdict != Verdict::Measure;
    });
  }

  /// On no header today, and not stated.
  std::vector<int> loose_plugs() const {
    std::vector<int> loose;
    for (std::size_t p = 0; p < machine_.harness->plugs.size(); ++p) {
      const int plug = static_cast<int>(p);
      if (!header_of_plug(machine_.placements, plug) && !header_of_plug(options_.fixed, plug))
        loose.push_back(plug);
    }
    return loose;
  }

  /// As chosen, of the headers that are in use; and as stated.
  std::map<std::string, std::string> needed_jumpers() const {
    std::map<std::string, std::string> needed = options_.jumpers;
    for (const Placement& p : placements_) {
      for (const Pin& pin : to_.headers[static_cast<std::size_t>(p.header)].pins) {
        const auto chosen = placed_.jumpers.find(pin.jumper);
        if (chosen != placed_.jumpers.end()) needed.insert(*chosen);
      }
    }
    return needed;
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
        tell_other_role(one);
        if (!one.to) one.why = why_no_place(on_new, one.plug);
        plan_->plugs[static_cast<std::size_t>(one.plug)] = std::move(one);
      }
    }
  }

  /// A plug of LIMIT Z on LIMIT X while the new board has a LIMIT Z: the circuit is right, and the machine is
  /// not.
  void tell_other_role(PlugTransfer& one) {
    if (!one.from || !one.to || !one.goes_over()) return;
    const auto& names = names_[static_cast<std::size_t>(one.plug)];
    const auto at = static_cast<std::size_t>(*one.to);
    if (names[at] % other_switching != 2 ||
        std::none_of(names.begin(), names.end(), [](int n) { return n % other_switching == 0; }))
      return;
    const std::string was = machine_.board->headers[static_cast<std::size_t>(*one.from)].label;
    const Header& now = to_.headers[at];
    Setting setting;
    setting.what = format("let {} ({}) do what {} did", now.id, now.label, was);
    setting.why = format("'{}' comes from {}, and the new board's own {} does not take it",
                         machine_.harness->plugs[static_cast<std::size_t>(one.plug)].id, was, was);
    setting.header = *one.to;
    one.why += format("; the firmware must take {} ({}) for {}, or the wrong one moves, heats or stops",
                      now.id, now.label, was);
    one.settings.push_back(std::move(setting));
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
      if (!used && h != power_header(to_)) plan_->free_headers.push_back(h);
    }
  }

  const Fitting& machine_;
  const Board& to_;
  const SwapOptions& options_;
  SetAndPlaced placed_;
  std::vector<Placement> placements_;
  std::vector<std::vector<int>> names_;  ///< renamed()
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
      return later("straight");
    case Transfer::Repin:
      return later("re-pin");
    case Transfer::Adapt:
      return later("part");
    case Transfer::Off:
      return later("off");
    case Transfer::NoPlace:
      return later("no place");
  }
  return "";
}

}  // namespace plugward
