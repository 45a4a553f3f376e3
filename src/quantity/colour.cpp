// SPDX-License-Identifier: MIT
#include "quantity/colour.h"

#include <array>
#include <cassert>

#include "base/format.h"

namespace plugward {
namespace {

constexpr auto colours = std::to_array<ColourInfo>({
    {Colour::Black, "BK", later("black"), 0x1C1C1C, false},
    {Colour::Brown, "BN", later("brown"), 0x7A4A21, false},
    {Colour::Red, "RD", later("red"), 0xC8201E, false},
    {Colour::Orange, "OG", later("orange"), 0xE8761A, false},
    {Colour::Yellow, "YE", later("yellow"), 0xF4D40C, true},
    {Colour::Green, "GN", later("green"), 0x2B8A3A, false},
    {Colour::Blue, "BU", later("blue"), 0x1F5FB4, false},
    {Colour::Violet, "VT", later("violet"), 0x6F3C97, false},
    {Colour::Grey, "GY", later("grey"), 0x8A8F94, false},
    {Colour::White, "WH", later("white"), 0xFFFFFF, true},
    {Colour::Pink, "PK", later("pink"), 0xF0A0B8, true},
    {Colour::Turquoise, "TQ", later("turquoise"), 0x2FB8B4, true},
    {Colour::Gold, "GD", later("gold"), 0xC9A227, true},
    {Colour::Silver, "SR", later("silver"), 0xC4C8CC, true},
});

/// Codes of other systems and what they may mean. Where two systems disagree both are named.
struct OtherCode {
  std::string_view code;
  std::string_view iec;  // "BU", or "BU (blue) or BK" is never guessed: several are listed
  std::string_view second;
};

constexpr auto other_codes = std::to_array<OtherCode>({
    {"BL", "BU", "BK"}, {"BR", "BN", ""},  {"BLK", "BK", ""}, {"BLU", "BU", ""},  {"BRN", "BN", ""},
    {"OR", "OG", ""},   {"ORG", "OG", ""}, {"RE", "RD", ""},  {"RT", "RD", ""},   {"RED", "RD", ""},
    {"YL", "YE", ""},   {"YEL", "YE", ""}, {"GE", "YE", ""},  {"GR", "GN", "GY"}, {"GRN", "GN", ""},
    {"GRY", "GY", ""},  {"PU", "VT", ""},  {"VI", "VT", ""},  {"VIO", "VT", ""},  {"WT", "WH", ""},
    {"WHT", "WH", ""},  {"WS", "WH", ""},  {"SW", "BK", ""},  {"SB", "BK", ""},   {"RS", "PK", ""},
    {"PI", "PK", ""},   {"TK", "TQ", ""},  {"SI", "SR", ""},  {"GO", "GD", ""},
});

std::optional<Colour> find_code(std::string_view code) {
  for (const ColourInfo& row : colours) {
    if (row.code == code) return row.colour;
  }
  return std::nullopt;
}

std::string upper(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return result;
}

std::string named(std::string_view code) {
  const auto colour = find_code(code);
  return colour ? verbatim("'{}' ({})", code, colour_info(*colour).name) : "";
}

/// "'BU' (blue)", "'BU' (blue) or 'BK' (black)" for what a foreign code or a word may mean, else "".
std::string meaning(std::string_view written) {
  const std::string big = upper(written);
  if (find_code(big)) return named(big);
  for (const OtherCode& row : other_codes) {
    if (row.code != big) continue;
    return row.second.empty() ? named(row.iec) : verbatim("{} or {}", named(row.iec), named(row.second));
  }
  for (const ColourInfo& row : colours) {
    if (upper(row.name) == big) return named(row.code);
  }
  if (big == "GRAY") return named("GY");
  if (big == "PURPLE") return named("VT");
  return "";
}

Fault fault(std::string_view text, std::size_t begin, std::size_t end) {
  const std::string_view part = text.substr(begin, end - begin);
  if (const std::string meant = meaning(part); !meant.empty()) {
    return {verbatim("'{}' is no code of IEC 60757: write {}", part, meant), begin, end};
  }
  return {verbatim("'{}' is no code of IEC 60757: write a code such as 'BN' or 'WHGN', or '?' when not known",
                   part),
          begin, end};
}

}  // namespace

std::span<const ColourInfo> all_colours() {
  return colours;
}

const ColourInfo& colour_info(Colour colour) {
  const auto index = static_cast<std::size_t>(colour);
  assert(index < colours.size() && colours[index].colour == colour);
  return colours[index];
}

Parsed<WireColour> parse_colour(std::string_view text) {
  if (text == "?") return WireColour{};
  if (text.empty())
    return Fault{"the colour is empty: write a code such as 'BN', or '?' when not known", 0, 0};
  const auto first = find_code(text.substr(0, 2));
  if (text.size() == 2 && first) return WireColour{first, std::nullopt};
  if (text.size() == 4) {
    const auto second = find_code(text.substr(2));
    if (first && second && first != second) return WireColour{first, second};
    if (first && second) {
      return Fault{verbatim("'{}' names one colour twice: write '{}'", text, text.substr(0, 2)), 0, 4};
    }
    // A word of four letters ("blue", "grey", "pink", "gold") is read as a word, not as two codes.
    if (first && meaning(text).empty()) return fault(text, 2, 4);
    if (second && meaning(text).empty()) return fault(text, 0, 2);
  }
  const std::size_t mark = text.find_first_of("/-_ +");
  if (mark == 2 && text.size() == 5 && first && find_code(text.substr(3))) {
    return Fault{verbatim("'{}' has a separator: write '{}{}'", text, text.substr(0, 2), text.substr(3)), 2,
                 3};
  }
  return fault(text, 0, text.size());
}

std::string to_code(const WireColour& colour) {
  if (!colour.first) return "?";
  std::string code(colour_info(*colour.first).code);
  if (colour.second) code += colour_info(*colour.second).code;
  return code;
}

std::string to_words(const WireColour& colour) {
  if (!colour.first) return tr("unknown colour");
  const std::string_view base = tr(colour_info(*colour.first).name);
  if (!colour.second) return std::string(base);
  return format("{} with {}", base, tr(colour_info(*colour.second).name));
}

bool is_protective_earth(const WireColour& colour) {
  return colour == WireColour{Colour::Green, Colour::Yellow};
}

}  // namespace plugward
