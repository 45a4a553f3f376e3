// SPDX-License-Identifier: MIT
#include "circuit/limits.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

auto key(const Locus& l) {
  return std::tuple(l.header, l.pin, l.device, l.terminal, l.part, l.plug, l.lead, l.rail);
}

}  // namespace

void Excesses::add(Excess excess) {
  constexpr double noise = 1e-9;  // of the solution, in volts, amps or watts: nobody is told of it
  if (std::abs(excess.value) < noise) excess.value = 0;
  const auto place = [](const Excess& e) { return std::tuple(e.kind, key(e.at)); };
  const auto found =
      std::find_if(list.begin(), list.end(), [&](const Excess& e) { return place(e) == place(excess); });
  if (found == list.end()) {
    list.push_back(std::move(excess));
  } else if (std::abs(excess.value - excess.limit) > std::abs(found->value - found->limit)) {
    *found = std::move(excess);
  }
}

bool unshorted(int, const Island& island, int state) {
  return island.states[at(state)].powered && !island.states[at(state)].shorted;
}

Locus pin_locus(const TouchedPin& pin) {
  Locus locus;
  locus.header = pin.header;
  locus.pin = pin.number;
  return locus;
}

Locus terminal_locus(int device, TerminalIndex terminal) {
  Locus locus;
  locus.device = device;
  locus.terminal = terminal;
  return locus;
}

Locus part_locus(const PartBranch& branch) {
  Locus locus;
  locus.device = branch.device;
  locus.part = branch.part;
  return locus;
}

Locus contact_locus(const ContactBranch& branch) {
  Locus locus;
  locus.header = branch.contact.header;
  locus.pin = branch.contact.pin;
  locus.plug = branch.contact.plug;
  locus.lead = branch.contact.lead;
  return locus;
}

const Part& part_of(const Circuit& c, const PartBranch& branch) {
  return c.device(branch.device).parts[at(branch.part)];
}

bool touched(const Circuit& c, int device, TerminalIndex terminal) {
  const auto has_contact = [&](TerminalIndex t) {
    return std::any_of(c.contacts.begin(), c.contacts.end(), [&](const ContactBranch& b) {
      return b.resistor >= 0 && b.terminal == TerminalRef{device, t};
    });
  };
  if (has_contact(terminal)) return true;
  const auto& parts = c.device(device).parts;
  return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
    const auto* join = std::get_if<Join>(&part);
    return join != nullptr &&
           ((join->a == terminal && has_contact(join->b)) || (join->b == terminal && has_contact(join->a)));
  });
}

int receiver_at(const Circuit& c, int device, TerminalIndex terminal) {
  for (std::size_t i = 0; i < c.parts.size(); ++i) {
    if (c.parts[i].device != device) continue;
    const auto* receiver = std::get_if<Receiver>(&part_of(c, c.parts[i]));
    if (receiver != nullptr && receiver->terminal == terminal) return static_cast<int>(i);
  }
  return -1;
}

namespace {

/// Does a contact hold the terminal at ground or at a rail?
bool held(const Circuit& c, TerminalRef terminal) {
  return std::any_of(c.contacts.begin(), c.contacts.end(), [&](const ContactBranch& b) {
    if (b.resistor < 0 || b.terminal != terminal) return false;
    const PinFunction function = c.pins[at(b.pin)].pin->function;
    return function == PinFunction::Ground || function == PinFunction::Supply;
  });
}

/// Goes on from the terminals in `reached`.
void reach_on(const Circuit& c, std::vector<TerminalRef>& reached) {
  const auto reach = [&](TerminalRef t) {
    if (std::find(reached.begin(), reached.end(), t) == reached.end()) reached.push_back(t);
  };
  for (std::size_t i = 0; i < reached.size(); ++i) {
    const TerminalRef here = reached[i];
    if (held(c, here)) continue;
    const auto pass = [&](TerminalIndex a, TerminalIndex b) {
      if (a == here.terminal) reach({here.device, b});
      if (b == here.terminal) reach({here.device, a});
    };
    for (const Part& part : c.device(here.device).parts) {
      if (const auto* join = std::get_if<Join>(&part)) pass(join->a, join->b);
      if (const auto* resistor = std::get_if<Resistor>(&part)) pass(resistor->a, resistor->b);
      if (const auto* diode = std::get_if<Diode>(&part)) pass(diode->anode, diode->cathode);
    }
  }
}

}  // namespace

std::vector<TerminalRef> wired_to(const Circuit& c, int pin) {
  std::vector<TerminalRef> reached;
  for (const ContactBranch& b : c.contacts) {
    if (b.pin != pin || b.resistor < 0) continue;
    if (std::find(reached.begin(), reached.end(), b.terminal) == reached.end()) reached.push_back(b.terminal);
  }
  reach_on(c, reached);
  return reached;
}

std::vector<TerminalRef> wired_to(const Circuit& c, TerminalRef terminal) {
  std::vector<TerminalRef> reached{terminal};
  reach_on(c, reached);
  return reached;
}

std::vector<std::uint64_t> corners(const Solved& s, const Probe& probe) {
  std::uint64_t mask = 0;
  for (const Term& t : probe) {
    const int island = s.island_of[at(t.node)];
    if (island >= 0) mask |= s.islands[at(island)].rail_mask;
  }
  std::vector<std::uint64_t> all;
  std::uint64_t corner = 0;
  do {
    all.push_back(corner);
    corner = (corner - mask) & mask;
  } while (corner != 0);
  return all;
}

Probe current_of(const Circuit& c, const ContactBranch& b) {
  return {{c.pins[at(b.pin)].node, 1.0 / b.ohms},
          {c.terminal(b.terminal.device, b.terminal.terminal), -1.0 / b.ohms}};
}

}  // namespace plugward::circuit
