// SPDX-License-Identifier: MIT
// What everything that is fitted draws together, as the worst of all states the circuit can take: by contact,
// pin, header, jumper, rail; and the voltage that loads and heaters get.
//
//   const Flows f = flows(fitting, contacts);
//   f.rails[0].most.amps        // out of the first rail
//
// Every figure is the worst of its own: they need not meet in one state. Rails add up the worst of each part
// of the circuit that has nothing else in common with the rest (an upper bound). States with a short circuit
// are left out, as no figure holds in them; `shorted` says that there are any.
//
// What a motor takes from its rail is counted at its driver's limit and half the rail's voltage for each
// coil; a driver that chops takes less from the rail than flows in the coil.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "circuit/circuit.h"

namespace plugward {

/// The largest current, and the choices that bring it about: "switch closed, 24V at 25.2 V"; "" when at rest.
struct MostAmps {
  double amps = 0;
  std::string state;
};

struct ContactFlow {
  Contact contact;
  MostAmps most;  ///< either way
};

struct PinFlow {
  int header = 0, pin = 0;
  MostAmps most;  ///< either way, all leads on the pin together
};

/// What a header gives from one rail, through all its supply pins.
struct HeaderFlow {
  int header = 0, rail = 0;
  std::vector<int> pins;  ///< numbers
  MostAmps most;
};

/// What all supply pins give that follow one jumper.
struct JumperFlow {
  int jumper = 0, rail = 0;
  MostAmps most;
};

struct RailFlow {
  int rail = 0;
  MostAmps most;
};

/// Volts across a Load (plus to minus) or a Heater (either way).
struct PartVolts {
  int device = 0, part = 0;
  double least = 0;  ///< switched on, the rails at their worst for it
  double most = 0;
};

struct Flows {
  std::vector<ContactFlow>
      contacts;  ///< in the order given; those whose lead goes nobody knows where are left out
  std::vector<PinFlow> pins;
  std::vector<HeaderFlow> headers;
  std::vector<JumperFlow> jumpers;
  std::vector<RailFlow> rails;   ///< every rail of the board
  std::vector<PartVolts> parts;  ///< of devices with at least one contact
  bool shorted = false;          ///< some states are short circuits and do not count
  bool cut_short = false;        ///< more states than were looked at
};

Flows flows(const Fitting&, std::span<const Contact>, const CircuitDefaults& = {});

}  // namespace plugward
