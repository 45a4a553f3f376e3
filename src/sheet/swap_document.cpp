// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/documents_test.cpp.
#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "plan/plug_advice.h"
#include "plan/way_back.h"
#include "sheet/documents.h"
#include "sheet/picture_words.h"
#include "sheet/pieces.h"
#include "sheet/seating_words.h"
#include "sheet/step_words.h"
#include "sheet/swap_words.h"
#include "sheet/words.h"
#include "sheet/work_words.h"

namespace plugward::sheet {
namespace {

const std::string& name_of(const SwapPlan& plan, int plug) {
  return plug_at(*plan.machine, plug).id;
}

Mood transfer_mood(Transfer kind) {
  switch (kind) {
    case Transfer::Straight:
      return Mood::Good;
    case Transfer::Repin:
    case Transfer::Adapt:
      return Mood::Caution;
    case Transfer::Off:
      return Mood::Doubtful;
    case Transfer::NoPlace:
      return Mood::Bad;
  }
  return Mood::Plain;
}

std::string picture_of(const SwapPlan& plan, int plug) {
  const std::vector<Placement>& all = plan.before_moves.placements;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].plug == plug) return plug_picture_id(static_cast<int>(i));
  }
  return "";
}

Section transfers_section(const SwapPlan& plan) {
  Section section = titled("transfers", tr("From header to header"));
  Table table{{tr("plug"), tr("from"), tr("to"), "", tr("why")}, {}};
  for (const PlugTransfer& t : plan.plugs) {
    const std::string from = t.from ? header_title(header_at(*plan.machine, *t.from)) : "-";
    const std::string to = t.to ? header_title(header_at(plan.after, *t.to)) : "-";
    table.rows.push_back({cell(name_of(plan, t.plug), Mood::Plain, picture_of(plan, t.plug)), cell(from),
                          cell(to), cell(std::string(tr(to_word(t.kind))), transfer_mood(t.kind)),
                          cell(t.why)});
  }
  add_table(section, std::move(table));
  const std::string second = runner_up_words(plan);
  if (!second.empty()) section.blocks.emplace_back(Text{format("The next best: {}.", second)});
  return section;
}

Section boards_section(const SwapPapers& papers) {
  Section section = titled("boards", tr("Both boards"));
  section.blocks.emplace_back(board_picture(papers.plan->after, papers.alike));
  section.blocks.emplace_back(old_board_picture(*papers.plan->machine));
  return section;
}

Section jumpers_section(const SwapPlan& plan) {
  Section section = titled("jumpers", tr("Jumpers of the new board"));
  Table table{{tr("jumper"), tr("where"), tr("why")}, {}};
  for (const JumperChoice& choice : plan.jumpers) {
    const Jumper* jumper = plan.board->jumper(choice.jumper);
    const std::string at = choice.rail.empty() ? std::string(tr("either")) : format("at {}", choice.rail);
    table.rows.push_back({cell(format("{} ({})", choice.jumper, jumper->label)),
                          cell(choice.stated ? format("{}, as stated", at) : at), cell(choice.why)});
  }
  add_table(section, std::move(table));
  return section;
}

Section suits_section(const SwapPlan& plan) {
  Section section = titled("suits", tr("Before it is bought"));
  Table table{{tr("what"), "", tr("in words")}, {}};
  for (const Suit& suit : plan.suits)
    table.rows.push_back({cell(suit.what),
                          cell(suit.fine ? tr("suits") : tr("does not"), suit.fine ? Mood::Good : Mood::Bad),
                          cell(suit.message)});
  add_table(section, std::move(table));
  add_list(section, tr("Missing"), plan.missing, true);
  std::vector<std::string> left, free;
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.goes_over()) left.push_back(format("'{}': {}", name_of(plan, t.plug), t.why));
  }
  add_list(section, tr("Left over"), left);
  for (const int h : plan.free_headers) free.push_back(header_title(header_at(plan.after, h)));
  if (!free.empty()) section.blocks.emplace_back(Text{format("Free headers: {}", join(free, ", "))});
  return section;
}

Section alike_section(const SwapPapers& papers) {
  const SwapPlan& plan = *papers.plan;
  Section section = titled("look-alikes", tr("Headers that look alike, worst first"));
  Table table{{"", tr("plug"), tr("goes on"), tr("not on"), tr("which"), tr("there")}, {}};
  for (const LookAlike& one : papers.alike) {
    table.rows.push_back({cell(std::string(tr(to_word(one.weight))), mood_of(one.weight)),
                          cell(name_of(plan, one.plug), Mood::Plain, picture_of(plan, one.plug)),
                          cell(header_title(header_at(plan.after, one.meant))),
                          cell(header_title(header_at(plan.after, one.mistaken))),
                          cell(format("{}", join(one.reasons, tr(", and ")))), cell(one.happens)});
  }
  add_table(section, std::move(table));
  return section;
}

Section plugs_section(const SwapPlan& plan) {
  Section section = titled("plugs", tr("Plug by plug"));
  const std::vector<Placement>& all = plan.before_moves.placements;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const PlugTransfer& t = plan.of(all[i].plug);
    section.blocks.emplace_back(
        plug_picture(plan.before_moves, static_cast<int>(i), t.moves.steps.empty() ? nullptr : &t.moves, {}));
  }
  return section;
}

/// Turned, shifted, or on a neighbour: of each plug once it is as it shall be.
Section wrong_section(const SwapPlan& plan) {
  Section section = titled("wrong-seatings", tr("If a plug goes on wrong"));
  Table table{{tr("plug"), "", tr("what it would do")}, {}};
  for (const PlugAdvice& one : advice_by_plug(plan.before_moves, plan.advice).plugs) {
    const int plug = plan.before_moves.placements[static_cast<std::size_t>(one.placement)].plug;
    for (const SeatingLine& line : seating_lines(plan.before_moves, one.advice.wrong))
      table.rows.push_back({cell(name_of(plan, plug), Mood::Plain, picture_of(plan, plug)),
                            cell(std::string(tr(to_word(line.weight))), mood_of(line.weight)),
                            cell(line.text)});
  }
  add_table(section, std::move(table));
  return section;
}

Section technique_section(const SwapPlan& plan) {
  Section section = titled("technique", tr("How to free and seat a contact"));
  if (plan.advice.plan) add_list(section, plan.advice.plan->technique);
  return section;
}

Section cures_section(const SwapPlan& plan, Numbering& numbers) {
  Section section = titled("cures", tr("What to add"));
  for (const PlugTransfer& t : plan.plugs) {
    if (t.parts.empty() && t.softer.empty()) continue;
    section.blocks.emplace_back(Text{format("Plug '{}'", name_of(plan, t.plug)), true});
    add_list(section, tr("Instead"), t.softer);
    if (t.cures.empty()) add_list(section, t.parts, true);
    add_cures(section, t.cures);
  }
  for (const PlugTransfer& t : plan.plugs) {
    if (t.measurements.empty()) continue;
    section.blocks.emplace_back(
        Text{format("Plug '{}' stays off until this is known", name_of(plan, t.plug)), true});
    add_measurements(section, t.measurements, numbers);
  }
  return section;
}

Step sheet_step(const SwapPlan& plan, const WorkStep& work, Numbering& numbers) {
  Step step = numbers.step(work.act);
  step.cautions = work.cautions;
  step.see = work.see;
  step.wrong = work.wrong;
  step.code = work.code;
  step.not_proved = work.not_proved;
  step.power = work.power;
  if (work.moves_contacts) {
    for (const plugward::Step& move : plan.of(work.plugs.front()).moves.steps)
      step.parts.push_back(step_words(plan.housed, move));
  }
  const bool at_plug = work.stage == WorkStage::Contacts || work.stage == WorkStage::MeterOff ||
                       work.stage == WorkStage::PlugIn;
  if (at_plug && work.plugs.size() == 1) step.picture = picture_of(plan, work.plugs.front());
  Numbering::add_blanks(step, work.readings);
  return step;
}

Section work_section(const SwapPapers& papers, Numbering& numbers) {
  Section section = titled("order-of-work", tr("Order of work"), true);
  section.blocks.emplace_back(Text{std::string(work_sentence())});
  std::string heading;
  Steps steps;
  const auto flush = [&] {
    if (steps.steps.empty()) return;
    section.blocks.emplace_back(Text{heading, true});
    section.blocks.emplace_back(std::move(steps));
    steps = {};
  };
  for (const WorkStep& work : papers.work) {
    const std::string here = stage_heading(work);
    if (here != heading) flush();
    heading = here;
    steps.steps.push_back(sheet_step(*papers.plan, work, numbers));
  }
  flush();
  return section;
}  // namespace

Section time_section(const WorkTime& time) {
  Section section = titled("time", tr("Time"));
  Table table{{"", tr("practised"), tr("first time")}, {}};
  const auto row = [&table](const std::string& what, double practised, double first) {
    table.rows.push_back({cell(what), cell(format("{:.0f} min", std::ceil(practised))),
                          cell(format("{:.0f} min", std::ceil(first)))});
  };
  row(tr("the change itself"), time.practised, time.first_time);
  row(tr("board and checks around it"), time.practised_checks, time.first_time_checks);
  for (const auto* list : {&time.rows, &time.check_rows}) {
    for (const TimeRow& one : *list) row(one.what, one.practised, one.first_time);
  }
  add_table(section, std::move(table));
  section.blocks.emplace_back(
      Text{tr("Waiting and calibration are not counted; the figures are judgement.")});
  return section;
}

/// In short: 'swap --back' tells each step.
Section back_section(const SwapPlan& plan) {
  Section section = titled("way-back", tr("The way back, in short"));
  const WayBack back = way_back(plan);
  Table table{{tr("plug"), tr("from"), tr("to"), tr("at the bench")}, {}};
  for (const PlugWayBack& one : back.plugs) {
    std::vector<std::string> bench;
    for (const std::string& part : one.take_out) bench.push_back(format("take out {}", part));
    if (!one.leads_out.empty()) bench.push_back(format("added leads out: {}", one.leads_out.size()));
    if (one.other_housing) bench.push_back(tr("back into a housing of the old kind"));
    const auto moved = std::count_if(one.steps.begin(), one.steps.end(), [](const plugward::Step& s) {
      return s.kind != StepKind::Insert;  // counted when it was taken out
    });
    if (moved > 0) bench.push_back(format("contacts out of their cavities: {}", moved));
    if (!one.put_back.empty()) bench.push_back(format("leads back in: {}", one.put_back.size()));
    const std::string from =
        one.from ? header_title(plan.board->headers[static_cast<std::size_t>(*one.from)]) : "-";
    const std::string to =
        one.to ? header_title(plan.machine->board->headers[static_cast<std::size_t>(*one.to)]) : "-";
    table.rows.push_back(
        {cell(name_of(plan, one.plug)), cell(from), cell(to), cell(format("{}", join(bench, "; ")))});
  }
  if (table.rows.empty()) return section;
  add_table(section, std::move(table));
  std::vector<std::string> jumpers;
  for (const auto& [jumper, rail] : back.jumpers)
    jumpers.push_back(format("jumper {} of the old board at {}", jumper, rail));
  add_list(section, jumpers);
  section.blocks.emplace_back(Text{std::string(way_back_sentence(back.proven))});
  return section;
}

Section record_section(const SheetFacts& facts) {
  Section section = titled("record", tr("To write the new state down"));
  if (!facts.command.empty()) section.blocks.emplace_back(Text{facts.command});
  return section;
}

Mood swap_mood(const SwapPlan& plan) {
  if (!plan.result.clean()) return Mood::Bad;
  return swap_is_whole(plan) ? Mood::Good : Mood::Caution;
}

}  // namespace

Document swap_document(const SwapPapers& papers, const SheetFacts& facts) {
  const SwapPlan& plan = *papers.plan;
  const std::string machine = facts.machine.empty() ? plan.machine->harness->title : facts.machine;
  Document document;
  document.title = {.machine = facts.machine,
                    .harness = plan.machine->harness->title,
                    .board = board_title(*plan.board),
                    .old_board = board_title(*plan.machine->board),
                    .date = facts.date};
  document.heading = format("Moving '{}' to {}", machine, plan.board->title);
  document.verdict = swap_count(plan);
  document.mood = swap_mood(plan);
  document.summary = swap_details(plan);
  document.language = spoken_language();
  document.limits = limits_sentence();
  Numbering numbers;
  add(document, cautions_section(plan.advice.plan ? plan.advice.plan->cautions : std::vector<std::string>{}));
  add(document, transfers_section(plan));
  add(document, boards_section(papers));
  add(document, jumpers_section(plan));
  add(document, suits_section(plan));
  add(document, alike_section(papers));
  add(document, plugs_section(plan));
  add(document, wrong_section(plan));
  add(document, cures_section(plan, numbers));
  add(document, technique_section(plan));
  add(document, parts_section(parts_list(plan.before_moves, plan.advice)));
  add(document, work_section(papers, numbers));
  add(document, firmware_section(*plan.board, papers.firmware, numbers));
  add(document, time_section(papers.time));
  add(document, back_section(plan));
  add(document, record_section(facts));
  add(document, true_size_section(plan.before_moves));
  return document;
}

}  // namespace plugward::sheet
