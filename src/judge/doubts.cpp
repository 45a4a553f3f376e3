// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/doubts_test.cpp.
#include "judge/doubts.h"

#include <algorithm>

#include "base/format.h"
#include "fit/match.h"
#include "judge/figures.h"
#include "judge/measurement.h"
#include "judge/words.h"

namespace plugward {
namespace {

Finding doubt(Rule rule, std::string message, Span first, Span second, std::string second_says,
              Measurement settles) {
  Finding finding;
  finding.rule = rule;
  finding.weight = Weight::Doubt;
  finding.message = std::move(message);
  finding.first = first;
  finding.second = second;
  finding.second_says = std::move(second_says);
  finding.measurement = std::move(settles);
  return finding;
}

/// "by assumption only", "without evidence", or "" when there is evidence to trust.
std::string weakness(const Evidence* evidence) {
  if (evidence == nullptr) return tr("stated without evidence");
  return evidence->kind == EvidenceKind::Assumption ? format("an assumption ('{}')", evidence->id) : "";
}

void doubt_pin(const Fitting& fitting, const Contact& contact, std::vector<Finding>& out) {
  const Header& header = header_of(fitting, contact.header);
  const Pin& pin = pin_of(fitting, contact);
  const std::string name = pin_name(fitting, contact);
  const Span lead = lead_of(fitting, contact).span;
  const std::string who = lead_name(fitting, contact.plug, contact.lead);
  const auto settles = [&] { return measure_pin(fitting, contact.header, contact.pin); };
  if (pin.function == PinFunction::Unknown) {
    out.push_back(doubt(Rule::UnknownPin, format("the {} meets {}, of which nothing is known", who, name),
                        lead, pin.span.known() ? pin.span : header.span,
                        format("'{}' is declared here", header.id), settles()));
    return;
  }
  if (pin.contest) {
    out.push_back(doubt(
        Rule::ContestedEvidence,
        format("{} is {} by one statement and {} by another", name, to_words(pin), pin.contest->statement),
        pin.span, pin.contest->span, tr("the other statement is here"), settles()));
    return;
  }
  const std::string weak = weakness(fitting.board->evidence_of(header, pin));
  if (weak.empty()) return;
  out.push_back(doubt(Rule::Assumed, format("that {} is {} is {}", name, to_words(pin), weak), pin.span, lead,
                      format("the {} meets it", who), settles()));
}

void doubt_lead(const Fitting& fitting, const Contact& contact, std::vector<Finding>& out) {
  const Lead& lead = lead_of(fitting, contact);
  const Pin& pin = pin_of(fitting, contact);
  if (lead.to || pin.function == PinFunction::Unused) return;
  out.push_back(
      doubt(Rule::UnknownLead,
            format("where the {} goes is not known, and it meets {}, {}",
                   lead_name(fitting, contact.plug, contact.lead), pin_name(fitting, contact), to_words(pin)),
            lead.span, pin.span, format("{} is declared here", pin_name(fitting, contact)),
            measure_lead(fitting, contact.plug, contact.lead)));
}

/// Devices of which a terminal is touched and whose description rests on nothing.
void doubt_devices(const Fitting& fitting, std::span<const Contact> contacts, std::vector<Finding>& out) {
  const Harness& harness = *fitting.harness;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    const Device& device = harness.devices[d];
    const bool touched = std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
      const auto& to = lead_of(fitting, contact).to;
      return to && to->device == static_cast<int>(d);
    });
    const std::string& id = device.evidence.empty() ? harness.evidence : device.evidence;
    const std::string weak = weakness(harness.find_evidence(id));
    if (!touched || weak.empty()) continue;
    const std::string name = device_name(device);
    out.push_back(doubt(Rule::Assumed, format("what is said of the device '{}' is {}", name, weak),
                        device.span, {}, "",
                        {format("compare the description of '{}' with its type plate or data sheet", name),
                         tr("agrees: name that evidence in the file; differs: correct the file"), 0,
                         format("what the device '{}' is", name)}));
  }
}

/// Plugs on headers: which lead sits in which cavity rests on nothing, or is not described at all.
void doubt_plugs(const Fitting& fitting, std::vector<Finding>& out) {
  for (const Placement& placement : fitting.placements) {
    const Plug& plug = plug_of(fitting, placement.plug);
    const auto look = [&](std::string_view reading) {
      return Measurement{format("look at the wire side of '{}', cavity by cavity", plug.id),
                         std::string(reading), 0, format("what sits in '{}'", plug.id)};
    };
    if (plug.leads.empty()) {
      out.push_back(
          doubt(Rule::UnknownLead, format("no lead of plug '{}' is described", plug.id), plug.span, {}, "",
                look(tr("a contact: describe its lead; all cavities empty: there is nothing to plug in"))));
      continue;
    }
    const std::string& id = plug.evidence.empty() ? fitting.harness->evidence : plug.evidence;
    const std::string weak = weakness(fitting.harness->find_evidence(id));
    if (weak.empty()) continue;
    out.push_back(doubt(Rule::Assumed, format("which lead sits in which cavity of '{}' is {}", plug.id, weak),
                        plug.span, {}, "",
                        look(tr("agrees: name that evidence in the file; differs: correct the file"))));
  }
}

/// Without a plug on a header nothing is proven.
void doubt_no_placement(const Fitting& fitting, std::vector<Finding>& out) {
  if (!fitting.placements.empty()) return;
  out.push_back(doubt(Rule::NotConnected, tr("no plug is on a header: nothing was judged"),
                      fitting.harness->span, {}, "",
                      {tr("look which header the plug is meant for, then say --at PLUG=HEADER"),
                       tr("the header: judge again with it"), 0, tr("where the plug goes")}));
}

}  // namespace

std::vector<Finding> doubts(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> out;
  for (const Contact& contact : contacts) {
    const std::size_t before = out.size();
    doubt_pin(fitting, contact, out);
    doubt_lead(fitting, contact, out);
    for (std::size_t i = before; i < out.size(); ++i) out[i].at = locus_of(fitting, contact);
  }
  doubt_devices(fitting, contacts, out);
  for (Finding& finding : unknown_figures(fitting, contacts)) out.push_back(std::move(finding));
  doubt_plugs(fitting, out);
  doubt_no_placement(fitting, out);
  return out;
}

std::vector<OpenJumper> open_jumpers(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<OpenJumper> open;
  for (const Contact& contact : contacts) {
    const Pin& pin = pin_of(fitting, contact);
    if (pin.jumper.empty() || fitting.jumpers.contains(pin.jumper)) continue;
    const Jumper* jumper = fitting.board->jumper(pin.jumper);
    const bool seen =
        std::any_of(open.begin(), open.end(), [&](const OpenJumper& o) { return o.jumper == jumper; });
    if (jumper != nullptr && !seen) open.push_back({jumper, contact.header, contact.pin});
  }
  return open;
}

}  // namespace plugward
