// SPDX-License-Identifier: MIT
// Tested in tests/cases (swap-*).
#include "report/swap_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/advice_text.h"
#include "report/cure_text.h"
#include "report/step_text.h"
#include "report/words.h"
#include "report/work_text.h"
#include "sheet/swap_words.h"

namespace plugward {
namespace {

const std::string& plug_name(const SwapPlan& plan, int plug) {
  return plug_at(*plan.machine, plug).id;
}

std::string old_header(const SwapPlan& plan, const PlugTransfer& t) {
  return t.from ? header_title(header_at(*plan.machine, *t.from)) : "-";
}

std::string new_header(const SwapPlan& plan, const PlugTransfer& t) {
  return t.to ? header_title(header_at(plan.after, *t.to)) : "-";
}

Tone tone_of(Transfer kind) {
  switch (kind) {
    case Transfer::Straight:
      return Tone::Good;
    case Transfer::Repin:
    case Transfer::Adapt:
      return Tone::Caution;
    case Transfer::Off:
      return Tone::Doubtful;
    case Transfer::NoPlace:
      return Tone::Bad;
  }
  return Tone::Plain;
}

void write_plugs(Paper& paper, const SwapPlan& plan) {
  paper.heading("Plugs");
  std::vector<std::vector<std::string>> rows{{"plug", "from", "to", "", ""}};
  for (const PlugTransfer& t : plan.plugs) {
    rows.push_back({plug_name(plan, t.plug), old_header(plan, t), new_header(plan, t),
                    painted(to_word(t.kind), tone_of(t.kind), paper.options()), t.why});
  }
  paper.table(rows);
}

void write_jumpers(Paper& paper, const SwapPlan& plan) {
  if (plan.jumpers.empty()) return;
  paper.heading("Jumpers of the new board");
  std::vector<std::vector<std::string>> rows;
  for (const JumperChoice& choice : plan.jumpers) {
    const Jumper* jumper = plan.board->jumper(choice.jumper);
    const std::string at = choice.rail.empty() ? "either" : "at " + choice.rail;
    rows.push_back({format("{} ({})", choice.jumper, jumper->label), choice.stated ? at + ", as stated" : at,
                    choice.why});
  }
  paper.table(rows);
}

void write_suits(Paper& paper, const SwapPlan& plan) {
  paper.heading("Before it is bought");
  std::vector<std::vector<std::string>> rows;
  for (const Suit& suit : plan.suits) {
    rows.push_back(
        {suit.what,
         painted(suit.fine ? "suits" : "does not", suit.fine ? Tone::Good : Tone::Bad, paper.options()),
         suit.message});
  }
  paper.table(rows);
  if (!plan.missing.empty()) paper.line("  missing:");
  for (const std::string& line : plan.missing) paper.paragraph(line, {"  - ", "    "});
  std::vector<std::string> left;
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.goes_over()) left.push_back(format("'{}'", plug_name(plan, t.plug)));
  }
  if (!left.empty()) paper.paragraph(format("left over: {}", join(left, ", ")), {"  ", "    "});
  std::vector<std::string> free;
  for (const int h : plan.free_headers) free.push_back(header_title(header_at(plan.after, h)));
  if (!free.empty()) paper.paragraph(format("free headers: {}", join(free, ", ")), {"  ", "    "});
}

void write_moves(Paper& paper, const SwapPlan& plan) {
  if (plan.count(Transfer::Repin) == 0 &&
      std::none_of(plan.plugs.begin(), plan.plugs.end(),
                   [](const PlugTransfer& t) { return !t.moves.steps.empty(); }))
    return;
  paper.heading("Contacts to move");
  paper.paragraph("Cavities are numbered; look at the wire side, where the leads go in.", {"  ", "  "});
  for (const PlugTransfer& t : plan.plugs) {
    if (t.moves.steps.empty()) continue;
    paper.line(format("  {}", plug_name(plan, t.plug)));
    write_steps(paper, plan.housed, t.moves.steps);
  }
}

void write_parts(Paper& paper, const SwapPlan& plan) {
  for (const PlugTransfer& t : plan.plugs) {
    if (t.parts.empty() && t.softer.empty()) continue;
    paper.heading(format("Plug '{}'", plug_name(plan, t.plug)));
    for (const std::string& line : t.softer) paper.paragraph(line, {"  instead: ", "    "});
    for (const std::string& line : t.parts) paper.paragraph(line, {"  - ", "    "});
    write_cures(paper, t.cures);
  }
}

void write_off(Paper& paper, const SwapPlan& plan) {
  for (const PlugTransfer& t : plan.plugs) {
    if (t.measurements.empty()) continue;
    paper.heading(format("Plug '{}' stays off until this is known", plug_name(plan, t.plug)));
    write_measurements(paper, t.measurements);
  }
}

void write_runner_up(Paper& paper, const SwapPlan& plan) {
  const std::string words = runner_up_words(plan);
  if (words.empty()) return;
  paper.heading("The next best");
  paper.paragraph(words, {"  ", "    "});
}

void write_look_alikes(Paper& paper, const SwapPlan& plan, const std::vector<LookAlike>& found) {
  if (found.empty()) return;
  paper.heading("Headers that look alike, worst first");
  for (const LookAlike& one : found) {
    const std::string weight(to_word(one.weight));
    paper.paragraph(format("{}: '{}' goes on {}, not on {}, which {}",
                           painted(weight, tone_of(one.weight), paper.options()), plug_name(plan, one.plug),
                           header_title(header_at(plan.after, one.meant)),
                           header_title(header_at(plan.after, one.mistaken)), join(one.reasons, ", and ")),
                    {"  - ", "    "});
    paper.paragraph(one.happens, {"    there: ", "           "});
  }
}

}  // namespace

std::string swap_text(const SwapPapers& papers, const SwapTextOptions& options) {
  const SwapPlan& plan = *papers.plan;
  Paper paper(options.text);
  paper.paragraph(swap_summary(plan), {"", "  "});
  paper.line();
  paper.paragraph(format("machine {}: {}", plan.machine->harness->id, plan.machine->harness->title),
                  {"", "  "});
  paper.paragraph(format("from board {}: {}", plan.machine->board->id, plan.machine->board->title),
                  {"", "  "});
  paper.paragraph(format("to board {}: {}", plan.board->id, plan.board->title), {"", "  "});
  write_plugs(paper, plan);
  write_jumpers(paper, plan);
  write_suits(paper, plan);
  write_off(paper, plan);
  write_moves(paper, plan);
  write_parts(paper, plan);
  write_runner_up(paper, plan);
  write_look_alikes(paper, plan, papers.alike);
  write_firmware(paper, plan, papers.firmware);
  write_work_time(paper, papers.time);
  write_work(paper, plan, papers.work);
  if (!options.record_command.empty()) {
    paper.heading("To write the new state down");
    paper.line("  " + options.record_command);
  }
  write_limits(paper);
  return paper.text();
}

}  // namespace plugward
