// SPDX-License-Identifier: MIT
// The words and tones that text and JSON share, beside those of sheet/words.h.
#pragma once

#include <string_view>

#include "fit/seating.h"
#include "plan/repin.h"
#include "report/layout.h"
#include "sheet/words.h"

namespace plugward {

Tone tone_of(Verdict);
Tone tone_of(Weight);
std::string_view to_word(StepKind);     ///< "move", "park", "hold", "insert", "insulate"
std::string_view to_word(SeatingKind);  ///< "home", "turned", "shifted", ...

}  // namespace plugward
