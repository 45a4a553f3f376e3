// SPDX-License-Identifier: MIT
// Tested in tests/cases/adapter-*.
#include "report/adapter_text.h"

#include <map>

#include "base/format.h"
#include "plan/adapter_words.h"
#include "report/advice_text.h"
#include "report/cure_text.h"
#include "report/words.h"

namespace plugward {
namespace {

void write_boxes(Paper& paper, const std::vector<std::string>& items) {
  for (const std::string& item : items) paper.paragraph(item, {"  [ ] ", "      "});
}

void write_items(Paper& paper, const std::vector<std::string>& items) {
  for (const std::string& item : items) paper.paragraph(item, {"  - ", "    "});
}

std::string numbers(const std::vector<int>& list) {
  return list.empty() ? "none" : format("{}", join(list, ", "));
}

/// "3 for 26 AWG, 2 for 24 AWG"
std::string counts_by_gauge(const Adapter& adapter) {
  std::map<double, std::pair<Gauge, int>> counts;
  for (const AdapterLead& lead : adapter.leads) {
    auto& [gauge, count] = counts[lead.gauge.area.value];
    gauge = lead.gauge;
    ++count;
  }
  std::vector<std::string> words;
  for (const auto& [area, count] : counts)
    words.push_back(format("{} for {}", count.second, to_text(count.first)));
  return format("{}", join(words, ", "));
}

std::string contacts_words(const Adapter& adapter, const AdapterEnd& end) {
  switch (end.joint) {
    case Joint::Crimp:
      return format("{}, family '{}'", counts_by_gauge(adapter), end.family);
    case Joint::Screw:
      return "none: each lead goes under a screw";
    case Joint::Displacement:
      return "none: pressed on flat cable, all conductors at once and in their order";
    case Joint::Other:
      return "as the maker of the connector says";
  }
  return "";
}

void write_table(Paper& paper, const Fitting& fitting, const Adapter& adapter) {
  const Plug& plug = plug_at(fitting, adapter.plug);
  const Header& header = header_at(fitting, adapter.header);
  std::vector<std::vector<std::string>> rows = {
      {"A", "B", "colour", "gauge", "length", "from the cable", "meets"}};
  for (const AdapterLead& lead : adapter.leads) {
    rows.push_back({format("{}", lead.a), format("{}", lead.b), to_code(lead.colour), to_text(lead.gauge),
                    to_text(adapter.length),
                    lead_with_terminal(*fitting.harness, plug.leads[static_cast<std::size_t>(lead.lead)]),
                    format("{}.{} {}", header.id, lead.b, pin_words(fitting, header.pin(lead.b)))});
  }
  paper.table(rows);
  paper.line(format("  empty: at A {}; at B {}", numbers(adapter.a.empty), numbers(adapter.b.empty)));
}

void write_adapter(Paper& paper, const Fitting& fitting, const Adapter& adapter) {
  const Catalogue& catalogue = *fitting.catalogue;
  paper.heading(format("Lead '{}': from plug '{}' to header {}", adapter.id,
                       plug_at(fitting, adapter.plug).id, header_title(header_at(fitting, adapter.header))));
  paper.paragraph(end_a_words(adapter.a, catalogue) + "; it takes the cable's plug",
                  {"  End A: ", "         "});
  paper.paragraph(adapter.a.first, {"    position 1: ", "         "});
  paper.paragraph(contacts_words(adapter, adapter.a) +
                      (adapter.a.joint == Joint::Crimp ? "; none where a header is soldered on" : ""),
                  {"    contacts: ", "         "});
  paper.paragraph(end_b_words(adapter.b, catalogue) + "; it goes on the header", {"  End B: ", "         "});
  paper.paragraph(adapter.b.first, {"    position 1: ", "         "});
  paper.paragraph(contacts_words(adapter, adapter.b), {"    contacts: ", "         "});
  paper.line();
  write_table(paper, fitting, adapter);
  for (const std::string& note : adapter.notes) paper.paragraph(note, {"  note: ", "        "});
}

void write_wrong(Paper& paper, std::string_view heading, const Harness& harness,
                 const std::vector<SeatingJudgement>& wrong) {
  if (wrong.empty()) return;
  paper.heading(heading);
  std::vector<std::vector<std::string>> rows;
  int others = 0;
  for (const SeatingJudgement& one : wrong) {
    if (one.worst != Weight::Harm) {
      ++others;
      continue;
    }
    rows.push_back(
        {painted(to_word(one.worst), tone_of(one.worst), paper.options()),
         format("'{}' {}: {} [{}]", harness.plugs[static_cast<std::size_t>(one.plug)].id, one.seating.words,
                one.findings.front().message, rule_info(one.findings.front().rule).id)});
  }
  const bool none = rows.empty();
  paper.table(rows);
  if (others == 0) return;
  paper.line(format("  {}{} wrong way{} to sit: not known to do harm", others, none ? "" : " more",
                    others == 1 ? "" : "s"));
}

void write_plan(Paper& paper, const Fitting& fitting, const Advice& advice, const AdapterPlan& plan) {
  write_softer(paper, advice.softer);
  for (const Adapter& adapter : plan.adapters) write_adapter(paper, fitting, adapter);
  write_cures(paper, plan.cures);
  paper.heading("Tools");
  write_items(paper, plan.tools);
  paper.heading("How to build it");
  int number = 0;
  for (const std::string& step : plan.steps) paper.paragraph(step, {format("{:>3}. ", ++number), "     "});
  paper.heading("Before it is used");
  write_boxes(paper, plan.checks);
  write_settings(paper, plan.settings);
  write_wrong(paper, "If the cable's plug goes into end A wrong", *fitting.harness, plan.wrong_a);
  if (!plan.not_judged.empty()) {
    paper.heading("Not judged");
    paper.paragraph(plan.not_judged, {"  ", "  "});
  }
  write_wrong(paper, "If something goes on the board wrong", plan.harness, plan.wrong_b);
  paper.heading("With this lead between");
  paper.paragraph(format("{}: {}. The lead {} built in on the model and judged {}.",
                         painted(to_word(Verdict::Mate), tone_of(Verdict::Mate), paper.options()),
                         meaning(Verdict::Mate), plan.cures.empty() ? "was" : "and the added parts were",
                         plan.cures.empty() ? "from both ends" : "from the board's end"),
                  {"  ", "  "});
}

}  // namespace

std::string adapter_text(const Fitting& fitting, const Advice& advice, const AdapterAdvice& adapter,
                         const TextOptions& options) {
  Paper paper(options);
  paper.paragraph(format("adapter lead: {}", adapter.summary), {"", "  "});
  write_subject(paper, fitting);
  if (adapter.plan) {
    write_plan(paper, fitting, advice, *adapter.plan);
  } else if (!adapter.nothing_to_do) {
    write_softer(paper, advice.softer);
    write_measurements(paper, adapter.measurements);
  }
  write_limits(paper);
  return paper.text();
}

}  // namespace plugward
