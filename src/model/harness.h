// SPDX-License-Identifier: MIT
// A harness: plugs, their leads, and the devices at the far end, described by their parts between terminals.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "diag/source.h"
#include "model/board.h"
#include "model/evidence.h"
#include "quantity/colour.h"
#include "quantity/gauge.h"
#include "quantity/quantity.h"

namespace plugward {

/// What a terminal should meet. Ends of passive parts (switch, heater, thermistor, coil) have no function of
/// their own: `Passive`; what they should meet follows from the part.
enum class TerminalFunction {
  Supply,   ///< needs a rail
  Ground,   ///< needs ground itself, not a switched minus
  Return,   ///< minus of a load that may be switched: ground or a low-side switch
  Input,    ///< receives a signal from the board's output
  Output,   ///< gives a signal to the board's input
  Passive,
  Spare,    ///< connected, but of no use here: must meet nothing (e.g. data-out of a string)
  Unknown
};

struct Terminal {
  std::string id;
  TerminalFunction function = TerminalFunction::Passive;
  std::string signal;
  bool optional = false;  ///< works without it (second output, speed sense)
  bool inner = false;     ///< a node behind an added part: no lead goes there, and it wishes nothing
  std::optional<Range<Volts>> withstands;  ///< against the device's ground terminal
  Span span{};
};

/// Index into Device::terminals.
using TerminalIndex = int;

/// What happens when a load's plus and minus are exchanged.
enum class Reversal { Destroyed, Blocked, Harmless, Unknown };

/// Something that takes current from plus to minus, polarised: fan, electronics, servo. With plus = minus it
/// takes nothing itself: it tells what a terminal must be fed with that only added parts draw from.
struct Load {
  TerminalIndex plus = 0, minus = 0;
  Range<Volts> needs{};
  std::optional<Volts> survives;  ///< highest supply without damage; empty = needs.max
  Amps draws{};                   ///< highest, at the middle of needs
  Reversal reversed = Reversal::Unknown;
  Span span{};
  bool draws_stated = true;  ///< false: nobody has looked, and `draws` is 0
};

/// Heating element: no polarity, must be switched.
struct Heater {
  TerminalIndex a = 0, b = 0;
  Volts volts{};  ///< 0: not stated
  Watts watts{};  ///< 0: not stated
  Span span{};
};

/// Any other resistance: a coil that is not a motor's, an LED's series resistor.
struct Resistor {
  TerminalIndex a = 0, b = 0;
  Ohms ohms{};
  std::optional<Watts> limit;
  Span span{};
};

struct Switch {
  TerminalIndex a = 0, b = 0;
  bool rests_closed = false;
  Span span{};
  bool rests_stated = true;  ///< false: nobody has looked
};

/// One winding of a motor.
struct Coil {
  TerminalIndex a = 0, b = 0;
  Ohms ohms{};  ///< 0: not stated
  std::optional<Amps> amps;
  Span span{};
};

/// Resistance that depends on temperature: a thermistor (beta stated) or platinum sensor.
struct TemperatureSensor {
  TerminalIndex a = 0, b = 0;
  Ohms nominal{};              ///< at 25 C (thermistor) or 0 C (platinum); 0: not stated
  std::optional<Kelvins> beta;
  Span span{};
};

enum class OutputKind {
  PushPull,
  Sinking,   ///< NPN, open collector: connects to minus
  Sourcing   ///< PNP: connects to plus
};

/// A device's output stage between its supply terminals.
struct Driver {
  TerminalIndex terminal = 0, plus = 0, minus = 0;
  OutputKind kind = OutputKind::PushPull;
  std::optional<Volts> drop;   ///< highest, when conducting; empty = 0.4 V
  std::optional<Amps> leak;    ///< highest, when off; empty = 0
  std::optional<Ohms> pull;    ///< built-in resistor to plus (sinking) or minus (sourcing)
  bool pull_stated = false;    ///< whether there is such a resistor is known: `pull`, or none when it is empty
  std::optional<Amps> limit;
  std::optional<bool> rests_on;  ///< conducts (high) at rest; empty = not stated
  Span span{};
};

/// A device's input stage.
struct Receiver {
  TerminalIndex terminal = 0, plus = 0, minus = 0;
  std::optional<Volts> low_below, high_above;
  /// Thresholds as a share of the supply between plus and minus; used when the volts are not stated.
  std::optional<double> low_below_share, high_above_share;
  std::optional<Volts> open_circuit;  ///< level the device itself puts on the terminal
  std::optional<Ohms> pull;           ///< through this resistance
  std::optional<bool> pull_up;        ///< pull to plus (true) or minus, when open_circuit is not stated
  /// Highest voltage above the device's supply that the terminal stands; e.g. 0.5 V. Used when withstands is not stated.
  std::optional<Volts> above_supply;
  Span span{};
};

struct Diode {
  TerminalIndex anode = 0, cathode = 0;
  Volts drop{0.7};
  Span span{};
};

/// Two terminals that are one net inside the device.
struct Join {
  TerminalIndex a = 0, b = 0;
  Span span{};
};

/// The device's own supply: it is on even while the board has no power.
struct Source {
  TerminalIndex plus = 0, minus = 0;
  Range<Volts> volts{};
  Span span{};
};

/// A step-down regulator that was added between a supply and a load. Without power it gives nothing. What it
/// takes is counted as what it gives: right for a linear one, more than a switching one takes.
struct Regulator {
  TerminalIndex in = 0, out = 0, minus = 0;
  Range<Volts> volts{};         ///< at the output
  std::optional<Amps> limit;    ///< most that it gives
  Range<Volts> needs{};         ///< at the input
  Span span{};
};

using Part = std::variant<Load, Heater, Resistor, Switch, Coil, TemperatureSensor, Driver, Receiver, Diode, Join, Source,
                          Regulator>;

/// LEDs in a row, fed from one end: how the current of its load comes about.
struct LedString {
  int count = 0;
  Amps each{};                       ///< of one LED at full white
  std::optional<double> brightness;  ///< share of it that the firmware keeps to; empty = full
  std::optional<Ohms> loop;          ///< both supply tracks of the whole string, end to end
};

/// Two cores of a cable; its terminals are its cores, in their order.
struct CorePair {
  TerminalIndex a = 0, b = 0;
  friend auto operator<=>(const CorePair&, const CorePair&) = default;
};

struct Device {
  std::string id;
  std::string title;
  std::string use;   ///< as Header::use: what the device is for
  std::string kind;  ///< "servo-probe", "fan" ... when written in one line or stated to be one, else ""
  std::vector<Terminal> terminals;
  std::vector<Part> parts;
  std::string evidence;
  std::optional<LedString> leds;  ///< of a string: its load draws count x each x brightness
  std::vector<CorePair> pairs;    ///< of a cable: cores that are twisted together, lower number first
  Span span{};

  std::optional<TerminalIndex> terminal(std::string_view id) const;
};

struct TerminalRef {
  int device = 0;  ///< index into Harness::devices
  TerminalIndex terminal = 0;
  friend auto operator<=>(const TerminalRef&, const TerminalRef&) = default;
};

struct Lead {
  int cavity = 0;
  WireColour colour;
  std::optional<Gauge> gauge;
  std::optional<Millimetres> length;
  std::optional<TerminalRef> to;  ///< empty: where it goes is not known
  std::string mark;               ///< printed or tied on the lead
  Span span{};
  Span to_span{};
};

struct Plug {
  std::string id;
  std::string label;
  std::string family;
  int positions = 0;
  int rows = 1;
  Numbering numbering = Numbering::Zigzag;
  KeyState key = KeyState::Intact;
  std::string evidence;
  std::vector<Lead> leads;  ///< in the order of their cavities; at most one a cavity
  Span span{};
  Span family_span{};
  Span positions_span{};

  const Lead* lead_in(int cavity) const;  ///< nullptr: the cavity is empty
};

struct Harness {
  std::string id;
  std::string title;
  std::string evidence;
  std::vector<Evidence> evidences;
  std::vector<Device> devices;
  std::vector<Plug> plugs;
  Span span{};

  const Plug* plug(std::string_view id) const;
  const Evidence* find_evidence(std::string_view id) const;
  const Terminal& terminal(TerminalRef) const;
  std::string terminal_name(TerminalRef) const;  ///< "V", or "probe.V" when there are several devices
  /// All terminals that TERMINAL or DEVICE.TERMINAL may mean. Ids may hold dots themselves, so every dot is
  /// tried as the one between the two.
  std::vector<TerminalRef> terminals_named(std::string_view name) const;
};

Span part_span(const Part&);
std::string_view part_word(const Part&);           ///< "load", "heater", ... the XML element
std::string_view to_word(TerminalFunction);

}  // namespace plugward
