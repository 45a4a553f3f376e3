// SPDX-License-Identifier: MIT
// What of a budget is worth saying: rails that give anything always; of the rest what takes a quarter of its
// limit or more, or more than 0.1 A with no limit known. One line for each pin, with the narrowest of pin,
// contact and wire; pins of one plug that carry the same against the same share a line.
//
//   for (const BudgetLine& line : budget_words(fitting, budget).lines) ... line.what, line.amps, line.share
#pragma once

#include <string>
#include <vector>

#include "judge/budget.h"

namespace plugward {

struct BudgetLine {
  std::string what;   ///< "J9.2, J9.3 ('control')"
  std::string amps;   ///< "1.25 A"
  std::string limit;  ///< "3 A"; "" when none is known
  std::string share;  ///< "42 %"; "" without a limit
  bool over = false;  ///< beyond the limit
  std::string basis;  ///< "contact rating at 26 AWG"
};

struct BudgetWords {
  bool any = false;               ///< false: nothing flows, nothing is to be said
  std::vector<BudgetLine> lines;  ///< nearest to its limit first
  std::string left_out;           ///< one sentence on the smaller ones; "" when there are none
  std::vector<std::string> remarks;
};

BudgetWords budget_words(const Fitting&, const Budget&);

}  // namespace plugward
