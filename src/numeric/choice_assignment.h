// SPDX-License-Identifier: MIT
// Cheapest assignment in which some rows' costs hang on a choice that they share.
//
//   ChoiceProblem p;               // a switch: row 0 is its end A in column 1, row 1 its end B in column 0
//   p.lines = {{}, {}};
//   const Choice a_first{0, {{1, forbidden}, {forbidden, 1}}};    // A belongs in column 0: both move
//   const Choice b_first{0, {{forbidden, 0}, {0, forbidden}}};    // B belongs there: both stay
//   p.groups = {{{0, 1}, {a_first, b_first}}};
//   cheapest_choice(p)             // columns 1 0, choice 1, cost 0
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "numeric/assignment.h"

namespace plugward {

/// One way to use the rows of a group.
struct Choice {
  Cost extra = 0;                        ///< what the choice costs by itself
  std::vector<std::vector<Cost>> lines;  ///< costs of the group's rows, in the order of ChoiceGroup::rows
};

struct ChoiceGroup {
  std::vector<std::size_t> rows;
  std::vector<Choice> choices;  ///< never empty
};

struct ChoiceProblem {
  std::vector<std::vector<Cost>> lines;  ///< [row][column]; of a row in a group they do not count
  std::vector<ChoiceGroup> groups;       ///< a row is in one group at most
};

struct ChoiceSolution {
  std::vector<int> columns;  ///< [row]
  std::vector<int> choices;  ///< [group]
  Cost cost = 0;
  bool proven = true;  ///< false: the search was cut off; there may be a cheaper one
};

/// The least total cost; nothing when no choice has an assignment (or none was found before the search was
/// cut off). `most_nodes`: partial choices looked at in one independent part of the problem. REQUIRES: all
/// lines equally long, costs >= 0.
std::optional<ChoiceSolution> cheapest_choice(const ChoiceProblem&, std::size_t most_nodes = 20000);

}  // namespace plugward
