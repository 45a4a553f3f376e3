// SPDX-License-Identifier: MIT
// Shipped cables are judged in tests/outside/standard_test.cpp; here are cables made for the purpose, and
// random chains against a search of paths.
#include "fit/cable.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "model/harness_text.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

/// A lead a contact to a core; 0: no lead.
struct End {
  std::string family;
  int positions = 0;
  std::vector<int> cores;
  int rows = 1;
  Numbering numbering = Numbering::Zigzag;
};

Plug plug_of(const std::string& id, const End& end) {
  Plug plug;
  plug.id = id;
  plug.family = end.family;
  plug.positions = end.positions;
  plug.rows = end.rows;
  plug.numbering = end.numbering;
  for (std::size_t i = 0; i < end.cores.size(); ++i) {
    if (end.cores[i] == 0) continue;
    Lead lead;
    lead.cavity = static_cast<int>(i) + 1;
    lead.to = TerminalRef{0, end.cores[i] - 1};
    plug.leads.push_back(lead);
  }
  return plug;
}

Harness cable_of(int cores, const End& a, const End& b, std::vector<CorePair> pairs = {}) {
  Harness harness;
  harness.id = "c";
  Device device;
  device.id = "k";
  device.kind = "cable";
  device.pairs = std::move(pairs);
  for (int i = 1; i <= cores; ++i) {
    Terminal terminal;
    terminal.id = std::to_string(i);
    device.terminals.push_back(terminal);
  }
  harness.devices.push_back(device);
  harness.plugs = {plug_of("a", a), plug_of("b", b)};
  return harness;
}

CableKind kind_of(const Harness& cable) {
  return judge_cable(cable_map({&cable}), {&cable}).kind;
}

/// The groups by following every path from every contact: slow and plain.
std::vector<CableGroup> by_paths(const std::vector<const Harness*>& chain) {
  using Point = std::tuple<std::size_t, int, int>;  // cable; 0 first plug, 1 last plug, 2 core; number
  const auto steps = [&](const Point& p) {
    const auto [c, kind, number] = p;
    std::vector<Point> next;
    for (int side = 0; side < 2; ++side) {
      for (const Lead& lead : chain[c]->plugs[static_cast<std::size_t>(side)].leads) {
        if (kind == side && lead.cavity == number) next.emplace_back(c, 2, lead.to->terminal);
        if (kind == 2 && lead.to->terminal == number) next.emplace_back(c, side, lead.cavity);
      }
    }
    if (kind == 1 && c + 1 < chain.size()) next.emplace_back(c + 1, 0, number);
    if (kind == 0 && c > 0) next.emplace_back(c - 1, 1, number);
    return next;
  };
  std::vector<CableGroup> groups;
  std::set<Point> done;
  const auto collect = [&](const Point& from) {
    std::vector<Point> open{from};
    CableGroup group;
    while (!open.empty()) {
      const Point at = open.back();
      open.pop_back();
      if (!done.insert(at).second) continue;
      const auto& [c, kind, number] = at;
      if (kind == 0 && c == 0 && chain[0]->plugs[0].lead_in(number)) group.a.push_back(number);
      if (kind == 1 && c + 1 == chain.size() && chain[c]->plugs[1].lead_in(number)) group.b.push_back(number);
      for (const Point& next : steps(at)) open.push_back(next);
    }
    std::sort(group.a.begin(), group.a.end());
    std::sort(group.b.begin(), group.b.end());
    if (!group.a.empty() || !group.b.empty()) groups.push_back(group);
  };
  for (int k = 1; k <= chain[0]->plugs[0].positions; ++k) collect({0, 0, k});
  for (int k = 1; k <= chain.back()->plugs[1].positions; ++k) collect({chain.size() - 1, 1, k});
  return groups;
}

}  // namespace

TEST_CASE("what a crossing is called") {
  using enum CableKind;
  struct Row {
    const char* what;
    Harness cable;
    CableKind kind;
  };
  const End three{"xh-2.50", 3, {1, 2, 3}};
  const End box{"box-2.54", 6, {1, 2, 3, 4, 5, 6}, 2};
  const Row rows[] = {
      {"nothing in common", cable_of(4, {"xh-2.50", 2, {1, 2}}, {"xh-2.50", 2, {3, 4}}), Nothing},
      {"straight", cable_of(3, three, three), Straight},
      {"straight where it goes", cable_of(3, three, {"xh-2.50", 3, {1, 2, 0}}), Straight},
      {"turned", cable_of(3, three, {"xh-2.50", 3, {3, 2, 1}}), Turned},
      {"a ring of three", cable_of(3, three, {"xh-2.50", 3, {2, 3, 1}}), Other},
      {"two rows, turned", cable_of(6, box, {"box-2.54", 6, {6, 5, 4, 3, 2, 1}, 2}), Turned},
      {"two rows exchanged", cable_of(6, box, {"box-2.54", 6, {2, 1, 4, 3, 6, 5}, 2}), RowsExchanged},
      {"by row: 1 2 3 are 1 3 5 in zigzag",
       cable_of(6, box, {"box-2.54", 6, {1, 3, 5, 2, 4, 6}, 2, Numbering::ByRow}), Straight},
      {"by row by number alone", cable_of(6, box, {"box-2.54", 6, {1, 2, 3, 4, 5, 6}, 2, Numbering::ByRow}),
       Other},
      {"crossed data without a ground is no null modem",
       cable_of(2, {"de-9", 9, {0, 1, 2}}, {"de-9", 9, {0, 2, 1}}), Other},
      {"a null modem on other plugs is none",
       cable_of(3, {"xh-2.50", 5, {0, 1, 2, 0, 3}}, {"xh-2.50", 5, {0, 2, 1, 0, 3}}), Other},
      {"DE-9 to two rows of five, in the order of the ribbon",
       cable_of(9, {"de-9", 9, {1, 2, 3, 4, 5, 6, 7, 8, 9}},
                {"box-2.54", 10, {1, 6, 2, 7, 3, 8, 4, 9, 5, 0}, 2}),
       RibbonOrder},
      {"the same, the other end first",
       cable_of(9, {"box-2.54", 10, {1, 6, 2, 7, 3, 8, 4, 9, 5, 0}, 2},
                {"de-9", 9, {1, 2, 3, 4, 5, 6, 7, 8, 9}}),
       RibbonOrder},
      {"the ribbon's order on a header that counts by row",
       cable_of(9, {"de-9", 9, {1, 2, 3, 4, 5, 6, 7, 8, 9}},
                {"box-2.54", 10, {1, 6, 2, 7, 3, 8, 4, 9, 5, 0}, 2, Numbering::ByRow}),
       Other},
      {"the ribbon's order on two rows of six",
       cable_of(9, {"de-9", 9, {1, 2, 3, 4, 5, 6, 7, 8, 9}},
                {"box-2.54", 12, {1, 6, 2, 7, 3, 8, 4, 9, 5, 0, 0, 0}, 2}),
       Other},
      {"two rows of three and one of six, crossed", cable_of(6, box, {"xh-2.50", 6, {2, 1, 4, 3, 6, 5}}),
       Other},
      {"data crossed, the ground on another contact",
       cable_of(3, {"de-9", 9, {0, 1, 2, 0, 3}}, {"de-9", 9, {0, 2, 1, 0, 0, 3}}), Other},
      {"data to data one way only", cable_of(3, {"de-9", 9, {0, 1, 2, 0, 3}}, {"de-9", 9, {2, 0, 1, 0, 3}}),
       Other},
      {"a pair to a pair that is not its counterpart",
       cable_of(2, {"8p8c", 8, {1, 2}}, {"8p8c", 8, {0, 0, 0, 0, 0, 0, 1, 2}}), Other},
      {"crossover of two pairs alone",
       cable_of(4, {"8p8c", 8, {1, 2, 3, 0, 0, 4}}, {"8p8c", 8, {3, 4, 1, 0, 0, 2}}), Crossover},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    CHECK(kind_of(row.cable) == row.kind);
  }
}

TEST_CASE("open and joined contacts") {
  const Harness cable = cable_of(4, {"xh-2.50", 4, {1, 2, 3}}, {"xh-2.50", 4, {2, 3, 3, 4}});
  const CableMap map = cable_map({&cable});
  CHECK(map.groups == std::vector<CableGroup>{{{1}, {}}, {{2}, {1}}, {{3}, {2, 3}}, {{}, {4}}});
  CHECK(map.across(3) == std::vector<int>{2, 3});
  CHECK(map.across(4).empty());
  const CableJudgement judged = judge_cable(map, {&cable});
  CHECK(judged.open_a == std::vector<int>{1});
  CHECK(judged.open_b == std::vector<int>{4});
  CHECK(judged.joined == std::vector<CableGroup>{{{3}, {2, 3}}});
}

TEST_CASE("random chains: groups as by following every path") {
  constexpr unsigned seed = 20261125;
  CAPTURE(seed);
  std::mt19937 random(seed);
  const auto number = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    std::vector<Harness> cables;
    const int positions = number(2, 7), cores = number(1, 7);
    for (int c = number(1, 4); c > 0; --c) {
      End ends[2];
      for (End& end : ends) {
        end = {"xh-2.50", positions, {}};
        for (int k = 0; k < positions; ++k) end.cores.push_back(number(0, cores));
      }
      cables.push_back(cable_of(cores, ends[0], ends[1]));
    }
    std::vector<const Harness*> chain;
    for (const Harness& cable : cables) chain.push_back(&cable);
    CHECK(cable_map(chain).groups == by_paths(chain));
  }
}

TEST_CASE("a cable is written as it is read") {
  Catalogue catalogue;
  add_builtin_families(catalogue);
  const auto read = [&](const std::string& text) {
    Sources sources;
    Diagnostics diagnostics;
    Description description = read_description(sources, sources.add("c.xml", text), catalogue, diagnostics);
    REQUIRE(diagnostics.all().empty());
    return std::move(description.harness);
  };
  const auto first = read(
      "<harness id='c' title='c' evidence='e'><evidence id='e' kind='measurement'/>"
      "<cable id='k' title='grey, 2 m' cores='4' pairs='4-3 1-2'/><plug id='a' family='xh-2.50' "
      "positions='2'>"
      "<lead cavity='1' colour='RD' to='3'/></plug></harness>");
  const std::string text = harness_text(*first);
  CHECK(text ==
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<harness id=\"c\" title=\"c\" evidence=\"e\">\n"
        "  <evidence id=\"e\" kind=\"measurement\"/>\n"
        "  <cable id=\"k\" title=\"grey, 2 m\" cores=\"4\" pairs=\"3-4 1-2\"/>\n"
        "  <plug id=\"a\" family=\"xh-2.50\" positions=\"2\">\n"
        "    <lead cavity=\"1\" colour=\"RD\" to=\"3\"/>\n"
        "  </plug>\n"
        "</harness>\n");
  CHECK(read(text)->devices[0].pairs == first->devices[0].pairs);
}

TEST_CASE("what makes a chain none") {
  const End three{"xh-2.50", 3, {1, 2, 3}};
  const Harness good = cable_of(3, three, three);
  Harness one_plug = good;
  one_plug.plugs.pop_back();
  Harness switched = good;
  switched.devices[0].parts = {Join{0, 1, {}}, Switch{1, 2, true, {}}};
  Harness open = good;
  open.plugs[1].leads[1].to.reset();
  const Harness longer = cable_of(3, {"xh-2.50", 4, {1, 2, 3}}, three);
  const Harness two_rows = cable_of(4, {"box-2.54", 4, {1, 2, 3, 4}, 2}, {"box-2.54", 4, {1, 2, 3, 4}});
  const Harness socket = cable_of(3, {"socket", 3, {1, 2, 3}}, {"socket", 3, {1, 2, 3}});
  const Harness nobodys = cable_of(3, {"not-listed", 3, {1, 2, 3}}, three);
  Catalogue catalogue;
  for (const char* id : {"xh-2.50", "box-2.54", "socket"}) {
    Family family;
    family.id = id;
    if (family.id == "socket") family.mates = {"xh-2.50"};
    catalogue.add(family);
  }
  struct Row {
    const char* what;
    std::vector<const Harness*> chain;
    std::string fault;
  };
  const Row rows[] = {
      {"two that go together", {&good, &good}, ""},
      {"the second lists the first", {&good, &socket}, ""},
      {"the first lists the second", {&socket, &good}, ""},
      {"one plug", {&good, &one_plug}, "harness 'c' is no cable: a cable has two plugs, one at each end"},
      {"more than wire",
       {&switched},
       "harness 'c' is no cable: its leads go to device 'k', which is more than wire"},
      {"a lead to nobody knows where",
       {&open},
       "where the lead in cavity 2 of plug 'b' of 'c' goes is not stated: beep it out first"},
      {"another number of positions",
       {&good, &longer},
       "plug 'b' of 'c' (xh-2.50, 3 positions) does not go together with plug 'a' of 'c' (xh-2.50, 4 "
       "positions)"},
      {"one row on two",
       {&two_rows, &two_rows},
       "plug 'b' of 'c' (box-2.54, 4 positions) does not go together with plug 'a' of 'c' (box-2.54, 4 "
       "positions)"},
      {"a family that nothing is known of",
       {&good, &nobodys},
       "plug 'b' of 'c' (xh-2.50, 3 positions) does not go together with plug 'a' of 'c' (not-listed, 3 "
       "positions)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    CHECK(chain_fault(row.chain, catalogue) == row.fault);
  }
}

TEST_CASE("cores that a join holds together are one group") {
  Harness cable = cable_of(3, {"xh-2.50", 3, {1, 2, 3}}, {"xh-2.50", 3, {1, 2, 3}});
  cable.devices[0].parts = {Join{0, 2, {}}};
  CHECK(cable_map({&cable}).groups == std::vector<CableGroup>{{{1, 3}, {1, 3}}, {{2}, {2}}});
}

TEST_CASE("the handshake of a null modem") {
  // Lines by the 'RS-232 pinout' lesson (TIA-574): 4 DTR, 6 DSR, 7 RTS, 8 CTS.
  struct Row {
    const char* what;
    std::vector<int> a, b;
    Handshake handshake;
  };
  const Row rows[] = {
      {"three wires", {0, 1, 2, 0, 3}, {0, 2, 1, 0, 3}, Handshake::None},
      {"RTS and CTS, DTR and DSR", {0, 1, 2, 4, 3, 5, 6, 7}, {0, 2, 1, 5, 3, 4, 7, 6}, Handshake::Full},
      {"RTS to CTS one way", {0, 1, 2, 0, 3, 0, 4}, {0, 2, 1, 0, 3, 0, 0, 4}, Handshake::InPart},
      {"RTS and CTS alone", {0, 1, 2, 0, 3, 0, 4, 5}, {0, 2, 1, 0, 3, 0, 5, 4}, Handshake::InPart},
      {"DTR to DSR one way", {0, 1, 2, 5, 3, 0, 4, 6}, {0, 2, 1, 0, 3, 5, 6, 4}, Handshake::InPart},
      {"carrier detect straight through", {4, 1, 2, 0, 3}, {4, 2, 1, 0, 3}, Handshake::InPart},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    const Harness cable = cable_of(7, {"de-9", 9, row.a}, {"de-9", 9, row.b});
    const CableJudgement judged = judge_cable(cable_map({&cable}), {&cable});
    CHECK(judged.kind == CableKind::NullModem);
    CHECK(judged.handshake == row.handshake);
  }
}

TEST_CASE("outputs that face outputs") {
  struct Row {
    const char* what;
    std::vector<int> a, b, between_dte, dte_to_dce;
  };
  const Row rows[] = {
      {"straight", {0, 1, 2, 0, 3}, {0, 1, 2, 0, 3}, {3}, {}},
      // RxD and TxD of a DTE at 2 and 3: of a DCE, 2 is the output.
      {"crossed", {0, 1, 2, 0, 3}, {0, 2, 1, 0, 3}, {}, {3}},
      // TxD 3 and RTS 7 of the last end on one core that the first end does not have: outputs of a DTE only.
      {"two outputs joined at the last end", {0, 0, 0, 0, 1}, {0, 0, 2, 0, 1, 0, 2}, {3, 7}, {}},
      {"two outputs joined at the first end", {0, 0, 1, 0, 2, 0, 1}, {0, 0, 0, 0, 2}, {3, 7}, {3, 7}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    const Harness cable = cable_of(3, {"de-9", 9, row.a}, {"de-9", 9, row.b});
    const CableJudgement judged = judge_cable(cable_map({&cable}), {&cable});
    CHECK(judged.clash_between_dte == row.between_dte);
    CHECK(judged.clash_dte_to_dce == row.dte_to_dce);
  }
}

TEST_CASE("pairs of 8P8C") {
  struct Row {
    const char* what;
    std::vector<int> a, b;
    std::vector<CorePair> cores;
    std::vector<SplitPair> split;
    std::vector<CarriedPair> pairs;
  };
  const std::vector<int> straight{1, 2, 3, 4, 5, 6, 7, 8};
  const std::vector<CarriedPair> all{{{1, 2}, {1, 2}}, {{3, 6}, {3, 6}}, {{4, 5}, {4, 5}}, {{7, 8}, {7, 8}}};
  const Row rows[] = {
      {"by the pairs", straight, straight, {{0, 1}, {2, 5}, {3, 4}, {6, 7}}, {}, all},
      {"1-2 3-4 5-6 7-8 splits two, at both ends",
       straight,
       straight,
       {{0, 1}, {2, 3}, {4, 5}, {6, 7}},
       {{0, false, 3, 6}, {0, false, 4, 5}, {0, true, 3, 6}, {0, true, 4, 5}},
       all},
      {"nobody has looked", straight, straight, {}, {}, all},
      {"a contact without a lead is in no pair",
       {1, 0, 3, 4, 5, 6, 7, 8},
       {0, 2, 3, 4, 5, 6, 7, 8},
       {{0, 1}, {2, 5}, {3, 4}, {6, 7}},
       {},
       {{{3, 6}, {3, 6}}, {{4, 5}, {4, 5}}, {{7, 8}, {7, 8}}}},
      {"a contact that reaches two carries no pair",
       straight,
       {1, 2, 3, 4, 5, 6, 7, 7},
       {{0, 1}, {2, 5}, {3, 4}, {6, 7}},
       {{0, true, 7, 8}},
       {{{1, 2}, {1, 2}}, {{3, 6}, {3, 6}}, {{4, 5}, {4, 5}}}},
      {"a pair that arrives on halves of two", {1, 2}, {1, 0, 0, 2}, {{0, 1}}, {}, {}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    const Harness cable = cable_of(8, {"8p8c", 8, row.a}, {"8p8c", 8, row.b}, row.cores);
    const CableJudgement judged = judge_cable(cable_map({&cable}), {&cable});
    CHECK(judged.split == row.split);
    CHECK(judged.pairs == row.pairs);
    CHECK(judged.pairs_matter);
    CHECK(judged.pairs_stated == !row.cores.empty());
  }
}

TEST_CASE("the colours of a network plug") {
  // TIA-568 by the cable tester manual p. 5.
  struct Row {
    std::string family;
    std::vector<const char*> colours;
    std::string scheme;
  };
  const Row rows[] = {
      {"8p8c", {"WHGN", "GN", "WHOG", "BU", "WHBU", "OG", "WHBN", "BN"}, "T568A"},
      {"8p8c", {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "WHBN", "BN"}, "T568B"},
      {"8p8c", {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "WHBN"}, ""},
      {"8p8c", {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "BN", "WHBN"}, ""},
      {"xh-2.50", {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "WHBN", "BN"}, ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.family);
    CAPTURE(row.colours.size());
    Plug plug = plug_of("a", {row.family, 8, {1, 2, 3, 4, 5, 6, 7, 8}});
    plug.leads.resize(row.colours.size());
    for (std::size_t i = 0; i < row.colours.size(); ++i)
      plug.leads[i].colour = std::get<WireColour>(parse_colour(row.colours[i]));
    CHECK(wiring_scheme(plug) == row.scheme);
  }
}

TEST_CASE("the kinds of crossing in words") {
  using enum CableKind;
  const std::tuple<CableKind, std::string_view, std::string_view> rows[] = {
      {Nothing, "nothing", "nothing reaches the other end"},
      {Straight, "straight", "straight"},
      {Turned, "turned", "turned end for end"},
      {RowsExchanged, "rows-exchanged", "the two rows exchanged"},
      {NullModem, "null-modem", "null modem"},
      {Crossover, "crossover", "crossover"},
      {RibbonOrder, "ribbon-order", "in the order of the ribbon"},
      {Other, "other", "neither straight nor a cross that is known here"},
  };
  for (const auto& [kind, word, words] : rows) {
    CHECK(to_word(kind) == word);
    CHECK(to_words(kind) == words);
  }
}
