// SPDX-License-Identifier: MIT
// A control board as far as wiring is concerned: rails, jumpers, headers, and what stands behind each pin.
// What is not stated is empty; nothing here is a default. Defaults for the circuit are in circuit/defaults.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diag/source.h"
#include "model/evidence.h"
#include "quantity/quantity.h"

namespace plugward {

struct Rail {
  std::string id;
  Range<Volts> volts{};
  std::optional<Amps> limit;  ///< what is left for everything plugged in
  Span span{};
  Span limit_span{};
};

/// Chooses the rail of the pins that name it. Which position is fitted is a fact of the machine.
struct Jumper {
  std::string id;
  std::string label;
  std::vector<std::string> rails;  ///< position names are rail ids, in the order of the board
  Millimetres x{}, y{};
  Span span{};
};

enum class PinFunction {
  Supply,    ///< a rail, always on
  Ground,
  Output,    ///< a logic output
  Input,     ///< a logic or analogue input
  Switched,  ///< low-side switch: connects to ground when on
  Coil,      ///< one end of a motor driver's bridge pair
  Unused,    ///< connected to nothing
  Unknown
};

/// How an Output drives.
enum class DriveKind { PushPull, OpenDrain };

/// A pull resistor to a rail (up) or ground (down).
struct Pull {
  bool up = true;
  Ohms ohms{};
  Span span{};
};

/// A diode from the pin into a rail, and one from ground to the pin.
struct Clamp {
  std::string rail;
  Volts drop{0.3};
  std::optional<Amps> limit;  ///< injection limit, "injection"
  Span span{};
};

struct Pin {
  int number = 0;
  PinFunction function = PinFunction::Unknown;
  std::string signal;  ///< what the signal is for: "servo", "limit", "temperature", "led-data", "tach", "pwm" ...
  std::string net;     ///< the board's own name for the net, "PC6"
  std::string label;   ///< as printed beside the pin
  std::string rail;         ///< Supply: its rail; otherwise the rail that powers what stands behind the pin
  std::string jumper;       ///< Supply: the jumper that chooses the rail
  int coil = 0;             ///< Coil: 1 or 2
  char coil_end = 'A';      ///< Coil: 'A' or 'B'

  DriveKind drive = DriveKind::PushPull;
  std::optional<Range<Volts>> high;  ///< Output: guaranteed..highest level when high
  std::optional<Volts> low;          ///< Output, Switched: highest level when low or on, at `limit`
  std::optional<Ohms> ohms;          ///< Output: source resistance; Switched: on resistance
  std::optional<Amps> limit;         ///< most current that the pin may supply or sink
  std::optional<bool> on_at_reset;   ///< Switched, Output: on (high) until the firmware runs; empty = not stated

  std::optional<Range<Volts>> withstands;            ///< powered
  std::optional<Volts> withstands_unpowered;         ///< highest, board without power
  std::optional<Volts> withstands_pulled;            ///< highest, while the pull is switched on
  bool analogue = false;                             ///< Input: read as a level, has no thresholds
  std::optional<Volts> low_below;                    ///< VIL
  std::optional<Volts> high_above;                   ///< VIH
  std::optional<Pull> pull;
  std::optional<Clamp> clamp;

  std::string evidence;             ///< evidence id, "" = the header's
  std::optional<Contest> contest;   ///< another statement disagrees
  Span span{};                      ///< the whole start tag
  Span function_span{};             ///< the function's value
};

/// How a two-row header counts its pins.
enum class Numbering { Zigzag, ByRow };

/// Whether the family's key is there.
enum class KeyState { Intact, Removed, Unknown };

struct Header {
  std::string id;
  std::string label;
  std::string use;     ///< "probe", "limit", "fan", "heater", "motor", "led", "thermistor", ... "spare"
  std::string family;  ///< family id
  int positions = 0;   ///< all rows together
  int rows = 1;
  Numbering numbering = Numbering::Zigzag;
  KeyState key = KeyState::Intact;
  Millimetres x{}, y{};   ///< centre of pin 1 from the board's lower left corner, board seen from its top
  int rotation = 0;       ///< degrees anticlockwise from "pins run to the right": 0, 90, 180, 270
  bool underside = false;
  std::string evidence;
  std::vector<Pin> pins;  ///< pins[n - 1] is pin n; a pin not described is Unknown
  Span span{};
  Span family_span{};
  Span positions_span{};

  const Pin& pin(int number) const { return pins[static_cast<std::size_t>(number) - 1]; }
};

struct Hole {
  Millimetres x{}, y{}, diameter{};
};

struct Board {
  std::string id;
  std::string title;
  std::string revision;
  Millimetres width{}, height{};
  std::string evidence;  ///< default for headers
  std::vector<Evidence> evidences;
  std::vector<Rail> rails;
  std::vector<Jumper> jumpers;
  std::vector<Hole> holes;
  std::vector<Header> headers;
  Span span{};

  const Rail* rail(std::string_view id) const;
  const Jumper* jumper(std::string_view id) const;
  const Header* header(std::string_view id) const;
  const Evidence* find_evidence(std::string_view id) const;
  /// The evidence that holds for a pin: its own, its header's or the board's; nullptr when none is stated.
  const Evidence* evidence_of(const Header&, const Pin&) const;
};

std::string_view to_word(PinFunction);  ///< "supply", "ground", ... as in the XML

}  // namespace plugward
