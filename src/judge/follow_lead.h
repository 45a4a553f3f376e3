// SPDX-License-Identifier: MIT
// How to find out which terminal a lead comes from, when the device is one of the common ones: what to do and
// what each reading means. A winding is told by its ohms, a string's pads by their print, two grounds by a
// beep.
//
//   if (const auto m = follow_lead(fitting, plug, lead)) finding.measurement = *m;
//
// Colours are never a way: brown is plus on one device and minus on another.
#pragma once

#include <optional>

#include "judge/judgement.h"
#include "model/fitting.h"

namespace plugward {

/// Nothing when more than one device of the harness has a terminal to which no lead is known to go, or when
/// that device is none of the common ones.
std::optional<Measurement> follow_lead(const Fitting&, int plug, int lead);

}  // namespace plugward
