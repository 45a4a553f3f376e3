// SPDX-License-Identifier: MIT
// Which headers of a board take the plugs of a harness, for thousands of boards in a row.
//
//   FindMemory memory;                              // one for all threads
//   Finder finder(harness, catalogue, memory);      // one a thread
//   const BoardFit fit = finder.look(board);
//   if (fit.best) ... fit.best->verdict, fit.best->placements, fit.best->reason
//
// PlaceCost::unknown counts the things to be found out here, so that one look at a jumper comes before a
// header of which two pins are contested. Jumpers count as not stated; where the verdict hangs on one, the
// reason tells which position does what; those that FindOptions::jumpers states count as stated on every
// board that has them. A pair that only seems open because of a jumper, while no position
// of it would do, is left out.
#pragma once

#include <cstddef>
#include <optional>
#include <shared_mutex>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "plan/in_question.h"
#include "plan/likeness.h"
#include "plan/place.h"
#include "plan/wiring_memory.h"

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
  JumperPositions jumpers =
      {};  ///< stated; a board without the jumper, or without that position, is as it is
};

/// The judgements of one harness, by what they depend on. May be used by several threads at a time; two that
/// miss the same one both judge it.
class FindMemory {
 public:
  struct Judged {
    Verdict verdict = Verdict::Apart;
    PlaceCost cost;      ///< without unplaced plugs and distance
    std::string reason;  ///< "" for APART; with stand-ins for names
  };

  /// After `most` judgements it starts anew.
  explicit FindMemory(std::size_t most = 16384) : most_(most), wirings_(most / 2) {}

  std::optional<Judged> find(const std::string& key) const;
  void add(std::string key, Judged);

  /// The circuits that were judged for it.
  WiringMemory& wirings() { return wirings_; }

 private:
  std::size_t most_;
  WiringMemory wirings_;
  mutable std::shared_mutex mutex_;
  std::unordered_map<std::string, Judged> known_;
};

bool has_position(const Board&, std::string_view jumper, std::string_view rail);

class Finder {
 public:
  /// REQUIRES: all outlive it; the memory serves no other harness.
  Finder(const Harness&, const Catalogue&, FindMemory&, const FindOptions& = {});

  BoardFit look(const Board&);

  std::size_t judged() const { return judged_; }  ///< how many judgements were not remembered

 private:
  using Judged = FindMemory::Judged;

  Judged judge(const Board&, const std::vector<Placement>&, JumperPositions stated) const;
  JumperPositions stated_on(const Board&) const;
  /// As `judge`, remembered, with the board's own names.
  Judged recall(const Board&, const std::vector<Placement>&);
  /// Pins in doubt that a lead meets in every order of the leads: before they are measured nothing is
  /// planned.
  std::vector<int> surely_in_doubt(const Board&, const Placement&) const;
  std::vector<PlaceOption> options_of(const Board&, int plug);
  std::optional<JointFit> best_of(const Board&, const std::vector<std::vector<PlaceOption>>&);

  const Harness& harness_;
  const Catalogue& catalogue_;
  FindMemory& memory_;
  FindOptions options_;
  std::vector<PlugDemands> demands_;
  std::vector<bool> fills_;  ///< [plug]: a lead in every cavity, none of which may be left out
  std::size_t judged_ = 0;
};

}  // namespace plugward
