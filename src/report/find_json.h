// SPDX-License-Identifier: MIT
// What `find` says to programs: one document, made piece by piece. Schema: schemas/find.json.
//
//   head, then for each board in the order of the files a piece, then tail
#pragma once

#include <string>
#include <vector>

#include "report/find_summary.h"

namespace plugward {

std::string find_json_head(const Harness&, const std::vector<std::string>& harness_files);

/// Without what stands between two boards.
std::string find_json_board(const std::string& file, const Board&, const Harness&, const BoardFit&);

/// What stands before the board of this index.
std::string find_json_between(std::size_t index);

/// REQUIRES: rank() was called.
std::string find_json_tail(const FindSummary&);

}  // namespace plugward
