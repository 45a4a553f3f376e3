// SPDX-License-Identifier: MIT
// Tested in mating_facts_test.cpp.
#include "draw/mating_facts.h"

#include <algorithm>

#include "base/format.h"
#include "draw/panel_words.h"
#include "draw/words.h"
#include "draw/wrong_words.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr int most_flagged = 4;

bool within(Span inner, Span outer) {
  return inner.known() && outer.known() && inner.file == outer.file && inner.begin >= outer.begin &&
         inner.end <= outer.end;
}

/// Does the finding tell only of a part, and does the lead go to an end of it?
bool feeds_part(const Finding& finding, const Lead& lead, const Harness& harness) {
  const Locus& at = finding.at;
  if (at.device < 0 || at.part < 0 || at.terminal >= 0) return false;
  if (!lead.to || lead.to->device != at.device) return false;
  const Device& device = harness.devices[static_cast<std::size_t>(at.device)];
  const auto ends = ends_of(device.parts[static_cast<std::size_t>(at.part)]);
  return std::find(ends.begin(), ends.end(), lead.to->terminal) != ends.end();
}

/// By the place the finding names; by its spans only where it names none. Several terminals of a device
/// written in one line share one span, so a span never tells which of them is meant.
bool concerns(const Finding& finding, const MatingFacts& facts, std::size_t index) {
  const Locus& at = finding.at;
  const Lead& lead = facts.plug.leads[index];
  if (at.plug >= 0 && at.lead >= 0) {
    const auto& plugs = facts.fitting.harness->plugs;
    return &plugs[static_cast<std::size_t>(at.plug)] == &facts.plug && at.lead == static_cast<int>(index);
  }
  if (at.terminal >= 0) return lead.to == TerminalRef{at.device, at.terminal};
  return within(finding.first, lead.span) || within(finding.second, lead.span);
}

bool concerns(const Finding& finding, const Pin& pin) {
  return within(finding.first, pin.span) || within(finding.second, pin.span);
}

Weight worst_of_lead(const MatingFacts& facts, int lead, bool& any) {
  Weight worst = Weight::Note;
  any = false;
  for (const Flagged& f : facts.flagged) {
    if (std::find(f.leads.begin(), f.leads.end(), lead) == f.leads.end()) continue;
    if (f.finding->weight == Weight::Note) continue;
    any = true;
    worst = std::min(worst, f.finding->weight);
  }
  return worst;
}

std::vector<Flagged> find_flagged(const MatingFacts& facts) {
  std::vector<Flagged> all;
  if (facts.advice.verdict == Verdict::Repin) return all;
  for (const Finding& finding : facts.advice.now.findings) {
    Flagged f;
    f.finding = &finding;
    for (std::size_t i = 0; i < facts.plug.leads.size(); ++i) {
      if (concerns(finding, facts, i)) f.leads.push_back(static_cast<int>(i));
    }
    for (const Pin& pin : facts.header.pins) {
      if (concerns(finding, pin)) f.pins.push_back(pin.number);
    }
    const bool placed = !f.leads.empty() || !f.pins.empty();
    for (std::size_t i = 0; i < facts.plug.leads.size() && !placed; ++i) {
      if (feeds_part(finding, facts.plug.leads[i], *facts.fitting.harness))
        f.leads.push_back(static_cast<int>(i));
    }
    all.push_back(std::move(f));
  }
  int number = 0;
  for (Flagged& f : all) {
    if (number < most_flagged && (!f.leads.empty() || !f.pins.empty())) f.number = ++number;
  }
  return all;
}

std::string signs(const MatingFacts& facts, int item, std::vector<int> Flagged::*list) {
  std::vector<int> numbers;
  for (const Flagged& f : facts.flagged) {
    const std::vector<int>& items = f.*list;
    if (f.number > 0 && std::find(items.begin(), items.end(), item) != items.end())
      numbers.push_back(f.number);
  }
  return format("{}", join(numbers, ","));
}

std::string arrangement_words(const MatingFacts& facts, const Arrangement& arrangement, bool after) {
  std::string text;
  for (int cavity = 1; cavity <= facts.plug.positions; ++cavity) {
    const int lead = MatingFacts::lead_in(arrangement, cavity);
    if (lead < 0) {
      text += format(" Cavity {}: empty.", cavity);
      continue;
    }
    text += format(" Cavity {}: {} {}, {}.", cavity, to_code(facts.lead(lead).colour),
                   join(lead_phrases(facts.lead(lead), *facts.fitting.harness), ", "),
                   meeting_words(facts, lead, cavity, after));
  }
  return text;
}

}  // namespace

int MatingFacts::lead_in(const Arrangement& arrangement, int cavity) {
  for (std::size_t i = 0; i < arrangement.cavity.size(); ++i) {
    if (arrangement.cavity[i] == cavity) return static_cast<int>(i);
  }
  return -1;
}

MatingFacts gather(const Fitting& fitting, const Advice& advice, int placement) {
  const Placement& placed = fitting.placements[static_cast<std::size_t>(placement)];
  const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(placed.plug)];
  const Header& header = fitting.board->headers[static_cast<std::size_t>(placed.header)];
  MatingFacts facts{fitting, advice, plug, header, placed, nullptr, nullptr, nullptr, {}, {}, {}};
  if (fitting.catalogue != nullptr) {
    facts.plug_family = fitting.catalogue->find(plug.family);
    facts.header_family = fitting.catalogue->find(header.family);
  }
  for (const Lead& lead : plug.leads) facts.now.cavity.push_back(lead.cavity);
  facts.then = facts.now;
  if (advice.plan) {
    for (const PlugPlan& plan : advice.plan->plugs) {
      if (plan.plug != placed.plug || plan.steps.empty()) continue;
      facts.plan = &plan;
      facts.now = plan.before;
      facts.then = plan.after;
    }
  }
  facts.flagged = find_flagged(facts);
  return facts;
}

std::string flags_of_lead(const MatingFacts& facts, int lead) {
  return signs(facts, lead, &Flagged::leads);
}
std::string flags_of_pin(const MatingFacts& facts, int pin) {
  return signs(facts, pin, &Flagged::pins);
}

std::string meeting_words(const MatingFacts& facts, int lead, int cavity, bool after) {
  if (cavity > facts.header.positions) return tr("meets no pin");
  const std::string pin = format("{}.{}", facts.header.id, cavity);
  // REPIN with nothing to move in this plug: its plan was judged again with this plug as it is.
  const bool untouched = facts.advice.verdict == Verdict::Repin && facts.advice.plan && facts.plan == nullptr;
  if (after || untouched || facts.advice.verdict == Verdict::Mate) return format("✓ suits {}", pin);
  bool any = false;
  const Weight worst = worst_of_lead(facts, lead, any);
  if (!any) return format("meets {}", pin);
  return worst == Weight::Doubt ? format("? in doubt on {}", pin) : format("✗ wrong on {}", pin);
}

std::string title_of(const MatingFacts& facts) {
  return format("{}, plug {} → {}, {}", facts.fitting.harness->title,
                facts.plug.label.empty() ? facts.plug.id : facts.plug.label, facts.fitting.board->title,
                header_name(facts.header));
}

std::string describe(const MatingFacts& facts, View view) {
  std::string text = format("Verdict {}. {}", to_word(facts.advice.verdict), facts.advice.summary);
  if (!facts.advice.softer.empty())
    text += format(" {}: {}.", tr(softer_heading), join(facts.advice.softer, "; "));
  std::vector<std::string> wrong = harmful_seatings(facts);
  for (std::string& line : other_wrong_seatings(facts, wrong.size())) wrong.push_back(std::move(line));
  if (!wrong.empty()) text += format(" {}: {}.", mind_heading(facts), join(wrong, "; "));
  text += format(" The plug is {}. {}:", view_words(view == View::WireSide),
                 facts.plan ? tr("Now") : tr("The plug"));
  text += arrangement_words(facts, facts.now, false);
  if (facts.plan != nullptr) {
    text += tr(" Moves:");
    int number = 0;
    for (const Step& step : facts.plan->steps) {
      text += format(" {}. {}.", ++number, step_words(step, facts.plug, *facts.fitting.harness));
    }
    text += tr(" Then:") + arrangement_words(facts, facts.then, true);
  }
  text += format(" Header {} from pin 1:", header_name(facts.header));
  for (const Pin& pin : facts.header.pins) {
    text += format(" {} {}{}", pin.number, join(pin_phrases(pin, facts.fitting), ", "),
                   pin.number < facts.header.positions ? ";" : ".");
  }
  return text;
}

void lower_unlisted_flags(MatingFacts& facts, const std::vector<Paragraph>& text, std::size_t listed) {
  for (std::size_t i = listed; i < text.size(); ++i) {
    if (text[i].mark != Paragraph::Mark::Flag) continue;
    for (Flagged& f : facts.flagged) {
      if (format("{}", f.number) == text[i].sign) f.number = 0;
    }
  }
}

}  // namespace plugward
