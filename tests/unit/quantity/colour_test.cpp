// SPDX-License-Identifier: MIT
#include "quantity/colour.h"

#include <doctest/doctest.h>

#include <array>
#include <set>
#include <string>

#include "base/format.h"

using namespace plugward;

namespace {

std::string shown(std::string_view text) {
  const auto parsed = parse_colour(text);
  if (const auto* fault = std::get_if<Fault>(&parsed)) {
    return format("{} [{},{})", fault->message, fault->begin, fault->end);
  }
  return to_words(std::get<WireColour>(parsed));
}

}  // namespace

TEST_CASE("what is read as a colour") {
  struct Row {
    std::string_view text, expected;
  };
  constexpr std::string_view no_code =
      "is no code of IEC 60757: write a code such as 'BN' or 'WHGN', or '?' when not known";
  const std::array rows{
      Row{"BN", "brown"},
      Row{"WHGN", "white with green"},
      Row{"GNWH", "green with white"},
      Row{"GNYE", "green with yellow"},
      Row{"?", "unknown colour"},
      Row{"", "the colour is empty: write a code such as 'BN', or '?' when not known [0,0)"},
      Row{"bn", "'bn' is no code of IEC 60757: write 'BN' (brown) [0,2)"},
      Row{"BL", "'BL' is no code of IEC 60757: write 'BU' (blue) or 'BK' (black) [0,2)"},
      Row{"BR", "'BR' is no code of IEC 60757: write 'BN' (brown) [0,2)"},
      Row{"OR", "'OR' is no code of IEC 60757: write 'OG' (orange) [0,2)"},
      Row{"WT", "'WT' is no code of IEC 60757: write 'WH' (white) [0,2)"},
      Row{"PU", "'PU' is no code of IEC 60757: write 'VT' (violet) [0,2)"},
      Row{"VI", "'VI' is no code of IEC 60757: write 'VT' (violet) [0,2)"},
      Row{"GR", "'GR' is no code of IEC 60757: write 'GN' (green) or 'GY' (grey) [0,2)"},
      Row{"blue", "'blue' is no code of IEC 60757: write 'BU' (blue) [0,4)"},
      Row{"Grey", "'Grey' is no code of IEC 60757: write 'GY' (grey) [0,4)"},
      Row{"BNBR", "'BR' is no code of IEC 60757: write 'BN' (brown) [2,4)"},
      Row{"VIWH", "'VI' is no code of IEC 60757: write 'VT' (violet) [0,2)"},
      Row{"RDRD", "'RDRD' names one colour twice: write 'RD' [0,4)"},
      Row{"WH/GN", "'WH/GN' has a separator: write 'WHGN' [2,3)"},
      Row{"WH-GN", "'WH-GN' has a separator: write 'WHGN' [2,3)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(shown(row.text) == row.expected);
  }
  for (const std::string_view text : {"XX", "B", "BNRDOG", "BN ", "??", "mauve", "BN?"}) {
    CAPTURE(text);
    CHECK(shown(text) == format("'{}' {} [0,{})", text, no_code, text.size()));
  }
}

TEST_CASE("every code reads back, alone and in every pair") {
  std::set<std::string_view> codes;
  for (const ColourInfo& first : all_colours()) {
    CHECK(codes.insert(first.code).second);
    CHECK(&colour_info(first.colour) == &first);
    CHECK(std::get<WireColour>(parse_colour(first.code)) == WireColour{first.colour, {}});
    for (const ColourInfo& second : all_colours()) {
      if (first.colour == second.colour) continue;
      const std::string code = std::string(first.code) + std::string(second.code);
      CAPTURE(code);
      const auto parsed = parse_colour(code);
      REQUIRE(std::holds_alternative<WireColour>(parsed));
      CHECK(to_code(std::get<WireColour>(parsed)) == code);
    }
  }
  CHECK(codes.size() == 14);
}

TEST_CASE("two colours are a set") {
  CHECK(std::get<WireColour>(parse_colour("WHGN")) == std::get<WireColour>(parse_colour("GNWH")));
  CHECK(std::get<WireColour>(parse_colour("WHGN")) != std::get<WireColour>(parse_colour("WH")));
  CHECK(std::get<WireColour>(parse_colour("WHGN")) != std::get<WireColour>(parse_colour("WHGY")));
  CHECK(to_code(WireColour{}) == "?");
  CHECK(!WireColour{}.known());
}

TEST_CASE("only green and yellow together is the protective conductor") {
  for (const std::string_view code : {"GNYE", "YEGN"})
    CHECK(is_protective_earth(std::get<WireColour>(parse_colour(code))));
  for (const std::string_view code : {"GN", "YE", "WHGN", "YEBN", "?"}) {
    CAPTURE(code);
    CHECK(!is_protective_earth(std::get<WireColour>(parse_colour(code))));
  }
}

TEST_CASE("colours that vanish on white paper are outlined") {
  for (const ColourInfo& row : all_colours()) {
    const double red = (row.rgb >> 16U) & 0xFFU;
    const double green = (row.rgb >> 8U) & 0xFFU;
    const double blue = row.rgb & 0xFFU;
    CAPTURE(row.name);
    CHECK(row.light == (0.2126 * red + 0.7152 * green + 0.0722 * blue > 150.0));
  }
}
