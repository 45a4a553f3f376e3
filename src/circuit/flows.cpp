// SPDX-License-Identifier: MIT
// Sums of contact currents are probes like any other figure of the circuit; their extremes over all states
// come from probe.h. Tested in tests/unit/judge/budget_test.cpp against sums over every snapshot of the
// circuit.
#include "circuit/flows.h"

#include <algorithm>
#include <tuple>

#include "circuit/carried.h"
#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

MostAmps told(const Solved& s, const Extreme& most) {
  return most.found ? MostAmps{std::max(0.0, most.value), words_of(s, most.where)} : MostAmps{};
}

bool feeds(const TouchedPin& pin) {
  return pin.pin->function == PinFunction::Supply && pin.rail >= 0;
}

/// Out of all supply pins that `wanted` takes.
template <class Wanted>
MostAmps fed_by(const Solved& s, Wanted wanted) {
  Probe amps;
  for (const ContactBranch& b : s.circuit.contacts) {
    const TouchedPin& pin = s.circuit.pins[at(b.pin)];
    if (b.resistor < 0 || !feeds(pin) || !wanted(pin)) continue;
    const Probe part = current_of(s.circuit, b);
    amps.insert(amps.end(), part.begin(), part.end());
  }
  return told(s, extreme(s, amps, Side::Highest, unshorted));
}

void add_headers(const Solved& s, Flows& flows) {
  for (const TouchedPin& pin : s.circuit.pins) {
    if (!feeds(pin)) continue;
    const auto known = std::find_if(flows.headers.begin(), flows.headers.end(), [&](const HeaderFlow& h) {
      return h.header == pin.header && h.rail == pin.rail;
    });
    if (known != flows.headers.end()) {
      known->pins.push_back(pin.number);
      continue;
    }
    flows.headers.push_back({pin.header, pin.rail, {pin.number}, {}});
  }
  for (HeaderFlow& h : flows.headers) {
    h.most = fed_by(s, [&](const TouchedPin& pin) { return pin.header == h.header && pin.rail == h.rail; });
  }
}

void add_jumpers(const Solved& s, Flows& flows) {
  const auto& jumpers = s.circuit.fitting->board->jumpers;
  for (std::size_t j = 0; j < jumpers.size(); ++j) {
    const auto follows = [&](const TouchedPin& pin) {
      return feeds(pin) && pin.pin->jumper == jumpers[j].id;
    };
    const auto& pins = s.circuit.pins;
    const auto first = std::find_if(pins.begin(), pins.end(), follows);
    if (first == pins.end()) continue;
    flows.jumpers.push_back({static_cast<int>(j), first->rail, fed_by(s, follows)});
  }
}

/// The best that a part gets in the worst corner of the rails, and the most in any state.
PartVolts across(const Solved& s, const PartBranch& branch, TerminalIndex plus, TerminalIndex minus,
                 bool either_way) {
  const Probe probe = {{s.circuit.terminal(branch.device, plus), 1.0},
                       {s.circuit.terminal(branch.device, minus), -1.0}};
  const auto best = [&](const Filter& filter) {
    return either_way ? largest(s, probe, filter).most : extreme(s, probe, Side::Highest, filter);
  };
  PartVolts volts{branch.device, branch.part, 0, 0};
  volts.most = best(unshorted).value;
  bool any = false;
  for (const std::uint64_t corner : corners(s, probe)) {
    const Extreme here = best([&](int index, const Island& island, int state) {
      return unshorted(index, island, state) &&
             island.states[at(state)].corner == (corner & island.rail_mask);
    });
    if (!here.found) continue;
    volts.least = any ? std::min(volts.least, here.value) : here.value;
    any = true;
  }
  return volts;
}

void add_parts(const Solved& s, Flows& flows) {
  for (const PartBranch& branch : s.circuit.parts) {
    const bool has_contact = std::any_of(
        s.circuit.contacts.begin(), s.circuit.contacts.end(),
        [&](const ContactBranch& b) { return b.resistor >= 0 && b.terminal.device == branch.device; });
    if (!has_contact) continue;
    const Part& part = part_of(s.circuit, branch);
    if (const auto* load = std::get_if<Load>(&part))
      flows.parts.push_back(across(s, branch, load->plus, load->minus, false));
    if (const auto* heater = std::get_if<Heater>(&part))
      flows.parts.push_back(across(s, branch, heater->a, heater->b, true));
  }
}

Flows flows_of(const Solved& s) {
  const Circuit& c = s.circuit;
  Flows flows;
  for (std::size_t i = 0; i < c.contacts.size(); ++i) {
    if (c.contacts[i].resistor < 0) continue;
    const Largest most = contact_current(s, static_cast<int>(i), unshorted);
    flows.contacts.push_back({c.contacts[i].contact, told(s, most.most)});
  }
  for (std::size_t i = 0; i < c.pins.size(); ++i) {
    const PinCurrent current = pin_current(s, static_cast<int>(i), unshorted);
    if (current.contact < 0) continue;
    const bool coil = c.pins[i].pin->function == PinFunction::Coil;
    const Largest most = coil ? contact_current(s, current.contact, unshorted) : current.largest;
    flows.pins.push_back({c.pins[i].header, c.pins[i].number, told(s, most.most)});
  }
  add_headers(s, flows);
  add_jumpers(s, flows);
  for (std::size_t r = 0; r < c.rails.size(); ++r) {
    const RailCurrent current = rail_current(s, static_cast<int>(r));
    flows.rails.push_back({static_cast<int>(r), {current.amps, words_of(s, current.where)}});
  }
  add_parts(s, flows);
  for (const Island& island : s.islands) {
    flows.cut_short |= island.cut_short;
    for (const Island::State& state : island.states) flows.shorted |= state.shorted;
  }
  return flows;
}

}  // namespace
}  // namespace plugward::circuit

namespace plugward {

Flows flows(const Fitting& fitting, std::span<const Contact> contacts, const CircuitDefaults& defaults) {
  circuit::Solved solved = circuit::solve_states(circuit::assemble(fitting, contacts, defaults));
  circuit::Excesses known;
  circuit::judge_shorts(solved, known);
  return circuit::flows_of(solved);
}

}  // namespace plugward
