// SPDX-License-Identifier: MIT
// From a fitting to a verdict. What stands is judged first; if it is not clean, the cheapest arrangement in
// which every terminal meets its function is carried out on a copy and judged as any harness. Where that is
// not clean, the next cheapest is tried (best first, as in E. L. Lawler, Management Science 18 (1972) 401,
// from memory). The best of what was judged decides:
//
//   clean, nothing moved  MATE      harms and faults that no part cures   APART
//   clean, moved          REPIN     something is not known                MEASURE
//                                   only what a part cures is left        ADAPT
//
// A plan that was not judged clean is never shown as one.
// Tested in tests/unit/plan/advise_test.cpp and, against all arrangements, in proof_test.cpp.
#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/components.h"
#include "plan/cure.h"
#include "plan/every_position.h"
#include "plan/parts.h"
#include "plan/repin.h"
#include "plan/softer.h"
#include "plan/target.h"
#include "plan/technique.h"
#include "plan/wiring_memory.h"

namespace plugward {
namespace {

constexpr int most_tries = 24;     ///< arrangements judged
constexpr int most_targets = 240;  ///< assignments solved to find them

/// An arrangement that was judged.
struct Candidate {
  std::vector<Arrangement> arrangements;  ///< by placement
  std::vector<Alternative> chosen;
  Assessment assessment;
  int moved = 0;
};

int count(const Assessment& assessment, Weight weight) {
  return static_cast<int>(std::count_if(assessment.findings.begin(), assessment.findings.end(),
                                        [&](const Finding& f) { return f.weight == weight; }));
}

/// Smaller is better: nobody harmed, no added part, fewest contacts moved.
auto rank(const Candidate& c) {
  const int harms = count(c.assessment, Weight::Harm);
  return std::tuple(incurable(c.assessment), harms + count(c.assessment, Weight::Fault),
                    count(c.assessment, Weight::Doubt), c.moved);
}

Arrangement arrangement_of(const Plug& plug) {
  Arrangement arrangement;
  for (const Lead& lead : plug.leads) arrangement.cavity.push_back(lead.cavity);
  return arrangement;
}

Harness arranged(const Fitting& fitting, const std::vector<Arrangement>& arrangements) {
  Harness harness = *fitting.harness;
  for (std::size_t p = 0; p < fitting.placements.size(); ++p) {
    auto& leads = harness.plugs[static_cast<std::size_t>(fitting.placements[p].plug)].leads;
    for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = arrangements[p].cavity[l];
  }
  return harness;
}

Assessment assess(const Fitting& fitting, const AdviseOptions& options) {
  return options.wirings == nullptr ? assess(fitting) : options.wirings->assess(fitting);
}

/// `now`: how the harness fares as it stands, if that is known; it is not judged twice.
Candidate judged(const Fitting& fitting, Target target, const AdviseOptions& options, const Assessment* now) {
  Candidate candidate;
  if (target.moved == 0 && now != nullptr) {
    candidate.assessment = *now;
  } else {
    const Harness harness = arranged(fitting, target.arrangements);
    Fitting changed = fitting;
    changed.harness = &harness;
    candidate.assessment = assess(changed, options);
  }
  candidate.arrangements = std::move(target.arrangements);
  candidate.chosen = std::move(target.chosen);
  candidate.moved = target.moved;
  return candidate;
}

Candidate as_it_stands(const Fitting& fitting, const Assessment& now) {
  Candidate candidate;
  candidate.assessment = now;
  for (const Placement& p : fitting.placements)
    candidate.arrangements.push_back(arrangement_of(plug_of(fitting, p.plug)));
  return candidate;
}

/// A target that waits to be judged, and what was refused to come to it.
struct Branch {
  Target target;
  std::set<Refused> refused;
};

/// Targets in the order of their cost. A clean arrangement differs from one that is not clean in the place of
/// at least one lead: for each lead one branch refuses its place.
class Search {
 public:
  explicit Search(const Fitting& fitting) : fitting_(fitting), groups_(groups(*fitting.harness)) { add({}); }

  /// The cheapest arrangement that was not given before; nothing when there is none left.
  std::optional<Target> next() {
    if (last_) refuse_each(*std::exchange(last_, std::nullopt));
    while (!open_.empty()) {
      Branch branch = std::move(open_.extract(open_.begin()).mapped());
      if (given_.insert(cavities(branch.target)).second) {
        last_ = std::move(branch);
        return last_->target;
      }
      refuse_each(branch);
    }
    return std::nullopt;
  }

 private:
  static std::vector<std::vector<int>> cavities(const Target& target) {
    std::vector<std::vector<int>> all;
    for (const Arrangement& arrangement : target.arrangements) all.push_back(arrangement.cavity);
    return all;
  }

  void refuse_each(const Branch& branch) {
    for (std::size_t p = 0; p < branch.target.arrangements.size(); ++p) {
      const auto& cavity = branch.target.arrangements[p].cavity;
      const auto& leads = plug_of(fitting_, fitting_.placements[p].plug).leads;
      for (std::size_t l = 0; l < cavity.size(); ++l) {
        if (!leads[l].to) continue;
        std::set<Refused> refused = branch.refused;
        refused.insert({{static_cast<int>(p), static_cast<int>(l)}, cavity[l]});
        add(std::move(refused));
      }
    }
  }

  void add(std::set<Refused> refused) {
    if (static_cast<int>(known_.size()) >= most_targets || !known_.insert(refused).second) return;
    auto target = cheapest_target(fitting_, groups_, refused);
    if (!target) return;
    const Cost cost = target->cost;
    open_.emplace(cost, Branch{std::move(*target), std::move(refused)});
  }

  const Fitting& fitting_;
  std::vector<WishGroup> groups_;
  std::multimap<Cost, Branch> open_;
  std::optional<Branch> last_;  ///< given last; what it leads to is looked for when it was not the answer
  std::set<std::set<Refused>> known_;
  std::set<std::vector<std::vector<int>>> given_;
};

/// The best arrangement that was judged; nothing when no arrangement gives every terminal its function.
std::optional<Candidate> best_candidate(const Fitting& fitting, const AdviseOptions& options,
                                        const Assessment* now) {
  std::optional<Candidate> best;
  Search search(fitting);
  for (int tries = 0; tries < most_tries; ++tries) {
    auto target = search.next();
    if (!target) break;
    Candidate candidate = judged(fitting, std::move(*target), options, now);
    if (!best || rank(candidate) < rank(*best)) best = std::move(candidate);
    if (best->assessment.clean()) break;
  }
  return best;
}

std::string why(const Fitting& fitting, const Candidate& candidate, int placement, int lead) {
  const Placement& where = fitting.placements[static_cast<std::size_t>(placement)];
  const Plug& plug = plug_of(fitting, where.plug);
  const auto& to = plug.leads[static_cast<std::size_t>(lead)].to;
  const int cavity =
      candidate.arrangements[static_cast<std::size_t>(placement)].cavity[static_cast<std::size_t>(lead)];
  if (!to) return "";
  const std::string name = terminal_name(fitting, *to);
  if (cavity < 1) return format("terminal {} has no use on this header", name);
  const Seating home = home_seating(plug, where.header, *fitting.board);
  const int pin = home.pin_of_cavity[static_cast<std::size_t>(cavity) - 1];
  if (pin == 0) return format("terminal {} must meet no pin", name);
  for (const Alternative& alternative : candidate.chosen) {
    for (const End& end : alternative.ends) {
      if (end.terminal != *to) continue;
      return format("terminal {} wants {}: {}, {}", name, to_words(end), pin_name(fitting, where.header, pin),
                    to_words(header_of(fitting, where.header).pin(pin)));
    }
  }
  return "";
}

void add_unique(std::vector<std::string>& list, const std::vector<std::string>& more) {
  for (const std::string& line : more) {
    if (std::find(list.begin(), list.end(), line) == list.end()) list.push_back(line);
  }
}

std::vector<Gauge> moved_gauges(const Plug& plug, const std::vector<Step>& steps) {
  std::vector<Gauge> gauges;
  for (const Step& step : steps) {
    const auto& gauge = plug.leads[static_cast<std::size_t>(step.lead)].gauge;
    if (gauge) gauges.push_back(*gauge);
  }
  return gauges;
}

/// Steps for every plug, carried out on the model and judged there; nothing when that does not end clean.
/// `judged`: the arrangement that they end in was judged already, so that it need not be once more.
std::optional<RepinPlan> make_plan(const Fitting& fitting, const Candidate& candidate, bool judged) {
  RepinPlan plan;
  plan.cautions = cautions_before();
  std::vector<Arrangement> reached;
  std::vector<Gauge> gauges;
  for (std::size_t p = 0; p < fitting.placements.size(); ++p) {
    const int plug_index = fitting.placements[p].plug;
    const Plug& plug = plug_of(fitting, plug_index);
    PlugPlan one;
    one.plug = plug_index;
    one.before = arrangement_of(plug);
    one.after = candidate.arrangements[p];
    // A lead that a cure adds where a contact still sits is seated when all have moved.
    Arrangement goal = one.after;
    for (std::size_t l = 0; l < goal.cavity.size(); ++l) {
      if (one.before.cavity[l] == 0) goal.cavity[l] = 0;
    }
    one.steps = order_moves(one.before, goal, plug.positions);
    for (Step& step : one.steps) {
      step.plug = plug_index;
      step.why = why(fitting, candidate, static_cast<int>(p), step.lead);
      if (step.kind == StepKind::Park) step.why = tr("parked in an empty cavity to make room");
      if (step.kind == StepKind::Hold) step.why = tr("held beside the housing to make room");
      if (step.kind != StepKind::Insert) ++one.extractions;
    }
    const auto result = carry_out(one.before, one.steps, plug.positions);
    if (!result || !(*result == goal)) return std::nullopt;
    reached.push_back(one.after);
    if (one.steps.empty()) continue;
    const Family& family = *fitting.catalogue->find(plug.family);
    if (!movable(family)) return std::nullopt;
    add_unique(plan.technique, technique(family));
    add_unique(plan.tools, tools(family));
    for (const Gauge& gauge : moved_gauges(plug, one.steps)) gauges.push_back(gauge);
    plan.plugs.push_back(std::move(one));
  }
  plan.checks = checks_after(gauges);
  plan.harness = arranged(fitting, reached);
  if (judged) {
    plan.after = candidate.assessment;
  } else {
    Fitting changed = fitting;
    changed.harness = &plan.harness;
    plan.after = assess(changed);
  }
  if (!plan.after.clean()) return std::nullopt;
  return plan;
}

/// A doubt about what things are, not about how far a level reaches: nothing can be planned before it is
/// settled.
bool ignorance(const Finding& finding) {
  if (finding.weight != Weight::Doubt) return false;
  switch (finding.rule) {
    case Rule::UnknownPin:
    case Rule::UnknownLead:
    case Rule::ContestedEvidence:
    case Rule::UnstatedJumper:
    case Rule::Assumed:
      return true;
    default:
      return false;
  }
}

std::vector<Measurement> measurements_of(const Assessment& assessment) {
  std::vector<Measurement> list;
  for (const Finding& finding : assessment.findings) {
    if (finding.weight != Weight::Doubt || !finding.measurement) continue;
    if (std::find(list.begin(), list.end(), *finding.measurement) == list.end())
      list.push_back(*finding.measurement);
  }
  std::stable_sort(list.begin(), list.end(),
                   [](const Measurement& a, const Measurement& b) { return a.cost < b.cost; });
  return list;
}

std::string names_of(const Fitting& fitting) {
  std::vector<std::string> names;
  for (const Placement& p : fitting.placements) {
    names.push_back(format("'{}' on '{}'", plug_of(fitting, p.plug).id, header_of(fitting, p.header).id));
  }
  return format("{}", join(names, tr(" and ")));
}

std::string contacts(int n) {
  return count_of(n, "{} contact", "{} contacts", n);
}

/// A housing and leads along a string of LEDs have no values that could be proved.
bool wants_values(const Assessment& assessment) {
  return std::any_of(assessment.findings.begin(), assessment.findings.end(), [](const Finding& f) {
    const bool plain = f.part.empty() || f.part == "housing" || f.part == "far-end-feed";
    return f.weight != Weight::Note && !plain;
  });
}

/// "a voltage divider of 6.8 kohm and 1.5 kohm and a pull-up of 10 kohm".
std::string cure_words(const std::vector<Cure>& cures) {
  std::vector<std::string> kinds;
  for (const Cure& cure : cures) kinds.push_back(cure.name);
  return format("{}", join(kinds, tr(" and ")));
}

/// Values for the parts, judged on the model, and the moves that go with them.
bool add_cures(Advice& advice, const Fitting& fitting, const Candidate& best, const std::string& names) {
  auto cured = find_cures(fitting, best.arrangements, best.assessment);
  if (!cured) return false;
  Fitting changed = fitting;
  changed.harness = &cured->harness;
  Candidate candidate;
  candidate.arrangements = std::move(cured->arrangements);
  candidate.chosen = best.chosen;
  advice.plan = make_plan(changed, candidate, false);
  if (!advice.plan) return false;
  // A lead that is added is no contact to be moved, nor is one that a cure took out to join it elsewhere: the
  // plan speaks of those that are there and stay.
  advice.moved = 0;
  for (PlugPlan& one : advice.plan->plugs) {
    const std::size_t leads = plug_of(fitting, one.plug).leads.size();
    one.before.cavity.resize(leads);
    one.after.cavity.resize(leads);
    for (std::size_t l = 0; l < leads; ++l)
      advice.moved += one.before.cavity[l] != one.after.cavity[l] ? 1 : 0;
  }
  advice.cures = std::move(cured->cures);
  advice.cured = advice.plan->harness;
  advice.settings = advice.plan->after.settings;
  advice.summary = format("{}: build in {} first{}", names, cure_words(advice.cures),
                          advice.moved > 0 ? format(", and move {}", contacts(advice.moved)) : "");
  return true;
}

void finish(Advice& advice, const Fitting& fitting, const Candidate& best, bool cures) {
  const std::string names = names_of(fitting);
  const bool unknown =
      std::any_of(best.assessment.findings.begin(), best.assessment.findings.end(), ignorance);
  advice.settings = best.assessment.settings;
  advice.moved = best.moved;
  if (best.assessment.clean()) {
    advice.plan = make_plan(fitting, best, true);
    if (advice.plan) {
      advice.verdict = Verdict::Repin;
      advice.summary = format("{}: move {} first", names, contacts(best.moved));
      return;
    }
    advice.verdict = Verdict::Adapt;
    advice.new_housings = 1;
    advice.parts = {tr("a new housing: the conductors of this one cannot be moved one by one")};
    advice.housings = advice.parts;
    advice.summary =
        format("{}: fits once its leads are in another order, which this housing does not allow", names);
    return;
  }
  const bool blocked = best.assessment.has(Weight::Harm) || best.assessment.has(Weight::Fault);
  if (unknown || (!blocked && best.assessment.has(Weight::Doubt))) {
    advice.verdict = Verdict::Measure;
    advice.measurements = measurements_of(best.assessment);
    advice.settings.clear();
    advice.summary = format(
        "{}: {}something must be known first; {}", names,
        advice.now.has(Weight::Harm) ? tr("it does harm as it is, and before a cure can be told ") : "",
        advice.measurements.size() == 1
            ? tr("one measurement settles it")
            : format("{} measurements settle it, the cheapest first", advice.measurements.size()));
    return;
  }
  if (curable(best.assessment)) {
    advice.verdict = Verdict::Adapt;
    for (const Finding& finding : best.assessment.findings) {
      if (finding.weight == Weight::Doubt || finding.weight == Weight::Note || finding.part.empty()) continue;
      const std::size_t before = advice.parts.size();
      add_unique(advice.parts, {part_words(fitting, finding)});
      if (finding.part != "housing" || advice.parts.size() == before) continue;
      ++advice.new_housings;
      advice.housings.push_back(advice.parts.back());
    }
    const bool values = wants_values(best.assessment);
    if (cures && values && add_cures(advice, fitting, best, names)) return;
    advice.summary =
        format("{}: not as it is; it needs {}{}{}", names,
               advice.parts.size() == 1 ? tr("a part") : format("{} parts", advice.parts.size()),
               best.moved > 0 ? format("; {} will have to move as well, which is planned once the "
                                       "description has the part",
                                       contacts(best.moved))
                              : "",
               cures && values ? tr("; no values could be proved") : "");
    return;
  }
  advice.verdict = Verdict::Apart;
  advice.settings.clear();
  const bool harm = advice.now.has(Weight::Harm);
  advice.summary = format("{}: do not join these; {}", names,
                          harm ? tr("it can damage or hurt, and no move of contacts or added part cures it")
                               : tr("it will not work, and no move of contacts or added part cures it"));
}

/// What would be measured changes nothing.
void keep_apart(Advice& advice, std::string summary) {
  advice.verdict = Verdict::Apart;
  advice.measurements.clear();
  advice.moved = 0;
  advice.summary = std::move(summary);
}

}  // namespace

Advice advise(const Fitting& fitting, const AdviseOptions& options) {
  if (auto apart = advise_apart(fitting, options)) return std::move(*apart);
  Advice advice;
  // A terminal that meets what it must not is a fault that no part cures: an arrangement without it is
  // better, whatever else there is against the present one.
  const int wrong = options.now ? 0 : wrong_functions(fitting);
  bool judged_now = wrong == 0;
  if (judged_now) advice.now = assess(fitting, options);
  Harness after = *fitting.harness;
  if (judged_now && advice.now.clean()) {
    advice.verdict = Verdict::Mate;
    advice.settings = advice.now.settings;
    advice.summary = format("{}: plug it in as it is", names_of(fitting));
  } else {
    std::optional<Candidate> best = best_candidate(fitting, options, judged_now ? &advice.now : nullptr);
    if (!judged_now && (!best || incurable(best->assessment) >= wrong)) {
      advice.now = assess(fitting, options);
      judged_now = true;
    }
    if (judged_now) {
      Candidate as_it_is = as_it_stands(fitting, advice.now);
      if (!best || rank(as_it_is) < rank(*best)) best = std::move(as_it_is);
    }
    finish(advice, fitting, *best, options.cures);
    if (advice.verdict == Verdict::Measure) {
      if (auto apart = apart_in_every_position(fitting, names_of(fitting), options))
        keep_apart(advice, std::move(*apart));
    }
    const bool elsewhere = advice.verdict == Verdict::Apart || advice.verdict == Verdict::Adapt;
    if (options.softer) advice.softer = softer_cures(fitting, elsewhere);
    if (advice.plan) after = advice.plan->harness;
  }
  if (options.wrong_seatings) {
    Fitting changed = fitting;
    changed.harness = &after;
    advice.wrong = wrong_seatings(changed);
  }
  if (options.budget) {
    Fitting changed = fitting;
    changed.harness = advice.cured ? &*advice.cured : &after;
    advice.budget = budget(changed);
  }
  return advice;
}

}  // namespace plugward
