// SPDX-License-Identifier: MIT
// The running text beside the picture of one plug: what to do, in the order of the hand, and why.
#pragma once

#include <string_view>
#include <vector>

#include "base/words.h"
#include "draw/mating_facts.h"

namespace plugward {

inline constexpr std::string_view softer_heading = later("First see whether this will do");

std::vector<Paragraph> panel_text(const MatingFacts&);

}  // namespace plugward
