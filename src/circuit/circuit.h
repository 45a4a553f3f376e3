// SPDX-License-Identifier: MIT
// The circuit that a mating makes, solved in every state it can take, and where it leaves its limits.
//
//   for (const Excess& e : excesses(fitting, contacts)) ...
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "circuit/defaults.h"
#include "circuit/network.h"
#include "model/fitting.h"

namespace plugward {

/// A contact of a plug that touches a pin.
struct Contact {
  int plug = 0;
  int lead = 0;  ///< index into Plug::leads
  int header = 0;
  int pin = 0;  ///< number, from 1

  friend auto operator<=>(const Contact&, const Contact&) = default;
};

/// Where something happens: a pin, a terminal, a part, a contact or a rail. Fields that do not apply are -1.
struct Locus {
  int header = -1, pin = -1;
  int device = -1, terminal = -1, part = -1;
  int plug = -1, lead = -1;
  int rail = -1;
};

enum class ExcessKind {
  Overvoltage,      ///< pin or terminal above (or below) what it withstands; volts
  UnknownLimit,     ///< more than its own supply reaches a pin or terminal whose withstand voltage is not
                    ///< stated; volts. Value and limit both 0: a signal meets a pin whose thresholds or high
                    ///< level are not stated
  ReversedSupply,   ///< a load's plus below its minus; volts
  SupplyTooHigh,    ///< volts across a load
  SupplyTooLow,     ///< best that it gets, volts across a load
  HeaterTooStrong,  ///< watts
  HeaterTooWeak,    ///< watts
  AlwaysOn,         ///< heater takes power while everything is switched off; watts
  ClampCurrent,     ///< amps into a clamp
  BackFeed,         ///< current flows into a rail through a supply pin; amps
  PinOvercurrent,   ///< amps
  ContactOvercurrent,  ///< amps through a contact, against the family's rating at the lead's gauge
  UnknownRating,       ///< amps; no rating is published for this gauge
  WireOvercurrent,     ///< amps through a lead, against the chassis table
  RailOverload,        ///< amps out of a rail
  ShortCircuit,        ///< amps
  LevelHigh,           ///< a high level does not reach the receiver's threshold; volts
  LevelLow,            ///< a low level does not fall below it; volts
  Stuck,               ///< an input never changes over all states of the device; volts
  Floating,            ///< an input that nothing drives in some state
  ResistorPower,       ///< a resistor of a stated limit gets more; watts
  ResetUnknown,        ///< a heater on an output whose state at reset is not stated
  TooManyStates        ///< an island has more states than were looked at; how many
};

/// A limit that is left in some state.
struct Excess {
  ExcessKind kind{};
  double value = 0;    ///< worst over all states, in the kind's unit
  double limit = 0;    ///< what it should have kept
  bool always = true;  ///< in every corner of the tolerances (levels, supply too low); false: only in some
  Locus at;            ///< who suffers
  Locus from;          ///< who does it, where that is known
  std::string state;   ///< "switch closed, 5V at 5.25 V"; "" when in every state
  std::string path;    ///< "24V - J7.1 - BN - V"
};

/// What is behind a node, for words and for outside checks.
struct NodeInfo {
  std::string name;  ///< "J9.1", "probe.V", "5V"
  Locus locus;
};

/// All limits left over all states, one for each (kind, at), the worst of its kind. Sorted by kind, then
/// place.
std::vector<Excess> excesses(const Fitting&, std::span<const Contact>, const CircuitDefaults& = {});

/// One island (nodes that share nothing but ground, rails and other fixed nodes with the rest) in one state,
/// with its solution, for outside checks (ngspice) and for the SPICE writer.
struct Snapshot {
  Network network;
  Solution solution;
  std::vector<NodeInfo> nodes;
  std::string state;
};
void for_each_snapshot(const Fitting&, std::span<const Contact>, const CircuitDefaults&,
                       const std::function<void(const Snapshot&)>&);

}  // namespace plugward
