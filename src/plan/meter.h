// SPDX-License-Identifier: MIT
// What a meter must show, computed from the descriptions: volts on a bare board, ohms at a plug in the hand,
// and what the eye must see where no meter helps.
//
//   for (const ExpectedReading& r : bare_board_readings(fitting, header)) ... r.points, r.expect
//   for (const ExpectedReading& r : plug_readings(fitting, plug)) ...
//   certainly_differs(r, read_again(r, other_machine))     // would the meter have shown it?
//
// Tolerances. Heaters +-15 % of V^2/P (a 24 V 40 W element is 14.4 ohm, and parts sold as such measure up to
// 15.5 ohm). Windings +-15 % (service sheets accept 10 to 14 %). Thermistors +-5 % over 20..25 C (a published
// 100 kohm, B 3950 K table lies within 2.7 % of the formula). Platinum +-1 % over 20..25 C (IEC 60751).
// Resistors +-5 %. The meter itself +-0.2 ohm once its leads were held together and subtracted (common
// practice, no source). Electronics are not resistors: of a load, an input or an output stage it is only said
// that it is no short.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "circuit/meter.h"
#include "model/fitting.h"

namespace plugward {

enum class ReadingKind {
  Look,        ///< by eye: the colours, pin by pin or cavity by cavity
  Continuity,  ///< at the board, no power anywhere
  Resistance,  ///< a plug in the hand, no power anywhere, the device connected and at 20..25 C
  Voltage      ///< the board powered alone, nothing plugged in
};

/// Where the tips of the meter go.
struct MeterPoints {
  int header = -1;  ///< Continuity, Voltage, Look at a seated plug: on the pins of this header
  int plug = -1;    ///< Resistance, Look at a plug in the hand: in the cavities of this plug
  int red = 0;      ///< pin or cavity
  int black = 0;    ///< pin or cavity; 0: the supply's minus
  Hand hand = Hand::Rest;
  std::optional<TerminalRef> end;  ///< Resistance: the black tip at the device's own end instead
};

struct ExpectedReading {
  ReadingKind kind = ReadingKind::Resistance;
  MeterPoints at;
  std::string points;          ///< "J9.2 to J9.3", "cavity 1 to cavity 2, switch worked"
  std::optional<double> low;   ///< volts or ohms; neither: nothing is known, write down what you see
  std::optional<double> high;  ///< infinity: up to an open circuit
  std::string unit;            ///< "V", "ohm"; "": nothing to fill in but yes or no
  std::string expect;          ///< "12.0..16.8 ohm", "a beep", "no beep", "22.8..25.2 V", "1 BN, 2 RD, 3 OG"
  std::string too_low;         ///< what such a reading points to; "" when it cannot be
  std::string too_high;
};

/// What is on the bench or on the board: by design, or with something wrong.
struct AsFound {
  const Fitting* fitting = nullptr;
  std::vector<Contact> contacts;               ///< of the plugs that are on
  std::vector<std::vector<HeldContact>> held;  ///< by plug
};

/// Everything as the fitting says, every plug at home.
AsFound as_described(const Fitting&);

/// Volts at every pin of an empty header of which something can be said, jumpers as the fitting states them,
/// the firmware not running.
std::vector<ExpectedReading> bare_board_readings(const Fitting&, int header);

/// No power: the header's grounds beep to the supply's minus, its supplies are not short.
std::vector<ExpectedReading> power_off_readings(const Fitting&, int header);

/// Ohms between the cavities of a plug in the hand: windings, heaters, sensors, switches at rest and worked;
/// no short between supply and ground.
std::vector<ExpectedReading> plug_readings(const Fitting&, int plug);

/// Leads of the plug that have one colour and mark, though it matters which is which: something polarised
/// hangs on them. Such leads get flags with the names of their terminals, and plug_readings() follows each to
/// its end.
bool looks_alike(const Harness&, int plug);

/// The colours in the cavities of a plug, by cavity.
ExpectedReading colours_in_hand(const Fitting&, int plug);
/// The colours over the pins of a header, by pin, once its plug sits.
ExpectedReading colours_on(const Fitting&, int header);

/// The same points on another machine. REQUIRES: as many plugs and headers as where `reading` is from.
ExpectedReading read_again(const ExpectedReading& reading, const AsFound&);
/// No value of `found` lies within what `expected` allows. False where one of them says nothing.
bool certainly_differs(const ExpectedReading& expected, const ExpectedReading& found);

}  // namespace plugward
