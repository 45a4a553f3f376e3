// SPDX-License-Identifier: MIT
// Whole sheets of small fittings, as text and as Markdown, against those kept in expected/.
// PLUGWARD_REWRITE=1 in the environment writes them anew.
#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "base/file.h"
#include "report/sheet_markdown.h"
#include "report/sheet_text.h"
#include "sheet/documents.h"
#include "support/bench.h"
#include "support/refit.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

void compare(const std::string& name, const std::string& text) {
  const std::string path = std::string(PLUGWARD_SOURCE_DIR) + "/tests/unit/sheet/expected/" + name;
  if (std::getenv("PLUGWARD_REWRITE") != nullptr) write_file(path, text);
  CHECK(read_file(path) == text);
}

/// A fan whose leads are exchanged, or not.
Bench fan_bench(bool exchanged) {
  const std::string plus = exchanged ? "1" : "2", minus = exchanged ? "2" : "1";
  return Bench(
      "<board id='b' title='Small board' revision='1' width='40 mm' height='30 mm' evidence='e'>"
      "<evidence id='e' kind='measurement'/><rail id='24V' volts='22.8..25.2 V' limit='3 A'/>"
      "<hole x='3 mm' y='3 mm' diameter='3.2 mm'/>"
      "<header id='J1' label='FAN' use='fan' family='xh-2.50' positions='2' x='10 mm' y='5 mm'>"
      "<pin n='1' function='switched' net='PA1' limit='1 A'/>"
      "<pin n='2' function='supply' rail='24V' label='+'/></header></board>",
      "<harness id='h' title='Small fan' evidence='e'><evidence id='e' kind='measurement'/>"
      "<device id='fan' use='fan'><terminal id='V' function='supply'/><terminal id='G' function='return'/>"
      "<load plus='V' minus='G' needs='20..28 V' draws='0.1 A' reversed='destroyed'/></device>"
      "<plug id='p' family='xh-2.50' positions='2'><lead cavity='" +
          plus + "' colour='RD' gauge='26 AWG' to='V'/><lead cavity='" + minus +
          "' colour='BK' gauge='26 AWG' to='G'/></plug></harness>");
}

}  // namespace

TEST_CASE("a cable that may be plugged in, whole") {
  const Bench bench = fan_bench(false);
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const sheet::Document document =
      sheet::check_document(fitting, advise(fitting, {.budget = true}),
                            {.machine = "Wren no. 3", .date = "2026-11-25", .sources = &bench.sources});
  compare("mate.txt", sheet_text(document));
}

TEST_CASE("a cable whose contacts move, whole") {
  const Bench bench = fan_bench(true);
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const sheet::Document document =
      sheet::check_document(fitting, advise(fitting, {.budget = true}),
                            {.sources = &bench.sources, .command = "plugward repin board.xml harness.xml"});
  compare("repin.txt", sheet_text(document));
  compare("repin.md", sheet_markdown(document));
}

TEST_CASE("where a cable goes, whole") {
  const Bench bench = fan_bench(true);
  const Fitting fitting = bench.fitting({});
  compare("place.txt", sheet_text(sheet::placement_document(fitting, place(fitting))));
}

TEST_CASE("a small machine moves to another board, whole") {
  const std::map<std::string, std::string> texts = test::small_machine();
  const test::Machine machine{"old.xml", texts};
  const test::NewBoard to{texts.at("b.xml")};
  const Fitting before = machine.fitting();
  const auto plan = plan_swap(before, to.board(), {});
  compare("swap.txt", sheet_text(sheet::swap_document(swap_papers(*plan),
                                                      {.command = "plugward swap old.xml --record refit"})));
}
