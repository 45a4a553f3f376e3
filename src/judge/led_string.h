// SPDX-License-Identifier: MIT
// What follows from how a string of LEDs is fed: the brightness that the firmware has to keep to, and the
// volts that are left at its far end.
//
//   far_end(Volts(5), Amps(3.6), Ohms(0.5))   4.1 V
//
// Derivation. N LEDs stand at equal distances along a string whose two supply tracks have R ohms together,
// and each takes I / N. The k-th stretch of the tracks, R / N, feeds the LEDs from k on: I (N - k + 1) / N.
// The losses of all stretches add up to
//
//   I R / N^2 x (N + (N - 1) + ... + 1)  =  I R (N + 1) / (2 N),
//
// which for many LEDs is I R / 2: half of what the whole current would lose over the whole length. LEDs that
// get less than their supply take a little less current, so that the true loss is a little smaller.
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

/// The volts at the last LED when `near` stands at the first and the load is spread evenly: near - amps x
/// loop / 2.
Volts far_end(Volts near, Amps amps, Ohms loop);

/// A string that was told to count with less than full white: the firmware must keep to it.
std::vector<Setting> brightness_settings(const Fitting&, std::span<const Contact>);

/// A far end that gets less than the string needs is a fault; many LEDs whose tracks are not stated, a note.
std::vector<Finding> far_end_findings(const Fitting&, std::span<const Contact>);

}  // namespace plugward
