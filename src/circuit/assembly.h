// SPDX-License-Identifier: MIT
// Internal. The network that a fitting and its contacts make, before any state is chosen: nodes, branches,
// and the knobs that turn one state into another.
//
//   const Circuit c = assemble(fitting, contacts, defaults);
//   c.knobs[0].choices[1] ...   // "J9.1 high, at its lowest level": set the ohms of resistor 4 to 50
//
// What stands for what (figures in defaults.h):
//   supply pin       its rail's node itself; ground pin: node 0 itself. Rails are fixed nodes and keep islands
//                    apart
//
//   contact          pin node - (contact + lead resistance) - terminal node
//
//   output           off | low: a resistance to 0 V or to `low` | high: a resistance to the guaranteed or the
//                    highest level (a fixed node of its own, or the pin's rail when no level is stated)
//
//   switched output  off | on: a resistance to ground; a diode from ground to the pin always
//
//   coil pin         off | low | high: (rail's highest voltage / limit) to ground or rail, because a motor
//                    driver regulates its current
//
//   load             needs.middle / draws; reversed: a diode from minus to plus, or (blocked) none but forward
//
//   driver           on: a diode towards minus (sinking) or from plus (sourcing) with drop 0 or the highest
//                    drop; off: its leak as a current source that ends at the supply (a diode brings the
//                    current back), so that an unloaded output never goes beyond it
//
//   own level        open-circuit volts / pull as a current from minus beside the pull resistance
//
//   own supply       volts / 0.1 ohm as a current beside 0.1 ohm
//
//   regulator        off | on: as an own supply, from minus to out; what the loads behind it draw flows into
//                    its input as through a load that needs its input volts. A knob on the board: off without
//                    power, and otherwise only where its minus is not ground itself
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "circuit/circuit.h"

namespace plugward::circuit {

using Node = Network::Node;

/// One value of the network that a choice changes.
struct Change {
  enum class What : std::uint8_t { ResistorOhms, DiodeOhms, DiodeDrop, FixedVolts, CurrentAmps };
  What what{};
  int index = 0;
  double value = 0;
};

enum class Position : std::uint8_t { Off, Low, High, On, Open, Closed, Level };

/// Choices of one position differ only in where the part lies within its tolerance.
struct Choice {
  Position position{};
  bool rest = true;   ///< possible while the firmware does not run
  double figure = 0;  ///< of Position::Level: volts
  std::vector<Change> changes;
  bool with_power = true;  ///< possible while the board has power
};

/// Something that can be in several positions: an output, a switch, a device's output stage, a supply of its
/// own.
struct Knob {
  Locus at;
  bool on_board = false;
  int base = 0;                 ///< the choice at rest; where several are possible, the first
  std::vector<Choice> choices;  ///< never empty; of a knob on the board, the first is the one without power
};

struct TouchedPin {
  int header = 0, number = 0;
  const Pin* pin = nullptr;
  Node node = 0;
  int knob = -1;
  int rail = -1;  ///< index into Board::rails of the rail that is (Supply) or powers the pin; -1 not stated
  int clamp_diode = -1;   ///< pin to rail
  int ground_diode = -1;  ///< ground to pin
};

struct ContactBranch {
  Contact contact;
  const Lead* lead = nullptr;
  int pin = 0;        ///< index into Circuit::pins
  int resistor = -1;  ///< -1: where the lead goes is not known
  double ohms = 0;
  TerminalRef terminal;  ///< REQUIRES: resistor >= 0
};

/// Where a part of a device is found again in the network. Fields that do not apply are -1.
struct PartBranch {
  int device = 0, part = 0;
  int resistor = -1;
  int diode = -1;       ///< of a Driver: the one that pulls low, else the one that pulls high
  int high_diode = -1;  ///< of a push-pull Driver
  int knob = -1;
};

struct Circuit {
  const Fitting* fitting = nullptr;
  CircuitDefaults defaults;
  Network network;
  std::vector<Locus> nodes;  ///< by node; all -1: ground
  std::vector<Knob> knobs;
  std::vector<Node> rails;                   ///< by index into Board::rails
  std::vector<std::vector<Node>> terminals;  ///< [device][terminal]
  std::vector<TouchedPin> pins;
  std::vector<ContactBranch> contacts;
  std::vector<PartBranch> parts;
  bool has_source = false;  ///< some device has a supply of its own

  Node terminal(int device, TerminalIndex t) const {
    return terminals[static_cast<std::size_t>(device)][static_cast<std::size_t>(t)];
  }
  const Device& device(int index) const { return fitting->harness->devices[static_cast<std::size_t>(index)]; }
  const Rail& rail(int index) const { return fitting->board->rails[static_cast<std::size_t>(index)]; }
};

Circuit assemble(const Fitting&, std::span<const Contact>, const CircuitDefaults&);

// The two halves of the work, and their tools.
void add_pin(Circuit&, int header, int number);
void add_device(Circuit&, int device);

Node add_node(Circuit&, const Locus&);
int add_resistor(Circuit&, Node a, Node b, double ohms);
int add_diode(Circuit&, Node anode, Node cathode, double drop, double ohms);
int add_current(Circuit&, Node from, Node to, double amps);
/// A node of its own held at `volts`; returns its index in Network::fixed.
int add_fixed(Circuit&, const Locus&, double volts);
int add_knob(Circuit&, Knob);

/// Index into Board::rails, -1 when there is none of this name.
int rail_index(const Board&, std::string_view id);

/// "J9.1", "probe.V", "5V", "ground".
std::string node_name(const Circuit&, Node);

}  // namespace plugward::circuit
