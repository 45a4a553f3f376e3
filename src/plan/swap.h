// SPDX-License-Identifier: MIT
// Moving a machine to another board: where every plug goes, what it needs there, how the jumpers are to sit,
// what is missing and what is left over.
//
//   const auto plan = plan_swap(machine, board, {});       // machine: the fitting as it stands today
//   for (const PlugTransfer& t : plan->plugs) ... t.kind, t.from, t.to, t.why
//
// The order of preference is that of plan/place.h. Jumpers of the new board that the user does not state are
// chosen: the positions under which the whole costs least; of equals the lower voltage.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/place.h"

namespace plugward {

/// What becomes of a plug.
enum class Transfer {
  Straight,  ///< goes over as it is
  Repin,     ///< contacts are to be moved first
  Adapt,     ///< a part or a housing is to be added first
  Off,       ///< a header may suit it, but something must be known, or had, first: it stays off until then
  NoPlace    ///< no header of the new board takes it: left over
};

struct PlugTransfer {
  int plug = 0;             ///< index into Harness::plugs
  std::optional<int> from;  ///< header of the old board; nothing: it is on none today
  std::optional<int> to;    ///< header of the new board; Off: the one it may suit
  Transfer kind = Transfer::NoPlace;
  bool turned = false;              ///< a motor that will run the other way until a setting is changed
  PlugPlan moves;                   ///< Repin, and Adapt when contacts move as well; else no steps
  std::vector<Cure> cures;          ///< Adapt: computed and judged; of the plug's device, at its first plug
  std::vector<std::string> parts;   ///< Adapt: in words, also those of `cures`
  std::vector<std::string> softer;  ///< Adapt, Off: what would do as well and needs no part
  std::vector<Measurement> measurements;  ///< Off: cheapest first
  std::vector<Setting> settings;          ///< of the plug's device, at its first plug
  std::string why;                        ///< one line: "as it is", "move 2 contacts", what speaks against it

  /// It sits on `to` when the work is done.
  bool goes_over() const {
    return kind == Transfer::Straight || kind == Transfer::Repin || kind == Transfer::Adapt;
  }
};

/// Where a jumper of the new board is to sit.
struct JumperChoice {
  std::string jumper;
  std::string rail;        ///< "": no plug of the machine depends on it
  bool stated = false;     ///< by the user; else chosen
  std::vector<int> plugs;  ///< those that it feeds, of the plugs that go over
  std::string why;         ///< one sentence; at another position what the worst plug would get
};

/// Does the new board give what the machine takes? Known before anything is bought.
struct Suit {
  std::string what;   ///< "rail '5V'", "'motor-x/motor' on 'J2'"
  std::string needs;  ///< "1.3 A"
  std::string gives;  ///< "1.5 A"; "" when the board's file does not say
  bool fine = false;
  std::string message;  ///< one sentence
};

struct SwapPlan {
  const Fitting* machine = nullptr;  ///< as it stands
  const Board* board = nullptr;      ///< the new one
  Harness housed;        ///< the machine's harness with new housings where those are among the parts
  Harness harness;       ///< as it will be: contacts moved, cures built in; same plugs in the same order
  Fitting after;         ///< `harness` on the new board: those that go over, jumpers as chosen
  Fitting before_moves;  ///< `housed`: the same plugs on the same headers before any contact is moved
  Advice advice;         ///< on `before_moves`: of all plugs that go over together
  Assessment result;     ///< `after` as a whole; clean, or the advice is not to be followed
  std::vector<PlugTransfer> plugs;    ///< by plug
  std::vector<JumperChoice> jumpers;  ///< in the order of the new board
  std::vector<int> free_headers;      ///< of the new board, but where the supply lands: no plug goes there
  std::vector<std::string> missing;   ///< what has to be had before the work begins; a sentence each
  std::vector<Suit> suits;
  std::optional<PlacedHarness> runner_up;  ///< of the placements, with the jumpers as chosen
  std::string why_it_lost;
  bool runner_up_equal = false;  ///< it lost by the order of the file alone
  bool proven = true;  ///< false: the search for the best placement was cut short

  SwapPlan() = default;
  SwapPlan(const SwapPlan&) = delete;  ///< the fittings point into it
  SwapPlan& operator=(const SwapPlan&) = delete;

  const PlugTransfer& of(int plug) const { return plugs[static_cast<std::size_t>(plug)]; }
  int count(Transfer) const;
};

struct SwapOptions {
  std::vector<Placement> fixed;                ///< plugs whose new header the user states
  std::map<std::string, std::string> jumpers;  ///< stated positions on the new board
};

/// Never fails; a plug that finds no place says so. `machine` and `to` must outlive the plan.
std::unique_ptr<SwapPlan> plan_swap(const Fitting& machine, const Board& to, const SwapOptions&);

std::string_view to_word(Transfer);  ///< "straight", "re-pin", "part", "off", "no place"

}  // namespace plugward
