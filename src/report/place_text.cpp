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
    std::vector<std::string> plugs;
    std::vector<std::string> headers;
    for (const int plug : group) {
      plugs.push_back(format("'{}'", plug_at(fitting, plug).id));
      headers.push_back(header_at(fitting, chosen_header(plan, plug)).id);
    }
    paper.paragraph(
        format("{} are as good in each other's place: which of them goes on which of {} is for you "
               "to choose, and for the firmware to know",
               join(plugs, ", "), join(headers, ", ")),
        {"  - ", "    "});
  }
}

/// What to add, with the values where they were computed; 'check' tells the rest.
std::vector<std::string> parts_of(const Advice& advice) {
  if (advice.cures.empty()) return advice.parts;
  std::vector<std::string> parts;
  for (const Cure& cure : advice.cures) parts.push_back(cure.what);
  parts.insert(parts.end(), advice.uncured.begin(), advice.uncured.end());
  return parts;
}

void write_runner_up(Paper& paper, const Fitting& fitting, const PlacementPlan& plan) {
  if (!plan.runner_up) return;
  paper.heading("The next best");
  std::vector<std::string> differs;
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    const auto header_in = [&](const PlacedHarness& placed) {
      for (const Placement& p : placed.placements) {
        if (p.plug == plug) return header_at(fitting, p.header).id;
      }
      return std::string("no header");
    };
    const std::string other = header_in(*plan.runner_up);
    if (other != header_in(*plan.best))
      differs.push_back(format("'{}' on {}", plug_at(fitting, plug).id, other));
  }
  paper.paragraph(format("{}: {}", join(differs, ", "), to_word(plan.runner_up->advice.verdict)),
                  {"  ", "    "});
  const bool equal = plan.why_it_lost.starts_with("equal");
  paper.paragraph(format("{} {}", equal ? "it is" : "it lost because the best one", plan.why_it_lost),
                  {"  ", "    "});
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

const PlaceOption* chosen_option(const PlacementPlan& plan, int plug) {
  const int header = chosen_header(plan, plug);
  for (const PlaceOption& option : plan.options) {
    if (option.plug == plug && option.header == header) return &option;
  }
  return nullptr;
}

int chosen_header(const PlacementPlan& plan, int plug) {
  if (!plan.best) return -1;
  for (const Placement& p : plan.best->placements) {
    if (p.plug == plug) return p.header;
  }
  return -1;
}

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
    paper.paragraph(
        "The search was ended before it was proved that nothing is better; state a header or two with "
        "--at.");
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
