// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/repin_text_test.cpp.
#include "report/repin_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/advice_text.h"
#include "report/cure_text.h"
#include "report/step_text.h"
#include "report/words.h"

namespace plugward {
namespace {

const Placement* placement_of(const Fitting& fitting, int plug) {
  const auto found = std::find_if(fitting.placements.begin(), fitting.placements.end(),
                                  [plug](const Placement& p) { return p.plug == plug; });
  return found == fitting.placements.end() ? nullptr : &*found;
}

std::string cell(const Harness& harness, const Lead* lead) {
  if (lead == nullptr) return "empty";
  if (!lead->to) return lead_name(*lead) + " to ?";
  return format("{} to {}", lead_name(*lead), harness.terminal_name(*lead->to));
}

void write_boxes(Paper& paper, const std::vector<std::string>& items) {
  for (const std::string& item : items) paper.paragraph(item, {"  [ ] ", "      "});
}

void write_housing(Paper& paper, const Fitting& fitting, const Plug& plug, const Header& header) {
  const Family* family = fitting.catalogue->find(plug.family);
  paper.paragraph(
      format("Housing: {}, {} positions; it goes on header {}.",
             family == nullptr ? plug.family : family->title, plug.positions, header_title(header)),
      {"  ", "  "});
  paper.paragraph(
      "Look at the wire side, where the leads go in. Seen from the mating face the order is "
      "mirrored: go by the cavity numbers, not by left and right.",
      {"  ", "  "});
  if (family != nullptr && family->first_cavity) {
    paper.paragraph("Cavity 1: " + family->first_cavity->value, {"  ", "  "});
  } else {
    paper.paragraph(
        "How cavity 1 is marked on this housing is not known to plugward: find it by its pin 1 "
        "on the header, and mark it before the first contact moves.",
        {"  ", "  "});
  }
}

void write_cavities(Paper& paper, const Fitting& fitting, const Placement& placement, const PlugPlan& plan) {
  const Header& header = header_at(fitting, placement.header);
  std::vector<std::vector<std::string>> rows = {{"cavity", "now", "then", "", "meets"}};
  for (const CavityRow& row : cavity_rows(fitting, placement, plan)) {
    const std::string meets =
        row.pin == 0 ? "no pin"
                     : format("{}.{} {}", header.id, row.pin, pin_words(fitting, header.pin(row.pin)));
    rows.push_back({format("{:>4}", row.cavity), cell(*fitting.harness, row.now),
                    cell(*fitting.harness, row.then), row.changed ? "changed" : "stays", meets});
  }
  paper.table(rows);
}

void write_plug(Paper& paper, const Fitting& fitting, const PlugPlan& plan) {
  const Placement* placement = placement_of(fitting, plan.plug);
  if (plan.steps.empty() || placement == nullptr) return;
  const Plug& plug = plug_at(fitting, plan.plug);
  paper.heading(format("Plug '{}'", plug.id));
  write_housing(paper, fitting, plug, header_at(fitting, placement->header));
  paper.line();
  write_cavities(paper, fitting, *placement, plan);
  paper.line();
  paper.line(format("  {} {} out of {} cavit{}", plan.extractions,
                    plan.extractions == 1 ? "contact comes" : "contacts come",
                    plan.extractions == 1 ? "its" : "their", plan.extractions == 1 ? "y" : "ies"));
  write_steps(paper, *fitting.harness, plan.steps);
}

void write_checks(Paper& paper, const RepinPlan& plan) {
  paper.heading("Before power comes back");
  write_boxes(paper, plan.checks);
  write_boxes(paper, {"read the table once more, cavity by cavity, against the housing in the hand"});
}

void write_procedure(Paper& paper, const Fitting& fitting, const Advice& advice) {
  const RepinPlan& plan = *advice.plan;
  write_softer(paper, advice.softer);
  write_cures(paper, advice.cures);
  paper.heading(advice.cures.empty() || moves_contacts(plan) ? "Before the first contact"
                                                             : "Before you begin");
  write_boxes(paper, plan.cautions);
  if (!plan.tools.empty()) {
    paper.heading("Tools");
    for (const std::string& tool : plan.tools) paper.paragraph(tool, {"  - ", "    "});
  }
  if (!plan.technique.empty()) {
    paper.heading("How to free and seat a contact");
    for (const std::string& line : plan.technique) paper.paragraph(line, {"  - ", "    "});
  }
  for (const PlugPlan& part : plan.plugs) write_plug(paper, fitting, part);
  write_checks(paper, plan);
  write_settings(paper, advice.settings);
  write_wrong_seatings(paper, fitting, advice, true);
  paper.heading("After these steps");
  paper.paragraph(format("{}: {}. The steps were carried out on the model and judged again.",
                         painted(to_word(Verdict::Mate), tone_of(Verdict::Mate), paper.options()),
                         meaning(Verdict::Mate)),
                  {"  ", "  "});
}

void write_no_procedure(Paper& paper, const Advice& advice) {
  paper.line();
  if (advice.verdict == Verdict::Mate) {
    paper.paragraph("No contact is to be moved.");
  } else {
    paper.paragraph("No moving of contacts alone that ends in MATE is known. 'plugward check' says why.");
    write_softer(paper, advice.softer);
    write_measurements(paper, advice.measurements);
    if (advice.cures.empty()) write_parts(paper, advice.parts);
    write_cures(paper, advice.cures);
  }
}

}  // namespace

std::string repin_text(const Fitting& fitting, const Advice& advice, const TextOptions& options) {
  Paper paper(options);
  write_verdict(paper, advice);
  write_subject(paper, fitting);
  if (advice.plan) {
    write_procedure(paper, planned_fitting(fitting, advice), advice);
  } else {
    write_no_procedure(paper, advice);
  }
  write_limits(paper);
  return paper.text();
}

}  // namespace plugward
