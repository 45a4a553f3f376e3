// SPDX-License-Identifier: MIT
// Which terminal should meet which pin, by function: what *should* meet. The circuit decides what happens.
//
// The ends of passive parts have no function of their own: either end of a switch may be the signal end, and a
// motor runs in eight of its orders. Such parts form a group (WishGroup) with several Alternatives; groups are independent.
//
//   for (const WishGroup& g : groups(harness))
//     for (const Alternative& a : g.alternatives)
//       for (const End& e : a.ends) ... grants(pin, e)
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "model/fitting.h"

namespace plugward {

enum class Wish {
  Supply,       ///< a rail, within End::volts when stated
  Ground,       ///< ground itself
  Return,       ///< ground or a low-side switch
  LowSide,      ///< a low-side switch only: heaters
  BoardOutput,  ///< an output with the same signal
  BoardInput,   ///< an input with the same signal
  CoilEnd,      ///< this end of this bridge
  Nothing,      ///< must meet no pin
  Any           ///< not known what it should meet
};

/// A terminal and what it is to meet.
struct End {
  TerminalRef terminal;
  Wish wish = Wish::Any;
  std::string signal;
  std::optional<Range<Volts>> volts;  ///< Supply: what the parts behind it need
  int coil = 0;                       ///< CoilEnd: bridge 1 or 2
  char coil_end = 'A';
};

/// One consistent way to use a group's ends.
struct Alternative {
  std::vector<End> ends;
  bool motor_turned = false;  ///< the motor runs the other way round than its labels say: a setting cures it
};

/// Terminals whose wishes hang together. Most have one terminal and one alternative.
struct WishGroup {
  std::vector<Alternative> alternatives;  ///< preferred first; never empty
};

/// Every terminal of every device is in exactly one group; but for inner ones, which wish nothing.
std::vector<WishGroup> groups(const Harness&);

using JumperPositions = std::map<std::string, std::string>;

/// The rail that a supply pin carries, or nullptr when its jumper is not stated.
const Rail* rail_of(const Pin&, const Board&, const JumperPositions&);

/// Has this pin the function that the end wishes? Which voltage a supply has does not count here.
bool grants(const Pin&, const End&);

/// Can the supply on this pin lie within End::volts? True when either is not known.
bool volts_suit(const Pin&, const Board&, const JumperPositions&, const End&);

/// Are two signals the same thing? Equal words, or one of them not stated.
bool same_signal(std::string_view a, std::string_view b);

/// "5 V supply", "ground", "an output for 'servo'" - what the end wishes, in words.
std::string to_words(const End&);
/// "supply 5V", "ground", "input 'limit'", "switched output" - what the pin is, in words.
std::string to_words(const Pin&);

}  // namespace plugward
