// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/documents_test.cpp.
#include "sheet/check_document.h"

#include <algorithm>

#include "base/format.h"
#include "sheet/documents.h"
#include "sheet/picture_words.h"
#include "sheet/pieces.h"
#include "sheet/step_words.h"
#include "sheet/words.h"

namespace plugward::sheet {
namespace {

std::vector<std::string> cautions_of(const Advice& advice) {
  return advice.plan ? advice.plan->cautions : std::vector<std::string>{};
}

/// Where no plan holds yet, no plan is not the same as nothing to move.
Cell moves_cell(const Advice& advice, const PlugPlan* moves) {
  if (moves != nullptr) return cell(format("{}", moves->extractions));
  if (advice.verdict == Verdict::Measure) return cell(tr("not known yet"), Mood::Doubtful);
  if (advice.verdict == Verdict::Apart) return cell(tr("moving does not help"), Mood::Bad);
  return cell(tr("none"));
}

Section plugs_section(const Fitting& fitting, const Advice& advice) {
  Section section = titled("plugs", tr("Plugs"));
  const Fitting planned = planned_fitting(fitting, advice);
  Table table{{tr("plug"), tr("header"), tr("contacts to move")}, {}};
  std::vector<Picture> pictures;
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Placement& p = fitting.placements[i];
    const PlugPlan* moves = plan_of(advice, p.plug);
    Picture picture =
        plug_picture(moves == nullptr ? fitting : planned, static_cast<int>(i), moves, advice.now.findings);
    table.rows.push_back({cell(plug_at(fitting, p.plug).id, Mood::Plain, picture.id),
                          cell(header_title(header_at(fitting, p.header))), moves_cell(advice, moves)});
    pictures.push_back(std::move(picture));
  }
  for (const int plug : unplaced_plugs(fitting))
    table.rows.push_back(
        {cell(plug_at(fitting, plug).id), cell(tr("on no header: not judged"), Mood::Doubtful)});
  add_table(section, std::move(table));
  std::vector<std::string> jumpers;
  for (const auto& [jumper, rail] : fitting.jumpers)
    jumpers.push_back(format("jumper {} at {}, as stated", jumper, rail));
  add_list(section, jumpers, true);
  for (Picture& picture : pictures) section.blocks.emplace_back(std::move(picture));
  return section;
}

std::string picture_of(const Fitting& fitting, int plug) {
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    if (fitting.placements[i].plug == plug) return plug_picture_id(static_cast<int>(i));
  }
  return "";
}

void add_plan(Section& section, const Fitting& planned, const RepinPlan& plan, Numbering& numbers) {
  if (moves_contacts(plan)) {
    add_list(section, tr("How to free and seat a contact"), plan.technique);
    Steps steps;
    for (const PlugPlan& part : plan.plugs) {
      if (!part.steps.empty())
        steps.steps.push_back(moves_step(planned, part, numbers, picture_of(planned, part.plug)));
    }
    section.blocks.emplace_back(std::move(steps));
  }
  std::vector<std::string> checks = plan.checks;
  checks.emplace_back(tr("read the table once more, cavity by cavity, against the housing in the hand"));
  add_list(section, tr("Before power comes back"), checks, true);
}

Section work_section(const Fitting& fitting, const Advice& advice, const SheetFacts& facts,
                     Numbering& numbers) {
  Section section = titled("what-to-do", tr("What to do"));
  add_list(section, tr("First see whether this will do"), advice.softer);
  add_measurements(section, advice.measurements, numbers);
  if (advice.cures.empty()) add_list(section, tr("What to add"), advice.parts, true);
  add_cures(section, advice.cures);
  add_list(section, tr("For other plugs a part is needed as well, and no values could be proved"),
           advice.uncured);
  if (advice.plan) add_plan(section, planned_fitting(fitting, advice), *advice.plan, numbers);
  if (advice.verdict == Verdict::Mate && facts.standing) {
    section.blocks.emplace_back(Text{tr("Nothing is to be moved: all may stay as it is.")});
  } else if (advice.verdict == Verdict::Mate) {
    section.blocks.emplace_back(
        Steps{{numbers.step(tr("plug it in: cavity 1 meets pin 1 of its header; nothing is to be moved"))}});
  }
  if (advice.verdict == Verdict::Apart) {
    section.blocks.emplace_back(Warning{tr("Do not join these two; the findings say why")});
  }
  if (!facts.command.empty() && advice.plan)
    section.blocks.emplace_back(Text{format("The whole procedure also comes from: {}", facts.command)});
  return section;
}

std::vector<std::string> settings_of(const Advice& advice, bool of_headers) {
  std::vector<std::string> lines;
  for (const Setting& s : advice.settings) {
    if (of_headers || s.header < 0)
      lines.push_back(s.why.empty() ? s.what : format("{} (why: {})", s.what, s.why));
  }
  return lines;
}

/// What the firmware must be told holds only for a machine that may be plugged in, and then says of each
/// header what the judge says of it.
Section settings_section(const Fitting& after, const Advice& advice, Numbering& numbers) {
  const bool done = advice.verdict == Verdict::Mate || advice.plan || advice.cured;
  Section section = firmware_section(
      *after.board, done ? firmware_settings(after, nullptr) : std::vector<FirmwareSetting>{}, numbers);
  add_list(section, tr("Because of this wiring"), settings_of(advice, !done), true);
  return section;
}

}  // namespace

Fitting followed(const Fitting& fitting, const Advice& advice) {
  Fitting after = planned_fitting(fitting, advice);
  if (!advice.cured && advice.plan) after.harness = &advice.plan->harness;
  return after;
}

void begin(Document& document, const Fitting& fitting, const SheetFacts& facts) {
  document.title = {.machine = facts.machine,
                    .harness = fitting.harness->title,
                    .board = board_title(*fitting.board),
                    .old_board = "",
                    .date = facts.date};
  document.language = spoken_language();
  document.limits = limits_sentence();
}

void add_advice(Document& document, const Fitting& fitting, const Advice& advice, const SheetFacts& facts,
                Numbering& numbers) {
  const Fitting after = followed(fitting, advice);
  add(document, plugs_section(fitting, advice));
  Section board = titled("board", tr("The board"));
  board.blocks.emplace_back(board_picture(fitting));
  add(document, std::move(board));
  add(document, findings_section(advice.now.findings, facts));
  add(document, work_section(fitting, advice, facts, numbers));
  add(document, test_card(after, numbers));
  add(document, settings_section(after, advice, numbers));
  add(document, seatings_section(fitting, advice));
  add(document, currents_section(fitting, advice.budget, advice.plan || advice.cured));
  add(document, parts_section(parts_list(fitting, advice)));
}

Document check_document(const Fitting& fitting, const Advice& advice, const SheetFacts& facts) {
  Document document;
  begin(document, fitting, facts);
  document.heading = format("{} on {}", fitting.harness->title, fitting.board->title);
  document.verdict = to_word(advice.verdict);
  document.mood = mood_of(advice.verdict);
  document.summary = advice.summary.empty() ? std::string(meaning(advice.verdict)) : advice.summary;
  Numbering numbers;
  add(document, cautions_section(cautions_of(advice)));
  add_advice(document, fitting, advice, facts, numbers);
  add(document, true_size_section(fitting));
  return document;
}

}  // namespace plugward::sheet
