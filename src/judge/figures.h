// SPDX-License-Identifier: MIT
// What a description leaves out of a device or a housing although the verdict hangs on it: each a doubt with
// the measurement that gives the figure.
//
//   <fan id="fan" needs="22..26 V"/>                 what it draws: read its label
//   <thermistor id="t"/>                              its ohms: the meter
//   <plug ... family="unknown-2.50" positions="3">    its housing: caliper and eye
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

/// Of devices of which a terminal is touched, and of plugs that are on headers.
std::vector<Finding> unknown_figures(const Fitting&, std::span<const Contact>);

}  // namespace plugward
