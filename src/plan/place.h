// SPDX-License-Identifier: MIT
// The best headers of a board for all plugs of a harness at once.
//
//   const PlacementPlan p = place(fitting);      // fitting.placements are kept as they are
//   if (p.best) ... p.best->advice.verdict, p.best->placements
//
//   const SetAndPlaced s = place_with_jumpers(fitting);    // and where the jumpers should sit
//
// The order of preference: nobody harmed; nothing unknown; no added part; no new housing; the names that the
// caller asks for; fewest contacts moved; fewest settings; the headers of plugs that share a device nearest
// to each other; then the order of the board file, the first plug first.
#pragma once

#include <compare>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "plan/rehouse.h"
#include "plan/repin.h"

namespace plugward {

/// What a placement costs, most important first. Compares lexicographically; adds level by level.
struct PlaceCost {
  int unplaced = 0;  ///< plugs for which the board has no header
  int unknown = 0;   ///< plugs that must be measured first
  int parts = 0;     ///< added parts
  int housings = 0;  ///< new housings
  int renamed = 0;   ///< how far the headers' names are from those that the plugs come from; see PlaceOptions
  int moves = 0;     ///< contacts moved
  int settings = 0;  ///< directions inverted and the like
  int distance = 0;  ///< 0.1 mm from the header of the first plug that shares a device with this one

  friend auto operator<=>(const PlaceCost&, const PlaceCost&) = default;
  friend PlaceCost operator+(const PlaceCost& a, const PlaceCost& b);
};

/// The level on which `better` wins over `worse`, in words: "moves 2 contacts instead of 3"; "" when equal.
std::string why_better(const PlaceCost& better, const PlaceCost& worse);

/// One plug on one header, judged with no other plug placed but the fixed ones of the same device.
struct PlaceOption {
  int plug = 0;
  int header = 0;
  Verdict verdict = Verdict::Apart;
  PlaceCost cost;
  std::string reason;  ///< one line: what is to be done, or what speaks against it; "" when not asked for
};

/// Placements of all plugs, judged together.
struct PlacedHarness {
  std::vector<Placement> placements;
  PlaceCost cost;
  Advice advice;
};

struct PlacementPlan {
  std::vector<PlaceOption> options;   ///< every plug on every header it can be judged on; by plug, best first
  std::optional<PlacedHarness> best;  ///< nothing when no plug finds a header
  std::optional<PlacedHarness> runner_up;  ///< the next best
  std::string why_it_lost;                 ///< of the runner-up, in words
  bool runner_up_equal = false;            ///< it lost by the order of the file alone
  std::vector<std::vector<int>> equals;    ///< placed plugs that are as good in each other's place
  std::vector<Rehousing> rehousings;       ///< for plugs that find no header as they are; each is clean
  bool proven = true;                      ///< false: joint_tries ended the search
};

struct PlaceOptions {
  int joint_tries = 256;  ///< how many combinations are judged together before the search gives up
  bool runner_up = true;
  bool rehouse = true;           ///< look for other housings where a plug finds no header
  bool reasons = true;           ///< of the options: without them equal pairs are judged once
  bool advise = true;            ///< false: the placements alone, without any advice on them
  AdviseOptions advice;          ///< what the advice of the best one holds
  std::vector<int> leave;        ///< plugs that stay on no header
  bool even_overloaded = false;  ///< where nothing holds together, the cheapest that holds plug by plug
  std::vector<std::vector<int>> renamed;  ///< [plug][header], added to that level; empty: names do not count
};

/// fitting.placements holds the plugs that the user has fixed.
PlacementPlan place(const Fitting&, const PlaceOptions& = {});

/// Where the jumpers should sit, and the placement with them there.
struct SetAndPlaced {
  std::map<std::string, std::string> jumpers;  ///< of all jumpers: stated, or chosen
  PlacementPlan plan;
};

/// As `place`, with the jumpers that the fitting does not state in the positions under which the placement
/// costs least; of equals the lower voltages. Boards with more than `most_settings` combinations of open
/// jumpers: the last jumpers of the file stay open.
SetAndPlaced place_with_jumpers(const Fitting&, const PlaceOptions& = {});
inline constexpr int most_settings = 256;

/// Several harnesses as one: ids of plugs and devices get "HARNESS/" in front when there is more than one.
Harness merged(const std::vector<const Harness*>&);

}  // namespace plugward
