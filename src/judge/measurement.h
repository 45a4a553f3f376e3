// SPDX-License-Identifier: MIT
// The cheapest measurement that settles a doubt: which two points, and what each reading means.
#pragma once

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

/// Settles what a pin is, of which nothing is known, or only assumed, or of which two statements disagree.
Measurement measure_pin(const Fitting&, int header, int pin);
/// Settles which terminal a lead comes from.
Measurement measure_lead(const Fitting&, int plug, int lead);
/// Settles where a jumper sits. `pin` is a pin that it feeds.
Measurement look_at_jumper(const Fitting&, const Jumper&, int header, int pin);
/// Settles a doubt that the circuit raises.
Measurement measure_excess(const Fitting&, const Excess&);

}  // namespace plugward
