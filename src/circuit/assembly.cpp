// SPDX-License-Identifier: MIT
// Tested in tests/unit/circuit/assembly_test.cpp and, against another program, in tests/outside.
#include "circuit/assembly.h"

#include <algorithm>

#include "base/format.h"
#include "quantity/gauge.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

double lead_ohms(const Lead& lead, const CircuitDefaults& defaults) {
  if (lead.gauge && lead.length) return wire_resistance(*lead.gauge, *lead.length).value;
  return defaults.lead.value;
}

int touched_pin(Circuit& c, const Contact& contact) {
  const auto found = std::find_if(c.pins.begin(), c.pins.end(), [&](const TouchedPin& p) {
    return p.header == contact.header && p.number == contact.pin;
  });
  if (found != c.pins.end()) return static_cast<int>(found - c.pins.begin());
  add_pin(c, contact.header, contact.pin);
  return static_cast<int>(c.pins.size()) - 1;
}

void add_contact(Circuit& c, const Contact& contact) {
  const Plug& plug = c.fitting->harness->plugs[at(contact.plug)];
  ContactBranch branch;
  branch.contact = contact;
  branch.lead = &plug.leads[at(contact.lead)];
  branch.pin = touched_pin(c, contact);
  if (branch.lead->to) {
    branch.terminal = *branch.lead->to;
    // A lead of no length or of superconducting thickness would be a short that cannot be solved.
    branch.ohms = std::max(1e-4, c.defaults.contact.value + lead_ohms(*branch.lead, c.defaults));
    branch.resistor = add_resistor(c, c.pins[at(branch.pin)].node,
                                   c.terminal(branch.terminal.device, branch.terminal.terminal), branch.ohms);
  }
  c.contacts.push_back(branch);
}

}  // namespace

Node add_node(Circuit& c, const Locus& locus) {
  c.nodes.push_back(locus);
  return c.network.nodes++;
}

int add_resistor(Circuit& c, Node a, Node b, double ohms) {
  c.network.resistors.push_back({a, b, ohms});
  return static_cast<int>(c.network.resistors.size()) - 1;
}

int add_diode(Circuit& c, Node anode, Node cathode, double drop, double ohms) {
  c.network.diodes.push_back({anode, cathode, drop, ohms});
  return static_cast<int>(c.network.diodes.size()) - 1;
}

int add_current(Circuit& c, Node from, Node to, double amps) {
  c.network.currents.push_back({from, to, amps});
  return static_cast<int>(c.network.currents.size()) - 1;
}

int add_fixed(Circuit& c, const Locus& locus, double volts) {
  c.network.fixed.push_back({add_node(c, locus), volts});
  return static_cast<int>(c.network.fixed.size()) - 1;
}

int add_knob(Circuit& c, Knob knob) {
  c.knobs.push_back(std::move(knob));
  return static_cast<int>(c.knobs.size()) - 1;
}

int rail_index(const Board& board, std::string_view id) {
  for (std::size_t i = 0; i < board.rails.size(); ++i) {
    if (board.rails[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

Circuit assemble(const Fitting& fitting, std::span<const Contact> contacts, const CircuitDefaults& defaults) {
  Circuit c;
  c.fitting = &fitting;
  c.defaults = defaults;
  c.nodes.push_back({});  // ground
  for (std::size_t i = 0; i < fitting.board->rails.size(); ++i) {
    Locus locus;
    locus.rail = static_cast<int>(i);
    c.rails.push_back(c.network.nodes);
    add_fixed(c, locus, fitting.board->rails[i].volts.max.value);
  }
  const auto& devices = fitting.harness->devices;
  c.terminals.resize(devices.size());
  for (std::size_t d = 0; d < devices.size(); ++d) {
    for (std::size_t t = 0; t < devices[d].terminals.size(); ++t) {
      Locus locus;
      locus.device = static_cast<int>(d);
      locus.terminal = static_cast<int>(t);
      c.terminals[d].push_back(add_node(c, locus));
    }
  }
  for (const Contact& contact : contacts) add_contact(c, contact);
  for (std::size_t d = 0; d < devices.size(); ++d) add_device(c, static_cast<int>(d));
  return c;
}

std::string node_name(const Circuit& c, Node node) {
  const Locus& locus = c.nodes[at(node)];
  if (locus.terminal >= 0) return c.fitting->harness->terminal_name({locus.device, locus.terminal});
  if (locus.pin >= 0) return format("{}.{}", c.fitting->board->headers[at(locus.header)].id, locus.pin);
  if (locus.rail >= 0) return c.rail(locus.rail).id;
  return tr("ground");
}

}  // namespace plugward::circuit
