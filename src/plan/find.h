// SPDX-License-Identifier: MIT
// Which headers of a board take the plugs of a harness, for thousands of boards in a row.
//
//   Finder finder(harness, catalogue);              // one a thread: it remembers what it has judged
//   const BoardFit fit = finder.look(board);
//   if (fit.best) ... fit.best->verdict, fit.best->placements, fit.best->reason
//
// Jumpers count as not stated; where the verdict hangs on one, the reason tells which position does what. A
// pair that only seems open because of a jumper, while no position of it would do, is left out.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "plan/in_question.h"
#include "plan/likeness.h"
#include "plan/place.h"

namespace plugward {

/// All plugs that find a header, judged together.
struct JointFit {
  std::vector<Placement> placements;  ///< by plug
  Verdict verdict = Verdict::Apart;
  PlaceCost cost;
  std::string reason;
};

struct BoardFit {
  std::vector<PlaceOption> options;  ///< that do not come out APART; by plug, best first
  std::optional<JointFit> best;      ///< nothing when no plug finds a header
};

struct FindOptions {
  bool filter = true;  ///< ask in_question before a pair is judged
  bool memo = true;    ///< judge what is alike once; without it every pair is judged on its whole board
  std::size_t memory = 4096;  ///< judgements remembered; then the memory starts anew
  int joint_tries = 256;      ///< combinations judged together before the search gives up
  int partial_tries = 20000;  ///< combinations looked at, whole or not
};

class Finder {
 public:
  /// REQUIRES: both outlive it.
  Finder(const Harness&, const Catalogue&, const FindOptions& = {});

  BoardFit look(const Board&);

  std::size_t judged() const { return judged_; }  ///< how many judgements were not remembered

 private:
  struct Judged {
    Verdict verdict = Verdict::Apart;
    PlaceCost cost;      ///< without unplaced plugs and distance
    std::string reason;  ///< "" for APART; with stand-ins for names
  };

  Judged judge(const Board&, const std::vector<Placement>&) const;
  /// As `judge`, remembered, with the board's own names.
  Judged recall(const Board&, const std::vector<Placement>&);
  std::vector<PlaceOption> options_of(const Board&, int plug);
  std::optional<JointFit> best_of(const Board&, const std::vector<std::vector<PlaceOption>>&);

  const Harness& harness_;
  const Catalogue& catalogue_;
  FindOptions options_;
  std::vector<PlugDemands> demands_;
  std::unordered_map<std::string, Judged> memo_;
  std::size_t judged_ = 0;
};

}  // namespace plugward
