// SPDX-License-Identifier: MIT
#include "cli/board_edit.h"

#include <doctest/doctest.h>

#include "reader/descriptions.h"

using namespace plugward;

namespace {

struct Desk {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;

  Desk() { add_builtin_families(catalogue); }
  std::unique_ptr<Board> read(const std::string& text) {
    return read_description(sources, sources.add("b.xml", text), catalogue, diagnostics).board;
  }
};

const std::string before =
    "<board id='b' title='B' width='10 mm' height='10 mm' evidence='guess'>\n"
    "  <evidence id='guess' kind='assumption'/>   <!-- mine -->\n"
    "  <rail id='5V' volts='5 V'/>\n"
    "  <header id='J1' use='fan' family='xh-2.50' positions='3'>\n"
    "    <pin n='1' function='supply' rail='5V' label='evidence=' />\n"
    "    <!-- not looked at -->\n"
    "    <pin n='2' function='unknown' evidence='guess'/>\n"
    "  </header>\n"
    "  <header id='J2' use='fan' family='xh-2.50' positions='2'/>\n"
    "</board>\n";

}  // namespace

TEST_CASE("what is written in stands where it belongs, and nothing else changes") {
  Desk desk;
  const auto board = desk.read(before);
  REQUIRE(board);
  BoardEdit edit(before, *board);
  edit.rests_on(board->headers[0].pin(1).span, edit.add_reading("J1.1 read \"5 V\"", "2026-11-25"));
  const std::string second = edit.add_reading("J1.2 beeps", "");
  edit.set(board->headers[0].pin(2).span, "function", "ground");
  edit.rests_on(board->headers[0].pin(2).span, second);
  edit.add_pin(board->headers[1], "<pin n='1' function='ground'/>");
  edit.add_pin(board->headers[1], "<pin n='2' function='ground'/>");
  const std::string after =
      "<board id='b' title='B' width='10 mm' height='10 mm' evidence='guess'>\n"
      "  <evidence id='guess' kind='assumption'/>\n"
      "  <evidence id=\"reading-1\" kind=\"measurement\" date=\"2026-11-25\" note=\"J1.1 read &quot;5 "
      "V&quot;\"/>\n"
      "  <evidence id=\"reading-2\" kind=\"measurement\" note=\"J1.2 beeps\"/>   <!-- mine -->\n"
      "  <rail id='5V' volts='5 V'/>\n"
      "  <header id='J1' use='fan' family='xh-2.50' positions='3'>\n"
      "    <pin n='1' function='supply' rail='5V' label='evidence=' evidence=\"reading-1\" />\n"
      "    <!-- not looked at -->\n"
      "    <pin n='2' function='ground' evidence='reading-2'/>\n"
      "  </header>\n"
      "  <header id='J2' use='fan' family='xh-2.50' positions='2'>\n"
      "    <pin n='1' function='ground'/>\n"
      "    <pin n='2' function='ground'/>\n"
      "  </header>\n"
      "</board>\n";
  CHECK(edit.tidy_text() == after);
  const auto again = desk.read(edit.text());
  CHECK(desk.diagnostics.all().empty());
  REQUIRE(again);
  CHECK(again->headers[0].pin(1).evidence == "reading-1");
  CHECK(again->headers[0].pin(2).function == PinFunction::Ground);
  // Lines of what is judged are those of the file.
  CHECK(line_column(desk.sources, again->headers[1].span.file, again->headers[1].span.begin).line == 9);
}
