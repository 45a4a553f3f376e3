// SPDX-License-Identifier: MIT
// Codes as in the RepRap wiki's page "G-code"; not every firmware has all of them. What a check leaves open
// is common practice, without a source. Tested in tests/unit/plan/work_test.cpp.
#include "plan/firmware_checks.h"

#include "base/words.h"

namespace plugward {
namespace {

void sense(FirmwareSetting& s, const std::string& signal) {
  if (signal == "tach") {
    s.code = "M123";
    s.check = tr("with the fan running: turns per minute, and 0 while it is held");
    s.not_proved = tr("that the fan moves enough air, or that this is the fan that the firmware guards");
  } else if (signal == "limit" || signal == "filament" || signal == "probe") {
    s.code = "M119";
    s.check = tr("'open' at rest, 'TRIGGERED' while it is worked by hand, each switch by itself");
    s.not_proved =
        signal == "probe"
            ? tr("that the probe moves out, and that it triggers on the plate: keep a hand on the switch at "
                 "the first homing, high above it")
        : signal == "filament"
            ? tr("that the firmware acts on it while it prints")
            : tr("that the axis runs towards this switch; and of a switch that rests open, a broken lead "
                 "is not seen: pull the plug (power off) and ask again");
  } else {
    s.code = "M43";
    s.check = tr("the pin changes when the device is worked by hand (where the firmware was built with M43)");
    s.not_proved = tr("that the firmware uses the pin for this device");
  }
}

}  // namespace

void add_check(FirmwareSetting& s, const std::string& signal) {
  switch (s.role) {
    case FirmwareRole::Sense:
      sense(s, signal);
      return;
    case FirmwareRole::Sensor:
      s.code = "M105";
      s.check = tr("cold: room temperature within 5 C; warmed by a hand: only this channel rises");
      s.not_proved =
          tr("that it is right when hot (the kind of sensor shows only then), or that it sits in its own "
             "heater");
      return;
    case FirmwareRole::Motor:
      s.code = tr("G91, G1 X1, G1 X-1 (Y, Z alike)");
      s.check = tr("from mid-travel: 1 mm one way and back, smooth, the stated way round");
      s.not_proved =
          tr("steps per millimetre, the current under load, or that homing runs towards the switch");
      return;
    case FirmwareRole::Heater:
      s.code = tr("M104 S50 or M140 S50, M105, then S0");
      s.check = tr("its own sensor, and no other, rises within 30 s, and falls after S0");
      s.not_proved = tr(
          "that the protection trips: it must be on, and it has been seen to work only when it has tripped "
          "once");
      return;
    case FirmwareRole::Fan:
      s.code = "M106 S255, M106 S127, M107";
      s.check = tr("this fan, and no other, runs fast, slower, and stops");
      s.not_proved =
          tr("that it blows where it should, or that its voltage is right: a fan also runs on too much");
      return;
    case FirmwareRole::AlwaysOn:
      s.check = tr("runs as soon as the board has power");
      s.not_proved = tr("anything about the firmware: it has no say here");
      return;
    case FirmwareRole::Servo:
      s.code = tr("M280 P0 S10, M280 P0 S90 (or M401, M402)");
      s.check = tr("the pin moves out and in");
      s.not_proved = tr("the trigger: out and in proves control and supply only; see its input");
      return;
    case FirmwareRole::Leds:
      s.code = "M150 R255, M150 U255, M150 B255";
      s.check = tr("every LED red, then green, then blue");
      s.not_proved = tr("the count beyond the last LED that is there, or the supply at full white");
      return;
    case FirmwareRole::Line:
      s.check = tr("the display shows its first page, every key and the knob answer");
      s.not_proved = tr("nothing more: it is seen as a whole");
      return;
  }
}

std::string_view to_word(FirmwareRole role) {
  switch (role) {
    case FirmwareRole::Sense:
      return "sense";
    case FirmwareRole::Sensor:
      return "sensor";
    case FirmwareRole::Motor:
      return "motor";
    case FirmwareRole::Heater:
      return "heater";
    case FirmwareRole::Fan:
      return "fan";
    case FirmwareRole::AlwaysOn:
      return "always-on";
    case FirmwareRole::Servo:
      return "servo";
    case FirmwareRole::Leds:
      return "leds";
    case FirmwareRole::Line:
      return "line";
  }
  return "";
}

const std::vector<GcodeMeaning>& gcode_meanings() {
  static const std::vector<GcodeMeaning> all{
      {"G1", later("moves; G91: by steps from where it is, G90: to a place")},
      {"G28", later("homes")},
      {"M43", later("tells and watches pins (where built in)")},
      {"M104, M140", later("sets the nozzle's, the bed's temperature; S0: off")},
      {"M105", later("tells the temperatures")},
      {"M106, M107", later("sets a fan's speed (S0 to S255); off")},
      {"M112", later("stops everything at once")},
      {"M119", later("tells the states of limit switches, probe and filament sensor")},
      {"M123", later("tells the turns of the fans")},
      {"M150", later("sets the colour of the LEDs: red R, green U, blue B, 0 to 255")},
      {"M280", later("sets a servo, P its number, S its angle")},
      {"M401, M402", later("probe out, in")},
      {"M500, M503", later("saves, prints the settings")},
      {"M906", later("sets or tells the motors' current in mA (smart drivers)")}};
  return all;
}

}  // namespace plugward
