// SPDX-License-Identifier: MIT
// What a meter shows, computed on the model: ohms at a plug in the hand, ohms and volts at the pins of the
// board. The figures of a sheet of measurements come from here, not from a table.
//
//   ohms_in_hand(fitting, plug, held, 1, 2, Hand::Rest)     0.2, sure: the switch rests closed
//   volts_at(fitting, contacts, {4, 1}, {}, Hand::Worked)   4.85..5.15 V
#pragma once

#include <span>

#include "circuit/behaviour.h"

namespace plugward {

/// A lead's contact in a cavity; a lead with a whisker to its neighbour is in two.
struct HeldContact {
  int lead = 0;    ///< index into Plug::leads
  int cavity = 0;  ///< from 1
};

/// Whether a hand works the switch or sensor while the meter is read.
enum class Hand { Rest, Worked };

/// Above this a meter shows an open circuit.
inline constexpr double open_ohms = 10e6;

struct HandOhms {
  double ohms = 0;   ///< past `open_ohms` when nothing joins the two
  bool sure = true;  ///< false: electronics lie between, which every meter reads otherwise
};

/// The plug taken off, nothing fed: from cavity `red` to cavity `black`.
HandOhms ohms_in_hand(const Fitting&, int plug, std::span<const HeldContact>, int red, int black, Hand);

/// ... from a cavity to the device's own end of a lead.
double ohms_along(const Fitting&, int plug, std::span<const HeldContact>, int cavity, TerminalRef end);

/// Power off: ohms from a pin to ground, with what is plugged on by `contacts`.
double ohms_to_ground(const Fitting&, std::span<const Contact>, PinRef, Hand);

/// Power on, firmware not running (outputs as at reset): volts from `red` to `black` at a meter of 10 Mohm.
/// States with a short circuit do not count.
Band volts_at(const Fitting&, std::span<const Contact>, PinRef red, PinRef black, Hand);

}  // namespace plugward
