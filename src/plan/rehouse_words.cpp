// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/rehouse_test.cpp.
#include "plan/rehouse_words.h"

#include "base/counted.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/contact_wire.h"
#include "plan/technique.h"

namespace plugward {
namespace {

std::string titles(const Fitting& fitting, const RehousingDraft& draft) {
  std::vector<std::string> names;
  for (const int h : draft.headers) {
    const Header& header = header_of(fitting, h);
    names.push_back(header.label.empty() ? header.id : format("{} ({})", header.id, header.label));
  }
  return format("{}", join(names, tr(" and ")));
}

std::string summary_of(const Fitting& fitting, const RehousingDraft& draft) {
  std::vector<std::string> names;
  for (const int p : draft.plugs) names.push_back(format("'{}'", plug_of(fitting, p).id));
  const bool split = draft.plugs.size() == 1;
  return format("{}: {}, {} moved{}",
                split ? format("split {} over {}", join(names, tr(" and ")), titles(fitting, draft))
                      : format("join {} on {}", join(names, tr(" and ")), titles(fitting, draft)),
                counted(draft.housings, "{} new housing", "{} new housings"),
                counted(draft.moves, "{} contact", "{} contacts"),
                draft.crimps == 0 ? "" : format(", {} of them crimped anew", draft.crimps));
}

/// Contacts to be crimped on; a gauge that nobody stated is to be compared first.
std::string contacts_words(const Fitting& fitting, const RehousingDraft& draft, int target) {
  int crimps = 0;
  bool stated = true;
  for (std::size_t row = 0; row < draft.leads.size(); ++row) {
    if (draft.places[row].target != target ||
        !crimped_anew(fitting, draft, draft.leads[row], draft.places[row])) {
      continue;
    }
    ++crimps;
    stated = stated && lead_of(fitting, draft, draft.leads[row]).gauge.has_value();
  }
  if (crimps == 0) return "";
  const Family& family = *fitting.catalogue->find(family_on(fitting, draft, target));
  const std::string range = wire_range_words(family);
  return format("{} of family '{}'{}", counted(crimps, "{} contact", "{} contacts"), family.id,
                stated || range.empty()
                    ? ""
                    : format("; they take {}: measure the leads whose gauge is not stated first", range));
}

void tell_parts(const Fitting& fitting, const RehousingDraft& draft, Rehousing& result) {
  for (int t = 0; t < static_cast<int>(draft.headers.size()); ++t) {
    const Header& header = target_of(fitting, draft, t);
    if (draft.kept[static_cast<std::size_t>(t)] < 0) {
      result.parts.push_back(format("a housing of family '{}' with {} positions, for {}", header.family,
                                    header.positions, header.id));
    }
    if (const std::string contacts = contacts_words(fitting, draft, t); !contacts.empty())
      result.parts.push_back(contacts);
  }
}

std::string lead_words(const Fitting& fitting, const Lead& lead) {
  return format("the {} lead to {}", to_code(lead.colour), terminal_name(fitting, *lead.to));
}

std::string step_words(const Step& step, const std::string& lead, const std::string& plug) {
  switch (step.kind) {
    case StepKind::Move:
    case StepKind::Park:
      return format("move {} from cavity {} to cavity {} of '{}'", lead, step.from, step.to, plug);
    case StepKind::Hold:
      return format("take {} out of cavity {} of '{}' and hold it beside", lead, step.from, plug);
    case StepKind::Insert:
      return format("seat {} in cavity {} of '{}'", lead, step.to, plug);
    case StepKind::Insulate:
      break;
  }
  return format("take {} out of cavity {} of '{}' and flag it", lead, step.from, plug);
}

/// What leaves a housing goes first; what moves within one then finds room.
void tell_taking_out(const Fitting& fitting, const RehousingDraft& draft, Rehousing& result,
                     std::vector<Gauge>& gauges) {
  for (int s = 0; s < static_cast<int>(draft.plugs.size()); ++s) {
    const Plug& plug = source_of(fitting, draft, s);
    Arrangement before;
    Arrangement after;
    std::vector<const Lead*> leads;
    for (std::size_t row = 0; row < draft.leads.size(); ++row) {
      if (draft.leads[row].source != s) continue;
      const DraftPlace& place = draft.places[row];
      const bool stays = place.cavity > 0 && draft.kept[static_cast<std::size_t>(place.target)] == s;
      leads.push_back(&lead_of(fitting, draft, draft.leads[row]));
      before.cavity.push_back(leads.back()->cavity);
      after.cavity.push_back(stays ? place.cavity : 0);
    }
    for (const Step& step : order_moves(before, after, plug.positions)) {
      const Lead& lead = *leads[static_cast<std::size_t>(step.lead)];
      if (lead.gauge) gauges.push_back(*lead.gauge);
      result.steps.push_back(step_words(step, lead_words(fitting, lead), plug.id));
    }
  }
}

void tell_seating(const Fitting& fitting, const RehousingDraft& draft, Rehousing& result) {
  for (std::size_t row = 0; row < draft.leads.size(); ++row) {
    const DraftLead& at = draft.leads[row];
    const DraftPlace& place = draft.places[row];
    const std::string what = lead_words(fitting, lead_of(fitting, draft, at));
    if (place.cavity == 0) {
      result.steps.push_back(format("insulate {} singly: it has no use on these headers", what));
      continue;
    }
    if (draft.kept[static_cast<std::size_t>(place.target)] == at.source) continue;
    const std::string crimp = crimped_anew(fitting, draft, at, place)
                                  ? format("cut its contact off, crimp one of family '{}' on, and ",
                                           family_on(fitting, draft, place.target))
                                  : "";
    const int header = draft.headers[static_cast<std::size_t>(place.target)];
    result.steps.push_back(format("{}: {}seat it in cavity {} of '{}'; it meets {}, {}", what, crimp,
                                  place.cavity, housing_name(fitting, draft, place.target),
                                  pin_name(fitting, header, place.cavity),
                                  to_words(header_of(fitting, header).pin(place.cavity))));
  }
}

}  // namespace

void tell(const Fitting& fitting, const RehousingDraft& draft, Rehousing& result) {
  result.summary = summary_of(fitting, draft);
  tell_parts(fitting, draft, result);
  result.cautions = cautions_before();
  std::vector<Gauge> gauges;
  tell_taking_out(fitting, draft, result, gauges);
  tell_seating(fitting, draft, result);
  result.checks = checks_after(gauges);
}

}  // namespace plugward
