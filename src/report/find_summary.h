// SPDX-License-Identifier: MIT
// What `find` keeps of a board once its block is written: enough to rank it. Some 200 bytes, so that a
// hundred thousand boards fit into twenty megabytes.
#pragma once

#include <cstddef>
#include <deque>
#include <string>
#include <utility>
#include <vector>

#include "plan/find.h"

namespace plugward {

/// A board that takes at least one plug.
struct FoundBoard {
  std::string file;
  Verdict verdict = Verdict::Apart;
  PlaceCost cost;
  std::string where;  ///< "control on J9, trigger on J10"
};

/// A file that was not judged.
struct LeftOut {
  std::string file;
  std::string why;  ///< "errors", "not a board", "cannot be read"
};

struct FindSummary {
  std::deque<FoundBoard>
      found;  ///< best first after rank(); a deque does not hold twice what it grows out of
  std::vector<std::pair<std::string, std::string>> best_at;  ///< of the best: plug, header
  std::vector<std::string> empty;  ///< files of boards with no header for any plug, the first `most_named`
  std::size_t empty_boards = 0;
  std::vector<LeftOut> left_out;

  static constexpr std::size_t most_named = 10;

  /// Takes the next board, in the order of the files.
  void add(const std::string& file, const Board&, const Harness&, const BoardFit&);
  /// Takes what was found in the files that come next.
  void add(FindSummary next);
  /// By cost; equals stay in the order of the files.
  void rank();
  std::size_t boards() const { return found.size() + empty_boards; }

 private:
  PlaceCost best_cost_;  ///< when any is found
};

/// "control on J9, trigger on no header"; a harness with one plug: "J9 (PROBE)".
std::string where_words(const Board&, const Harness&, const std::vector<Placement>&);

}  // namespace plugward
