// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/loom_bench_test.cpp.
#include "plan/loom_bench.h"

#include <algorithm>
#include <optional>
#include <set>

#include "base/counted.h"
#include "judge/measurement.h"
#include "judge/words.h"
#include "plan/place.h"

namespace plugward {
namespace {

/// Puts the leads where the loom says that they sit now. Those that it does not name are gone from the plug.
void rearrange(Plug& plug, const std::vector<int>& leads_now) {
  if (leads_now.empty()) return;
  std::vector<Lead> leads;
  for (std::size_t i = 0; i < leads_now.size(); ++i) {
    if (leads_now[i] == 0) continue;
    leads.push_back(*plug.lead_in(leads_now[i]));
    leads.back().cavity = static_cast<int>(i) + 1;
  }
  plug.leads = std::move(leads);
}

int index_of_header(const Board& board, const std::string& id) {
  const auto found =
      std::find_if(board.headers.begin(), board.headers.end(), [&](const Header& h) { return h.id == id; });
  return static_cast<int>(found - board.headers.begin());
}

Finding loom_doubt(Rule rule, std::string message, Span first, Measurement settles) {
  Finding finding;
  finding.rule = rule;
  finding.weight = Weight::Doubt;
  finding.message = std::move(message);
  finding.first = first;
  finding.measurement = std::move(settles);
  return finding;
}

/// "an assumption ('guess')", "stated without evidence", or "" when there is evidence to trust.
std::string weak_basis(const Loom& loom, const std::string& own) {
  const Evidence* evidence = loom.evidence_of(own);
  if (evidence == nullptr) return tr("stated without evidence");
  return evidence->kind == EvidenceKind::Assumption ? format("an assumption ('{}')", evidence->id) : "";
}

Measurement look_at_plug(const std::string& name, const std::string& expect) {
  return {.action = format("look which header plug '{}' sits on", name),
          .expect = expect,
          .cost = 0,
          .settles = format("where plug '{}' sits", name)};
}

void doubt_seats(const Loom& loom, const LoomBench& bench, std::vector<Finding>& out) {
  for (std::size_t i = 0; i < bench.names.size(); ++i) {
    const std::string& name = bench.names[i];
    const std::size_t slash = name.find('/');
    const std::string harness = name.substr(0, slash);
    const Plug& plug = bench.harness.plugs[i];
    const Seat* seat = loom.seat(harness, name.substr(slash + 1));
    Finding finding;
    if (seat == nullptr || seat->state == SeatState::Unknown) {
      const Span place = seat != nullptr ? seat->plug_span : loom.harness(harness)->span;
      finding =
          loom_doubt(Rule::UnknownSeat, format("where plug '{}' sits is not known", name), place,
                     look_at_plug(name, tr("write it into the loom: 'seat' with its header, or 'loose'")));
    } else {
      const std::string weak = weak_basis(loom, seat->evidence);
      if (weak.empty()) continue;
      const std::string where =
          seat->state == SeatState::Loose ? tr("sits on no header") : format("sits on '{}'", seat->header);
      finding = loom_doubt(
          Rule::Assumed, format("that plug '{}' {} is {}", name, where, weak), seat->plug_span,
          look_at_plug(name, format("it {}: as the loom says; anything else: correct the loom", where)));
    }
    finding.second = plug.span;
    finding.second_says = tr("the plug is declared here");
    finding.at.plug = static_cast<int>(i);
    out.push_back(std::move(finding));
  }
}

void doubt_jumpers(const Loom& loom, const Fitting& fitting, std::vector<Finding>& out) {
  for (const FittedJumper& fitted : loom.jumpers) {
    const std::string weak = weak_basis(loom, fitted.evidence);
    if (fitted.rail.empty() || weak.empty()) continue;
    for (const Placement& placement : fitting.placements) {
      const Header& header = header_of(fitting, placement.header);
      const auto pin = std::find_if(header.pins.begin(), header.pins.end(),
                                    [&](const Pin& p) { return p.jumper == fitted.jumper; });
      if (pin == header.pins.end()) continue;
      const Jumper& jumper = *fitting.board->jumper(fitted.jumper);
      Finding finding = loom_doubt(
          Rule::Assumed, format("that jumper {} is at {} is {}", jumper_name(jumper), fitted.rail, weak),
          fitted.jumper_span, look_at_jumper(fitting, jumper, placement.header, pin->number));
      finding.second = jumper.span;
      finding.second_says = tr("the jumper is declared here");
      finding.at.header = placement.header;
      finding.at.pin = pin->number;
      out.push_back(std::move(finding));
      break;
    }
  }
}

/// Of what is judged although nobody has seen it yet.
std::optional<Finding> plan_note(const Loom& loom) {
  const auto planned = [&](const std::string& own) {
    const Evidence* evidence = loom.evidence_of(own);
    return evidence != nullptr && evidence->kind == EvidenceKind::Plan ? evidence : nullptr;
  };
  const Evidence* first = nullptr;
  int places = 0;
  for (const Seat& seat : loom.seats) {
    const Evidence* evidence = seat.state == SeatState::Unknown ? nullptr : planned(seat.evidence);
    if (evidence == nullptr) continue;
    if (first == nullptr) first = evidence;
    ++places;
  }
  for (const FittedJumper& fitted : loom.jumpers) {
    const Evidence* evidence = fitted.rail.empty() ? nullptr : planned(fitted.evidence);
    if (evidence == nullptr) continue;
    if (first == nullptr) first = evidence;
    ++places;
  }
  if (first == nullptr) return std::nullopt;
  Finding finding;
  finding.rule = Rule::Assumed;
  finding.weight = Weight::Note;
  finding.message = format(
      "where {} of the plugs and jumpers sit is a plan ('{}'): judged as if it were so, seen by nobody yet",
      places, first->id);
  finding.first = first->span;
  return finding;
}

std::string loom_summary(const Loom& loom, const LoomBench& bench, const Advice& advice) {
  const std::string who = format("loom '{}'", loom.id);
  switch (advice.verdict) {
    case Verdict::Mate:
      return format("{}: {} may stay on the headers they are on", who,
                    counted(bench.placements.size(), "{} plug", "{} plugs"));
    case Verdict::Repin:
      return format("{}: as it stands it is not right; {} would have to move", who,
                    counted(static_cast<std::size_t>(advice.moved), "{} contact", "{} contacts"));
    case Verdict::Adapt:
      return format("{}: as it stands it is not right; it needs {}", who,
                    counted(advice.parts.size(), "{} part", "{} parts"));
    case Verdict::Measure:
      return format("{}: as it stands, {}; {}", who,
                    advice.now.has(Weight::Harm)
                        ? tr("it can damage or hurt, and before a cure can be told something must be known")
                        : tr("something must be known first"),
                    advice.measurements.size() == 1
                        ? std::string(tr("one measurement settles it"))
                        : format("{} settle it",
                                 counted(advice.measurements.size(), "{} measurement", "{} measurements")));
    case Verdict::Apart:
      return format("{}: as it stands {}, and no move of contacts or added part cures it", who,
                    advice.now.has(Weight::Harm) ? tr("it can damage or hurt") : tr("it does not work"));
  }
  return who;
}

}  // namespace

LoomBench loom_bench(const Loom& loom, const LoomFiles& files) {
  LoomBench bench;
  std::vector<Harness> harnesses = files.harnesses;
  std::vector<const Harness*> all;
  for (Harness& harness : harnesses) {
    for (Plug& plug : harness.plugs) {
      const int index = static_cast<int>(bench.names.size());
      bench.names.push_back(format("{}/{}", harness.id, plug.id));
      const Seat* seat = loom.seat(harness.id, plug.id);
      if (seat != nullptr) rearrange(plug, seat->leads);
      if (seat == nullptr || seat->state == SeatState::Unknown) {
        bench.unknown.push_back(index);
      } else if (seat->state == SeatState::Loose) {
        bench.loose.push_back(index);
      } else {
        bench.placements.push_back({index, index_of_header(files.board, seat->header)});
      }
    }
    all.push_back(&harness);
  }
  bench.harness = merged(all);
  bench.harness.id = loom.id;
  bench.harness.title = loom.title;
  bench.harness.span = loom.span;
  for (const FittedJumper& fitted : loom.jumpers) {
    if (!fitted.rail.empty()) bench.jumpers.emplace(fitted.jumper, fitted.rail);
  }
  return bench;
}

Fitting loom_fitting(const LoomFiles& files, const LoomBench& bench, const Catalogue& catalogue) {
  return {&files.board, &bench.harness, &catalogue, bench.placements, bench.jumpers};
}

std::vector<Finding> loom_doubts(const Loom& loom, const LoomBench& bench, const Fitting& fitting) {
  std::vector<Finding> found;
  doubt_seats(loom, bench, found);
  doubt_jumpers(loom, fitting, found);
  return found;
}

Assessment assess_loom(const Loom& loom, const LoomBench& bench, const Fitting& fitting) {
  Assessment now = assess(fitting);
  std::vector<Finding> doubts = loom_doubts(loom, bench, fitting);
  now.findings.insert(now.findings.end(), doubts.begin(), doubts.end());
  if (auto note = plan_note(loom)) now.findings.push_back(std::move(*note));
  std::stable_sort(now.findings.begin(), now.findings.end(),
                   [](const Finding& a, const Finding& b) { return a.weight < b.weight; });
  return now;
}

Advice advise_loom(const Loom& loom, const LoomBench& bench, const Fitting& fitting, AdviseOptions options) {
  options.wrong_seatings = false;
  Advice advice = advise(fitting, options);
  advice.now = assess_loom(loom, bench, fitting);
  std::vector<Measurement> looks;
  for (const Finding& doubt : loom_doubts(loom, bench, fitting)) {
    if (std::find(looks.begin(), looks.end(), *doubt.measurement) == looks.end()) {
      looks.push_back(*doubt.measurement);
    }
  }
  if (!looks.empty()) {
    // Where a plug sits decides what any cure would be worth: it is looked at before all else.
    advice.verdict = Verdict::Measure;
    advice.plan.reset();
    advice.parts.clear();
    advice.cures.clear();
    advice.uncured.clear();
    advice.cured.reset();
    advice.softer.clear();
    advice.settings.clear();
    advice.moved = 0;
    advice.measurements.insert(advice.measurements.begin(), looks.begin(), looks.end());
  }
  advice.summary = loom_summary(loom, bench, advice);
  return advice;
}

int plug_of_finding(const Fitting& fitting, const Finding& finding) {
  if (finding.at.plug >= 0) return finding.at.plug;
  for (const Placement& placement : fitting.placements) {
    if (placement.header == finding.at.header) return placement.plug;
  }
  for (const Placement& placement : fitting.placements) {
    for (const Lead& lead : plug_of(fitting, placement.plug).leads) {
      if (lead.to && lead.to->device == finding.at.device) return placement.plug;
    }
  }
  return -1;
}

}  // namespace plugward
