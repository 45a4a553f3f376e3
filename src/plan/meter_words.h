// SPDX-License-Identifier: MIT
// Internal. Readings in words, and what a wrong one points to.
#pragma once

#include "model/harness.h"
#include "plan/meter.h"

namespace plugward {

/// "a beep", "open, no beep", "12..16.8 ohm", "57 ohm or more: not a short"; rounded outwards. `contact`: of
/// a switch or a join, where a beep says it all.
std::string ohms_words(const ExpectedReading&, bool one_way, bool contact);
/// "22.8..25.2 V", rounded outwards to 10 mV; "0 V" for what cannot be told from it.
std::string volts_words(const ExpectedReading&);

/// What readings beyond the band at this part point to.
void explain_ohms(ExpectedReading&, const Part&);

/// The part of read_again() for a plug in the hand.
ExpectedReading read_plug_again(const ExpectedReading&, const AsFound&);

}  // namespace plugward
