// SPDX-License-Identifier: MIT
// Internal. A signal lead at an input of the board, what gives the signal, and the parts that may be put
// between the two. Which of them make sense follows from what gives the signal:
//
//   drives high from a supply: push-pull, sourcing, a switch    divider, series resistor, optocoupler
//   sinks, with a resistor of its own to its supply             diode, optocoupler
//   sinks, or a switch to ground                                pull-up, optocoupler
#pragma once

#include <optional>
#include <string>

#include "plan/cure_build.h"

namespace plugward {

/// What gives the signal, in figures.
struct Giver {
  const Driver* driver = nullptr;  ///< nullptr: a switch
  int device = 0;
  TerminalIndex terminal = 0;
  bool sinks = false, drives_low = false;
  Volts drop{};
  Amps leak{};
  std::optional<Range<Volts>> supply;
};

struct InputPlace {
  const Complaint& complaint;
  MetLead joint;
  const Pin& pin;
  InputSide side;
  Giver giver;

  const Fitting& fitting() const { return complaint.fitting; }
  const Device& device() const {
    return complaint.fitting.harness->devices[static_cast<std::size_t>(giver.device)];
  }
};

// Each adds its remedies to the offer, or says why there is none.
void offer_divider(const InputPlace&, Offer&);
void offer_series_resistor(const InputPlace&, Offer&);
/// To a supply (up) that the input withstands; where there is none, two resistors that divide a higher one.
void offer_pull(const InputPlace&, bool up, Offer&);
void offer_diode(const InputPlace&, Offer&);
void offer_buffer(const InputPlace&, Offer&);
void offer_optocoupler(const InputPlace&, Offer&);

// Common words and edits.
inline constexpr double divider_tolerance = 0.01, pull_tolerance = 0.05;
std::string pin_words(const InputPlace&);     ///< "J21.2"
std::string lead_words(const InputPlace&);    ///< "the BK lead of terminal 'Q'"
std::string limits_words(const InputPlace&);  ///< "J21.2 withstands 5.5 V, reads low below ..."
/// "the BU lead of terminal 'G'", or `added` when the terminal is met by no lead yet.
std::string end_words(const InputPlace&, TerminalIndex, const std::string& added);
Remedy begin(const InputPlace&, std::string kind);
/// What hung on the signal's terminal moves to an inner one behind the part, whose index is returned.
TerminalIndex split_signal(const InputPlace&, Remedy&, const std::string& behind);
/// A terminal tied to ground; a new lead when the device has none.
std::optional<TerminalIndex> ground_for(const InputPlace&, Remedy&);
/// Insulate, then what to measure; `alone`: also with the device fed and the plug off the board.
void finish(const InputPlace&, Remedy&, bool alone, const std::string& test, Offer&);

}  // namespace plugward
