// SPDX-License-Identifier: MIT
// What `find` says to people: a block a board, in the order of the files, then the boards, best first.
//
//   boards/heron-m7.xml: Heron M7 motion board, revision B
//     J4 (MOTOR Z)  MATE   plug it in as it is
//     J2 (MOTOR X)  REPIN  move 2 contacts first
//
//   Best first, of 2 boards
//     1.  MATE  boards/heron-m7.xml  J4 (MOTOR Z)
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "report/find_summary.h"
#include "report/layout.h"

namespace plugward {

/// "" when no header takes any plug.
std::string find_block(const std::string& file, const Board&, const Harness&, const BoardFit&,
                       const TextOptions&);

/// `next_command` judges the best one at length. Given to `write` piece by piece: the ranking of very many
/// boards is longer than all that is kept of them. REQUIRES: rank() was called.
void find_ranking(const FindSummary&, const std::string& next_command, const TextOptions&,
                  const std::function<void(const std::string&)>& write);
/// As one text.
std::string find_ranking(const FindSummary&, const std::string& next_command, const TextOptions&);

}  // namespace plugward
