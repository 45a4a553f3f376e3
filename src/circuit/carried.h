// SPDX-License-Identifier: MIT
// Internal. What contacts, pins and rails carry, and the states in which it is most. The limits
// (currents.cpp) and the budget (flows.cpp) both take their figures from here.
#pragma once

#include <vector>

#include "circuit/probe.h"

namespace plugward::circuit {

/// A current and where it is largest; `probe` is turned so that it counts positive.
struct Largest {
  Probe probe;
  Extreme most;
};

/// The largest either way.
Largest largest(const Solved&, const Probe& amps, const Filter&);

/// Through a contact. A motor driver regulates the current of its coil: what flows there is what is set, not
/// what the network says. REQUIRES: where the lead goes is known.
Largest contact_current(const Solved&, int contact, const Filter&);

/// Into all leads on a pin together. `contact` is one of them, -1 when no lead of a known end is on the pin.
struct PinCurrent {
  Largest largest;
  int contact = -1;
};
PinCurrent pin_current(const Solved&, int pin, const Filter&);

/// Out of a rail. Sums the worst of every island that touches it: an upper bound, since islands do not know
/// of one another. States with a short circuit do not count.
struct RailCurrent {
  double amps = 0;
  std::vector<Where> where;
};
RailCurrent rail_current(const Solved&, int rail);

}  // namespace plugward::circuit
