// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/work_text_test.cpp.
#include "report/work_text.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "base/format.h"
#include "report/reading_notes.h"
#include "report/step_text.h"
#include "report/words.h"
#include "sheet/work_words.h"

namespace plugward {
namespace {

std::string blank(const ExpectedReading& r) {
  return r.unit.empty() ? "[ ]" : format("______ {}", r.unit);
}

std::string pointers(ReadingNotes& notes, const ExpectedReading& r) {
  return notes.pointers(r.too_low, r.too_high, r.kind == ReadingKind::Look || (!r.low && !r.high));
}

void write_readings(Paper& paper, const std::vector<ExpectedReading>& readings, ReadingNotes& notes) {
  std::vector<std::vector<std::string>> rows;
  for (const ExpectedReading& r : readings)
    rows.push_back({r.points, r.expect, blank(r), pointers(notes, r)});
  if (!rows.empty()) paper.table(rows, "           ");
}

constexpr std::string_view margin = "           ";

void write_step(Paper& paper, const SwapPlan& plan, const WorkStep& step, std::size_t number,
                ReadingNotes& notes) {
  for (const std::string& caution : step.cautions)
    paper.paragraph(caution, {"       !   ", std::string(margin)});
  paper.paragraph(step.act, {format("  [ ] {:>3}. ", number), std::string(margin)});
  const auto line = [&](std::string_view word, const std::string& text) {
    if (!text.empty()) paper.paragraph(text, {format("{}{}: ", margin, word), std::string(margin) + "  "});
  };
  line("check with", step.code);
  line("must be seen", step.see);
  line("if not", step.wrong);
  line("does not prove", step.not_proved);
  if (step.moves_contacts) {
    for (const Step& move : plan.of(step.plugs.front()).moves.steps)
      paper.paragraph(step_words(plan.housed, move),
                      {format("{}[ ] ", margin), std::string(margin) + "    "});
  }
  write_readings(paper, step.readings, notes);
}

}  // namespace

void write_work(Paper& paper, const SwapPlan& plan, const std::vector<WorkStep>& steps) {
  paper.heading("Order of work");
  paper.paragraph(work_sentence(), {"  ", "  "});
  ReadingNotes notes;
  std::string heading;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const std::string here = stage_heading(steps[i]);
    if (here != heading) {
      notes.write(paper);
      paper.line();
      paper.line("  " + painted(here, Tone::Strong, paper.options()));
      heading = here;
    }
    write_step(paper, plan, steps[i], i + 1, notes);
  }
  notes.write(paper);
}

void write_firmware(Paper& paper, const SwapPlan& plan, const std::vector<FirmwareSetting>& settings) {
  if (settings.empty()) return;
  paper.heading("What the firmware must be told");
  const auto changed =
      std::count_if(settings.begin(), settings.end(), [](const FirmwareSetting& s) { return s.changed; });
  paper.paragraph(
      format("For {}, revision {}; {} of {} are not as they were. Neutral words: where they are "
             "entered is told by the firmware's own pages.",
             plan.board->title, plan.board->revision.empty() ? "not stated" : plan.board->revision, changed,
             settings.size()),
      {"  ", "  "});
  for (const FirmwareSetting& s : settings) {
    paper.paragraph(
        s.what,
        {format("  [ ] {} ", s.changed ? painted("changed:", Tone::Caution, paper.options()) : "as it was:"),
         "      "});
    paper.paragraph(s.tell, {"      ", "      "});
    if (s.changed && !s.was.empty()) paper.paragraph("was " + s.was, {"      ", "      "});
    if (!s.code.empty()) paper.paragraph(s.code, {"      check with ", "      "});
  }
  paper.paragraph(
      "Codes of RepRap-flavour G-code (RepRap wiki, \"G-code\"); other firmware has its own, and not every "
      "one has "
      "all of these:",
      {"  ", "  "});
  std::vector<std::vector<std::string>> rows;
  for (const GcodeMeaning& g : gcode_meanings())
    rows.push_back({std::string(g.code), std::string(g.meaning)});
  paper.table(rows, "    ");
}

void write_work_time(Paper& paper, const WorkTime& time) {
  paper.heading("Time");
  paper.paragraph(format("the change itself: {}", minutes_words(time.practised, time.first_time)),
                  {"  ", "    "});
  paper.paragraph(
      format("board and checks around it: {}", minutes_words(time.practised_checks, time.first_time_checks)),
      {"  ", "    "});
  std::vector<std::vector<std::string>> rows;
  for (const auto* list : {&time.rows, &time.check_rows}) {
    for (const TimeRow& row : *list)
      rows.push_back({row.what, format("{:.0f} min", std::ceil(row.practised)),
                      format("{:.0f} min", std::ceil(row.first_time))});
  }
  paper.table(rows, "    ");
  paper.paragraph("Waiting and calibration are not counted; the figures are judgement.", {"  ", "  "});
}

}  // namespace plugward
