// SPDX-License-Identifier: MIT
// Internal. What a meter reads where a part was built in, in both states of the signal: the circuit's own
// figures, over the ends of all tolerances, so that a wrong resistor or a cold joint shows before it harms.
//
//   Readings r;
//   for (const Fitting& corner : ends_of_tolerance) add_readings(corner, place, r);
//   to_words(r)                                  "2.52..3.07 V when high and 0.00..0.62 V when low"
#pragma once

#include <optional>
#include <string>

#include "model/fitting.h"

namespace plugward {

/// Where is measured: at a pin against ground, or at a terminal against the device's minus.
struct ReadingPlace {
  int header = -1, pin = -1;
  int device = -1;
  TerminalIndex terminal = -1, minus = -1;
  Volts middle{};      ///< above it the signal is high
  std::string where;   ///< "J21.2 against ground"
  Volts most{};        ///< never more than this
  bool alone = false;  ///< also read with the device fed and its signal contact off the board
};

/// Empty: that state does not occur.
struct Readings {
  std::optional<Range<Volts>> low, high;
};

/// Widens the readings by those of every state of the powered circuit.
void add_readings(const Fitting&, const ReadingPlace&, Readings&);
/// The same with nothing of the board on the signal but the meter.
void add_readings_alone(const Fitting&, const ReadingPlace&, Readings&);

/// "2.52..3.07 V when high and 0.00..0.62 V when low", rounded outwards to 10 mV.
std::string to_words(const Readings&);

}  // namespace plugward
