// SPDX-License-Identifier: MIT
// Customs of colours. Fan with three leads: "Wire colors in a computer fan"; with four: "4-Wire PWM
// Controlled Fans Specification", whose plus is the yellow that is sense on others. Proximity: EN 60947-5-2.
// Servo leads: a servo connector table of a model-building site. LED strings and strips: common practice, no
// source. Tested in tests/unit/cli/draft_test.cpp.
#include "cli/kinds.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {
namespace {

KindTerminal plus(std::string_view id = "V") {
  return {id, "plus", {"plus", "+", "vcc", "supply"}};
}
KindTerminal ground(std::string_view id = "G") {
  return {id, "ground", {"ground", "gnd", "minus", "-"}};
}

std::vector<DeviceKind> make_kinds() {
  const KindFigure volts{"needs", "volts on its label", "24 V", FigureForm::VoltRange};
  const KindFigure amps{"draws", "amps on its label", "0.08 A"};
  const KindTerminal a{"A", "one end"}, b{"B", "the other end"};
  return {
      {"fan",
       "fan",
       "Fan",
       {plus(),
        ground(),
        {"S", "speed sense", {"sense", "tach", "speed"}, "sense"},
        {"C", "speed control", {"control", "pwm"}, "control"}},
       {volts, amps},
       "BK minus, RD plus, YE sense; but with four leads also BK minus, YE plus, GN sense, BU control"},
      {"led-string",
       "leds",
       "Addressable LEDs",
       {plus(), {"D", "data in", {"data", "din", "in"}}, ground(), {"Q", "data out", {"out", "dout"}, "out"}},
       {{"count", "how many LEDs", "30"},
        {"needs", "volts on its label, when they are not 5 V", "12 V", FigureForm::VoltRange}},
       "RD plus, GN data, WH ground"},
      {"rgb-strip",
       "rgb",
       "LED strip with common plus",
       {plus(), {"R", "red", {"red"}}, {"G", "green", {"green"}}, {"B", "blue", {"blue"}}},
       {{"volts", "volts on its label", "12 V", FigureForm::VoltRange},
        {"draws", "amps of one colour", "0.6 A"}},
       "BK or WH plus, RD red, GN green, BU blue"},
      {"heater-element",
       "heater",
       "Heating element",
       {a, b},
       {{"volts", "volts on its label", "24 V"}, {"watts", "watts on its label", "40 W"}},
       "",
       true},
      {"thermistor",
       "thermistor",
       "Temperature sensor",
       {a, b},
       {{"ohms", "ohms at 25 C (of platinum: at 0 C)", "100 kohm"},
        {"beta", "its B constant; none for platinum", "3950 K"}},
       "",
       true},
      {"motor",
       "motor",
       "Motor with two windings",
       {{"A1", "one end of winding 1"},
        {"B1", "its other end"},
        {"A2", "one end of winding 2"},
        {"B2", "its other end"}},
       {{"ohms", "ohms of one winding", "2.1 ohm"}, {"amps", "rated amps of one winding", "1.5 A"}},
       ""},
      {"dry-switch",
       "switch",
       "Switch",
       {a, b},
       {{"use", "what it is for: limit, probe, filament ...", "limit"},
        {"rests", "open or closed at rest", "open"}},
       "",
       true},
      {"servo-probe",
       "probe",
       "Servo-style probe",
       {plus(),
        ground(),
        {"P", "control pulse", {"control", "pulse", "servo"}},
        {"T", "trigger", {"trigger", "signal", "out"}},
        {"H", "ground of the trigger", {"trigger-ground"}}},
       {volts, amps},
       "of a servo's three leads BN or BK ground, RD plus, OG, YE or WH control"},
      {"proximity",
       "sensor",
       "Three-wire proximity switch",
       {plus(), ground(), {"Q", "output", {"output", "out", "signal"}}},
       {{"kind", "its output: sinking (NPN) or sourcing (PNP)", "sinking"},
        {"needs", "volts on its label", "10..30 V", FigureForm::VoltRange},
        {"draws", "amps that it needs itself", "15 mA"}},
       "BN plus, BU ground, BK output; of eight leads WH plus, BN output"},
      {"optical-switch",
       "optical",
       "Optical switch",
       {plus(), ground(), {"S", "signal", {"signal", "out"}}},
       {volts, {"draws", "amps on its label", "20 mA"}},
       ""},
      {"", "unknown", "Device not told yet", {}, {}, ""},
  };
}

}  // namespace

std::span<const DeviceKind> all_kinds() {
  static const std::vector<DeviceKind> kinds = make_kinds();
  return kinds;
}

const DeviceKind* find_kind(std::string_view word) {
  for (const DeviceKind& kind : all_kinds()) {
    if (!word.empty() && (word == kind.element || word == kind.word)) return &kind;
  }
  return nullptr;
}

std::string kind_words() {
  std::vector<std::string> words;
  for (const DeviceKind& kind : all_kinds()) {
    const bool one = kind.element.empty() || kind.element == kind.word;
    words.push_back(one ? std::string(kind.word) : format("{} ({})", kind.word, kind.element));
  }
  return join(words, ", ");
}

const KindTerminal* find_terminal(const DeviceKind& kind, std::string_view word) {
  for (const KindTerminal& terminal : kind.terminals) {
    if (terminal.id == word) return &terminal;
  }
  for (const KindTerminal& terminal : kind.terminals) {
    if (std::find(terminal.words.begin(), terminal.words.end(), word) != terminal.words.end())
      return &terminal;
  }
  return nullptr;
}

std::string terminal_words(const DeviceKind& kind) {
  std::vector<std::string> words;
  for (const KindTerminal& terminal : kind.terminals)
    words.push_back(format("{} {}", terminal.id, terminal.says));
  return join(words, ", ");
}

}  // namespace plugward
