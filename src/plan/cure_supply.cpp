// SPDX-License-Identifier: MIT
// Between a supply and the device: a step-down regulator where it is too much, thicker leads or a supply of
// its own where it is too little. A rail that suits and stands on the same header needs neither: moving a
// contact is cheaper, and is tried first. Tested in tests/unit/plan/cure_test.cpp.
#include <algorithm>
#include <array>

#include "base/format.h"
#include "judge/words.h"
#include "plan/cure_build.h"

namespace plugward {
namespace {

constexpr auto regulator_sizes = std::to_array({3.3, 5.0, 9.0, 12.0, 24.0});
constexpr auto supply_sizes = std::to_array({5.0, 12.0, 24.0});
constexpr auto input_sizes = std::to_array({8.0, 16.0, 20.0, 28.0, 36.0, 40.0, 60.0});
/// What a regulator needs above its output; asked of the part that is bought.
constexpr Volts headroom{2.0};
constexpr double input_reserve = 1.25;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// What everything on the supply terminal needs and draws together.
struct SupplyDemand {
  Range<Volts> needs{Volts(-1e9), Volts(1e9)};
  Amps draws{};
  TerminalIndex minus = 0;
};

SupplyDemand demand(const Device& device, TerminalIndex plus) {
  SupplyDemand d;
  for (const Part& part : device.parts) {
    const auto* load = std::get_if<Load>(&part);
    if (load == nullptr || load->plus != plus) continue;
    d.needs.min = std::max(d.needs.min, load->needs.min);
    d.needs.max = std::min(d.needs.max, load->needs.max);
    d.draws = d.draws + load->draws;
    d.minus = load->minus;
  }
  return d;
}

struct SupplyPlace {
  const Complaint& c;
  MetLead joint;
  SupplyDemand wants;
  std::string lead, name, minus;
  Range<Volts> has;
};

void regulator(const SupplyPlace& p, Offer& offer) {
  const auto volts = usual_volts(p.wants.needs, regulator_sizes);
  const auto limit = usual_limit(p.wants.draws);
  if (!volts || !limit || p.has.min < volts->max + headroom) {
    offer.passed.push_back(format("a step-down regulator: no usual size suits {} at {} with {} to spare",
                                  to_text(p.wants.needs), to_text(p.wants.draws), to_text(headroom)));
    return;
  }
  const auto top = std::find_if(input_sizes.begin(), input_sizes.end(),
                                [&](double size) { return size >= input_reserve * p.has.max.value; });
  if (top == input_sizes.end()) return;
  const int device = p.joint.terminal.device;
  Remedy r;
  r.harness = p.c.base;
  Device& d = r.harness.devices[at(device)];
  const TerminalIndex inner = split(d, p.joint.terminal.terminal, "regulator");
  Regulator part{p.joint.terminal.terminal,
                 inner,
                 p.wants.minus,
                 *volts,
                 *limit,
                 {volts->max + headroom, Volts(*top)},
                 {}};
  d.parts.push_back(part);
  const auto minus_joint = joint_of(p.c.fitting, {device, p.wants.minus});
  const bool switched =
      minus_joint &&
      header_of(p.c.fitting, minus_joint->header).pin(minus_joint->pin).function == PinFunction::Switched;
  r.cure.name = format("a step-down regulator to {}", to_text(volts->middle()));
  r.drawback = tr("it takes a ready-made converter");
  r.cure.kind = "regulator";
  r.cure.what = format("A step-down regulator of {} in {}, its minus at {}.", to_text(volts->middle()),
                       p.lead, p.minus);
  r.cure.why = format(
      "{} takes {} and would get {}. {} with 5 % is {}, within what it takes; it draws {}, and the "
      "regulator gives {}.",
      p.name, to_text(p.wants.needs), to_text(p.has), to_text(volts->middle()), to_text(*volts),
      to_text(p.wants.draws), to_text(*limit));
  r.cure.next_best = format("a linear regulator: it turns ({} - {}) x {} = {} into heat", to_text(p.has.max),
                            to_text(volts->middle()), to_text(p.wants.draws),
                            to_text((p.has.max - volts->middle()) * p.wants.draws));
  r.cure.components.push_back(
      {tr("regulator"), format("{} out, {}", to_text(volts->middle()), to_text(*limit)),
       format("output within 5 %, input {}", to_text(part.needs)), format("in {}", p.lead)});
  r.cure.steps = {
      power_off_step(),
      format("before it is built in, set the regulator on the bench: {} at its output, without load",
             to_text(volts->middle())),
      format("cut {}; the end that comes from the board goes to the regulator's input, the end of the device "
             "to its "
             "output",
             p.lead),
      format("lead the regulator's minus to {}", p.minus), sleeve_step()};
  if (switched) {
    r.cure.steps.push_back(tr(
        "the regulator is switched together with what it feeds: let the firmware switch this output fully on "
        "or off, "
        "without pulses"));
  }
  r.cure.steps.push_back(
      format("before the device is connected: feed the plug's side and measure {} at the "
             "regulator's output",
             to_text(*volts)));
  offer.remedies.push_back(std::move(r));
}

void own_supply(const SupplyPlace& p, Offer& offer) {
  const auto volts = usual_volts(p.wants.needs, supply_sizes);
  const auto limit = usual_limit(p.wants.draws);
  const int device = p.joint.terminal.device;
  const auto ground = ground_of(p.c.fitting, device);
  if (!volts || !limit || !ground) return;
  Remedy r;
  r.harness = p.c.base;
  Device& d = r.harness.devices[at(device)];
  const TerminalIndex inner = split(d, p.joint.terminal.terminal, "supply");
  d.parts.push_back(Source{inner, p.wants.minus, *volts, {}});
  d.terminals[at(p.joint.terminal.terminal)].function = TerminalFunction::Spare;
  r.harness.plugs[at(p.joint.plug)].leads[at(p.joint.lead)].cavity = 0;
  const std::string to = lead_words(p.c.fitting, *joint_of(p.c.fitting, {device, *ground}));
  r.cure.name = format("a supply of {}", to_text(volts->middle()));
  r.drawback = tr("it takes a supply of its own");
  r.cure.kind = "supply";
  r.cure.what =
      format("A supply of {} for {}, its minus joined to {}.", to_text(volts->middle()), p.name, to);
  r.cure.why = format(
      "{} takes {} and would get {} of the board. {} with 5 % is {}; it draws {}, and the supply gives {}. "
      "Only with "
      "the grounds joined do signals mean the same on both sides.",
      p.name, to_text(p.wants.needs), to_text(p.has), to_text(volts->middle()), to_text(*volts),
      to_text(p.wants.draws), to_text(*limit));
  r.cure.next_best = format(
      "a step-up regulator on the board's {}: it draws {} from that rail, more with its losses",
      to_text(p.has.middle()), to_text(Amps((volts->middle() * p.wants.draws).value / p.has.min.value)));
  r.cure.components.push_back({tr("supply"), format("{}, {}", to_text(volts->middle()), to_text(*limit)),
                               tr("ready made and closed, output within 5 %, isolated from the mains"),
                               format("between the device's end of {} and {}", p.lead, to)});
  r.cure.steps = {
      power_off_step(),
      format("take the contact of {} out of cavity {} of '{}', insulate it singly and tag it: the board's "
             "supply is not used",
             p.lead, plug_of(p.c.fitting, p.joint.plug).leads[at(p.joint.lead)].cavity,
             plug_of(p.c.fitting, p.joint.plug).id),
      format("lead the plus of the supply to the device's end of that lead, its minus to {}", to),
      tr("the supply is bought ready made with its mains side closed; anything at mains is for a qualified "
         "person"),
      sleeve_step(),
      tr("switch the supply and the board on and off together")};
  offer.remedies.push_back(std::move(r));
}

}  // namespace

Offer supply_remedies(const Complaint& c) {
  const Locus& where = c.finding.at;
  if (where.device < 0 || where.part < 0) return {};
  const Device& d = c.fitting.harness->devices[at(where.device)];
  const auto* load = std::get_if<Load>(&d.parts[at(where.part)]);
  if (load == nullptr || is_joined(d, load->plus)) return {};
  const TerminalRef plus{where.device, load->plus};
  const auto joint = joint_of(c.fitting, plus);
  const auto has = volts_at(c.fitting, plus);
  if (!joint || !has) return {};
  const SupplyDemand wants = demand(d, load->plus);
  if (!(wants.needs.min <= wants.needs.max)) return {};
  const auto minus_joint = joint_of(c.fitting, {where.device, wants.minus});
  const SupplyPlace place{c,
                          *joint,
                          wants,
                          lead_words(c.fitting, *joint),
                          format("'{}'", device_name(d)),
                          minus_joint ? lead_words(c.fitting, *minus_joint) : tr("the device's minus"),
                          *has};
  Offer offer;
  if (c.finding.rule == Rule::SupplyTooHigh) {
    regulator(place, offer);
  } else {
    if (has->min >= wants.needs.min) offer_thicker_leads(c, *joint, minus_joint, offer);
    own_supply(place, offer);
  }
  return offer;
}

}  // namespace plugward
