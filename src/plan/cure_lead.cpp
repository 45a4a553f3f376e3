// SPDX-License-Identifier: MIT
// Copper that is missing: a lead to a terminal that has none, thicker leads where the present ones lose too
// much. A second pair of leads along a string of LEDs stays in words: how long it must be is not described.
// Tested in tests/unit/plan/cure_lead_test.cpp.
#include <array>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/cure_build.h"
#include "quantity/gauge.h"

namespace plugward {
namespace {

constexpr auto even_gauges = std::to_array({24, 22, 20, 18, 16, 14, 12, 10});
constexpr std::size_t most_thicker = 4;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// What the terminal is to meet; nothing when that is not known or when it may stay open.
std::optional<End> wish_of(const Harness& harness, TerminalRef terminal) {
  for (const WishGroup& group : groups(harness)) {
    for (const End& end : group.alternatives.front().ends) {
      if (end.terminal == terminal) return end;
    }
  }
  return std::nullopt;
}

std::string lead_like(const Lead& lead) {
  std::string words = lead.gauge ? to_text(*lead.gauge) : tr("the gauge of its neighbours");
  if (lead.length) words += format(", {}", to_text(*lead.length));
  return words;
}

}  // namespace

/// Nothing else than a lead brings a terminal to a pin: next_best stays empty.
Offer lead_remedies(const Complaint& c) {
  const TerminalRef terminal{c.finding.at.device, c.finding.at.terminal};
  Offer offer;
  if (terminal.device < 0 || terminal.terminal < 0 || c.fitting.placements.empty()) return offer;
  const auto wish = wish_of(*c.fitting.harness, terminal);
  if (!wish) return offer;
  const auto suits = [&](const Pin& pin) {
    return grants(pin, *wish) && volts_suit(pin, *c.fitting.board, c.fitting.jumpers, *wish);
  };
  const std::string name = terminal_name(c.fitting, terminal);
  for (const EmptySeat& seat : empty_seats(c.fitting, c.base, c.fitting.placements.front().plug, suits)) {
    Remedy r;
    r.harness = c.base;
    seat_lead(r.harness, terminal, seat, {}, r.seats);
    const Plug& plug = r.harness.plugs[at(seat.plug)];
    const std::string like = lead_like(plug.leads.back()), pin = pin_name(c.fitting, seat.header, seat.pin);
    r.cure.kind = "lead";
    r.cure.name = format("a lead from terminal {}", name);
    r.drawback = tr("it takes a lead");
    r.cure.what = format("A lead ({}) from terminal {} to cavity {} of '{}', which meets {}.", like, name,
                         seat.cavity, plug.id, pin);
    r.cure.why = format("Terminal {} has no lead; it wants {}, and {} is {}.", name, to_words(*wish), pin,
                        to_words(header_of(c.fitting, seat.header).pin(seat.pin)));
    r.cure.components.push_back(
        {tr("lead"), like, format("with a contact of family '{}'", plug.family),
         format("from terminal {} to cavity {} of '{}'", name, seat.cavity, plug.id)});
    r.cure.steps = {
        power_off_step(),
        format("join the lead to terminal {} of {} and lead it to the plug", name,
               device_name(c.fitting.harness->devices[at(terminal.device)])),
        format("crimp its contact and seat it in cavity {} of '{}'{}: it meets {}", seat.cavity, plug.id,
               seat.later ? tr(", once the contacts have moved") : "", pin),
        sleeve_step(),
        format("before the plug goes on the board: power off, continuity from cavity {} to terminal "
               "{}, and none to its neighbours",
               seat.cavity, name)};
    offer.remedies.push_back(std::move(r));
  }
  return offer;
}

void offer_thicker_leads(const Complaint& c, const MetLead& plus, const std::optional<MetLead>& minus,
                         Offer& offer) {
  const auto pass = [&](const std::string& why) {
    offer.passed.push_back(format("thicker supply leads: {}", why));
  };
  std::vector<MetLead> both{plus};
  if (minus && !(minus->plug == plus.plug && minus->lead == plus.lead)) both.push_back(*minus);
  const auto& first = plug_of(c.fitting, plus.plug);
  const Family* family = c.fitting.catalogue->find(first.family);
  if (family == nullptr || !family->wire) return pass(tr("which wire the contacts take is not known"));
  double thickest = 0;
  for (const MetLead& m : both) {
    const Lead& lead = plug_of(c.fitting, m.plug).leads[at(m.lead)];
    if (!lead.gauge || !lead.length) return pass(tr("gauge and length of the present ones are not stated"));
    thickest = std::max(thickest, lead.gauge->area.value);
  }
  std::size_t offered = 0;
  for (const int number : even_gauges) {
    const Gauge gauge = awg(number);
    if (gauge.area.value <= thickest * 1.01 || gauge.area.value > family->wire->value.max.value * 1.01)
      continue;
    if (++offered > most_thicker) break;
    Remedy r;
    r.harness = c.base;
    std::vector<std::string> leads;
    for (const MetLead& m : both) {
      Lead& lead = r.harness.plugs[at(m.plug)].leads[at(m.lead)];
      leads.push_back(lead_words(c.fitting, m));
      r.cure.components.push_back({tr("lead"), format("{}, {}", to_text(gauge), to_text(*lead.length)),
                                   format("with a contact of family '{}' for that gauge", first.family),
                                   format("instead of {}", leads.back())});
      lead.gauge = gauge;
    }
    r.cure.kind = "thicker-leads";
    r.cure.name = format("supply leads of {}", to_text(gauge));
    r.drawback = tr("new leads, crimped anew");
    r.cure.what = format("Leads of {} instead of {}.", to_text(gauge), join(leads, tr(" and ")));
    r.cure.why = format("The rail would be enough; the present leads lose too much: {}.", c.finding.message);
    r.cure.steps = {
        power_off_step(),
        format("crimp new leads of {} and seat them in the same cavities; join them to the device",
               to_text(gauge)),
        sleeve_step()};
    offer.remedies.push_back(std::move(r));
  }
  if (offered == 0) pass(tr("the contacts take no thicker wire than there is"));
}

}  // namespace plugward
