// SPDX-License-Identifier: MIT
// Ohms: a test current of 0.1 mA into the network of the plug on a bench header behind whose pins nothing
// stands. Volts: the meter's own 10 Mohm beside what is measured (usual for a digital meter; common practice,
// no source). Tested in tests/unit/plan/causes_test.cpp.
#include "circuit/meter.h"

#include <algorithm>
#include <cmath>

#include "circuit/limits.h"

namespace plugward {
namespace circuit {
namespace {

constexpr double test_amps = 1e-4;
constexpr double meter_ohms = 10e6;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Every knob of a device stands as the hand has it; what the board does is as at reset.
bool as_held(const Solved& s, const Island& island, int state, Hand hand) {
  if (!island.states[at(state)].powered || !island.states[at(state)].rest) return false;
  for (std::size_t k = 0; k < island.knobs.size(); ++k) {
    const Knob& knob = s.circuit.knobs[at(island.knobs[k])];
    if (knob.on_board || knob.choices.front().position == Position::Level) continue;
    const Position now = knob.choices[at(island.choice(state, static_cast<int>(k)))].position;
    if ((now == knob.choices[at(knob.base)].position) != (hand == Hand::Rest)) return false;
  }
  return true;
}

Node node_of(const Circuit& c, PinRef pin) {
  for (const TouchedPin& p : c.pins) {
    if (p.header == pin.header && p.number == pin.number) return p.node;
  }
  return 0;
}

void touch(Circuit& c, PinRef pin) {
  const bool known = pin.header < 0 || std::any_of(c.pins.begin(), c.pins.end(), [&](const TouchedPin& p) {
                       return p.header == pin.header && p.number == pin.number;
                     });
  if (!known) add_pin(c, pin.header, pin.number);
}

/// The voltage from a to b over the states that the hand allows.
Band between(const Solved& s, Node a, Node b, Hand hand) {
  Band band;
  if (s.island_of[at(a)] < 0 && s.island_of[at(b)] < 0) {  // rails and ground only
    const auto fixed = [&](Node node, bool most) {
      for (std::size_t r = 0; r < s.circuit.rails.size(); ++r) {
        const auto& volts = s.circuit.rail(static_cast<int>(r)).volts;
        if (s.circuit.rails[r] == node) return most ? volts.max.value : volts.min.value;
      }
      return 0.0;
    };
    band.take(fixed(a, false) - fixed(b, false));
    band.take(fixed(a, true) - fixed(b, true));
    return band;
  }
  const Filter filter = [&](int, const Island& island, int state) {
    return !island.states[at(state)].shorted && as_held(s, island, state, hand);
  };
  for (const Side side : {Side::Lowest, Side::Highest}) {
    const Extreme end = extreme(s, {{a, 1.0}, {b, -1.0}}, side, filter);
    if (end.found) band.take(end.value);
  }
  return band;
}

double test(Circuit c, Node red, Node black, Hand hand) {
  if (red == black) return 0.0;
  add_current(c, black, red, test_amps);
  const Solved s = solve_states(std::move(c));
  const Band volts = between(s, red, black, hand);
  return volts.found ? std::abs(volts.most) / test_amps : open_circuit;
}

/// Parts whose resistance is no figure.
bool electronic(const Part& part) {
  return !(std::holds_alternative<Heater>(part) || std::holds_alternative<Resistor>(part) ||
           std::holds_alternative<Switch>(part) || std::holds_alternative<Coil>(part) ||
           std::holds_alternative<TemperatureSensor>(part) || std::holds_alternative<Join>(part));
}

/// A header behind whose pins nothing stands, and the plug on it.
struct Bench {
  Board board;
  Fitting fitting;
  std::vector<Contact> contacts;

  Bench(const Fitting& whole, int plug, std::span<const HeldContact> held) : fitting(whole) {
    const Plug& p = whole.harness->plugs[at(plug)];
    Header header;
    header.positions = p.positions;
    for (int n = 1; n <= p.positions; ++n) {
      Pin pin;
      pin.number = n;
      pin.function = PinFunction::Unused;
      header.pins.push_back(pin);
    }
    board.headers.push_back(std::move(header));
    fitting.board = &board;
    for (const HeldContact& h : held) contacts.push_back({plug, h.lead, 0, h.cavity});
  }
};

}  // namespace
}  // namespace circuit

HandOhms ohms_in_hand(const Fitting& fitting, int plug, std::span<const HeldContact> held, int red, int black,
                      Hand hand) {
  const circuit::Bench bench(fitting, plug, held);
  const auto reading = [&](const Fitting& on_bench, int from, int to) {
    circuit::Circuit c = circuit::assemble(on_bench, bench.contacts, {});
    circuit::touch(c, {0, red});
    circuit::touch(c, {0, black});
    const auto a = circuit::node_of(c, {0, from}), b = circuit::node_of(c, {0, to});
    return circuit::test(std::move(c), a, b, hand);
  };
  HandOhms result{reading(bench.fitting, red, black), true};
  // Electronics show themselves: the other way round, or without them, the reading is another one.
  Harness passive = *fitting.harness;
  for (Device& device : passive.devices) std::erase_if(device.parts, circuit::electronic);
  Fitting without = bench.fitting;
  without.harness = &passive;
  const auto differs = [&](double other) {
    if (result.ohms >= open_ohms && other >= open_ohms) return false;
    return std::abs(other - result.ohms) > 0.01 * result.ohms;
  };
  result.sure = !differs(reading(bench.fitting, black, red)) && !differs(reading(without, red, black));
  return result;
}

double ohms_along(const Fitting& fitting, int plug, std::span<const HeldContact> held, int cavity,
                  TerminalRef end) {
  const circuit::Bench bench(fitting, plug, held);
  circuit::Circuit c = circuit::assemble(bench.fitting, bench.contacts, {});
  circuit::touch(c, {0, cavity});
  const auto a = circuit::node_of(c, {0, cavity}), b = c.terminal(end.device, end.terminal);
  return circuit::test(std::move(c), a, b, Hand::Rest);
}

double ohms_to_ground(const Fitting& fitting, std::span<const Contact> contacts, PinRef pin, Hand hand) {
  Board dead = *fitting.board;
  for (Rail& rail : dead.rails) rail.volts = {Volts(0), Volts(0)};
  Fitting unpowered = fitting;
  unpowered.board = &dead;
  circuit::Circuit c = circuit::assemble(unpowered, contacts, {});
  circuit::touch(c, pin);
  const auto node = circuit::node_of(c, pin);
  return circuit::test(std::move(c), node, 0, hand);
}

Band volts_at(const Fitting& fitting, std::span<const Contact> contacts, PinRef red, PinRef black,
              Hand hand) {
  circuit::Circuit c = circuit::assemble(fitting, contacts, {});
  circuit::touch(c, red);
  circuit::touch(c, black);
  const auto a = circuit::node_of(c, red), b = circuit::node_of(c, black);
  if (a != b) circuit::add_resistor(c, a, b, circuit::meter_ohms);
  circuit::Solved s = circuit::solve_states(std::move(c));
  circuit::Excesses shorts;
  circuit::judge_shorts(s, shorts);
  return circuit::between(s, a, b, hand);
}

}  // namespace plugward
