// SPDX-License-Identifier: MIT
#include "plan/wiring_memory.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <set>
#include <utility>

#include "base/file.h"
#include "base/format.h"
#include "reader/descriptions.h"
#include "support/many_boards.h"

using namespace plugward;
using plugward::test::board_text;

namespace {

Description read(Sources& sources, Catalogue& catalogue, const std::string& text) {
  Diagnostics diagnostics;
  Description description = read_description(sources, sources.add("test.xml", text), catalogue, diagnostics);
  REQUIRE_FALSE(diagnostics.has_errors());
  return description;
}

/// All that does not name a pin or a cavity, whatever the order.
std::string nameless(const Assessment& assessment) {
  std::multiset<std::string> lines;
  std::set<std::string> messages, measurements;
  for (const Finding& f : assessment.findings) {
    lines.insert(format("{} {} {} {:.6g} {:.6g}", static_cast<int>(f.rule), to_word(f.weight), f.part,
                        f.figure.value_or(-1), f.limit.value_or(-1)));
    messages.insert(f.message);
    if (f.measurement) measurements.insert(f.measurement->action + f.measurement->settles);
  }
  std::string text = format("{} messages, {} measurements\n", messages.size(), measurements.size());
  for (const std::string& line : lines) text += line + "\n";
  std::multiset<bool> inverts;
  for (const Setting& s : assessment.settings) inverts.insert(s.inverts);
  return text + format("{} settings, {} invert\n", inverts.size(), inverts.count(true));
}

}  // namespace

TEST_CASE("wiring memory: pins in another order, contacts in the same order: judged once") {
  Sources sources;
  Catalogue catalogue;
  add_builtin_families(catalogue);
  const auto board = [&](const std::string& first, const std::string& second) {
    return std::move(read(sources, catalogue,
                          "<board id=\"b\" title=\"B\" width=\"50 mm\" height=\"50 mm\" "
                          "evidence=\"e\"><evidence id=\"e\" kind=\"board-print\"/>"
                          "<rail id=\"24V\" volts=\"24 V\"/>"
                          "<header id=\"J1\" use=\"led\" family=\"xh-2.50\" positions=\"2\">"
                          "<pin n=\"1\" " +
                              first + "/><pin n=\"2\" " + second + "/></header></board>")
                         .board);
  };
  const auto straight =
      std::move(read(sources, catalogue,
                     "<harness id=\"h\" title=\"H\" evidence=\"e\"><evidence id=\"e\" kind=\"measurement\"/>"
                     "<device id=\"d\" use=\"led\"><terminal id=\"V\" function=\"supply\"/>"
                     "<terminal id=\"G\" function=\"ground\"/>"
                     "<load plus=\"V\" minus=\"G\" needs=\"4.6..5.5 V\" draws=\"0.1 A\"/></device>"
                     "<plug id=\"p\" family=\"xh-2.50\" positions=\"2\">"
                     "<lead cavity=\"1\" colour=\"RD\" gauge=\"26 AWG\" to=\"V\"/>"
                     "<lead cavity=\"2\" colour=\"BK\" gauge=\"26 AWG\" to=\"G\"/></plug></harness>")
                    .harness);
  Harness crossed = *straight;
  std::swap(crossed.plugs[0].leads[0].cavity, crossed.plugs[0].leads[1].cavity);
  const std::string supply = "function=\"supply\" rail=\"24V\"", ground = "function=\"ground\"";
  const auto one = board(supply, ground), two = board(ground, supply);
  const Fitting first{one.get(), straight.get(), &catalogue, {{0, 0}}, {}};
  const Fitting second{two.get(), &crossed, &catalogue, {{0, 0}}, {}};
  const Fitting third{two.get(), straight.get(), &catalogue, {{0, 0}}, {}};
  WiringMemory memory(8);
  const std::string as_first = assess(first).findings.front().path;
  CHECK(memory.assess(first).findings.front().path == as_first);
  CHECK(memory.assess(second).findings.front().path == as_first);  // remembered, with the names of the first
  CHECK(assess(second).findings.front().path != as_first);
  CHECK(nameless(memory.assess(third)) == nameless(assess(third)));
  CHECK(nameless(memory.assess(third)) != nameless(assess(first)));
}

TEST_CASE("wiring memory: on made boards all but the names is as without memory") {
  Sources sources;
  Catalogue catalogue;
  add_builtin_families(catalogue);
  int compared = 0;
  for (const char* name : {"kite-probe", "fan-12v", "x-motor", "inductive-sensor", "changeover-limit"}) {
    const auto harness = std::move(
        read(sources, catalogue, read_file(format("{}/harnesses/{}.xml", PLUGWARD_SOURCE_DIR, name)))
            .harness);
    WiringMemory memory(200);
    const int plugs = static_cast<int>(harness->plugs.size());
    for (std::uint32_t i = 0; i < 25; ++i) {
      const auto board =
          std::move(read(sources, catalogue, board_text({.seed = 11, .size = 3500, .makers = 12}, i)).board);
      const int headers = static_cast<int>(board->headers.size());
      for (int h = 0; h < headers; ++h) {
        Fitting fitting{board.get(), harness.get(), &catalogue, {{0, h}}, {}};
        if (plugs > 1) fitting.placements.push_back({1, (h + 1) % headers});
        if (i % 3 == 0) fitting.jumpers["JP2"] = i % 2 == 0 ? "12V" : "24V";
        CAPTURE(board->id);
        CAPTURE(board->headers[static_cast<std::size_t>(h)].id);
        CHECK(nameless(memory.assess(fitting)) == nameless(assess(fitting)));
        ++compared;
      }
    }
  }
  CHECK(compared > 500);
}
