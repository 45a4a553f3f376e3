// SPDX-License-Identifier: MIT
// The verdict as a word within an outline that no other verdict has, so that it reads without colour.
#pragma once

#include "draw/text_fit.h"
#include "judge/judgement.h"

namespace plugward {

/// Fills `room` (mm). The word is set in the middle. REQUIRES: room for the word at this size; at 9 points that is
/// 26 x 4.4 mm.
Group verdict_shape(Verdict, const Box& room, const TextMeasure&, double points = 17);

}  // namespace plugward
