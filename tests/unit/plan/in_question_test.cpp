// SPDX-License-Identifier: MIT
#include "plan/in_question.h"

#include <doctest/doctest.h>

#include <memory>

#include "base/file.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

/// The headers of a shipped board that come into question for a plug, "J2 J3 J4".
std::string headers_for(const std::string& board_name, const std::string& harness_name, std::size_t plug) {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  add_builtin_families(catalogue);
  const auto read = [&](const std::string& path) {
    const std::string whole = std::string(PLUGWARD_SOURCE_DIR) + "/" + path;
    return read_description(sources, sources.add(path, read_file(whole)), catalogue, diagnostics);
  };
  const auto board = read("boards/" + board_name + ".xml").board;
  const auto harness = read("harnesses/" + harness_name + ".xml").harness;
  REQUIRE(board != nullptr);
  REQUIRE(harness != nullptr);
  const auto wanted = demands(*harness);
  std::string text;
  for (const Header& header : board->headers) {
    if (in_question(wanted[plug], harness->plugs[plug], *board, header))
      text += (text.empty() ? "" : " ") + header.id;
  }
  return text;
}

}  // namespace

TEST_CASE("in question: by use and by function, in any order of the leads") {
  struct Row {
    std::string board, harness;
    std::size_t plug;
    std::string expected;
  };
  const std::vector<Row> rows{
      {"heron-m7", "x-motor", 0, "J2 J3 J4"},  // their windings alternate or not: a matter of moves
      {"heron-m7", "kite-probe", 0,
       "J9 J23"},  // J23 is for servos and names the same signal; its pins are contested
      {"heron-m7", "kite-probe", 1, "J10"},           // J9 has no input
      {"heron-m7", "fan-12v", 0, "J11 J12 J13 J17"},  // the speed sense may stay unconnected
      {"heron-m7", "nozzle-heater", 0, "J14 J15"},    // J16 looks the same and is always on
      {"heron-m7", "thermistor", 0, "J18 J19"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.harness);
    CAPTURE(row.plug);
    CHECK(headers_for(row.board, row.harness, row.plug) == row.expected);
  }
}
