// SPDX-License-Identifier: MIT
// Moving a machine to another board: where every plug goes, what it needs there, what is missing, what is
// left over.
//
//   const auto plan = plan_swap(machine, board, {});       // machine: the fitting as it stands today
//   for (const PlugTransfer& t : plan->plugs) ... t.kind, t.from, t.to, t.why
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "plan/place.h"

namespace plugward {

/// What becomes of a plug.
enum class Transfer {
  Straight,  ///< goes over as it is
  Repin,     ///< contacts are to be moved first
  Part,      ///< a part or a housing is to be added first
  Off,       ///< a header suits it, but something must be known first: it stays off until measured
  NoPlace    ///< no header of the new board takes it
};

struct PlugTransfer {
  int plug = 0;             ///< index into Harness::plugs
  std::optional<int> from;  ///< header of the old board; nothing: it is on none today
  std::optional<int> to;    ///< header of the new board
  Transfer kind = Transfer::NoPlace;
  bool turned = false;                    ///< a motor that will run the other way until a setting is changed
  std::vector<Step> steps;                ///< Repin (and Part, when contacts move as well)
  std::vector<Cure> cures;                ///< Part: computed and judged
  std::vector<std::string> parts;         ///< Part: in words
  std::vector<Measurement> measurements;  ///< Off: cheapest first
  std::vector<Setting> settings;
  std::string why;  ///< one sentence
};

/// Where a jumper of the new board is to sit.
struct JumperChoice {
  std::string jumper, rail;
  bool stated = false;  ///< by the user; else chosen
  std::string why;      ///< "'fan' on 'J11' needs 20.4..27.6 V; at 12V it gets 12.6 V"
};

/// Does the new board give what the machine takes? One line of the report before anything is bought.
struct Suit {
  std::string what;           ///< "rail '5V'", "motor on 'J2'", "supply"
  Amps needs{};               ///< most over all states
  std::optional<Amps> gives;  ///< nothing: not stated
  bool fine = false;
  std::string message;
};

struct SwapPlan {
  Fitting machine;                   ///< as it stands
  const Board* board = nullptr;      ///< the new one
  std::unique_ptr<Harness> harness;  ///< as it will be: contacts moved, cures built in
  Fitting after;                    ///< new board, new harness, jumpers as chosen; judged jointly in `advice`
  Advice advice;                    ///< of all placed plugs together, before contacts are moved
  std::vector<PlugTransfer> plugs;  ///< by plug
  std::vector<JumperChoice> jumpers;
  std::vector<int> free_headers;     ///< of the new board
  std::vector<std::string> missing;  ///< what has to be had before the work begins
  std::vector<Suit> suits;
  std::optional<PlacedHarness> runner_up;
  std::string why_it_lost;
};

struct SwapOptions {
  std::vector<Placement> fixed;                ///< plugs whose new header the user states
  std::map<std::string, std::string> jumpers;  ///< stated positions on the new board
};

/// Never fails; a plug that finds no place says so.
std::unique_ptr<SwapPlan> plan_swap(const Fitting& machine, const Board& to, const SwapOptions&);

}  // namespace plugward
