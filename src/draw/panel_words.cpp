// SPDX-License-Identifier: MIT
// Tested in mating_facts_test.cpp.
#include "draw/panel_words.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "draw/words.h"
#include "draw/wrong_words.h"
#include "judge/words.h"

namespace plugward {
namespace {

using Mark = Paragraph::Mark;

constexpr std::size_t most_at_first = 3;  ///< of cures without a tool, and of wrong seatings

bool to_be_plugged_in(const Advice& advice) {
  return advice.verdict == Verdict::Mate || (advice.verdict == Verdict::Repin && advice.plan);
}

/// A heading and its lines.
void add_list(std::vector<Paragraph>& text, const std::string& heading,
              const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  text.push_back({Mark::None, "", heading, true});
  for (const std::string& line : lines) text.push_back({Mark::Number, "–", line, false});
}

/// Likewise, but the first few lines only.
void add_short_list(std::vector<Paragraph>& text, const std::string& heading,
                    const std::vector<std::string>& lines) {
  const std::size_t count = std::min(lines.size(), most_at_first);
  add_list(text, heading, {lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(count)});
  if (lines.size() > count)
    text.push_back({Mark::None, "", format("… {} more", lines.size() - count), false});
}

/// What may do without tools comes before the verdict's own cure.
void add_summary(std::vector<Paragraph>& text, const MatingFacts& facts) {
  const Advice& advice = facts.advice;
  add_short_list(text, std::string(tr(softer_heading)), advice.softer);
  if (advice.summary.empty()) return;
  if (!advice.softer.empty()) text.push_back({Mark::None, "", tr("Otherwise"), true});
  text.push_back({Mark::None, "", advice.summary, false});
}

/// Those that are not among the first that do harm. They stand last: what there is to do comes first.
void add_other_wrong_seatings(std::vector<Paragraph>& text, const MatingFacts& facts) {
  const bool first = !harmful_seatings(facts).empty();
  add_list(text, first ? tr("Other wrong ways to plug it in") : mind_heading(facts),
           other_wrong_seatings(facts, most_at_first));
}

/// The jumpers that feed this header: the picture holds for these positions only.
void add_jumpers(std::vector<Paragraph>& text, const MatingFacts& facts) {
  std::set<std::string> told;
  for (const Pin& pin : facts.header.pins) {
    const auto stated = facts.fitting.jumpers.find(pin.jumper);
    if (pin.jumper.empty() || stated == facts.fitting.jumpers.end() || !told.insert(pin.jumper).second)
      continue;
    text.push_back({Mark::TickBox, "",
                    format("jumper {} sits at {}: it feeds {}.{}", stated->first, stated->second,
                           facts.header.id, pin.number),
                    false});
  }
}

/// What to add, and how to build it in where that was worked out.
void add_parts(std::vector<Paragraph>& text, const Advice& advice) {
  const std::vector<std::string>& in_words = advice.cures.empty() ? advice.parts : advice.uncured;
  if (advice.cures.empty() && in_words.empty()) return;
  text.push_back({Mark::None, "", tr("Add first"), true});
  int number = 0;
  for (const Cure& cure : advice.cures) {
    ++number;
    text.push_back(
        {Mark::Number, advice.cures.size() == 1 ? std::string("–") : format("{}", number), cure.what, false});
    for (const std::string& step : cure.steps) text.push_back({Mark::TickBox, "", step, false});
  }
  for (const std::string& part : in_words) text.push_back({Mark::TickBox, "", part, false});
}

void add_moves(std::vector<Paragraph>& text, const MatingFacts& facts) {
  text.push_back({Mark::None, "", tr("Moves, in this order"), true});
  int number = 0;
  for (const Step& step : facts.plan->steps) {
    text.push_back(
        {Mark::TickBox, format("{}", ++number), step_words(step, facts.plug, *facts.fitting.harness), false});
  }
  text.push_back({Mark::None, "", tr("Then plug in, and check that cavity 1 meets pin 1."), false});
  add_list(text, tr("Take care"), facts.advice.plan->cautions);
}

/// Nothing moves: every lead to be checked off against its pin.
void add_leads(std::vector<Paragraph>& text, const MatingFacts& facts) {
  text.push_back({Mark::None, "", tr("Nothing to move; lead by lead"), true});
  for (int cavity = 1; cavity <= facts.plug.positions; ++cavity) {
    const int lead = MatingFacts::lead_in(facts.now, cavity);
    if (lead < 0) continue;
    const std::string pin =
        cavity <= facts.header.positions
            ? format("{} {}", cavity, join(pin_phrases(facts.header.pin(cavity), facts.fitting), ", "))
            : std::string(tr("no pin"));
    text.push_back(
        {Mark::Number, "✓",
         format("{} {} meets {}", cavity, lead_name(facts.lead(lead), *facts.fitting.harness), pin), false});
  }
}

void add_measurements(std::vector<Paragraph>& text, const std::vector<Measurement>& measurements) {
  if (measurements.empty()) return;
  const bool one = measurements.size() == 1;
  text.push_back({Mark::None, "", one ? tr("Measure this first") : tr("Measure, the cheapest first"), true});
  int number = 0;
  for (const Measurement& m : measurements) {
    ++number;
    text.push_back({Mark::TickBox, one ? std::string() : format("{}", number),
                    m.expect.empty() ? m.action : format("{} → {}", m.action, m.expect), false});
  }
}

void add_findings(std::vector<Paragraph>& text, const MatingFacts& facts) {
  for (const Flagged& f : facts.flagged) {
    Paragraph p;
    p.mark = f.number > 0 ? Paragraph::Mark::Flag : Paragraph::Mark::Number;
    p.sign = f.number > 0 ? format("{}", f.number) : "–";
    p.text = format("{}: {}", tr(to_word(f.finding->weight)), f.finding->message);
    text.push_back(std::move(p));
  }
}

}  // namespace

std::vector<Paragraph> panel_text(const MatingFacts& facts) {
  std::vector<Paragraph> text;
  add_summary(text, facts);
  add_short_list(text, mind_heading(facts), harmful_seatings(facts));
  add_jumpers(text, facts);
  if (facts.advice.verdict == Verdict::Adapt) add_parts(text, facts.advice);
  if (facts.plan != nullptr) {
    add_moves(text, facts);
  } else if (to_be_plugged_in(facts.advice)) {
    add_leads(text, facts);
  }
  if (facts.advice.verdict == Verdict::Measure) add_measurements(text, facts.advice.measurements);
  if (!facts.flagged.empty()) {
    text.push_back({Mark::None, "",
                    facts.advice.verdict == Verdict::Mate ? tr("Worth knowing") : tr("Why, worst first"),
                    true});
    add_findings(text, facts);
  }
  if (!facts.advice.settings.empty()) {
    text.push_back({Mark::None, "", tr("Tell the firmware"), true});
    for (const Setting& setting : facts.advice.settings)
      text.push_back({Mark::TickBox, "", setting.what, false});
  }
  if (facts.plug_family != nullptr && facts.plug_family->first_cavity) {
    text.push_back({Mark::None, "", tr("Find cavity 1"), true});
    text.push_back(
        {Mark::None, "", std::string(tr(std::string_view(facts.plug_family->first_cavity->value))), false});
  }
  add_other_wrong_seatings(text, facts);
  return text;
}

}  // namespace plugward
