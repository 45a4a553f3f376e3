// SPDX-License-Identifier: MIT
// What the plug would do turned, shifted or on a neighbour, in the words of the pictures.
//
//   harmful_seatings(facts)          {"turned by 180 degrees: harm", "shifted by 1 towards pin 3: harm"}
//   other_wrong_seatings(facts, 1)   {"harm as well: shifted by 1 towards pin 3", "does not work: shifted by
//   1
//                                    towards pin 1"}
#pragma once

#include <string>
#include <vector>

#include "draw/mating_facts.h"

namespace plugward {

/// Says which state of the plug is meant: as it is, after the moves, with the parts built in.
std::string mind_heading(const MatingFacts&);

/// Each by itself; empty where the plug is to be kept apart.
std::vector<std::string> harmful_seatings(const MatingFacts&);

/// What is not among the first `told` of the above, worst first, one line a weight. Seatings that change
/// nothing are left out.
std::vector<std::string> other_wrong_seatings(const MatingFacts&, std::size_t told);

}  // namespace plugward
