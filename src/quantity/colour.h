// SPDX-License-Identifier: MIT
// Wire colours in the letter codes of IEC 60757. A colour identifies a lead; it never proves a function.
//
//   parse_colour("WHGN")  two-colour lead, white and green; equal to parse_colour("GNWH")
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "quantity/quantity.h"

namespace plugward {

/// In the order of the standard's table as far as it is known to us (black to white); the order of the last
/// four is from memory and nothing is derived from it.
enum class Colour : std::uint8_t {
  Black, Brown, Red, Orange, Yellow, Green, Blue, Violet, Grey, White, Pink, Turquoise, Gold, Silver
};

struct ColourInfo {
  Colour colour{};
  std::string_view code;  ///< "BN"
  std::string_view name;  ///< "brown"
  std::uint32_t rgb = 0;  ///< 0xRRGGBB, for drawing only; chosen by us
  bool light = false;     ///< needs an outline on white paper
};

std::span<const ColourInfo> all_colours();
const ColourInfo& colour_info(Colour);

/// What is known of a lead's colour: one colour, two (an unordered set: makers disagree which is the base), or nothing.
struct WireColour {
  std::optional<Colour> first;   ///< as written; the base colour in drawings
  std::optional<Colour> second;

  bool known() const { return first.has_value(); }
  friend bool operator==(const WireColour& a, const WireColour& b) {
    return (a.first == b.first && a.second == b.second) || (a.first == b.second && a.second == b.first);
  }
};

/// "BN", "WHGN", or "?" for unknown. Upper case only. A Fault names the nearest IEC code for the codes of
/// other systems ("BL", "BR", "OR", "WT", "PU", "VI", "GR" ...).
Parsed<WireColour> parse_colour(std::string_view text);

/// "BN", "WHGN" (as written), "?" when unknown.
std::string to_code(const WireColour&);
/// "brown", "white with green", "unknown colour".
std::string to_words(const WireColour&);

/// GNYE: reserved for the protective conductor (IEC 60757 clause 5.1 as excerpted; IEC 60445).
bool is_protective_earth(const WireColour&);

}  // namespace plugward
