// SPDX-License-Identifier: MIT
// Idea: end B is a housing whose leads can be put anywhere, so what advise() plans for a cable with such a
// housing is the order of the adapter's leads; the cable keeps its own. Then the finished lead is judged as
// any wiring, from both sides:
//
//   cable  1 BN -> A1 ... B3 -> J9.3     board's side: housing B on J9, leads of both parts in series
//          2 RD -> A2 ... B2 -> J9.2     cable's side: the cable's plug on a header whose pin 1 is J9.3,
//          3 OG -> A3 ... B1 -> J9.1                   pin 2 is J9.2, pin 3 is J9.1
//
// so that the contacts of both ends are held against their families, and the wrong seatings of both are told.
// A lead whose contact or wire would carry too much gets the next thicker gauge, and all is judged again.
//
// Complexity: one advise(), then at most (leads x gauges) pairs of judgements; in practice one or two.
// Not taken: a model of two plugs in series; every layer below would have to know of it.
// Tested in tests/unit/plan/adapter_lead_test.cpp.
#include "plan/adapter_lead.h"

#include <algorithm>
#include <map>
#include <utility>

#include "base/format.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "plan/adapter_sides.h"
#include "plan/adapter_words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Every family with leads that can be put anywhere: those of a lead that is built anew.
Catalogue freely_wired(const Catalogue& catalogue) {
  Catalogue result;
  for (Family family : catalogue.all()) {
    family.lance.reset();
    result.add(std::move(family));
  }
  return result;
}

/// Cavities of the placed plug as re-pinning leaves them, or as they are.
std::vector<int> planned_cavities(const Fitting& fitting, const Advice& advice, int plug) {
  if (advice.plan) {
    for (const PlugPlan& one : advice.plan->plugs) {
      if (one.plug == plug) return one.after.cavity;
    }
  }
  std::vector<int> cavities;
  for (const Lead& lead : plug_of(fitting, plug).leads) cavities.push_back(lead.cavity);
  return cavities;
}

int pin_of_cavity(const Fitting& fitting, const Placement& where, int cavity) {
  const Plug& plug = plug_of(fitting, where.plug);
  if (cavity < 1 || cavity > plug.positions) return 0;
  return home_seating(plug, where.header, *fitting.board).pin_of_cavity[at(cavity) - 1];
}

/// The thickest gauge that both ends take, before others one with a published rating: with it an order of the
/// leads is looked for, so that a thin wire does not hide one.
std::optional<Gauge> amplest(const std::optional<Gauge>& cable, const Family& a, const Family& b,
                             int positions) {
  const std::vector<Gauge> choices = gauge_choices(cable, a, b);
  if (choices.empty()) return cable;
  const auto rated = std::find_if(choices.rbegin(), choices.rend(), [&](const Gauge& gauge) {
    return b.rating_at(gauge, positions) != nullptr;
  });
  return rated == choices.rend() ? choices.back() : *rated;
}

/// The cable with housings that suit its headers; a lead whose cavity lies past them sits in a free one.
Harness rehoused(const Fitting& fitting, const Advice& advice) {
  Harness harness = *fitting.harness;
  for (const Placement& where : fitting.placements) {
    Plug& plug = harness.plugs[at(where.plug)];
    const std::vector<int> cavities = planned_cavities(fitting, advice, where.plug);
    std::vector<bool> taken(at(header_of(fitting, where.header).positions) + 1, false);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      plug.leads[l].cavity = pin_of_cavity(fitting, where, cavities[l]);
      taken[at(plug.leads[l].cavity)] = true;
    }
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      if (plug.leads[l].cavity != 0 || cavities[l] < 1) continue;
      const auto free = std::find(taken.begin() + 1, taken.end(), false);
      if (free == taken.end()) break;
      plug.leads[l].cavity = static_cast<int>(free - taken.begin());
      *free = true;
    }
    const Header& header = header_of(fitting, where.header);
    const Family& a = *fitting.catalogue->find(plug.family);
    const Family& b = *fitting.catalogue->find(header.family);
    for (Lead& lead : plug.leads) lead.gauge = amplest(lead.gauge, a, b, header.positions);
    take_housing_of(plug, header);
  }
  return harness;
}

/// Does the plug need a lead of its own: another order, or a housing that does not go on?
bool needs_lead(const Fitting& fitting, const Placement& where, const Plug& then) {
  const Plug& now = plug_of(fitting, where.plug);
  if (!mate(now, header_of(fitting, where.header), *fitting.catalogue).goes_on()) return true;
  for (std::size_t l = 0; l < now.leads.size(); ++l) {
    if (pin_of_cavity(fitting, where, now.leads[l].cavity) != then.leads[l].cavity) return true;
  }
  return false;
}

std::vector<int> empty_positions(const AdapterEnd& end, const std::vector<AdapterLead>& leads,
                                 int AdapterLead::*position) {
  std::vector<int> empty;
  for (int n = 1; n <= end.positions; ++n) {
    const bool used =
        std::any_of(leads.begin(), leads.end(), [&](const AdapterLead& l) { return l.*position == n; });
    if (!used) empty.push_back(n);
  }
  return empty;
}

AdapterEnd end_of(const Family& family, int positions, int rows) {
  return {family.id, positions, rows, joint_of(family), {}, first_position_words(family)};
}

/// The lead for one plug; its gauges are the first choices. `then`: the plug re-housed.
Adapter adapter_for(const Fitting& fitting, const Placement& where, const Plug& then, Millimetres length) {
  const Plug& now = plug_of(fitting, where.plug);
  const Header& header = header_of(fitting, where.header);
  Adapter adapter;
  adapter.plug = where.plug;
  adapter.header = where.header;
  adapter.length = length;
  adapter.id = "adapter-" + header.id;
  adapter.a = end_of(*fitting.catalogue->find(now.family), now.positions, now.rows);
  adapter.b = end_of(*fitting.catalogue->find(header.family), header.positions, header.rows);
  adapter.spliced = adapter.a.joint == Joint::Displacement && adapter.b.joint == Joint::Displacement;
  std::vector<WireColour> colours;
  for (std::size_t l = 0; l < now.leads.size(); ++l) {
    if (now.leads[l].cavity < 1 || then.leads[l].cavity < 1) continue;
    adapter.leads.push_back({static_cast<int>(l), now.leads[l].cavity, then.leads[l].cavity, {}, {}});
  }
  std::sort(adapter.leads.begin(), adapter.leads.end(),
            [](const AdapterLead& x, const AdapterLead& y) { return x.a < y.a; });
  for (const AdapterLead& lead : adapter.leads) colours.push_back(now.leads[at(lead.lead)].colour);
  if (!adapter.spliced) colours = distinct_colours(colours);  // flat cable goes by position
  for (std::size_t i = 0; i < colours.size(); ++i) adapter.leads[i].colour = colours[i];
  adapter.a.empty = empty_positions(adapter.a, adapter.leads, &AdapterLead::a);
  adapter.b.empty = empty_positions(adapter.b, adapter.leads, &AdapterLead::b);
  for (std::size_t l = now.leads.size(); l < then.leads.size(); ++l) {
    if (std::erase(adapter.b.empty, then.leads[l].cavity) == 0) continue;
    adapter.notes.push_back(format("position B {} takes the lead of an added part", then.leads[l].cavity));
  }
  return adapter;
}

/// Gauges are chosen by what the judge says of contacts and wires.
bool about_gauge(const Finding& finding) {
  return finding.at.lead >= 0 &&
         (finding.rule == Rule::ContactOvercurrent || finding.rule == Rule::UnknownRating ||
          finding.rule == Rule::WireOvercurrent);
}

/// The gauges that are left for each lead of an adapter, the present one first.
using GaugesLeft = std::map<std::pair<int, int>, std::vector<Gauge>>;

class Builder {
 public:
  Builder(const Fitting& fitting, const Advice& advice, const AdviseOptions& options, Millimetres length)
      : fitting_(fitting), advice_(advice), options_(options), length_(length) {}

  AdapterAdvice run() {
    if (advice_.verdict == Verdict::Mate) return none(true, advice_.summary + ", without a lead between");
    find_order();
    if (!result_.summary.empty()) return std::move(result_);
    for (const Placement& where : fitting_.placements) {
      const Plug& then = ordered_.plugs[at(where.plug)];
      if (needs_lead(fitting_, where, then))
        plan_.adapters.push_back(adapter_for(fitting_, where, then, length_));
    }
    if (plan_.adapters.empty()) {
      return none(false,
                  "no lead changes its place, so a lead between would change nothing: " + advice_.summary);
    }
    for (const Adapter& adapter : plan_.adapters) {
      if (adapter.leads.empty())
        return none(false, format("{}: no lead of the cable is of use on this header", adapter.id));
    }
    if (!choose_gauges()) return std::move(result_);
    finish();
    return std::move(result_);
  }

 private:
  AdapterAdvice none(bool nothing_to_do, std::string why) {
    result_.nothing_to_do = nothing_to_do;
    result_.summary = std::move(why);
    return std::move(result_);
  }

  /// Which lead meets which pin; result_.summary says why there is no order.
  void find_order() {
    const Harness start = rehoused(fitting_, advice_);
    const Catalogue free = freely_wired(*fitting_.catalogue);
    Fitting changed = fitting_;
    changed.harness = &start;
    changed.catalogue = &free;
    Advice found = advise(changed, {.wrong_seatings = false, .softer = false});
    if (found.verdict == Verdict::Mate || (found.verdict == Verdict::Repin && found.plan)) {
      ordered_ = found.plan ? std::move(found.plan->harness) : start;
      return;
    }
    if (found.verdict == Verdict::Adapt && found.cured) {
      ordered_ = std::move(*found.cured);
      plan_.cures = std::move(found.cures);
      return;
    }
    result_.measurements = std::move(found.measurements);
    result_.summary = "no lead between cures this: " + found.summary;
  }

  /// Sets the gauges; false, with the reason in result_.summary, when none suits.
  bool choose_gauges() {
    GaugesLeft left;
    for (Adapter& adapter : plan_.adapters) {
      const Family& a = *fitting_.catalogue->find(adapter.a.family);
      const Family& b = *fitting_.catalogue->find(adapter.b.family);
      for (AdapterLead& lead : adapter.leads) {
        const auto& cable = plug_of(fitting_, adapter.plug).leads[at(lead.lead)].gauge;
        auto choices = gauge_choices(cable, a, b);
        if (choices.empty()) {
          result_.summary =
              format("no lead between can be made: no gauge suits contacts of '{}' and of '{}'", a.id, b.id);
          return false;
        }
        lead.gauge = choices.front();
        left[{adapter.plug, lead.lead}] = std::move(choices);
      }
    }
    for (;;) {
      const Finding* against = judge();
      if (against == nullptr) return true;
      if (!thicken(left)) {
        result_.summary = format("no lead between that ends clean is known: {}", against->message);
        return false;
      }
    }
  }

  /// Judges both sides into findings_; the worst that speaks against the lead, or nullptr.
  const Finding* judge() {
    plan_.harness = with_ends_b(fitting_, ordered_, plan_.adapters);
    plan_.board = board_at_a(fitting_, plan_.adapters);
    plan_.after = assess(seen_from_board(fitting_, plan_));
    findings_ = plan_.after.findings;
    if (plan_.cures.empty()) {
      for (const bool adapter_gauge : {true, false}) {
        const Harness cable = with_ends_a(fitting_, plan_.adapters, adapter_gauge);
        Fitting changed = seen_from_cable(fitting_, plan_);
        changed.harness = &cable;
        const Assessment seen = assess(changed);
        findings_.insert(findings_.end(), seen.findings.begin(), seen.findings.end());
      }
    }
    const auto against =
        std::min_element(findings_.begin(), findings_.end(), [](const Finding& x, const Finding& y) {
          return x.weight < y.weight;  // harm comes first
        });
    return against == findings_.end() || against->weight == Weight::Note ? nullptr : &*against;
  }

  /// The next gauge for every lead that the judge found too thin; false when there is none.
  bool thicken(GaugesLeft& left) {
    bool changed = false;
    for (Adapter& adapter : plan_.adapters) {
      for (AdapterLead& lead : adapter.leads) {
        const bool too_thin = std::any_of(findings_.begin(), findings_.end(), [&](const Finding& f) {
          return about_gauge(f) && f.weight != Weight::Note && f.at.plug == adapter.plug &&
                 f.at.lead == lead.lead;
        });
        auto& choices = left.at({adapter.plug, lead.lead});
        if (!too_thin || choices.size() < 2) continue;
        choices.erase(choices.begin());
        lead.gauge = choices.front();
        changed = true;
      }
    }
    return changed;
  }

  void add_notes(Adapter& adapter) const {
    const Plug& cable = plug_of(fitting_, adapter.plug);
    for (const AdapterLead& lead : adapter.leads) {
      const Lead& own = cable.leads[at(lead.lead)];
      if (!own.gauge) {
        adapter.notes.push_back(format(
            "lead {}: the gauge of the cable's is not stated; take {} or the cable's, whichever is thicker",
            lead.a, to_text(lead.gauge)));
      } else if (thinner(lead.gauge, own.gauge)) {
        adapter.notes.push_back(format(
            "lead {}: {} is thinner than the cable's {}, since these housings take no thicker wire; it was "
            "judged so",
            lead.a, to_text(lead.gauge), to_text(*own.gauge)));
      }
      if (own.colour.known() && !(own.colour == lead.colour)) {
        adapter.notes.push_back(format("lead {}: {} instead of the cable's {}, so that no two are alike",
                                       lead.a, to_code(lead.colour), to_code(own.colour)));
      }
    }
  }

  void judge_wrong_seatings() {
    plan_.wrong_b = wrong_seatings(seen_from_board(fitting_, plan_));
    if (!plan_.cures.empty()) {
      plan_.not_judged = "the cable's plug wrong in end A: not judged together with the added parts";
      return;
    }
    for (SeatingJudgement& wrong : wrong_seatings(seen_from_cable(fitting_, plan_))) {
      const bool ours = std::any_of(plan_.adapters.begin(), plan_.adapters.end(),
                                    [&](const Adapter& adapter) { return adapter.plug == wrong.plug; });
      if (ours && wrong.seating.kind != SeatingKind::Neighbour) plan_.wrong_a.push_back(std::move(wrong));
    }
  }

  void finish() {
    std::vector<std::string> names;
    for (Adapter& adapter : plan_.adapters) {
      add_notes(adapter);
      names.push_back(
          format("'{}' on '{}'", plug_of(fitting_, adapter.plug).id, header_of(fitting_, adapter.header).id));
    }
    plan_.settings = plan_.after.settings;
    plan_.tools = adapter_tools(plan_.adapters);
    plan_.steps = adapter_steps(plan_.adapters);
    plan_.checks = adapter_checks(plan_.adapters);
    if (options_.wrong_seatings) judge_wrong_seatings();
    result_.summary =
        format("{}: {} between, the cable stays as it is{}", join(names, " and "),
               plan_.adapters.size() == 1 ? "a lead" : format("{} leads", plan_.adapters.size()),
               plan_.cures.empty() ? "" : "; the added parts are needed as well");
    result_.plan = std::move(plan_);
  }

  const Fitting& fitting_;
  const Advice& advice_;
  const AdviseOptions& options_;
  Millimetres length_;
  AdapterAdvice result_;
  AdapterPlan plan_;
  Harness ordered_;  ///< re-housed, in the order of ends B, cures built in
  std::vector<Finding> findings_;
};

}  // namespace

AdapterAdvice advise_adapter(const Fitting& fitting, const Advice& advice, const AdviseOptions& options,
                             Millimetres length) {
  return Builder(fitting, advice, options, length).run();
}

Fitting seen_from_board(const Fitting& fitting, const AdapterPlan& plan) {
  Fitting changed = fitting;
  changed.harness = &plan.harness;
  return changed;
}

Fitting seen_from_cable(const Fitting& fitting, const AdapterPlan& plan) {
  Fitting changed = fitting;
  changed.board = &plan.board;
  return changed;
}

}  // namespace plugward
