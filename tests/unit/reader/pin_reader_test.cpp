// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "unit/reader/reader_support.h"

namespace plugward::test {
namespace {

TEST_CASE("every attribute of a pin arrives") {
  const Read read(header_around(
      "<pin n='1' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
      "withstands-unpowered='3.6 V' "
      "withstands-pulled='4 V' low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm' clamp='3V3' "
      "clamp-drop='0.5 V' injection='5 mA' label='S'/>"
      "<pin n='2' function='output' signal='pwm' drive='open-drain' high='2.4..3.3 V' low='0.4 V' ohms='50 "
      "ohm' at-reset='on' pull='down' pull-ohms='1 kohm'/>"
      "<pin n='3' function='switched' signal='heat' ohms='20 mohm' limit='10 A' at-reset='off' low='0.2 V'/>"
      "<pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1.8 A'/>"));
  CHECK(read.faults().empty());
  REQUIRE(read.description.board);
  const Header& header = read.description.board->headers[0];
  const Pin& input = header.pin(1);
  CHECK(input.function == PinFunction::Input);
  CHECK(input.withstands == Range<Volts>{Volts(-0.3), Volts(5.5)});
  CHECK(input.withstands_unpowered == Volts(3.6));
  CHECK(input.withstands_pulled == Volts(4));
  CHECK(input.low_below == Volts(0.8));
  CHECK(input.high_above == Volts(2));
  REQUIRE(input.pull);
  CHECK(input.pull->up);
  CHECK(input.pull->ohms == Ohms(10000));
  CHECK(read.sources.text(input.pull->span) == "up");
  REQUIRE(input.clamp);
  CHECK(input.clamp->rail == "3V3");
  CHECK(input.clamp->drop == Volts(0.5));
  CHECK(input.clamp->limit == Amps(0.005));
  CHECK_FALSE(input.analogue);
  const Pin& output = header.pin(2);
  CHECK(output.drive == DriveKind::OpenDrain);
  CHECK(output.low == Volts(0.4));
  CHECK(output.ohms == Ohms(50));
  CHECK(output.on_at_reset == true);
  CHECK_FALSE(output.pull->up);
  const Pin& switched = header.pin(3);
  CHECK(switched.function == PinFunction::Switched);
  CHECK(switched.ohms == Ohms(0.02));
  CHECK(switched.on_at_reset == false);
  const Pin& coil = header.pin(4);
  CHECK(coil.coil == 2);
  CHECK(coil.coil_end == 'B');
}

TEST_CASE("a position without a statement is unknown, at the header's place") {
  const Read read(header_around("<pin n='2' function='unused'/>"));
  REQUIRE(read.description.board);
  const Header& header = read.description.board->headers[0];
  REQUIRE(header.pins.size() == 4);
  CHECK(header.pin(2).function == PinFunction::Unused);
  for (const int n : {1, 3, 4}) {
    CHECK(header.pin(n).number == n);
    CHECK(header.pin(n).function == PinFunction::Unknown);
    CHECK(header.pin(n).span == header.span);
  }
}

TEST_CASE("rival statements about one position") {
  struct Row {
    const char* name;
    const char* pins;
    PinFunction function;
    const char* contest;  ///< "" = none
  };
  const Row rows[] = {
      {"they agree",
       "<pin n='1' function='ground' evidence='print' label='a'/><pin n='1' function='ground' "
       "evidence='drawing' label='b'/>",
       PinFunction::Ground, ""},
      {"they disagree on the function",
       "<pin n='1' function='ground' evidence='print'/><pin n='1' function='supply' rail='5V' "
       "evidence='drawing'/>",
       PinFunction::Ground, "supply from 5V, by 'drawing' (makers-drawing)"},
      {"they disagree on the rail",
       "<pin n='1' function='supply' rail='24V' evidence='print'/><pin n='1' function='supply' jumper='JP2' "
       "evidence='drawing'/>",
       PinFunction::Supply, "supply by jumper JP2, by 'drawing' (makers-drawing)"},
      {"they disagree on the signal",
       "<pin n='1' function='input' signal='limit' evidence='print'/><pin n='1' function='input' "
       "signal='probe' evidence='drawing'/>",
       PinFunction::Input, "input 'probe', by 'drawing' (makers-drawing)"},
      {"they disagree on the bridge",
       "<pin n='1' function='coil' coil='1' end='A' evidence='print'/><pin n='1' function='coil' coil='2' "
       "end='A' evidence='drawing'/>",
       PinFunction::Coil, "coil of bridge 2 end A, by 'drawing' (makers-drawing)"},
      {"they disagree on what it withstands",
       "<pin n='1' function='input' signal='limit' withstands='-0.3..5.5 V' evidence='print'/><pin n='1' "
       "function='input' signal='limit' withstands='-0.3..3.6 V' evidence='drawing'/>",
       PinFunction::Input, "input 'limit' that withstands -0.3..3.6 V, by 'drawing' (makers-drawing)"},
      {"one says more than the other",
       "<pin n='1' function='input' signal='limit' withstands='-0.3..5.5 V' evidence='print'/><pin n='1' "
       "function='input' signal='limit' evidence='drawing'/>",
       PinFunction::Input, ""},
      {"a measurement outranks what came before",
       "<pin n='1' function='ground' evidence='print'/><pin n='1' function='supply' rail='5V' "
       "evidence='meter'/>",
       PinFunction::Supply, ""},
      {"a measurement outranks what comes after",
       "<pin n='1' function='ground' evidence='meter'/><pin n='1' function='supply' rail='5V' "
       "evidence='print'/>",
       PinFunction::Ground, ""},
      {"and two others at once",
       "<pin n='1' function='unused' evidence='print'/><pin n='1' function='supply' rail='5V' "
       "evidence='drawing'/><pin n='1' function='ground' evidence='meter'/>",
       PinFunction::Ground, ""},
      {"the third disagrees",
       "<pin n='1' function='ground' evidence='print'/><pin n='1' function='ground' evidence='drawing'/><pin "
       "n='1' function='unused' evidence='meter2'/>",
       PinFunction::Ground, "unused, by 'meter2' (schematic)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    std::string text = header_around(row.pins);
    text.insert(text.find("<rail"), "<evidence id='meter2' kind='schematic'/>");
    const Read read(text);
    CHECK(read.faults().empty());
    REQUIRE(read.description.board);
    const Pin& pin = read.description.board->headers[0].pin(1);
    CHECK(pin.number == 1);
    CHECK(pin.function == row.function);
    CHECK((pin.contest ? pin.contest->statement : "") == row.contest);
  }
}

TEST_CASE("two measurements that disagree contest each other") {
  std::string text = header_around(
      "<pin n='1' function='ground' evidence='meter'/><pin n='1' function='unused' evidence='again'/>");
  text.insert(text.find("<rail"), "<evidence id='again' kind='measurement'/>");
  const Read read(text);
  REQUIRE(read.description.board);
  const Pin& pin = read.description.board->headers[0].pin(1);
  REQUIRE(pin.contest);
  CHECK(pin.contest->statement == "unused, by 'again' (measurement)");
  CHECK(read.sources.text(pin.contest->span) == "<pin n='1' function='unused' evidence='again'/>");
}

}  // namespace
}  // namespace plugward::test
