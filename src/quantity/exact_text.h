// SPDX-License-Identifier: MIT
// Values written so that the reader of descriptions gets the same value back.
//
//   exact_text(Ohms(4700))                         "4.7 kohm"
//   exact_text(Ohms(4702.5))                       "4702.5 ohm", where to_text rounds to "4.702 kohm"
//   exact_text(Range{Volts(4.75), Volts(5.25)})    "4.75..5.25 V"
//
// A description takes at most 15 digits. What was read from one is always written exactly; a computed value
// that needs more digits (5 V x 0.95 x 3) is written with as many as are taken and then differs in the last
// of them. Written, read and written again, the text is the same.
#pragma once

#include <string>

#include "quantity/gauge.h"
#include "quantity/quantity.h"

namespace plugward {

template <class Q>
std::string exact_text(Q value);

template <class Q>
std::string exact_text(Range<Q> range);

std::string exact_text(const Gauge&);

/// A share above 0 and at most 1, as a percentage with up to six decimals: "40 %".
std::string percent_text(double share);

/// A share above 0 and below 1 with up to six decimals: "0.7".
std::string share_text(double share);

}  // namespace plugward
