// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/causes_test.cpp, with a twin that follows the wires alone.
#include "plan/causes.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/format.h"
#include "judge/excess_finding.h"
#include "plan/fault_words.h"
#include "plan/technique.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

auto key(const Excess& e) {
  return std::tuple(e.kind, e.at.header, e.at.pin, e.at.device, e.at.terminal, e.at.part, e.at.plug,
                    e.at.lead, e.at.rail);
}

/// Harms of the circuit that the healthy machine does not have.
std::vector<std::string> circuit_harms(const Observer& observer, const MachineFault& fault,
                                       const FaultyMachine& machine) {
  const std::vector<int> groups = plug_groups(*observer.fitting().harness);
  const std::vector<int> wanted = observer.reach(fault);
  const FaultyMachine healthy(observer.fitting());
  std::set<decltype(key(Excess{}))> known;
  const GroupView before(healthy, groups, wanted), now(machine, groups, wanted);
  for (const Excess& e : excesses(before.fitting, before.contacts)) known.insert(key(e));
  std::vector<std::string> harms;
  for (const Excess& e : excesses(now.fitting, now.contacts)) {
    if (known.contains(key(e))) continue;
    const Finding finding = finding_of(now.fitting, e);
    if (finding.weight != Weight::Harm) continue;
    harms.push_back(finding.state.empty() ? finding.message
                                          : format("{} ({})", finding.message, finding.state));
  }
  return harms;
}

/// What harms though no limit of the circuit is left.
void add_known_harms(const Observer& observer, Cause& cause) {
  for (const Showing& s : cause.shows) {
    if (s.symptom == Symptom::HeatsByItself) {
      cause.harms.insert(cause.harms.begin(), "it heats without having been told to: fire");
    }
    const bool sensor = std::any_of(
        observer.healthy().analogue.begin(), observer.healthy().analogue.end(), [&](const AnalogueSight& a) {
          const int placed = s.plug < 0 ? -1 : placement_of_plug(observer.fitting(), s.plug);
          return placed >= 0 && observer.fitting().placements[at(placed)].header == a.pin.header;
        });
    const bool wrong = s.symptom == Symptom::WrongOne || s.symptom == Symptom::WrongReading;
    if (sensor && wrong && std::none_of(cause.harms.begin(), cause.harms.end(), [](const std::string& h) {
          return h.starts_with("a heater");
        })) {
      cause.harms.emplace_back("a heater that is governed by this reading gets too hot: fire");
    }
  }
}

/// In the customary words, where the step they belong to stands.
std::vector<std::string> cautions_for(Symptom symptom) {
  std::vector<std::string> list;
  if (symptom == Symptom::HeatsByItself) {
    list.emplace_back("pull the mains plug at once, and leave it out until the cause is found and cured");
  }
  const std::vector<std::string> before = cautions_before();
  list.push_back(before[0]);
  list.push_back(before[1]);
  list.push_back(before[2]);
  list.emplace_back("never plug or unplug anything under power; power on only where a step says so");
  switch (symptom) {
    case Symptom::AlwaysTriggered:
    case Symptom::NeverTriggered:
    case Symptom::Inverted:
    case Symptom::Unsteady:
    case Symptom::RunsBackwards:
    case Symptom::Judders:
      list.emplace_back(
          "let no axis run towards its end until the input is known to follow; first moves slow, at "
          "mid-travel, "
          "hand on the switch");
      break;
    case Symptom::FullScale:
    case Symptom::ZeroScale:
    case Symptom::WrongReading:
    case Symptom::WrongOne:
    case Symptom::TooStrong:
      list.emplace_back("switch no heater on until every temperature answers to its own heater");
      break;
    case Symptom::Dies:
      list.emplace_back(
          "do not power a board again that smoked or smells; a fuse that blew is not made larger");
      break;
    default:
      break;
  }
  return list;
}

}  // namespace

CauseFinder::CauseFinder(const Fitting& fitting, std::vector<int> taken)
    : fitting_(fitting), observer_(fitting_), faults_(possible_faults(fitting_, taken)) {
  std::stable_sort(faults_.begin(), faults_.end(),
                   [](const MachineFault& a, const MachineFault& b) { return a.kind < b.kind; });
  for (const MachineFault& fault : faults_)
    shown_.push_back(observer_.showing(fault, FaultyMachine(fitting_, fault)));
}

std::vector<PossibleSymptom> CauseFinder::possible(std::optional<int> plug) const {
  std::map<std::pair<int, Symptom>, int> count;
  for (std::size_t i = 0; i < faults_.size(); ++i) {
    for (const Showing& s : shown_[i]) {
      if (!plug || s.plug == *plug || (s.plug < 0 && faults_[i].plug == *plug)) ++count[{s.plug, s.symptom}];
    }
  }
  std::vector<PossibleSymptom> list;
  for (const auto& [what, n] : count) list.push_back({{what.second, what.first}, n});
  return list;
}

Cause CauseFinder::cause_of(std::size_t index) const {
  Cause cause;
  cause.fault = faults_[index];
  cause.what = what_is_wrong(fitting_, cause.fault);
  cause.how = how_it_comes(fitting_, cause.fault);
  cause.cure = how_to_cure(fitting_, cause.fault);
  cause.shows = shown_[index];
  const FaultyMachine machine(fitting_, cause.fault);
  cause.harms = circuit_harms(observer_, cause.fault, machine);
  add_known_harms(observer_, cause);
  const GroupView view(machine, plug_groups(*fitting_.harness), observer_.reach(cause.fault));
  cause.shorts_by_hand = behaviour(view.fitting, view.contacts).shorted_by_hand;
  return cause;
}

std::vector<PlugCauses> CauseFinder::causes(Symptom symptom, std::optional<int> plug) const {
  std::vector<PlugCauses> list;
  for (const PossibleSymptom& seen : possible(plug)) {
    const Showing& showing = seen.showing;
    if (showing.symptom != symptom) continue;
    PlugCauses one;
    one.symptom = symptom;
    one.plug = showing.plug;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if (plug && showing.plug < 0 && faults_[i].plug != *plug) continue;
      if (std::find(shown_[i].begin(), shown_[i].end(), showing) == shown_[i].end()) continue;
      one.causes.push_back(cause_of(i));
    }
    if (one.causes.empty()) continue;
    one.steps = tell_apart(observer_, one.causes, symptom);
    one.cautions = cautions_for(symptom);
    list.push_back(std::move(one));
  }
  return list;
}

}  // namespace plugward
