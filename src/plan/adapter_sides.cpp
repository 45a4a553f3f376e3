// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/adapter_lead_test.cpp.
#include "plan/adapter_sides.h"

#include <utility>

#include "circuit/defaults.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// A lead of this gauge as long as gives the resistance.
void give_ohms(Lead& lead, const Gauge& gauge, Ohms ohms) {
  lead.gauge = gauge;
  lead.length = Millimetres(ohms / wire_resistance(gauge, Millimetres(1.0)));
}

/// Both wires and the contact between them.
Ohms ohms_through(const Lead& cable, const Gauge& adapter, Millimetres length) {
  const CircuitDefaults defaults;
  const Ohms own = cable.gauge && cable.length ? wire_resistance(*cable.gauge, *cable.length) : defaults.lead;
  return own + defaults.contact + wire_resistance(adapter, length);
}

/// The plug as the cable has it; leads that a cure added stay as they are.
void restore_housing(Plug& plug, const Plug& cable) {
  plug.family = cable.family;
  plug.positions = cable.positions;
  plug.rows = cable.rows;
  plug.numbering = cable.numbering;
  plug.key = cable.key;
  for (std::size_t l = 0; l < cable.leads.size(); ++l) {
    plug.leads[l].cavity = cable.leads[l].cavity;
    plug.leads[l].gauge = cable.leads[l].gauge;
  }
}

}  // namespace

void take_housing_of(Plug& plug, const Header& header) {
  plug.family = header.family;
  plug.positions = header.positions;
  plug.rows = header.rows;
  plug.numbering = header.numbering;
  plug.key = KeyState::Intact;
}

Harness with_ends_b(const Fitting& fitting, Harness base, const std::vector<Adapter>& adapters) {
  for (const Placement& where : fitting.placements) {
    restore_housing(base.plugs[at(where.plug)], plug_of(fitting, where.plug));
  }
  for (const Adapter& adapter : adapters) {
    Plug& plug = base.plugs[at(adapter.plug)];
    take_housing_of(plug, header_of(fitting, adapter.header));
    plug.id = adapter.id + ".B";
    plug.label.clear();
    const std::size_t own = plug_of(fitting, adapter.plug).leads.size();
    for (std::size_t l = 0; l < own; ++l) plug.leads[l].cavity = 0;  // what is not carried ends in end A
    for (const AdapterLead& one : adapter.leads) {
      Lead& lead = plug.leads[at(one.lead)];
      const Lead& cable = plug_of(fitting, adapter.plug).leads[at(one.lead)];
      lead.cavity = one.b;
      lead.colour = one.colour;
      give_ohms(lead, one.gauge, ohms_through(cable, one.gauge, adapter.length));
    }
  }
  return base;
}

Harness with_ends_a(const Fitting& fitting, const std::vector<Adapter>& adapters, bool adapter_gauge) {
  Harness harness = *fitting.harness;
  for (const Adapter& adapter : adapters) {
    for (const AdapterLead& one : adapter.leads) {
      Lead& lead = harness.plugs[at(adapter.plug)].leads[at(one.lead)];
      if (!adapter_gauge && !lead.gauge) continue;  // judged as not stated
      give_ohms(lead, adapter_gauge ? one.gauge : *lead.gauge, ohms_through(lead, one.gauge, adapter.length));
    }
  }
  return harness;
}

Board board_at_a(const Fitting& fitting, const std::vector<Adapter>& adapters) {
  Board board = *fitting.board;
  for (const Adapter& adapter : adapters) {
    Header& header = board.headers[at(adapter.header)];
    const std::vector<Pin> pins = std::move(header.pins);
    const Plug& plug = plug_of(fitting, adapter.plug);
    header.id = adapter.id + ".A";
    header.family = plug.family;
    header.positions = plug.positions;
    header.rows = plug.rows;
    header.numbering = plug.numbering;
    header.key = KeyState::Intact;
    header.pins.assign(at(plug.positions), {});
    for (int n = 1; n <= plug.positions; ++n) {
      header.pins[at(n) - 1].number = n;
      header.pins[at(n) - 1].function = PinFunction::Unused;
    }
    for (const AdapterLead& lead : adapter.leads) {
      header.pins[at(lead.a) - 1] = pins[at(lead.b) - 1];
      header.pins[at(lead.a) - 1].number = lead.a;
    }
  }
  return board;
}

}  // namespace plugward
