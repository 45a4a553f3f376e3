// SPDX-License-Identifier: MIT
// The drawing of one plug without anything around it, from top to bottom: the housing now with its leads
// upwards; the moves; the housing then with its leads downwards; the header on its board below, so that a
// lead comes down onto its pin. Where nothing moves there is one housing above the header.
#pragma once

#include <vector>

#include "draw/page_plan.h"

namespace plugward {

/// Fills `field` (mm); captions stand at its left, in the page::gutter (page_plan.h) that is kept free there.
/// What does not fit at any readable scale is said in words.
std::vector<Group> plug_frames(const MatingFacts&, View, const Box& field, const TextMeasure&);
/// The same with a planner for the width of the field that has planned for other heights before.
std::vector<Group> plug_frames(const MatingFacts&, View, const Box& field, PagePlanner&, const TextMeasure&);

/// Is there room for everything, the header too?
bool frames_fit(const MatingFacts&, View, const Box& field, const TextMeasure&);

}  // namespace plugward
