// SPDX-License-Identifier: MIT
// Tested in tests/cases (place-*).
#include "report/place_text.h"

#include <algorithm>
#include <map>

#include "base/format.h"
#include "report/advice_text.h"
#include "report/words.h"

namespace plugward {
namespace {

bool is_fixed(const Fitting& fitting, int plug) {
  return std::any_of(fitting.placements.begin(), fitting.placements.end(),
                     [plug](const Placement& p) { return p.plug == plug; });
}

std::string coloured(Verdict verdict, const TextOptions& options) {
  return painted(to_word(verdict), tone_of(verdict), options);
}

void write_plugs(Paper& paper, const Fitting& fitting, const PlacementPlan& plan) {
  paper.heading("Plugs");
  std::vector<std::vector<std::string>> rows;
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    const std::string& id = plug_at(fitting, plug).id;
    const int header = chosen_header(plan, plug);
    const PlaceOption* option = chosen_option(plan, plug);
    if (header < 0) {
      rows.push_back({id, "-", "", "no header of this board is left for it"});
    } else if (option == nullptr) {
      rows.push_back({id, header_title(header_at(fitting, header)), "", "as stated"});
    } else {
      rows.push_back({id, header_title(header_at(fitting, header)),
                      coloured(option->verdict, paper.options()), option->reason});
    }
  }
  paper.table(rows);
}

void write_equals(Paper& paper, const Fitting& fitting, const PlacementPlan& plan) {
  if (plan.equals.empty()) return;
  paper.heading("Equal plugs");
  for (const std::vector<int>& group : plan.equals) {
    paper.paragraph(equals_words(fitting, plan, group), {"  - ", "    "});
  }
}

void write_runner_up(Paper& paper, const Fitting& fitting, const PlacementPlan& plan) {
  if (!plan.runner_up) return;
  paper.heading("The next best");
  for (const std::string& line : runner_up_words(fitting, plan)) paper.paragraph(line, {"  ", "    "});
}

void write_rehousings(Paper& paper, const PlacementPlan& plan) {
  for (const Rehousing& one : plan.rehousings) {
    paper.heading("Other housings");
    paper.paragraph(one.summary, {"  ", "    "});
    paper.line("  to be had:");
    for (const std::string& part : one.parts) paper.paragraph(part, {"  - ", "    "});
    paper.line("  before anything is touched:");
    for (const std::string& line : one.cautions) paper.paragraph(line, {"  - ", "    "});
    paper.line("  steps:");
    int number = 0;
    for (const std::string& step : one.steps) paper.paragraph(step, {format("{:>4}. ", ++number), "      "});
    paper.line("  then:");
    for (const std::string& line : one.checks) paper.paragraph(line, {"  - ", "    "});
  }
}

/// Headers with the same answer stand in one row.
void write_others(Paper& paper, const Fitting& fitting, const PlacementPlan& plan) {
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    if (is_fixed(fitting, plug)) continue;
    std::vector<std::vector<std::string>> rows;
    std::vector<std::string> unfit;
    for (const PlaceOption& option : plan.options) {
      if (option.plug != plug || option.header == chosen_header(plan, plug)) continue;
      const std::string id = header_at(fitting, option.header).id;
      if (option.reason.rfind("meant for", 0) == 0) {
        unfit.push_back(id);
      } else {
        rows.push_back({id, coloured(option.verdict, paper.options()), option.reason});
      }
    }
    if (!unfit.empty()) {
      rows.push_back({"others", coloured(Verdict::Apart, paper.options()),
                      format("meant for something else, or their pins suit its leads in no order: {}",
                             join(unfit, " "))});
    }
    if (rows.empty()) continue;
    paper.heading(format("Other headers for '{}'", plug_at(fitting, plug).id));
    paper.table(rows);
  }
}

}  // namespace

std::string place_text(const Fitting& fitting, const PlacementPlan& plan, const PlaceTextOptions& options) {
  Paper paper(options.text);
  if (plan.best) {
    write_verdict(paper, plan.best->advice);
  } else {
    paper.paragraph(format("{}: no plug of this harness finds a header on board '{}'",
                           coloured(Verdict::Apart, options.text), fitting.board->id),
                    {"", "  "});
  }
  paper.line();
  paper.paragraph(format("board {}: {}", fitting.board->id, fitting.board->title), {"", "  "});
  paper.paragraph(format("harness {}: {}", fitting.harness->id, fitting.harness->title), {"", "  "});
  for (const auto& [jumper, rail] : fitting.jumpers)
    paper.line(format("jumper {} at {}, as stated", jumper, rail));
  write_plugs(paper, fitting, plan);
  write_equals(paper, fitting, plan);
  if (plan.best) {
    write_measurements(paper, plan.best->advice.measurements);
    write_parts(paper, parts_of(plan.best->advice));
    write_settings(paper, plan.best->advice.settings);
  }
  write_runner_up(paper, fitting, plan);
  if (!plan.proven) {
    paper.line();
    paper.paragraph(unproven_sentence());
  }
  write_rehousings(paper, plan);
  write_others(paper, fitting, plan);
  if (!options.check_command.empty()) {
    paper.heading("To go on");
    paper.line("  " + options.check_command);
  }
  write_limits(paper);
  return paper.text();
}

}  // namespace plugward
