// SPDX-License-Identifier: MIT
// The common devices as a person begins to describe one: words for them, their terminals, what to ask, and
// what their colours usually mean - told as custom, never taken as proof.
//
//   const DeviceKind* fan = find_kind("fan");        // also find_kind("leds"), for 'led-string'
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plugward {

/// How the value of a figure is written.
enum class FigureForm {
  Text,       ///< as it stands: "0.08 A", "open"
  VoltRange,  ///< a range; one value stands for 10 % either way
};

struct KindFigure {
  std::string_view attribute;  ///< of the line: "draws"
  std::string_view asks;       ///< "amps on its label"
  std::string_view example;    ///< "0.08 A"
  FigureForm form = FigureForm::Text;
};

struct KindTerminal {
  std::string_view id;                    ///< "V"
  std::string_view says;                  ///< "plus"
  std::vector<std::string_view> words{};  ///< what else a person may call it
  std::string_view with{};                ///< the attribute that gives the line this terminal: "sense"
};

struct DeviceKind {
  std::string_view element;  ///< "led-string"; "" where nobody knows what it is
  std::string_view word;     ///< the short word, "leds"; also the id of device and plug
  std::string_view title;    ///< "Addressable LEDs"
  std::vector<KindTerminal> terminals;
  std::vector<KindFigure> figures;
  std::string_view custom;  ///< what colours usually mean; "" where there is no custom
  bool alike = false;       ///< two ends of which either may be A
};

std::span<const DeviceKind> all_kinds();
const DeviceKind* find_kind(std::string_view word);
/// "fan, led-string (leds), ...": for messages.
std::string kind_words();

/// The terminal that a person calls so; nullptr: none.
const KindTerminal* find_terminal(const DeviceKind&, std::string_view word);
/// "V plus, D data, G ground"
std::string terminal_words(const DeviceKind&);

}  // namespace plugward
