// SPDX-License-Identifier: MIT
#include "plan/rehouse.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "plan/place.h"
#include "support/bench.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

const std::string probe_device = R"(
  <device id="probe" title="Probe" use="probe">
    <terminal id="V" function="supply"/>
    <terminal id="G" function="ground"/>
    <terminal id="P" function="input" signal="servo" withstands="-0.3..5.5 V"/>
    <terminal id="T" function="output" signal="probe" withstands="-0.3..5.5 V"/>
    <terminal id="H" function="ground"/>
    <load plus="V" minus="G" needs="4.6..5.5 V" draws="0.3 A" reversed="destroyed"/>
    <receiver terminal="P" plus="V" minus="G" low-below="0.8 V" high-above="2 V"/>
    <switch a="T" b="H" rests="open"/>
    <join a="G" b="H"/>
  </device>)";

/// One five-way plug, its leads to these terminals from cavity 1 on.
std::string five_way(const std::string& order, const std::string& family,
                     const std::string& gauge = "gauge='26 AWG'") {
  std::string text = "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>" +
                     probe_device + "<plug id='probe' family='" + family + "' positions='5'>";
  for (std::size_t i = 0; i < order.size(); ++i) {
    text += "<lead cavity='" + std::to_string(i + 1) + "' colour='BK' " + gauge + " length='300 mm' to='" +
            std::string(1, order[i]) + "'/>";
  }
  return text + "</plug></harness>";
}

std::vector<std::string> header_ids(const Bench& bench, const std::vector<int>& headers) {
  std::vector<std::string> ids;
  for (const int h : headers) ids.push_back(bench.board->headers[static_cast<std::size_t>(h)].id);
  return ids;
}

/// A board with one five-way probe header V S G T G.
const std::string five_way_board = R"(<board id="b" title="B" width="50 mm" height="50 mm" evidence="s">
  <evidence id="s" kind="schematic"/>
  <rail id="5V" volts="4.9..5.2 V" limit="1.5 A"/>
  <rail id="3V3" volts="3.2..3.3 V" limit="0.3 A"/>
  <header id="J1" label="PROBE" use="probe" family="pin-2.54" positions="5">
    <pin n="1" function="supply" rail="5V" limit="1 A"/>
    <pin n="2" function="output" signal="servo" rail="3V3" high="2.9..3.3 V" low="0.4 V" limit="8 mA" at-reset="off"/>
    <pin n="3" function="ground"/>
    <pin n="4" function="input" signal="probe" rail="3V3" withstands="-0.3..3.6 V" low-below="0.8 V" high-above="2 V" pull="up" pull-ohms="10 kohm"/>
    <pin n="5" function="ground"/>
  </header>
</board>)";

}  // namespace

TEST_CASE("a five-way probe plug is split over the three and two pins of both boards") {
  for (const std::string name : {"heron-a4", "heron-m7"}) {
    CAPTURE(name);
    const Bench bench = Bench::shipped(name, "kite-probe");
    const Bench five(five_way_board, five_way("VPGTH", "pin-2.54"));
    const Fitting fitting{bench.board.get(), five.harness.get(), &bench.catalogue, {}, {{"JP2", "5V"}}};
    const auto split = best_split(fitting, 0);
    REQUIRE(split.has_value());
    CHECK(header_ids(bench, split->headers) == std::vector<std::string>{"J9", "J10"});
    CHECK(split->housings == 2);
    CHECK(split->moves == 5);
    CHECK(split->crimps == 0);
    CHECK(split->after.clean());
    CHECK(split->parts ==
          std::vector<std::string>{"a housing of family 'pin-2.54' with 3 positions, for J9",
                                   "a housing of family 'pin-2.54' with 2 positions, for J10"});
    CHECK(split->summary ==
          "split 'probe' over J9 (PROBE) and J10 (TRIGGER): 2 new housings, 5 contacts moved");
    CHECK(split->steps.size() == 10);
    const PlacementPlan plan = place(fitting);
    REQUIRE(plan.rehousings.size() == 1);
    CHECK(plan.rehousings.front().summary == split->summary);
  }
}

TEST_CASE("other families: crimped anew") {
  const Bench shipped = Bench::shipped("heron-m7", "kite-probe");
  const Bench five(five_way_board, five_way("VPGTH", "xh-2.50"));
  const Fitting fitting{shipped.board.get(), five.harness.get(), &shipped.catalogue, {}, {{"JP2", "5V"}}};
  const auto split = best_split(fitting, 0);
  REQUIRE(split.has_value());
  CHECK(split->crimps == 5);
  CHECK(split->parts == std::vector<std::string>{"a housing of family 'pin-2.54' with 3 positions, for J9",
                                                 "3 contacts of family 'pin-2.54'",
                                                 "a housing of family 'pin-2.54' with 2 positions, for J10",
                                                 "2 contacts of family 'pin-2.54'"});
}

TEST_CASE("a re-housing whose contacts do not take the leads is not offered") {
  // Wire ranges: pin-2.54 32..18 AWG (Amphenol 'FCI Basics'), VH 22..16 (seller guide).
  const Bench shipped = Bench::shipped("heron-m7", "kite-probe");
  struct Row {
    std::string gauge;
    std::vector<std::string> parts;  ///< none: no re-housing
  };
  const std::string three = "a housing of family 'pin-2.54' with 3 positions, for J9",
                    two = "a housing of family 'pin-2.54' with 2 positions, for J10";
  const std::string first = "; they take 32 to 18 AWG: measure the leads whose gauge is not stated first";
  const Row rows[] = {
      {"gauge='16 AWG'", {}},
      {"gauge='18 AWG'", {three, "3 contacts of family 'pin-2.54'", two, "2 contacts of family 'pin-2.54'"}},
      {"",
       {three, "3 contacts of family 'pin-2.54'" + first, two, "2 contacts of family 'pin-2.54'" + first}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.gauge);
    const Bench five(five_way_board, five_way("VPGTH", "vh-3.96", row.gauge));
    const Fitting fitting{shipped.board.get(), five.harness.get(), &shipped.catalogue, {}, {{"JP2", "5V"}}};
    const auto split = best_split(fitting, 0);
    CHECK(split.has_value() == !row.parts.empty());
    if (split) CHECK(split->parts == row.parts);
    CHECK(place(fitting).rehousings.size() == (row.parts.empty() ? 0 : 1));
  }
}

TEST_CASE("three and two are joined into five") {
  const Bench shipped = Bench::shipped("heron-m7", "kite-probe");
  const Bench five(five_way_board, five_way("VPGTH", "pin-2.54"));
  const Fitting fitting{five.board.get(), shipped.harness.get(), &five.catalogue, {}, {}};
  const auto joined = best_join(fitting, 0, 1);
  REQUIRE(joined.has_value());
  CHECK(joined->summary == "join 'control' and 'trigger' on J1 (PROBE): 1 new housing, 5 contacts moved");
  CHECK(joined->harness.plugs.size() == 1);
  CHECK(joined->harness.plugs.front().leads.size() == 5);
  CHECK(joined->after.clean());
}

namespace {

/// A header of five pins, two of them connected to nothing, and one of two: the probe needs both.
const std::string three_of_five_board = R"(<board id="b" title="B" width="50 mm" height="50 mm" evidence="s">
  <evidence id="s" kind="schematic"/>
  <rail id="5V" volts="4.9..5.2 V" limit="1.5 A"/>
  <rail id="3V3" volts="3.2..3.3 V" limit="0.3 A"/>
  <header id="J1" label="PROBE" use="probe" family="pin-2.54" positions="5">
    <pin n="1" function="supply" rail="5V" limit="1 A"/>
    <pin n="2" function="unused"/>
    <pin n="3" function="output" signal="servo" rail="3V3" high="2.9..3.3 V" low="0.4 V" limit="8 mA" at-reset="off"/>
    <pin n="4" function="ground"/>
    <pin n="5" function="unused"/>
  </header>
  <header id="J2" label="TRIGGER" use="probe" family="pin-2.54" positions="2" x="20 mm">
    <pin n="1" function="input" signal="probe" rail="3V3" withstands="-0.3..3.6 V" low-below="0.8 V" high-above="2 V" pull="up" pull-ohms="10 kohm"/>
    <pin n="2" function="ground"/>
  </header>
</board>)";

/// Does a lead lie on a pin that is connected to nothing? Its terminal may be joined to another, but who
/// crimps a new housing gives every lead a pin of its own.
bool leaves_a_lead_open(const Fitting& fitting) {
  return std::any_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& placement) {
    const auto& leads = fitting.harness->plugs[static_cast<std::size_t>(placement.plug)].leads;
    const Header& header = fitting.board->headers[static_cast<std::size_t>(placement.header)];
    return std::any_of(leads.begin(), leads.end(), [&](const Lead& lead) {
      return header.pin(lead.cavity).function == PinFunction::Unused;
    });
  });
}

/// Fewest contacts moved, over every way to put the five leads into the cavities 1..5 of the housing that is
/// kept and 6..7 of a new one with two; nothing when none is clean with every lead
/// connected.
std::optional<int> fewest_moves(const Bench& bench) {
  Harness harness = *bench.harness;
  const std::vector<Lead> leads = harness.plugs.front().leads;
  Plug small = harness.plugs.front();
  small.id = "small";
  small.positions = 2;
  harness.plugs.push_back(small);
  const Fitting fitting{bench.board.get(), &harness, &bench.catalogue, {{0, 0}, {1, 1}}, {}};
  std::optional<int> fewest;
  std::vector<int> cavity(leads.size(), 0);
  const auto put = [&](const auto& self, std::size_t lead) -> void {
    if (lead < leads.size()) {
      for (int c = 1; c <= 7; ++c) {
        if (std::find(cavity.begin(), cavity.begin() + static_cast<std::ptrdiff_t>(lead), c) !=
            cavity.begin() + static_cast<std::ptrdiff_t>(lead))
          continue;
        cavity[lead] = c;
        self(self, lead + 1);
      }
      return;
    }
    int moved = 0;
    for (std::size_t l = 0; l < leads.size(); ++l) moved += cavity[l] != leads[l].cavity ? 1 : 0;
    if (fewest && *fewest <= moved) return;
    for (Plug& plug : harness.plugs) plug.leads.clear();
    for (std::size_t l = 0; l < leads.size(); ++l) {
      Lead seated = leads[l];
      seated.cavity = cavity[l] <= 5 ? cavity[l] : cavity[l] - 5;
      harness.plugs[cavity[l] <= 5 ? 0 : 1].leads.push_back(seated);
    }
    for (Plug& plug : harness.plugs) {
      std::sort(plug.leads.begin(), plug.leads.end(),
                [](const Lead& a, const Lead& b) { return a.cavity < b.cavity; });
    }
    if (!leaves_a_lead_open(fitting) && assess(fitting).clean()) fewest = moved;
  };
  put(put, 0);
  return fewest;
}

}  // namespace

TEST_CASE("a split that keeps the old housing moves as few contacts as the best of all seatings") {
  std::string order = "GHPTV";
  int round = 0;
  int found = 0;
  do {
    if (round++ % 8 != 0) continue;  // 15 of the 120 orders
    CAPTURE(order);
    const Bench bench(three_of_five_board, five_way(order, "pin-2.54"));
    const Fitting fitting{bench.board.get(), bench.harness.get(), &bench.catalogue, {}, {}};
    const auto fewest = fewest_moves(bench);
    const auto split = rehouse(fitting, {0}, {0, 1});
    CHECK(split.has_value() == fewest.has_value());
    if (!split || !fewest) continue;
    ++found;
    CHECK(split->housings == 1);
    CHECK(split->moves == *fewest);
    CHECK(split->after.clean());
  } while (std::next_permutation(order.begin(), order.end()));
  CHECK(found == 15);
}

TEST_CASE("no order of the leads is clean: nothing") {
  const Bench shipped = Bench::shipped("heron-m7", "kite-probe");
  const Fitting fitting{shipped.board.get(), shipped.harness.get(), &shipped.catalogue, {}, {}};
  CHECK_FALSE(rehouse(fitting, {0}, {1, 2}).has_value());  // motor headers
}
