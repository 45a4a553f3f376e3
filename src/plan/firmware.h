// SPDX-License-Identifier: MIT
// What the firmware must be told about a machine, from its wiring, in neutral words: which net does what, how
// inputs read, what each sensor is. Not a configuration for any firmware.
//
//   for (const FirmwareSetting& s : firmware_settings(plan.after, &old_machine)) ... s.what, s.tell,
//   s.changed
//
// How inputs read and which motors turn the other way are the judge's own words (judge/judgement.h, Setting).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/fitting.h"

namespace plugward {

enum class FirmwareRole {
  Sense,     ///< a digital input: level at rest and worked, pull
  Sensor,    ///< a temperature sensor
  Motor,     ///< direction, current
  Heater,    ///< a switched output that heats
  Fan,       ///< any other switched output
  AlwaysOn,  ///< runs whenever the board has power: the firmware has no say
  Servo,     ///< a probe's or servo's control line
  Leds,      ///< data of an LED string
  Line       ///< any other output: a display's lines
};

struct FirmwareSetting {
  FirmwareRole role{};
  int plug = 0;
  int header = 0;
  int pin = 0;             ///< of the signal; 0: the header as a whole
  std::string net;         ///< the board's own name; "" when its file does not say
  std::string what;        ///< "input on J5.3 (net PB12), for 'limit-x/limit'"
  std::string tell;        ///< "low at rest and high when the device works; 10 kohm pull-up on the board"
  std::string was;         ///< on the machine as it stood: net and words; "" when it was not there
  bool changed = false;    ///< against the machine as it stood
  std::string code;        ///< RepRap-flavour G-code that checks it, "M119"; "" when there is none
  std::string check;       ///< what to do with it and what must be seen
  std::string not_proved;  ///< what the check does not prove
};

/// In the order of the plugs, then of the pins. `before`: the machine as it stood, same plugs in the same
/// order; nullptr: everything counts as changed.
std::vector<FirmwareSetting> firmware_settings(const Fitting&, const Fitting* before);

std::string_view to_word(FirmwareRole);  ///< "sense", "sensor", "motor", ...

/// The public codes that the checks use, each with its meaning (RepRap wiki, "G-code"): "M119", "tells the
/// states of limit switches, probe and filament sensor".
struct GcodeMeaning {
  std::string_view code, meaning;
};
const std::vector<GcodeMeaning>& gcode_meanings();

}  // namespace plugward
