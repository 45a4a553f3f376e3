// SPDX-License-Identifier: MIT
#include "plan/softer.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

const std::string fan = "<fan id='f' needs='20..28 V' draws='0.1 A' reversed='blocked'/>";
const std::string by_jumper =
    "<pin n='1' function='supply' jumper='JP' limit='1 A'/><pin n='2' function='ground'/>";
const std::string jumper_words =
    "with jumper JP (V) at 24V instead of 5V it may be plugged in as it is; mind what else that jumper feeds";
const std::string turn_words =
    "turned by 180 degrees, cavity 1 of 'p' on J1.2, it is right as it is; mark that end of the housing, "
    "since "
    "nothing keeps it from going on the other way";

std::string lines(const std::vector<std::string>& list) {
  std::string text;
  for (const std::string& line : list) text += line + "\n";
  return text;
}

}  // namespace

TEST_CASE("a jumper or a turn, only where it was judged clean") {
  struct Row {
    std::string name;
    std::string header;
    std::string plugs;
    std::map<std::string, std::string> at, jumpers;
    std::vector<std::string> expected;
  };
  const std::string fixed =
      "<pin n='1' function='supply' rail='24V' limit='1 A'/><pin n='2' function='ground'/>";
  const std::string open = header_of_pins("fan", 2, fixed, "pin-2.54");
  const std::string second =
      "<header id='J2' use='fan' family='kk-2.54' positions='2'><pin n='1' function='supply' rail='24V' "
      "limit='1 A'/>"
      "<pin n='2' function='ground'/></header>";
  const std::string other_plug =
      "<fan id='g' needs='20..28 V' draws='0.1 A'/><plug id='q' family='pin-2.54' positions='2'>"
      "<lead cavity='1' colour='RD' gauge='26 AWG' to='g.V'/><lead cavity='2' colour='BK' gauge='26 AWG' "
      "to='g.G'/></plug>";
  const std::string qualified =
      "<plug id='p' family='pin-2.54' positions='2'>"
      "<lead cavity='1' colour='BK' gauge='26 AWG' to='f.G'/>"
      "<lead cavity='2' colour='RD' gauge='26 AWG' to='f.V'/></plug>";
  const std::vector<Row> rows{
      {"the jumper at the wrong rail",
       header_of_pins("fan", 2, by_jumper),
       plug_of_leads("V G"),
       {{"p", "J1"}},
       {{"JP", "5V"}},
       {jumper_words}},
      {"a jumper that is not stated is for a look, not for a cure",
       header_of_pins("fan", 2, by_jumper),
       plug_of_leads("V G"),
       {{"p", "J1"}},
       {},
       {}},
      {"the jumper helps the wrong order once contacts are moved",
       header_of_pins("fan", 2, by_jumper),
       plug_of_leads("G V"),
       {{"p", "J1"}},
       {{"JP", "5V"}},
       {"with jumper JP (V) at 24V instead of 5V moving 2 contacts is enough (ask again with --jumper JP=24V); "
        "mind what "
        "else that jumper feeds"}},
      {"turned on open pins", open, plug_of_leads("G V", "pin-2.54"), {{"p", "J1"}}, {}, {turn_words}},
      {"a keyed plug cannot be turned",
       header_of_pins("fan", 2, fixed),
       plug_of_leads("G V"),
       {{"p", "J1"}},
       {},
       {}},
      {"turning one plug does not mend the housing of another",
       open + second,
       qualified + other_plug,
       {{"p", "J1"}, {"q", "J2"}},
       {},
       {}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.header), harness_of(fan + row.plugs));
    CHECK(lines(softer_cures(bench.fitting(row.at, row.jumpers), true)) == lines(row.expected));
  }
}

TEST_CASE("the largest brightness at which all is clean, to the percent") {
  struct Row {
    std::string name, line, more, expected;
  };
  const std::string header = header_of_pins(
      "led", 3,
      "<pin n='1' function='supply' rail='5V' limit='1 A'/><pin n='2' function='output' signal='led-data' "
      "rail='5V' high='4.4..5 V' limit='8 mA'/><pin n='3' function='ground'/>");
  // 40 LEDs of 60 mA at 5 V: 2.4 A; 1.01 A is what 1 A and its margin let through, less 3 % in the leads.
  const std::vector<Row> rows{
      {"too many for the pin", "<led-string id='f' count='40' needs='4.5..5.5 V'/>", "V D G",
       "with the brightness of 'f' at 42 % or less it may be plugged in as it is: write brightness=\"42 %\" there, "
       "and keep the firmware to it from the first moment on\n"},
      {"few enough", "<led-string id='f' count='10' needs='4.5..5.5 V'/>", "V D G", ""},
      {"brightness is not what is wrong", "<led-string id='f' count='40' needs='4.5..5.5 V'/>", "G D V", ""},
      {"the far end gets too little", "<led-string id='f' count='15' needs='4.8..5.2 V' loop='0.5 ohm'/>", "V D G",
       "with the brightness of 'f' at 69 % or less it may be plugged in as it is: write brightness=\"69 %\" there, "
       "and keep the firmware to it from the first moment on\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(header), harness_of(row.line + plug_of_leads(row.more)));
    CHECK(lines(softer_cures(bench.fitting({{"p", "J1"}}), true)) == row.expected);
  }
}
