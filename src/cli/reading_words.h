// SPDX-License-Identifier: MIT
// What a person read off the meter, as --measured gives it.
//
//   read_reading("J9.2=5.02V")            volts from J9.2 to the supply's minus
//   read_reading("J9.2:J9.3=4.7kohm")     ohms between two pins
//   read_reading("light.1:V=beep")        continuity from cavity 1 of plug 'light' to terminal V
#pragma once

#include <string>

namespace plugward {

/// What the meter showed.
enum class Shown { Voltage, Resistance };

/// Below this a meter beeps; from there on it does not (common practice, no source).
inline constexpr double beep_ohms = 2.0;
inline constexpr double no_beep_ohms = 10.0;

struct MeterReading {
  std::string text;   ///< as given
  std::string red;    ///< "J9.2", "light.1"
  std::string black;  ///< "minus" when none was given
  Shown shown = Shown::Voltage;
  double value = 0;  ///< volts or ohms; a beep is 0 ohm, "open" is infinite

  bool beep() const { return shown == Shown::Resistance && value < beep_ohms; }
  bool open() const { return shown == Shown::Resistance && value >= no_beep_ohms; }
};

/// Throws UsageError.
MeterReading read_reading(const std::string& text);

/// "5.02 V", "a beep", "no beep", "4.7 kohm".
std::string shown_words(const MeterReading&);

}  // namespace plugward
