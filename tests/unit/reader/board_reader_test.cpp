// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "unit/reader/reader_support.h"

namespace plugward::test {
namespace {

constexpr std::string_view readme_board =
    R"(<board id="heron-m7" title="Heron M7 motion board" revision="B" width="110 mm" height="85 mm" evidence="print">
  <evidence id="print" kind="board-print" revision="B" date="2026-03-02" note="read off the board"/>
  <rail id="24V" volts="21.6..26.4 V" limit="10 A"/>
  <rail id="5V" volts="4.75..5.25 V" limit="1.5 A"/>
  <rail id="3V3" volts="3.2..3.4 V" limit="0.3 A"/>
  <jumper id="JP2" label="PROBE V" rails="5V 24V" x="50 mm" y="12 mm"/>
  <hole x="4 mm" y="4 mm" diameter="3.2 mm"/>
  <header id="J9" label="PROBE" use="probe" family="pin-2.54" positions="3" x="61 mm" y="8 mm" rotation="90">
    <pin n="1" function="output" signal="servo" high="2.9..3.4 V" rail="3V3" limit="8 mA" net="PC6"/>
    <pin n="2" function="supply" jumper="JP2"/>
    <pin n="3" function="ground"/>
  </header>
</board>
)";

TEST_CASE("the board of the format page means what the page says") {
  const Read read(readme_board);
  CHECK(read.faults().empty());
  REQUIRE(read.description.board);
  const Board& board = *read.description.board;
  CHECK(board.id == "heron-m7");
  CHECK(board.title == "Heron M7 motion board");
  CHECK(board.revision == "B");
  CHECK(board.width == Millimetres(110));
  CHECK(board.height == Millimetres(85));
  CHECK(board.evidence == "print");
  REQUIRE(board.evidences.size() == 1);
  CHECK(board.evidences[0].kind == EvidenceKind::BoardPrint);
  CHECK(board.evidences[0].date == "2026-03-02");
  CHECK(board.evidences[0].note == "read off the board");
  REQUIRE(board.rails.size() == 3);
  CHECK(board.rails[0].volts == Range<Volts>{Volts(21.6), Volts(26.4)});
  CHECK(board.rails[1].limit == Amps(1.5));
  CHECK(read.sources.text(board.rails[1].limit_span) == "1.5 A");
  REQUIRE(board.jumpers.size() == 1);
  CHECK(board.jumpers[0].rails == std::vector<std::string>{"5V", "24V"});
  CHECK(board.jumpers[0].x == Millimetres(50));
  REQUIRE(board.holes.size() == 1);
  CHECK(board.holes[0].diameter == Millimetres(3.2));
  REQUIRE(board.headers.size() == 1);
  const Header& header = board.headers[0];
  CHECK(header.label == "PROBE");
  CHECK(header.use == "probe");
  CHECK(header.positions == 3);
  CHECK(header.rows == 1);
  CHECK(header.rotation == 90);
  CHECK(header.key == KeyState::Intact);
  CHECK_FALSE(header.underside);
  CHECK(read.sources.text(header.family_span) == "pin-2.54");
  CHECK(read.sources.text(header.positions_span) == "3");
  CHECK(read.sources.text(header.pin(3).span) == "<pin n=\"3\" function=\"ground\"/>");
  CHECK(read.sources.text(header.pin(3).function_span) == "ground");
  CHECK(header.pin(1).function == PinFunction::Output);
  CHECK(header.pin(1).signal == "servo");
  CHECK(header.pin(1).high == Range<Volts>{Volts(2.9), Volts(3.4)});
  CHECK(header.pin(1).limit == Amps(0.008));
  CHECK(header.pin(1).net == "PC6");
  CHECK_FALSE(header.pin(1).withstands);
  CHECK(header.pin(2).jumper == "JP2");
  CHECK(header.pin(2).rail == "");
}

TEST_CASE("elements may stand in any order and refer forward") {
  const Read read(
      "<board id=\"b\" title=\"B\" width=\"9 mm\" height=\"9 mm\">"
      "<header id=\"J\" use=\"spare\" family=\"pin-2.54\" positions=\"1\" evidence=\"e\"><pin n=\"1\" "
      "function=\"supply\" jumper=\"JP\"/></header>"
      "<jumper id=\"JP\" rails=\" a  b \"/><rail id=\"b\" volts=\"-12 V\"/><rail id=\"a\" volts=\"5 "
      "V\"/><evidence id=\"e\" kind=\"schematic\"/></board>");
  CHECK(read.faults().empty());
  REQUIRE(read.description.board);
  CHECK(read.description.board->jumpers[0].rails == std::vector<std::string>{"a", "b"});
  CHECK(read.description.board->rail("b")->volts == Range<Volts>::at(Volts(-12)));
}

TEST_CASE("shapes of headers") {
  const Read read(
      board_around("<header id=\"A\" use=\"display\" family=\"box-2.54\" positions=\"10\" rows=\"2\" "
                   "numbering=\"by-row\" key=\"removed\" side=\"underside\"/>"
                   "<header id=\"B\" use=\"spare\" family=\"pin-2.54\" positions=\"4\" key=\"unknown\" "
                   "rotation=\"270\" side=\"top\"/>"));
  CHECK(read.faults().empty());
  REQUIRE(read.description.board);
  const Header& a = read.description.board->headers[0];
  CHECK(a.rows == 2);
  CHECK(a.numbering == Numbering::ByRow);
  CHECK(a.key == KeyState::Removed);
  CHECK(a.underside);
  CHECK(a.pins.size() == 10);
  const Header& b = read.description.board->headers[1];
  CHECK(b.key == KeyState::Unknown);
  CHECK(b.rotation == 270);
}

TEST_CASE("one bad declaration does not make its references bad") {
  const Read read(board_around(
      "<rail id=\"12 V\" volts=\"12 V\"/><header id=\"J\" use=\"spare\" family=\"pin-2.54\" positions=\"x\">"
      "<pin n=\"9\" function=\"supply\" rail=\"12V\"/></header>"));
  CHECK(read.faults() ==
        "1:359 '12 V' is no id [bad-id]; 1:435 positions: 'x' is no whole number [bad-number]; ");
  CHECK_FALSE(read.description.board);
}

TEST_CASE("evidence that is named nowhere is warned about once a header, and not where pins name their own") {
  const Read read(
      "<board id=\"b\" title=\"B\" width=\"9 mm\" height=\"9 mm\"><evidence id=\"e\" kind=\"schematic\"/>"
      "<header id=\"J\" use=\"spare\" family=\"pin-2.54\" positions=\"2\"><pin n=\"1\" "
      "function=\"ground\"/><pin n=\"2\" function=\"ground\"/></header>"
      "<header id=\"K\" use=\"spare\" family=\"pin-2.54\" positions=\"2\"><pin n=\"1\" function=\"ground\" "
      "evidence=\"e\"/></header>"
      "<header id=\"L\" use=\"spare\" family=\"pin-2.54\" positions=\"2\"/></board>");
  CHECK(read.faults() == "1:99 nothing says where header 'J' is known from [no-evidence]; ");
  CHECK(read.description.board);
}

}  // namespace
}  // namespace plugward::test
