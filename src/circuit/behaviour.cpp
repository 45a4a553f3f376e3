// SPDX-License-Identifier: MIT
// Everything is read off the states that circuit/islands.h solves: a sight is the band of a voltage over the
// states that its condition lets through. Tested in tests/unit/plan/causes_test.cpp; motors are in
// turning.cpp.
#include "circuit/behaviour.h"

#include <algorithm>

#include "circuit/limits.h"
#include "circuit/path.h"
#include "circuit/turning.h"

namespace plugward {

void Band::take(double value) {
  least = found ? std::min(least, value) : value;
  most = found ? std::max(most, value) : value;
  found = true;
}

namespace circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

PartRef ref_of(const PartBranch& branch) {
  return {branch.device, branch.part};
}

/// The position of a knob in a state; nothing when the knob is in another island.
std::optional<Position> position(const Solved& s, const Island& island, int state, int knob) {
  const auto found = std::find(island.knobs.begin(), island.knobs.end(), knob);
  if (found == island.knobs.end()) return std::nullopt;
  const int choice = island.choice(state, static_cast<int>(found - island.knobs.begin()));
  return s.circuit.knobs[at(knob)].choices[at(choice)].position;
}

Position rest_position(const Knob& knob) {
  return knob.choices[at(knob.base)].position;
}

/// Parts of the kinds asked for that hang on a pin through leads, joins, resistors and diodes.
template <class Wanted>
std::vector<const PartBranch*> wired_parts(const Circuit& c, int pin, Wanted wanted) {
  const std::vector<TerminalRef> wired = wired_to(c, pin);
  std::vector<const PartBranch*> list;
  for (const PartBranch& branch : c.parts) {
    const auto meets = [&](TerminalIndex t) {
      return std::find(wired.begin(), wired.end(), TerminalRef{branch.device, t}) != wired.end();
    };
    if (wanted(part_of(c, branch), meets)) list.push_back(&branch);
  }
  return list;
}

void look_at_input(const Solved& s, int index, Behaviour& seen) {
  const Circuit& c = s.circuit;
  const TouchedPin& pin = c.pins[at(index)];
  InputSight sight;
  sight.pin = {pin.header, pin.number};
  const auto givers = wired_parts(c, index, [](const Part& part, const auto& meets) {
    if (const auto* sw = std::get_if<Switch>(&part)) return meets(sw->a) || meets(sw->b);
    const auto* driver = std::get_if<Driver>(&part);
    return driver != nullptr && meets(driver->terminal);
  });
  for (const PartBranch* giver : givers) sight.givers.push_back(ref_of(*giver));
  const int where = s.island_of[at(pin.node)];
  const bool pulled = pin.pin->pull && (!pin.pin->pull->up || pin.rail >= 0);
  if (where < 0) {
    sight.floats = true;
    seen.inputs.push_back(sight);
    return;
  }
  const Island& island = s.islands[at(where)];
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!unshorted(where, island, state) || !island.states[at(state)].rest) continue;
    bool all_rest = true, all_worked = true;
    for (const PartBranch* giver : givers) {
      const auto now = position(s, island, state, giver->knob);
      if (!now) continue;
      (*now == rest_position(c.knobs[at(giver->knob)]) ? all_worked : all_rest) = false;
    }
    if (!all_rest && !all_worked) continue;
    sight.floats |= !pulled && !driven(s, {where, state}, pin.node);
    const double volts = island.volts_at(state, pin.node);
    if (all_rest) sight.rest.take(volts);
    if (all_worked) sight.worked.take(volts);
  }
  seen.inputs.push_back(std::move(sight));
}

void look_at_analogue(const Solved& s, int index, Behaviour& seen) {
  const TouchedPin& pin = s.circuit.pins[at(index)];
  AnalogueSight sight;
  sight.pin = {pin.header, pin.number};
  for (const PartBranch* sensor : wired_parts(s.circuit, index, [](const Part&part, const auto&meets) {
         const auto* t = std::get_if<TemperatureSensor>(&part);
         return t != nullptr && (meets(t->a) || meets(t->b));
       })) {
    sight.sensors.push_back(ref_of(*sensor));
  }
  const int where = s.island_of[at(pin.node)];
  if (where >= 0 && pin.rail >= 0) {
    const Island& island = s.islands[at(where)];
    const int rail = island.local[at(s.circuit.rails[at(pin.rail)])];
    for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
      if (!unshorted(where, island, state)) continue;
      // An input that is held at ground has lost its rail.
      const double full = rail < 0 ? s.circuit.rail(pin.rail).volts.max.value
                                   : island.volts[at(state) * island.nodes.size() + at(rail)];
      if (full > 0.0) sight.share.take(island.volts_at(state, pin.node) / full);
    }
  }
  seen.analogue.push_back(std::move(sight));
}

void look_at_load(const Solved& s, const PartBranch& branch, TerminalIndex plus, TerminalIndex minus,
                  bool either_way, Behaviour& seen) {
  const Circuit& c = s.circuit;
  LoadSight sight;
  sight.part = ref_of(branch);
  const Node a = c.terminal(branch.device, plus), b = c.terminal(branch.device, minus);
  const int where = s.island_of[at(a)];
  if (where < 0) return;
  const Island& island = s.islands[at(where)];
  if (island.local[at(b)] < 0) return;
  std::vector<int> knobs;
  for (const TouchedPin& pin : c.pins) {
    if (pin.pin->function != PinFunction::Switched || s.island_of[at(pin.node)] != where) continue;
    sight.switches.push_back({pin.header, pin.number});
    knobs.push_back(pin.knob);
  }
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!unshorted(where, island, state)) continue;
    bool all_off = true, all_on = true;
    for (const int knob : knobs)
      (position(s, island, state, knob) == Position::On ? all_off : all_on) = false;
    const double across = island.volts_at(state, a) - island.volts_at(state, b);
    const double volts = either_way ? std::abs(across) : across;
    if (all_off) sight.off.take(volts);
    if (all_on) sight.on.take(volts);
  }
  seen.loads.push_back(std::move(sight));
}

void look_at_receiver(const Solved& s, const PartBranch& branch, const Receiver& receiver, Behaviour& seen) {
  const Circuit& c = s.circuit;
  ReceiverSight sight;
  sight.part = ref_of(branch);
  int knob = -1;
  for (std::size_t i = 0; i < c.pins.size(); ++i) {
    if (c.pins[i].pin->function != PinFunction::Output) continue;
    const auto wired = wired_to(c, static_cast<int>(i));
    if (std::find(wired.begin(), wired.end(), TerminalRef{branch.device, receiver.terminal}) == wired.end())
      continue;
    sight.output = {c.pins[i].header, c.pins[i].number};
    knob = c.pins[i].knob;
  }
  const Probe volts = {{c.terminal(branch.device, receiver.terminal), 1.0},
                       {c.terminal(branch.device, receiver.minus), -1.0}};
  const auto band = [&](Position wanted) {
    Band result;
    const Filter filter = [&](int index, const Island& island, int state) {
      const auto now = position(s, island, state, knob);
      return unshorted(index, island, state) && (!now || *now == wanted);
    };
    for (const Side side : {Side::Lowest, Side::Highest}) {
      const Extreme end = extreme(s, volts, side, filter);
      if (end.found) result.take(end.value);
    }
    return result;
  };
  sight.low = band(Position::Low);
  sight.high = band(Position::High);
  seen.receivers.push_back(sight);
}

void look_at_shorts(Solved& s, Behaviour& seen) {
  Excesses found;
  judge_shorts(s, found);
  if (!found.list.empty()) {
    seen.short_state = found.list.front().state;
    seen.short_path = found.list.front().path;
  }
  for (const Island& island : s.islands) {
    for (std::size_t state = 0; state < island.states.size(); ++state) {
      if (!island.states[state].shorted) continue;
      seen.shorted = true;
      if (!island.states[state].rest) continue;
      seen.shorted_by_hand = true;
      bool rests = true;
      for (const int knob : island.knobs) {
        const Knob& k = s.circuit.knobs[at(knob)];
        rests &= k.on_board || position(s, island, static_cast<int>(state), knob) == rest_position(k);
      }
      seen.shorted_at_rest |= rests;
    }
  }
}

Circuit with_pins(Circuit c, std::span<const PinRef> watched) {
  for (const PinRef& pin : watched) {
    const bool touched = std::any_of(c.pins.begin(), c.pins.end(), [&](const TouchedPin& p) {
      return p.header == pin.header && p.number == pin.number;
    });
    if (!touched) add_pin(c, pin.header, pin.number);
  }
  return c;
}

Behaviour behaviour_of(Solved s) {
  Behaviour seen;
  look_at_shorts(s, seen);
  for (std::size_t i = 0; i < s.circuit.pins.size(); ++i) {
    const Pin& pin = *s.circuit.pins[i].pin;
    if (pin.function != PinFunction::Input) continue;
    pin.analogue ? look_at_analogue(s, static_cast<int>(i), seen)
                 : look_at_input(s, static_cast<int>(i), seen);
  }
  for (const PartBranch& branch : s.circuit.parts) {
    const Part& part = part_of(s.circuit, branch);
    if (const auto* load = std::get_if<Load>(&part))
      look_at_load(s, branch, load->plus, load->minus, false, seen);
    if (const auto* heater = std::get_if<Heater>(&part))
      look_at_load(s, branch, heater->a, heater->b, true, seen);
    if (const auto* receiver = std::get_if<Receiver>(&part)) look_at_receiver(s, branch, *receiver, seen);
  }
  seen.motors = turnings(s);
  return seen;
}

}  // namespace
}  // namespace circuit

Behaviour behaviour(const Fitting& fitting, std::span<const Contact> contacts,
                    std::span<const PinRef> watched, const CircuitDefaults& defaults) {
  return circuit::behaviour_of(
      circuit::solve_states(circuit::with_pins(circuit::assemble(fitting, contacts, defaults), watched)));
}

}  // namespace plugward
