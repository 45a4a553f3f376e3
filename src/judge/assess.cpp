// SPDX-License-Identifier: MIT
// One arrangement is judged in layers: do the housings suit each other, does each terminal meet its function,
// what is not known, and what does the circuit do. A jumper whose position is not stated is tried in each
// position: what holds in all of them is a finding, what depends on it is a doubt about the jumper.
// Tested in tests/unit/judge/assess_test.cpp.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/format.h"
#include "judge/doubts.h"
#include "judge/excess_finding.h"
#include "judge/function_check.h"
#include "judge/judgement.h"
#include "judge/lack.h"
#include "judge/led_string.h"
#include "judge/measurement.h"
#include "judge/sense.h"
#include "judge/unstated.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::vector<Contact> contacts_of(const Fitting& fitting, const std::vector<Seating>& seating_of) {
  std::vector<Contact> contacts;
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const int plug = fitting.placements[i].plug;
    const Seating& seating = seating_of[i];
    const auto& leads = plug_of(fitting, plug).leads;
    for (std::size_t l = 0; l < leads.size(); ++l) {
      if (leads[l].cavity < 1) continue;
      const int pin = seating.pin_of_cavity[static_cast<std::size_t>(leads[l].cavity) - 1];
      if (pin != 0) contacts.push_back({plug, static_cast<int>(l), seating.header, pin});
    }
  }
  return contacts;
}

std::vector<Seating> home_seatings(const Fitting& fitting) {
  std::vector<Seating> homes;
  for (const Placement& p : fitting.placements) {
    homes.push_back(home_seating(plug_of(fitting, p.plug), p.header, *fitting.board));
  }
  return homes;
}

/// Half of a 0.64 mm square pin: further off, a pin bends, or spreads a contact for good.
constexpr Millimetres half_a_pin{0.32};

/// What the housings say, whatever is wired.
void add_housing_findings(const Fitting& fitting, std::vector<Finding>& out) {
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Header& header = header_of(fitting, p.header);
    const Mate how = mate(plug, header, *fitting.catalogue);
    Finding finding;
    finding.message = how.words;
    finding.first = plug.family_span.known() ? plug.family_span : plug.span;
    finding.second = header.family_span.known() ? header.family_span : header.span;
    finding.second_says = format("header '{}' is declared here", header.id);
    finding.weight = Weight::Fault;
    finding.part = "housing";
    switch (how.kind) {
      case MateKind::Fits:
        break;
      case MateKind::OtherFamily:
        finding.rule = Rule::HousingMismatch;
        out.push_back(finding);
        break;
      case MateKind::OtherPitch:
        finding.rule = Rule::PitchMismatch;
        if (how.end_error && *how.end_error > half_a_pin) finding.weight = Weight::Harm;
        finding.figure = how.end_error ? std::optional(how.end_error->value) : std::nullopt;
        finding.unit = "mm";
        out.push_back(finding);
        break;
      case MateKind::OtherPositions:
        finding.weight = Weight::Note;
        finding.part.clear();
        [[fallthrough]];
      case MateKind::TooWide:
      case MateKind::TooNarrow:
      case MateKind::OtherRows:
        finding.rule = Rule::PositionsMismatch;
        out.push_back(finding);
        break;
    }
    const auto note_key = [&](KeyState key, std::string_view whose, const std::string& id, Span span) {
      if (key == KeyState::Intact) return;
      Finding note;
      note.rule = Rule::AlteredKey;
      note.weight = Weight::Note;
      note.message =
          key == KeyState::Removed
              ? format("the key of {} '{}' was removed: nothing keeps the plug from going on turned", whose,
                       id)
              : format("whether {} '{}' still has its key is not known: it may go on turned", whose, id);
      note.first = span;
      out.push_back(std::move(note));
    };
    note_key(plug.key, tr("plug"), plug.id, plug.span);
    note_key(header.key, tr("header"), header.id, header.span);
  }
}

/// Does a terminal of the device meet, on this header, a pin that names the very same signal?
bool signals_agree(const Fitting& fitting, std::span<const Contact> contacts, TerminalRef of, int header) {
  return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
    const auto& to = lead_of(fitting, contact).to;
    if (!to || to->device != of.device || contact.header != header) return false;
    const std::string& signal = fitting.harness->terminal(*to).signal;
    return !signal.empty() && signal == pin_of(fitting, contact).signal;
  });
}

/// A device on a header that is meant for something else: a fault, unless the signals themselves agree.
void add_use_findings(const Fitting& fitting, std::span<const Contact> contacts, std::vector<Finding>& out) {
  std::vector<std::pair<int, int>> seen;  // device, header
  for (const Contact& contact : contacts) {
    const auto& to = lead_of(fitting, contact).to;
    if (!to) continue;
    const Device& device = fitting.harness->devices[static_cast<std::size_t>(to->device)];
    const Header& header = header_of(fitting, contact.header);
    if (device.use.empty() || device.use == "unknown" || header.use == device.use || header.use == "spare") continue;
    const std::pair key{to->device, contact.header};
    if (std::find(seen.begin(), seen.end(), key) != seen.end()) continue;
    seen.push_back(key);
    Finding finding;
    finding.rule = Rule::WrongUse;
    finding.weight = signals_agree(fitting, contacts, *to, contact.header) ? Weight::Note : Weight::Fault;
    finding.message = format("header '{}' is for '{}', the device '{}' is for '{}'", header.id, header.use,
                             device.title.empty() ? device.id : device.title, device.use);
    finding.first = device.span;
    finding.second = header.span;
    finding.second_says = format("header '{}' is declared here", header.id);
    out.push_back(std::move(finding));
  }
}

/// Plugs of the harness that are not placed are not judged; that is worth knowing.
void note_unplaced_plugs(const Fitting& fitting, std::vector<Finding>& out) {
  for (std::size_t i = 0; i < fitting.harness->plugs.size(); ++i) {
    const bool is_placed = std::any_of(fitting.placements.begin(), fitting.placements.end(),
                                       [&](const Placement& p) { return p.plug == static_cast<int>(i); });
    if (is_placed) continue;
    const Plug& plug = fitting.harness->plugs[i];
    Finding finding;
    finding.rule = Rule::NotConnected;
    finding.weight = Weight::Note;
    finding.message = format("plug '{}' is on no header here: what it brings is not judged", plug.id);
    finding.first = plug.span;
    out.push_back(std::move(finding));
  }
}

/// Function and circuit, with every jumper stated.
Assessment assess_stated(const Fitting& fitting, std::span<const Contact> contacts) {
  FunctionCheck functions = check_functions(fitting, contacts);
  Assessment result;
  result.findings = std::move(functions.findings);
  result.settings = std::move(functions.settings);
  const std::vector<Finding> of_functions = result.findings;
  for (const Excess& excess : excesses(fitting, contacts)) {
    Finding finding = finding_of(fitting, excess);
    if (!follows_from_a_lack(fitting, contacts, of_functions, excess, finding))
      result.findings.push_back(std::move(finding));
  }
  return result;
}

bool one_place(const Locus& a, const Locus& b) {
  return a.header == b.header && a.pin == b.pin && a.device == b.device && a.terminal == b.terminal &&
         a.part == b.part && a.plug == b.plug && a.lead == b.lead && a.rail == b.rail;
}

/// Figures so close that they mean the same: what a load draws elsewhere lifts a ground by millivolts.
bool close(std::optional<double> a, std::optional<double> b) {
  return a && b && std::abs(*a - *b) <= 0.01 * std::max(std::abs(*a), std::abs(*b));
}

bool same(const Finding& a, const Finding& b) {
  if (a.rule != b.rule || a.weight != b.weight || !(a.first == b.first)) return false;
  return a.message == b.message || (one_place(a.at, b.at) && a.part == b.part && close(a.figure, b.figure));
}

bool holds(const std::vector<Finding>& list, const Finding& finding) {
  return std::any_of(list.begin(), list.end(), [&](const Finding& f) { return same(f, finding); });
}

/// The same finding where its figure is largest.
Finding worst_of(const std::vector<Assessment>& tries, const Finding& finding) {
  const Finding* worst = &finding;
  for (const Assessment& one : tries) {
    for (const Finding& f : one.findings) {
      if (same(f, finding) && f.figure && worst->figure && std::abs(*f.figure) > std::abs(*worst->figure))
        worst = &f;
    }
  }
  return *worst;
}

constexpr std::size_t most_combinations = 256;

/// The position of every open jumper, as one of the combinations; beyond `most_combinations` not of every
/// one.
using Positions = JumperPositions;

std::vector<Positions> combinations(const std::vector<OpenJumper>& open) {
  std::vector<Positions> all{{}};
  for (const OpenJumper& o : open) {
    std::vector<Positions> more;
    for (const Positions& base : all) {
      for (const std::string& rail : o.jumper->rails) {
        more.push_back(base);
        more.back()[o.jumper->id] = rail;
      }
    }
    all = std::move(more);
    if (all.size() > most_combinations) break;
  }
  return all;
}

std::string say(const Positions& positions) {
  std::vector<std::string> words;
  for (const auto& [jumper, rail] : positions) words.push_back(format("{} at {}", jumper, rail));
  return format("{}", join(words, ", "));
}

/// Tries every position of the jumpers that are not stated.
Assessment assess_jumpers(const Fitting& fitting, std::span<const Contact> contacts) {
  const std::vector<OpenJumper> open = open_jumpers(fitting, contacts);
  if (open.empty()) return assess_stated(fitting, contacts);
  std::vector<Assessment> tries;
  const std::vector<Positions> positions = combinations(open);
  for (const Positions& combination : positions) {
    Fitting stated = fitting;
    stated.jumpers.insert(combination.begin(), combination.end());
    tries.push_back(assess_stated(stated, contacts));
  }
  Assessment result;
  result.settings = tries.front().settings;
  std::vector<std::string> outcomes;
  bool depends = positions.size() > most_combinations;  // not every position was tried
  for (const Finding& finding : tries.front().findings) {
    const bool everywhere = std::all_of(tries.begin(), tries.end(),
                                        [&](const Assessment& t) { return holds(t.findings, finding); });
    if (everywhere) result.findings.push_back(worst_of(tries, finding));
  }
  for (std::size_t i = 0; i < tries.size(); ++i) {
    const Finding* worst = nullptr;
    for (const Finding& finding : tries[i].findings) {
      if (holds(result.findings, finding)) continue;
      if (worst == nullptr || finding.weight < worst->weight) worst = &finding;
    }
    depends = depends || worst != nullptr;
    outcomes.push_back(
        format("{}: {}", say(positions[i]), worst == nullptr ? tr("nothing against it") : worst->message));
  }
  if (!depends) return result;
  for (const OpenJumper& o : open) {
    Finding finding;
    finding.rule = Rule::UnstatedJumper;
    finding.weight = Weight::Doubt;
    finding.message =
        format("where jumper {} sits is not stated ({})", jumper_name(*o.jumper), join(outcomes, "; "));
    finding.first = o.jumper->span;
    finding.second = header_of(fitting, o.header).pin(o.pin).span;
    finding.second_says = format("it feeds {}", pin_name(fitting, o.header, o.pin));
    finding.measurement = look_at_jumper(fitting, *o.jumper, o.header, o.pin);
    result.findings.push_back(std::move(finding));
  }
  return result;
}

/// How fast a thing goes wrong: a short circuit burns before an input ages. Smaller is worse.
int danger(Rule rule) {
  switch (rule) {
    case Rule::ShortCircuit:
      return 0;
    case Rule::ReversedSupply:
      return 1;
    case Rule::SupplyTooHigh:
      return 2;
    case Rule::Overvoltage:
      return 3;
    case Rule::AlwaysOn:
      return 4;
    case Rule::HeaterPower:
      return 5;
    case Rule::ClampCurrent:
      return 6;
    case Rule::PinOvercurrent:
    case Rule::ContactOvercurrent:
    case Rule::WireOvercurrent:
    case Rule::RailOverload:
    case Rule::ResistorPower:
      return 7;
    case Rule::BackFeed:
      return 8;
    default:
      return 9;
  }
}

/// How many times beyond its limit, for findings of one rule.
double excess_ratio(const Finding& finding) {
  if (!finding.figure || !finding.limit || *finding.limit == 0) return 0;
  return std::abs(*finding.figure / *finding.limit);
}

bool worse(const Finding& a, const Finding& b) {
  if (a.weight != b.weight) return a.weight < b.weight;
  if (danger(a.rule) != danger(b.rule)) return danger(a.rule) < danger(b.rule);
  return a.rule == b.rule && a.weight == Weight::Harm && excess_ratio(a) > excess_ratio(b) * (1 + 1e-9);
}

void sort_worst_first(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), worse);
}

Assessment assess_contacts(const Fitting& fitting, std::span<const Contact> contacts, bool at_home) {
  Assessment result = assess_jumpers(fitting, contacts);
  for (Finding& doubt : doubts(fitting, contacts)) result.findings.push_back(std::move(doubt));
  for (Finding& doubt : unstated(fitting, contacts)) result.findings.push_back(std::move(doubt));
  if (at_home) add_housing_findings(fitting, result.findings);
  if (at_home) note_unplaced_plugs(fitting, result.findings);
  add_use_findings(fitting, contacts, result.findings);
  for (Finding& finding : far_end_findings(fitting, contacts)) result.findings.push_back(std::move(finding));
  if (at_home) {
    for (Setting& s : brightness_settings(fitting, contacts)) result.settings.push_back(std::move(s));
    for (Setting& s : input_senses(fitting, contacts)) result.settings.push_back(std::move(s));
    for (Finding& note : inverted_senses(fitting, contacts)) result.findings.push_back(std::move(note));
  }
  sort_worst_first(result.findings);
  return result;
}

}  // namespace

Assessment assess(const Fitting& fitting) {
  return assess_contacts(fitting, contacts_of(fitting, home_seatings(fitting)), true);
}

int wrong_functions(const Fitting& fitting) {
  const std::vector<Contact> contacts = contacts_of(fitting, home_seatings(fitting));
  if (!open_jumpers(fitting, contacts).empty()) return 0;
  const std::vector<Finding> findings = check_functions(fitting, contacts).findings;
  return static_cast<int>(std::count_if(findings.begin(), findings.end(), [](const Finding& f) {
    return f.weight == Weight::Fault && f.part.empty();
  }));
}

Assessment assess(const Fitting& fitting, const std::vector<Seating>& seating_of) {
  return assess_contacts(fitting, contacts_of(fitting, seating_of), false);
}

std::vector<SeatingJudgement> wrong_seatings(const Fitting& fitting) {
  std::vector<SeatingJudgement> out;
  const std::vector<Seating> homes = home_seatings(fitting);
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Placement& placement = fitting.placements[i];
    const Plug& plug = plug_of(fitting, placement.plug);
    std::vector<Seating> wrong = seatings(plug, placement.header, *fitting.board, *fitting.catalogue);
    std::erase_if(wrong, [](const Seating& s) { return s.kind == SeatingKind::Home; });
    for (Seating& s : neighbour_seatings(plug, placement.header, *fitting.board, *fitting.catalogue)) {
      const bool taken = std::any_of(fitting.placements.begin(), fitting.placements.end(),
                                     [&](const Placement& p) { return p.header == s.header; });
      if (!taken) wrong.push_back(std::move(s));
    }
    for (Seating& seating : wrong) {
      std::vector<Seating> seating_of = homes;
      seating_of[i] = seating;
      SeatingJudgement judgement;
      judgement.plug = placement.plug;
      judgement.findings = assess(fitting, seating_of).findings;
      judgement.worst = judgement.findings.empty() ? Weight::Note : judgement.findings.front().weight;
      judgement.seating = std::move(seating);
      out.push_back(std::move(judgement));
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const SeatingJudgement& a, const SeatingJudgement& b) {
    if (a.worst != b.worst || a.findings.empty() || b.findings.empty()) return a.worst < b.worst;
    return danger(a.findings.front().rule) < danger(b.findings.front().rule);
  });
  return out;
}

}  // namespace plugward
