// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/advice_text_test.cpp.
#include "report/advice_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/budget_text.h"
#include "report/cure_text.h"
#include "report/finding_text.h"
#include "report/step_text.h"
#include "report/words.h"
#include "sheet/seating_words.h"

namespace plugward {
namespace {

void write_plan_in_short(Paper& paper, const Fitting& fitting, const RepinPlan& plan,
                         const std::string& repin_command) {
  paper.heading("Steps");
  for (const PlugPlan& part : plan.plugs) {
    if (part.steps.empty()) continue;
    paper.line(format("  plug '{}', by its cavity numbers", plug_at(fitting, part.plug).id));
    write_steps(paper, *fitting.harness, part.steps);
  }
  if (!repin_command.empty()) {
    paper.line("  The whole procedure, with tools, technique and tests:");
    paper.line("    " + repin_command);
  }
}

}  // namespace

void write_verdict(Paper& paper, const Advice& advice) {
  const std::string word = painted(to_word(advice.verdict), tone_of(advice.verdict), paper.options());
  const std::string_view says = advice.summary.empty() ? meaning(advice.verdict) : advice.summary;
  paper.paragraph(format("{}: {}", word, says), {"", "  "});
}

void write_subject(Paper& paper, const Fitting& fitting) {
  const Board& board = *fitting.board;
  const Harness& harness = *fitting.harness;
  paper.line();
  const std::string revision = board.revision.empty() ? "" : ", revision " + board.revision;
  paper.paragraph(format("board {}: {}{}", board.id, board.title, revision), {"", "  "});
  paper.paragraph(format("harness {}: {}", harness.id, harness.title), {"", "  "});
  for (const Placement& placement : fitting.placements) {
    paper.line(format("plug '{}' on header {}", plug_at(fitting, placement.plug).id,
                      header_title(header_at(fitting, placement.header))));
  }
  for (const int plug : unplaced_plugs(fitting)) {
    paper.line(format("plug '{}' on no header: not judged", plug_at(fitting, plug).id));
  }
  for (const auto& [jumper, rail] : fitting.jumpers) {
    paper.line(format("jumper {} at {}, as stated", jumper, rail));
  }
}

void write_settings(Paper& paper, const std::vector<Setting>& settings) {
  if (settings.empty()) return;
  paper.heading("Settings for the firmware");
  for (const Setting& setting : settings) {
    paper.paragraph(setting.what, {"  - ", "    "});
    if (!setting.why.empty()) paper.paragraph(setting.why, {"    why: ", "         "});
  }
}

void write_parts(Paper& paper, const std::vector<std::string>& parts) {
  if (parts.empty()) return;
  paper.heading("What to add");
  for (const std::string& part : parts) paper.paragraph(part, {"  - ", "    "});
}

void write_uncured(Paper& paper, const std::vector<std::string>& parts) {
  if (parts.empty()) return;
  paper.line("  For other plugs a part is needed as well, and no values could be proved:");
  for (const std::string& part : parts) paper.paragraph(part, {"  - ", "    "});
}

void write_softer(Paper& paper, const std::vector<std::string>& softer) {
  if (softer.empty()) return;
  paper.heading("First see whether this will do");
  for (const std::string& cure : softer) paper.paragraph(cure, {"  - ", "    "});
}

void write_measurements(Paper& paper, const std::vector<Measurement>& measurements) {
  if (measurements.empty()) return;
  paper.heading("Measure, the cheapest first");
  int number = 0;
  for (const Measurement& m : measurements) {
    paper.paragraph(m.action, {format("{:>3}. ", ++number), "     "});
    if (!m.expect.empty()) paper.paragraph(m.expect, {"     reads    ", "              "});
    if (!m.settles.empty()) paper.paragraph(m.settles, {"     settles  ", "              "});
  }
}

void write_wrong_seatings(Paper& paper, const Fitting& fitting, const Advice& advice, bool harmful_only) {
  if (advice.wrong.empty()) return;
  paper.heading(wrong_seatings_heading(advice));
  std::vector<std::vector<std::string>> rows;
  for (const SeatingLine& line : seating_lines(fitting, advice.wrong)) {
    if (!harmful_only || line.weight == Weight::Harm)
      rows.push_back({painted(to_word(line.weight), tone_of(line.weight), paper.options()), line.text});
  }
  paper.table(rows);
  const auto left_out = std::count_if(advice.wrong.begin(), advice.wrong.end(),
                                      [](const SeatingJudgement& one) { return one.worst != Weight::Harm; });
  if (harmful_only && left_out > 0) {
    paper.line(format("  {}{} wrong way{} to sit: 'plugward check' lists {}", left_out,
                      rows.empty() ? "" : " more", left_out == 1 ? "" : "s", left_out == 1 ? "it" : "them"));
  }
}

void write_limits(Paper& paper) {
  paper.line();
  paper.paragraph(power_sentence());
  paper.paragraph(limits_sentence());
}

std::string advice_text(const Sources& sources, const Fitting& fitting, const Advice& advice,
                        const AdviceTextOptions& options) {
  Paper paper(options.text);
  write_verdict(paper, advice);
  write_subject(paper, fitting);
  paper.heading("As it is wired now");
  if (advice.now.findings.empty()) paper.line("  nothing speaks against it");
  write_findings(paper, sources, advice.now.findings);
  write_budget(paper, fitting, advice.budget, advice.plan || advice.cured);
  write_softer(paper, advice.softer);
  write_measurements(paper, advice.measurements);
  if (advice.cures.empty()) write_parts(paper, advice.parts);
  write_cures(paper, advice.cures);
  write_uncured(paper, advice.uncured);
  if (advice.plan && (advice.cures.empty() || moves_contacts(*advice.plan))) {
    write_plan_in_short(paper, planned_fitting(fitting, advice), *advice.plan, options.repin_command);
  }
  write_settings(paper, advice.settings);
  write_wrong_seatings(paper, fitting, advice, false);
  write_limits(paper);
  return paper.text();
}

}  // namespace plugward
