// SPDX-License-Identifier: MIT
// Internal. How motors turn, from the currents in their windings over the four states of a full step.
//
//   driver  (+,+) (-,+) (-,-) (+,-)     coil 1 and coil 2 of the header
//   healthy (+,+) (-,+) (-,-) (+,-)     the field goes round once: Forwards
//   one open(+,0) (-,0) (-,0) (+,0)     it goes to and fro: Judders
#pragma once

#include <vector>

#include "circuit/behaviour.h"
#include "circuit/islands.h"

namespace plugward::circuit {

/// Of every device with two windings, of which the first two in its list are taken.
std::vector<MotorSight> turnings(const Solved&);

}  // namespace plugward::circuit
