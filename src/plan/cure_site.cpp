// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/cure_test.cpp.
#include "plan/cure_site.h"

#include <algorithm>

#include "base/format.h"
#include "circuit/defaults.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

const Rail* rail_behind(const Fitting& fitting, const Pin& pin) {
  return rail_of(pin, *fitting.board, fitting.jumpers);
}

/// Calls `visit` with every terminal that the part names.
template <class Visit>
void for_each_end(Part& part, Visit visit) {
  std::visit(
      [&](auto& p) {
        if constexpr (requires { p.terminal; }) visit(p.terminal);
        if constexpr (requires { p.plus; }) visit(p.plus);
        if constexpr (requires { p.minus; }) visit(p.minus);
        if constexpr (requires { p.a; }) visit(p.a), visit(p.b);
        if constexpr (requires { p.anode; }) visit(p.anode), visit(p.cathode);
        if constexpr (requires { p.in; }) visit(p.in), visit(p.out);
      },
      part);
}

template <class Kind, class Holds>
int index_of(const Device& device, Holds holds) {
  for (std::size_t i = 0; i < device.parts.size(); ++i) {
    const auto* part = std::get_if<Kind>(&device.parts[i]);
    if (part != nullptr && holds(*part)) return static_cast<int>(i);
  }
  return -1;
}

bool within(Range<Volts> inner, Range<Volts> outer) {
  return inner.min >= outer.min && inner.max <= outer.max;
}

}  // namespace

std::vector<MetLead> joints(const Fitting& fitting) {
  std::vector<MetLead> all;
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Seating home = home_seating(plug, p.header, *fitting.board);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      const Lead& lead = plug.leads[l];
      if (!lead.to || lead.cavity < 1) continue;
      const int pin = home.pin_of_cavity[at(lead.cavity) - 1];
      if (pin != 0) all.push_back({p.plug, static_cast<int>(l), p.header, pin, *lead.to});
    }
  }
  return all;
}

std::optional<MetLead> joint_at_pin(const Fitting& fitting, int header, int pin) {
  for (const MetLead& j : joints(fitting)) {
    if (j.header == header && j.pin == pin) return j;
  }
  return std::nullopt;
}

std::optional<MetLead> joint_of(const Fitting& fitting, TerminalRef terminal) {
  for (const MetLead& j : joints(fitting)) {
    if (j.terminal == terminal) return j;
  }
  return std::nullopt;
}

std::optional<InputSide> input_side(const Fitting& fitting, const Pin& pin) {
  if (pin.function != PinFunction::Input) return std::nullopt;
  const CircuitDefaults defaults;
  const Rail* rail = rail_behind(fitting, pin);
  std::optional<Volts> most;
  const auto take = [&](Volts v) { most = most ? std::min(*most, v) : v; };
  if (pin.withstands) take(pin.withstands->max);
  if (pin.pull && pin.withstands_pulled) take(*pin.withstands_pulled);
  if (pin.clamp) {
    if (const Rail* into = fitting.board->rail(pin.clamp->rail)) take(into->volts.min + pin.clamp->drop);
  }
  if (!most && rail != nullptr) take(rail->volts.min + defaults.beyond_supply);
  if (!most) return std::nullopt;
  InputSide side{*most, pin.low_below, pin.high_above, std::nullopt, false};
  if (pin.pull && (!pin.pull->up || rail != nullptr)) {
    side.pulled_up = pin.pull->up;
    side.pull = PullBehind{pin.pull->up ? rail->volts : Range<Volts>{},
                           pin.pull->ohms.value > 0 ? pin.pull->ohms : defaults.pull};
  }
  return side;
}

std::optional<Range<Volts>> volts_at(const Fitting& fitting, TerminalRef terminal) {
  for (const Part& part : fitting.harness->devices[at(terminal.device)].parts) {
    if (const auto* r = std::get_if<Regulator>(&part); r != nullptr && r->out == terminal.terminal)
      return r->volts;
    if (const auto* s = std::get_if<Source>(&part); s != nullptr && s->plus == terminal.terminal)
      return s->volts;
  }
  const auto joint = joint_of(fitting, terminal);
  if (!joint) return std::nullopt;
  const Pin& pin = header_of(fitting, joint->header).pin(joint->pin);
  const Rail* rail = pin.function == PinFunction::Supply ? rail_behind(fitting, pin) : nullptr;
  return rail == nullptr ? std::nullopt : std::optional(rail->volts);
}

std::optional<TerminalIndex> ground_of(const Fitting& fitting, int device) {
  for (const MetLead& j : joints(fitting)) {
    if (j.terminal.device != device) continue;
    if (header_of(fitting, j.header).pin(j.pin).function == PinFunction::Ground) return j.terminal.terminal;
  }
  return std::nullopt;
}

std::optional<TerminalIndex> supply_of(const Fitting& fitting, int device, Range<Volts> volts) {
  for (const MetLead& j : joints(fitting)) {
    if (j.terminal.device != device) continue;
    if (header_of(fitting, j.header).pin(j.pin).function != PinFunction::Supply) continue;
    const auto has = volts_at(fitting, j.terminal);
    if (has && within(*has, volts)) return j.terminal.terminal;
  }
  const Device& d = fitting.harness->devices[at(device)];
  for (std::size_t t = 0; t < d.terminals.size(); ++t) {
    const auto terminal = static_cast<TerminalIndex>(t);
    if (!d.terminals[t].inner) continue;
    const auto has = volts_at(fitting, {device, terminal});
    if (has && within(*has, volts)) return terminal;
  }
  return std::nullopt;
}

int driver_at(const Device& device, TerminalIndex t) {
  return index_of<Driver>(device, [t](const Driver& d) { return d.terminal == t; });
}

int receiver_at(const Device& device, TerminalIndex t) {
  return index_of<Receiver>(device, [t](const Receiver& r) { return r.terminal == t; });
}

int switch_at(const Device& device, TerminalIndex t) {
  return index_of<Switch>(device, [t](const Switch& s) { return s.a == t || s.b == t; });
}

bool is_joined(const Device& device, TerminalIndex t) {
  return index_of<Join>(device, [t](const Join& j) { return j.a == t || j.b == t; }) >= 0;
}

TerminalIndex add_inner(Device& device, const std::string& id) {
  Terminal terminal;
  terminal.id = id;
  terminal.inner = true;
  device.terminals.push_back(std::move(terminal));
  return static_cast<TerminalIndex>(device.terminals.size()) - 1;
}

TerminalIndex split(Device& device, TerminalIndex t, const std::string& behind) {
  Terminal inner = device.terminals[at(t)];
  inner.id = format("{} behind the {}", inner.id, behind);
  inner.inner = true;
  device.terminals[at(t)].withstands.reset();
  device.terminals.push_back(std::move(inner));
  const auto index = static_cast<TerminalIndex>(device.terminals.size()) - 1;
  for (Part& part : device.parts) {
    for_each_end(part, [&](TerminalIndex& end) {
      if (end == t) end = index;
    });
  }
  return index;
}

std::vector<EmptySeat> empty_seats(const Fitting& fitting, const Harness& base, const MetLead& beside,
                                   PinFunction function) {
  return empty_seats(fitting, base, beside.plug,
                     [function](const Pin& pin) { return pin.function == function; });
}

std::vector<EmptySeat> empty_seats(const Fitting& fitting, const Harness& base, int plug,
                                   const std::function<bool(const Pin&)>& accepts) {
  std::vector<EmptySeat> all;
  for (const Placement& p : fitting.placements) {
    const Plug& then = plug_of(fitting, p.plug);
    const Plug& now = base.plugs[at(p.plug)];
    const Seating home = home_seating(then, p.header, *fitting.board);
    for (int cavity = 1; cavity <= then.positions; ++cavity) {
      const int number = home.pin_of_cavity[at(cavity) - 1];
      if (number == 0 || then.lead_in(cavity) != nullptr) continue;
      const Pin& pin = header_of(fitting, p.header).pin(number);
      if (!accepts(pin)) continue;
      EmptySeat seat{p.plug, cavity, p.header, number, {}, now.lead_in(cavity) != nullptr};
      if (pin.function == PinFunction::Supply) {
        const Rail* rail = rail_behind(fitting, pin);
        if (rail == nullptr) continue;
        seat.volts = rail->volts;
      }
      all.push_back(seat);
    }
  }
  std::stable_sort(all.begin(), all.end(), [&](const EmptySeat& a, const EmptySeat& b) {
    return std::pair(a.plug != plug, a.later) < std::pair(b.plug != plug, b.later);
  });
  return all;
}

void seat_lead(Harness& base, TerminalRef terminal, const EmptySeat& seat, const WireColour& colour,
               std::vector<LateSeat>& late) {
  Plug& plug = base.plugs[at(seat.plug)];
  Lead lead;
  for (const Lead& other : plug.leads) {
    if (other.gauge && !lead.gauge) lead.gauge = other.gauge;
    if (other.length && !lead.length) lead.length = other.length;
  }
  lead.colour = colour;
  lead.cavity = seat.later ? 0 : seat.cavity;
  lead.to = terminal;
  plug.leads.push_back(lead);
  if (seat.later) late.push_back({seat.plug, static_cast<int>(plug.leads.size()) - 1, seat.cavity});
}

TerminalIndex add_lead(const Fitting& fitting, Harness& base, const MetLead& beside, const EmptySeat& seat,
                       std::vector<LateSeat>& late) {
  const Pin& pin = header_of(fitting, seat.header).pin(seat.pin);
  const bool supply = pin.function == PinFunction::Supply;
  Device& device = base.devices[at(beside.terminal.device)];
  Terminal terminal;
  terminal.id = supply ? rail_behind(fitting, pin)->id : "ground";
  terminal.function = supply ? TerminalFunction::Supply : TerminalFunction::Ground;
  while (device.terminal(terminal.id)) terminal.id += " added";
  device.terminals.push_back(terminal);
  const auto index = static_cast<TerminalIndex>(device.terminals.size()) - 1;
  seat_lead(base, {beside.terminal.device, index}, seat,
            std::get<WireColour>(parse_colour(supply ? "RD" : "BK")), late);
  const Lead& like = plug_of(fitting, beside.plug).leads[at(beside.lead)];
  Lead& lead = base.plugs[at(seat.plug)].leads.back();
  lead.gauge = like.gauge;
  lead.length = like.length;
  lead.span = like.span;
  return index;
}

std::string lead_words(const Fitting& fitting, const MetLead& joint) {
  const Lead& lead = plug_of(fitting, joint.plug).leads[at(joint.lead)];
  return format("the {} lead of terminal {}", to_code(lead.colour), terminal_name(fitting, joint.terminal));
}

}  // namespace plugward
