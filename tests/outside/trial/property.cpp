// SPDX-License-Identifier: MIT
#include "outside/trial/property.h"

#include <algorithm>
#include <exception>
#include <limits>
#include <optional>

#include "base/format.h"
#include "outside/trial/change.h"
#include "outside/trial/executor.h"
#include "plan/place.h"
#include "plan/technique.h"
#include "support/bench.h"
#include "support/findings.h"

namespace plugward::test {
namespace {

constexpr std::size_t most_arrangements = 400;  ///< all of 5 leads in 5 cavities, with outs for some

Bench bench_of(const RandomWorld& world) {
  return Bench(to_text(world.board), to_text(world.harness));
}

Fitting fitting_of(const Bench& bench, const RandomWorld& world) {
  return bench.fitting(world.at, world.jumpers);
}

std::string plan_told(const RepinPlan& plan) {
  std::string text;
  for (const PlugPlan& plug : plan.plugs) {
    for (const Step& step : plug.steps) {
      text += format("{} {} {} {} {} {}\n", plug.plug, static_cast<int>(step.kind), step.lead, step.from,
                     step.to, step.why);
    }
  }
  return text + told(plan.after);
}

/// Everything that is said, as text.
std::string advice_told(const Advice& a) {
  std::string text = format("{} {} {}\n{}", to_word(a.verdict), a.summary, a.moved, told(a.now));
  if (a.plan) text += plan_told(*a.plan);
  for (const std::string& line : a.softer) text += line + "\n";
  for (const std::string& line : a.parts) text += line + "\n";
  for (const Cure& cure : a.cures) text += cure.what + cure.why + "\n";
  for (const Measurement& m : a.measurements) text += m.action + m.expect + "\n";
  for (const Setting& s : a.settings) text += s.what + s.why + "\n";
  for (const SeatingJudgement& w : a.wrong)
    text += format("{} {}\n", w.seating.words, told(Assessment{w.findings, {}}));
  return text;
}

/// What was judged with one part of the fitting exchanged.
Assessment assess_with(const Fitting& fitting, const Harness& harness) {
  Fitting other = fitting;
  other.harness = &harness;
  return assess(other);
}

Arrangement arrangement_of(const Plug& plug) {
  Arrangement now;
  for (const Lead& lead : plug.leads) now.cavity.push_back(lead.cavity);
  return now;
}

int distance(const Arrangement& a, const Arrangement& b) {
  int moved = 0;
  for (std::size_t l = 0; l < a.cavity.size(); ++l) moved += a.cavity[l] != b.cavity[l] ? 1 : 0;
  return moved;
}

std::string words(const std::vector<int>& cavities) {
  return format("{}", join(cavities, " "));
}

/// A cure may have taken a lead out of the housing before, to join it elsewhere.
bool begins_at(const Arrangement& before, const Arrangement& told, bool cured) {
  if (before.cavity.size() != told.cavity.size()) return false;
  for (std::size_t l = 0; l < before.cavity.size(); ++l) {
    if (told.cavity[l] != before.cavity[l] && !(cured && told.cavity[l] == 0)) return false;
  }
  return true;
}

/// The plan by hand, step by step, on the harness that the user has.
std::string carry_out_by_hand(const Fitting& fitting, const Advice& advice, Harness& harness) {
  int moved = 0;
  for (const PlugPlan& plan : advice.plan->plugs) {
    Plug& plug = harness.plugs[static_cast<std::size_t>(plan.plug)];
    const Arrangement before = arrangement_of(plug);
    if (!begins_at(before, plan.before, !advice.cures.empty())) {
      return format("steps: they begin at {}", words(plan.before.cavity));
    }
    Hand hand(plan.before, plug.positions);
    for (const Step& step : plan.steps) {
      if (step.plug != plan.plug) return "steps: a step is for another plug";
      if (step.why.empty()) return "steps: a step does not say why";
      if (const std::string refused = hand.carry_out(step); !refused.empty()) return "steps: one " + refused;
    }
    const Arrangement after = hand.arrangement(before.cavity.size());
    if (!(after == plan.after)) {
      return format("steps: they end at {}, not {}", words(after.cavity), words(plan.after.cavity));
    }
    moved += distance(plan.before, after);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) plug.leads[l].cavity = after.cavity[l];
    if (!movable(*fitting.catalogue->find(plug.family)))
      return "steps: this housing does not let its leads go";
  }
  if (moved != advice.moved) return format("steps: {} contacts move, {} are told", moved, advice.moved);
  return "";
}

std::string check_repin(const Fitting& fitting, const Advice& advice) {
  if (!advice.plan || advice.plan->plugs.empty()) return "repin: no plan";
  Harness harness = *fitting.harness;
  if (auto broken = carry_out_by_hand(fitting, advice, harness); !broken.empty()) return broken;
  const Assessment after = assess_with(fitting, harness);
  if (!after.clean()) return "repin: carried out, it is not clean:\n" + told(after);
  if (told(after) != told(advice.plan->after))
    return "repin: it is judged otherwise than told:\n" + told(after);
  if (after.settings != advice.settings) return "repin: other settings are told";
  return "";
}

std::string check_adapt(const Fitting& fitting, const Advice& advice) {
  if (advice.parts.empty() && advice.cures.empty()) return "adapt: nothing to add is named";
  if (advice.cured.has_value() != (!advice.cures.empty() && advice.uncured.empty()))
    return "adapt: cures without a cured harness, or the reverse";
  if (advice.plan && !advice.cured) return "adapt: a plan without cures";
  if (advice.cured) {
    const Assessment after = assess_with(fitting, *advice.cured);
    if (!after.clean()) return "adapt: the cured harness is not clean:\n" + told(after);
  }
  if (!advice.uncured.empty() && advice.cures.empty()) return "adapt: nothing is cured beside the uncured";
  for (const Cure& cure : advice.cures) {
    if (cure.what.empty() || cure.why.empty() || cure.steps.empty()) return "adapt: a cure says too little";
  }
  if (advice.plan) {
    Harness harness = *fitting.harness;
    return carry_out_by_hand(fitting, advice, harness);
  }
  return "";
}

std::string check_measure(const Advice& advice) {
  if (advice.measurements.empty()) return "measure: no measurement";
  int cost = 0;
  for (const Measurement& m : advice.measurements) {
    if (m.action.empty() || m.expect.empty() || m.settles.empty())
      return "measure: a measurement says too little";
    if (m.cost < cost) return "measure: a dear measurement stands before a cheap one";
    cost = m.cost;
  }
  return "";
}

/// The verdict and what goes with it.
std::string check_verdict(const Fitting& fitting, const Advice& a) {
  if (a.summary.empty()) return "summary: none";
  if (a.now.clean() != (a.verdict == Verdict::Mate))
    return "mate: not when the assessment is clean, and only then";
  const bool cures = a.verdict == Verdict::Adapt;
  if (!cures && (!a.parts.empty() || !a.cures.empty() || a.cured || a.new_housings != 0))
    return "parts: to no end";
  if (a.verdict != Verdict::Measure && !a.measurements.empty()) return "measurements: to no end";
  if (!cures && a.verdict != Verdict::Repin && a.plan) return "plan: to no end";
  switch (a.verdict) {
    case Verdict::Mate:
      if (a.settings != a.now.settings) return "settings: not those of the assessment";
      return a.moved == 0 ? "" : "mate: contacts moved";
    case Verdict::Repin:
      return check_repin(fitting, a);
    case Verdict::Adapt:
      return check_adapt(fitting, a);
    case Verdict::Measure:
      return a.settings.empty() ? check_measure(a) : "settings: though nothing is decided";
    case Verdict::Apart:
      return a.settings.empty() ? "" : "settings: though nothing is joined";
  }
  return "";
}

std::string check_wrong_seatings(const Advice& a) {
  for (const SeatingJudgement& wrong : a.wrong) {
    if (wrong.seating.kind == SeatingKind::Home) return "wrong: home is not a wrong seating";
    if (wrong.seating.words.empty()) return "wrong: no words";
    for (const Finding& finding : wrong.findings) {
      if (finding.weight < wrong.worst) return "wrong: the worst is not the worst";
    }
  }
  return "";
}

/// Every way to put the leads that are known into the housing; those that may stay unconnected also out of
/// it.
class AllArrangements {
 public:
  AllArrangements(const Harness& harness, const Plug& plug) : harness_(harness), plug_(plug) {
    Arrangement now;
    now.cavity.assign(plug.leads.size(), -1);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      if (!plug.leads[l].to) now.cavity[l] = plug.leads[l].cavity;
    }
    add(0, now);
  }
  std::vector<Arrangement> all;
  bool too_many = false;

 private:
  void add(std::size_t lead, const Arrangement& now) {
    if (too_many) return;
    if (lead == now.cavity.size()) {
      all.push_back(now);
      too_many = all.size() > most_arrangements;
      return;
    }
    if (!plug_.leads[lead].to) return add(lead + 1, now);
    const Terminal& terminal = harness_.terminal(*plug_.leads[lead].to);
    const bool may_be_out = terminal.optional || terminal.function == TerminalFunction::Spare;
    for (int cavity = may_be_out ? 0 : 1; cavity <= plug_.positions; ++cavity) {
      if (cavity > 0 && std::count(now.cavity.begin(), now.cavity.end(), cavity) > 0) continue;
      Arrangement next = now;
      next.cavity[lead] = cavity;
      add(lead + 1, next);
    }
  }

  const Harness& harness_;
  const Plug& plug_;
};

/// One plug: no arrangement is clean with fewer moves than the plan, and none at all when there is no plan.
std::string check_against_all_arrangements(const Fitting& fitting, const Advice& advice) {
  if (fitting.placements.size() != 1 || advice.verdict == Verdict::Mate) return "";
  const auto plug = static_cast<std::size_t>(fitting.placements[0].plug);
  Harness harness = *fitting.harness;
  const AllArrangements every(*fitting.harness, fitting.harness->plugs[plug]);
  if (every.too_many) return "";
  const Arrangement before = arrangement_of(harness.plugs[plug]);
  int fewest = std::numeric_limits<int>::max();
  Arrangement best;
  for (const Arrangement& arrangement : every.all) {
    const int moved = distance(before, arrangement);
    if (moved >= fewest) continue;
    auto& leads = harness.plugs[plug].leads;
    for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = arrangement.cavity[l];
    if (!assess_with(fitting, harness).clean()) continue;
    fewest = moved;
    best = arrangement;
  }
  if (best.cavity.empty()) return advice.verdict == Verdict::Repin ? "moves: no arrangement is clean" : "";
  if (!movable(*fitting.catalogue->find(harness.plugs[plug].family))) {
    return advice.verdict == Verdict::Adapt ? "" : "moves: another housing would do";
  }
  if (advice.verdict != Verdict::Repin) {
    return format("moves: {} is told, and {} is clean", to_word(advice.verdict), words(best.cavity));
  }
  if (advice.moved > fewest) {
    return format("moves: {} contacts moved, {} would do: {}", advice.moved, fewest, words(best.cavity));
  }
  return "";
}

/// What must stay when a file is only written in another way.
struct Gist {
  Verdict verdict{};
  int moved = 0;
  bool harm = false, fault = false, doubt = false;
  friend bool operator==(const Gist&, const Gist&) = default;
};

constexpr AdviseOptions verdict_only{.wrong_seatings = false, .softer = false};

Gist gist_of(const Advice& a) {
  // How many contacts would move is decided only with the verdict.
  const bool decided = a.verdict == Verdict::Repin || a.verdict == Verdict::Adapt;
  return {a.verdict, decided ? a.moved : 0, a.now.has(Weight::Harm), a.now.has(Weight::Fault),
          a.now.has(Weight::Doubt)};
}

Gist gist_of(const RandomWorld& world) {
  const Bench bench = bench_of(world);
  return gist_of(advise(fitting_of(bench, world), verdict_only));
}

std::string words(const Gist& g) {
  return format("{}, {} moved{}{}{}", to_word(g.verdict), g.moved, g.harm ? ", harm" : "",
                g.fault ? ", fault" : "", g.doubt ? ", doubt" : "");
}

std::string check_changed_files(const RandomWorld& world, const Advice& advice) {
  const Gist gist = gist_of(advice);
  const auto compare = [&](const char* name, const RandomWorld& changed) -> std::string {
    const Gist other = gist_of(changed);
    return other == gist ? "" : format("{}: {} becomes {}", name, words(gist), words(other));
  };
  if (auto broken = compare("renamed", renamed(world)); !broken.empty()) return broken;
  if (auto broken = compare("reordered", reordered(world)); !broken.empty()) return broken;
  if (auto broken = compare("renumbered", renumbered(world)); !broken.empty()) return broken;
  if (auto broken = compare("bystanders", with_bystanders(world)); !broken.empty()) return broken;
  if (advice.verdict == Verdict::Mate) return "";
  for (std::uint64_t which = 1; which <= 2; ++which) {
    const RandomWorld less = with_a_fact_less(world, which);
    const Bench bench = bench_of(less);
    if (assess(fitting_of(bench, less)).clean()) {
      return format("forgotten: {} becomes MATE with a fact less ({})", to_word(advice.verdict), which);
    }
  }
  return "";
}

std::string check_placement(const Fitting& fitting, const Advice& stated) {
  Fitting open = fitting;
  open.placements.clear();
  const PlacementPlan plan = place(open);
  const std::size_t plugs = fitting.harness->plugs.size();
  const bool all_placed = fitting.placements.size() == plugs;
  if (!plan.best) {
    return all_placed && stated.verdict == Verdict::Mate ? "place: nothing, and there is a placement to mate"
                                                         : "";
  }
  const PlacedHarness& best = *plan.best;
  if (best.advice.verdict == Verdict::Apart) return "place: the best is to be kept apart";
  if (static_cast<std::size_t>(best.cost.unplaced) + best.placements.size() != plugs) {
    return "place: the unplaced plugs are miscounted";
  }
  for (const Placement& a : best.placements) {
    const auto same = [&](const Placement& b) { return a.plug == b.plug || a.header == b.header; };
    if (std::count_if(best.placements.begin(), best.placements.end(), same) != 1) {
      return "place: a plug or header twice";
    }
  }
  Fitting joint = fitting;
  joint.placements = best.placements;
  const Advice again = advise(joint);
  // place() plans plugs apart that share no device, and reaches further than one plan for all; what it lets
  // join must hold for all together.
  const Verdict told = best.advice.verdict;
  const bool joins = told == Verdict::Mate || told == Verdict::Repin;
  if (joins) {
    if (const auto broken = check_verdict(joint, best.advice); !broken.empty()) return "place: " + broken;
  }
  if ((joins || best.placements.size() == 1) && !(gist_of(again) == gist_of(best.advice))) {
    return format("place: judged jointly {} becomes {}", words(gist_of(best.advice)), words(gist_of(again)));
  }
  if (const auto broken = check_verdict(joint, again); !broken.empty()) return "place: " + broken;
  if (all_placed && stated.verdict == Verdict::Mate && best.advice.verdict != Verdict::Mate) {
    return format("place: {} is the best, and there is a placement to mate", to_word(best.advice.verdict));
  }
  return "";
}

std::string check(const RandomWorld& world, const PropertyOptions& options, Verdict* verdict) {
  const Bench bench = bench_of(world);
  const Fitting fitting = fitting_of(bench, world);
  if (fitting.placements.empty()) return "";
  const Advice advice = advise(fitting);
  if (verdict != nullptr) *verdict = advice.verdict;
  if (auto broken = check_verdict(fitting, advice); !broken.empty()) return broken;
  if (auto broken = check_wrong_seatings(advice); !broken.empty()) return broken;
  if (!options.twins) return "";
  if (advice_told(advise(fitting)) != advice_told(advice))
    return "again: asked twice, it says something else";
  if (auto broken = check_against_all_arrangements(fitting, advice); !broken.empty()) return broken;
  if (auto broken = check_changed_files(world, advice); !broken.empty()) return broken;
  return options.place ? check_placement(fitting, advice) : "";
}

}  // namespace

std::string property_broken(const RandomWorld& world, const PropertyOptions& options, Verdict* verdict) {
  try {
    return check(world, options, verdict);
  } catch (const std::exception& error) {
    return std::string("unreadable: ") + error.what();
  }
}

}  // namespace plugward::test
