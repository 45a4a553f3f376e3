// SPDX-License-Identifier: MIT
// The judged circuit as a netlist for ngspice, every state of it, so that anybody can solve it again:
//
//   plugward check BOARD HARNESS --format spice -o wiring.cir && ngspice -b wiring.cir
//
// The circuit falls into islands that share nothing but ground and rails. Each has nodes and elements of its
// own, n2_3 and r2_7 being of island 2, at the values of its first state; the script behind them changes what
// differs from state to state (`alter`), solves (`op`) and prints every node. Diodes are sources of two
// straight pieces whose drop and resistance are the volts of two sources of their own.
#pragma once

#include <span>
#include <string>

#include "circuit/circuit.h"
#include "plan/repin.h"

namespace plugward {

/// The wiring as it stands, all plugs at home.
std::string check_spice(const Fitting&, const Advice&);

/// The same of any contacts; `heads` become comment lines in front.
std::string spice_netlist(const Fitting&, std::span<const Contact>, const CircuitDefaults&,
                          std::span<const std::string> heads);

}  // namespace plugward
