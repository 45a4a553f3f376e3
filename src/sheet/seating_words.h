// SPDX-License-Identifier: MIT
// What the other ways of a plug to sit would do, in words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "judge/judgement.h"
#include "plan/repin.h"

namespace plugward {

struct SeatingLine {
  Weight weight = Weight::Note;
  std::string text;  ///< of one harmful seating with its finding, or of all of another weight in a row
};

std::string_view wrong_seatings_heading(const Advice&);
/// Worst first.
std::vector<SeatingLine> seating_lines(const Fitting&, const std::vector<SeatingJudgement>&);

}  // namespace plugward
