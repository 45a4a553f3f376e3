// SPDX-License-Identifier: MIT
// The shipped files of harnesses/standard/ against the published tables, contact by contact,
// and what cables of them come to. Published values that are wrong are kept as negative cases. No text of a
// standard was read: the page that tells of it is named at each table.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "base/file.h"
#include "catalogue/lines.h"
#include "fit/cable.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

/// A shipped file, or a text.
struct Read {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;

  explicit Read(const std::string& path, const std::string& text) {
    add_builtin_families(catalogue);
    description = read_description(sources, sources.add(path, text), catalogue, diagnostics);
    std::string faults;
    for (const Diagnostic& d : diagnostics.all()) faults += d.message + "\n";
    REQUIRE_MESSAGE(diagnostics.all().empty(), path << ": " << faults);
  }
  const Harness& harness() const { return *description.harness; }
};

std::unique_ptr<Read> shipped(const std::string& name) {
  const std::string path = PLUGWARD_SOURCE_DIR "/harnesses/standard/" + name + ".xml";
  return std::make_unique<Read>(path, read_file(path));
}

/// "1 BN V, 3 BU G": contact, colour, terminal.
std::string table(const Harness& harness, const Plug& plug) {
  std::string text;
  for (const Lead& lead : plug.leads) {
    text += (text.empty() ? "" : ", ") + std::to_string(lead.cavity) + " " + to_code(lead.colour) + " " +
            harness.terminal_name(*lead.to);
  }
  return text;
}

/// "1-4 2-3 4-1,6": contacts of the first end to those of the last.
std::string crossing(const CableMap& map) {
  std::string text;
  const auto numbers = [](const std::vector<int>& list) {
    std::string all;
    for (const int k : list) all += (all.empty() ? "" : ",") + std::to_string(k);
    return all;
  };
  for (const CableGroup& group : map.groups)
    text += (text.empty() ? "" : " ") + numbers(group.a) + "-" + numbers(group.b);
  return text;
}

struct Judged {
  std::vector<std::unique_ptr<Read>> files;
  std::vector<const Harness*> chain;
  CableMap map;
  CableJudgement judgement;

  explicit Judged(const std::vector<std::string>& names) {
    for (const std::string& name : names) files.push_back(shipped(name));
    judge();
  }
  explicit Judged(std::unique_ptr<Read> file) {
    files.push_back(std::move(file));
    judge();
  }

 private:
  void judge() {
    for (const auto& file : files) chain.push_back(&file->harness());
    REQUIRE(chain_fault(chain, files.front()->catalogue).empty());
    map = cable_map(chain);
    judgement = judge_cable(map, chain);
  }
};

/// A cable of two 8P8C ends with these colours, pairs by the numbers of the contacts of the first end.
std::unique_ptr<Read> network_cable(const std::vector<int>& core_at_b, const std::string& pairs) {
  std::string text =
      "<harness id='c' title='c' evidence='e'><evidence id='e' kind='measurement'/><cable id='k' cores='8' "
      "pairs='" +
      pairs + "'/>";
  for (const char* end : {"a", "b"}) {
    text += std::string("<plug id='") + end + "' family='8p8c' positions='8'>";
    for (int k = 1; k <= 8; ++k) {
      const int core = end[0] == 'a' ? k : core_at_b[static_cast<std::size_t>(k) - 1];
      text += "<lead cavity='" + std::to_string(k) + "' colour='?' to='" + std::to_string(core) + "'/>";
    }
    text += "</plug>";
  }
  return std::make_unique<Read>("c.xml", text + "</harness>");
}

}  // namespace

TEST_CASE("plugs of one device") {
  struct Row {
    const char* file;
    const char* contacts;
    const char* source;
  };
  const Row rows[] = {
      {"fan-4-wire", "1 BK G, 2 YE V, 3 GN S, 4 BU C", "'4-Wire PWM Controlled Fans Specification' pp. 9-10"},
      {"fan-3-wire", "1 BK G, 2 RD V, 3 YE S", "a fan wiring page; 'Wire colors in a computer fan'"},
      {"servo-gvs", "1 BK G, 2 RD V, 3 WH P",
       "servo connector table, row Futaba; servo driver manual p. 3 (order)"},
      {"servo-vgs", "1 RD V, 2 BK G, 3 WH P", "servo connector table, row KO"},
      {"servo-sgv", "1 YE P, 2 BK G, 3 RD V", "servo connector table, row Conrad"},
      {"sensor-m8-npn", "1 BN V, 3 BU G, 4 BK Q", "906238_eng (IEC 60947-5-2)"},
      {"sensor-m8-pnp", "1 BN V, 3 BU G, 4 BK Q", "906238_eng (IEC 60947-5-2)"},
      {"sensor-m12-npn", "1 BN V, 3 BU G, 4 BK Q", "911276_eng (IEC 60947-5-2)"},
      {"sensor-m12-pnp", "1 BN V, 3 BU G, 4 BK Q", "911276_eng (IEC 60947-5-2)"},
      {"sensor-m12-changeover", "1 BN V, 2 WH R, 3 BU G, 4 BK Q", "911276_eng (IEC 60947-5-2)"},
      {"sensor-m12-8-wires", "1 WH V, 2 BN Q2, 3 GN G, 4 YE 4, 5 GY 5, 6 PK 6, 7 BU 7, 8 RD 8",
       "LFP Inox manual p. 20"},
      {"led-strip-addressable", "1 RD V, 2 GN D, 3 WH G",
       "order: '3 pin vs 4 pin LED strip'; colours: 'RGB 5050 5V IP65 60D 1M' page"},
      {"led-strip-common-plus", "1 BK V, 2 RD R, 3 GN G, 4 BU B",
       "'3 pin vs 4 pin LED strip'; two RGB wiring pages"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.file);
    CAPTURE(row.source);
    const auto file = shipped(row.file);
    REQUIRE(file->harness().plugs.size() == 1);
    CHECK(table(file->harness(), file->harness().plugs[0]) == row.contacts);
  }
}

TEST_CASE("what is published wrong is not what is shipped") {
  // Blue on contact 4 and black on contact 3: a 4-wire colour-code page.
  const auto sensor = shipped("sensor-m12-pnp");
  CHECK(table(sensor->harness(), sensor->harness().plugs[0]) != "1 BN V, 3 BK G, 4 BU Q");
  // The fourth lead of a common-plus strip called ground: two RGB wiring pages.
  const auto strip = shipped("led-strip-common-plus");
  const Harness& harness = strip->harness();
  CHECK(harness.terminal(*harness.plugs[0].leads[0].to).function == TerminalFunction::Supply);
  // Orange called pair 1 and green pair 2: a forum's questions. The blue pair is on 4 and 5 in both schemes.
  for (const PairScheme& scheme : pair_schemes()) {
    CHECK(scheme.colours[3] == "BU");
    CHECK(scheme.colours[4] == "WHBU");
  }
  // Core 30 and below hold no grey with red; core 39 "grey with pink" of one seller is beyond the shipped
  // cable.
  const auto din = shipped("din-47100");
  CHECK(din->harness().plugs[0].leads.size() == 30);
}

TEST_CASE("DIN 47100") {
  // Cores 1-20: three tables of cable sellers; 21-30: two of them.
  const char* const cores[] = {"WH",   "BN",   "GN",   "YE",   "GY",   "PK",   "BU",   "RD",
                               "BK",   "VT",   "GYPK", "RDBU", "WHGN", "BNGN", "WHYE", "YEBN",
                               "WHGY", "GYBN", "WHPK", "PKBN", "WHBU", "BNBU", "WHRD", "BNRD",
                               "WHBK", "BNBK", "GYGN", "YEGY", "PKGN", "YEPK"};
  const Judged cable({"din-47100"});
  CHECK(cable.judgement.kind == CableKind::Straight);
  for (const Plug& plug : cable.files[0]->harness().plugs) {
    for (int k = 1; k <= 30; ++k) {
      CAPTURE(k);
      CHECK(to_code(plug.lead_in(k)->colour) == cores[k - 1]);
      CHECK(cable.files[0]->harness().terminal(*plug.lead_in(k)->to).id == std::to_string(k));
    }
  }
  // Colours repeat from core 45; within the first 30 each is one of its own, whichever letter stands first.
  std::set<std::string> seen;
  for (const char* core : cores) {
    const WireColour colour = std::get<WireColour>(parse_colour(core));
    for (const std::string& other : seen) CHECK(!(std::get<WireColour>(parse_colour(other)) == colour));
    seen.insert(core);
  }
}

TEST_CASE("DE-9 (TIA-574, by the 'RS-232 pinout' lesson)") {
  struct Row {
    int pin;
    const char* name;
    char dte, dce;  // i: in, o: out, -: neither
  };
  const Row rows[] = {{1, "DCD", 'i', 'o'}, {2, "RxD", 'i', 'o'}, {3, "TxD", 'o', 'i'},
                      {4, "DTR", 'o', 'i'}, {5, "SG", '-', '-'},  {6, "DSR", 'i', 'o'},
                      {7, "RTS", 'o', 'i'}, {8, "CTS", 'i', 'o'}, {9, "RI", 'i', 'o'}};
  const auto board = shipped("boards/de9-ports");
  const auto dte = shipped("de9-dte"), dce = shipped("de9-dce");
  for (const Row& row : rows) {
    CAPTURE(row.pin);
    const PortLine* line = port_line("de-9", row.pin);
    REQUIRE(line != nullptr);
    CHECK(line->name == row.name);
    CHECK(line->driven_by == (row.dte == 'o' ? LineEnd::Dte : row.dce == 'o' ? LineEnd::Dce : LineEnd::Both));
    for (const auto& [kind, direction, file] :
         {std::tuple{"DTE", row.dte, dte.get()}, std::tuple{"DCE", row.dce, dce.get()}}) {
      CAPTURE(kind);
      const auto& headers = board->description.board->headers;
      const auto header =
          std::find_if(headers.begin(), headers.end(), [&](const Header& h) { return h.id == kind; });
      REQUIRE(header != headers.end());
      const Pin& pin = header->pins[static_cast<std::size_t>(row.pin) - 1];
      CHECK(pin.function == (direction == 'o'   ? PinFunction::Output
                             : direction == 'i' ? PinFunction::Input
                                                : PinFunction::Ground));
      const Harness& equipment = file->harness();
      const Terminal& terminal = equipment.terminal(*equipment.plugs[0].lead_in(row.pin)->to);
      CHECK(terminal.function == (direction == 'o'   ? TerminalFunction::Output
                                  : direction == 'i' ? TerminalFunction::Input
                                                     : TerminalFunction::Ground));
      CHECK(terminal.signal == pin.signal);
    }
  }
}

TEST_CASE("serial cables") {
  using enum CableKind;
  struct Row {
    const char* what;
    std::vector<std::string> cables;
    CableKind kind;
    Handshake handshake;
    const char* crossing;
    std::vector<int> dte_to_dte, dte_to_dce;
  };
  const Row rows[] = {
      {"DTE to DCE",
       {"de9-straight"},
       Straight,
       Handshake::None,
       "1-1 2-2 3-3 4-4 5-5 6-6 7-7 8-8 9-9",
       {3, 4, 7},
       {}},
      // 1->4, 2->3, 3->2, 4->1, 4->6, 5->5, 6->4, 7->8, 8->7: null-modem handshake page.
      {"null modem",
       {"null-modem"},
       NullModem,
       Handshake::Full,
       "1,6-4 2-3 3-2 4-1,6 5-5 7-8 8-7",
       {},
       {3, 4, 7}},
      {"three wires", {"null-modem-three-wires"}, NullModem, Handshake::None, "2-3 3-2 5-5", {}, {3}},
      // Straight for 2, 3, 5, 7, 8 (derived); 1 and 6 are joined at both ends.
      {"null modem over null modem",
       {"null-modem", "null-modem"},
       Straight,
       Handshake::None,
       "1,6-1,6 2-2 3-3 4-4 5-5 7-7 8-8",
       {3, 4, 7},
       {1, 6}},
      {"null modem over straight",
       {"null-modem", "de9-straight"},
       NullModem,
       Handshake::Full,
       "1,6-4 2-3 3-2 4-1,6 5-5 7-8 8-7 -9",
       {},
       {3, 4, 7}},
      {"three null modems",
       {"null-modem", "null-modem", "null-modem"},
       NullModem,
       Handshake::Full,
       "1,6-4 2-3 3-2 4-1,6 5-5 7-8 8-7",
       {},
       {3, 4, 7}},
      {"the order of the ribbon",
       {"de9-to-2x5-ribbon"},
       RibbonOrder,
       Handshake::None,
       "1-1 2-3 3-5 4-7 5-9 6-2 7-4 8-6 9-8",
       {},
       {}},
      {"by number",
       {"de9-to-2x5-by-number"},
       Straight,
       Handshake::None,
       "1-1 2-2 3-3 4-4 5-5 6-6 7-7 8-8 9-9",
       {},
       {}},
      {"through a straight ribbon",
       {"de9-to-2x5-ribbon", "ribbon-2x5"},
       RibbonOrder,
       Handshake::None,
       "1-1 2-3 3-5 4-7 5-9 6-2 7-4 8-6 9-8 -10",
       {},
       {}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.what);
    const Judged judged(row.cables);
    CHECK(judged.judgement.kind == row.kind);
    CHECK(judged.judgement.handshake == row.handshake);
    CHECK(crossing(judged.map) == row.crossing);
    CHECK(judged.judgement.clash_between_dte == row.dte_to_dte);
    CHECK(judged.judgement.clash_dte_to_dce == row.dte_to_dce);
  }
}

TEST_CASE("network cables (TIA-568, by the cable tester manual p. 5)") {
  using enum CableKind;
  const char* const a[] = {"WHGN", "GN", "WHOG", "BU", "WHBU", "OG", "WHBN", "BN"};
  const char* const b[] = {"WHOG", "OG", "WHGN", "BU", "WHBU", "GN", "WHBN", "BN"};
  struct Row {
    std::vector<std::string> cables;
    CableKind kind;
    const char* crossing;
    const char *first, *last;
  };
  const char* const straight = "1-1 2-2 3-3 4-4 5-5 6-6 7-7 8-8";
  const char* const crossed = "1-3 2-6 3-1 4-4 5-5 6-2 7-7 8-8";
  const Row rows[] = {
      {{"t568a"}, Straight, straight, "T568A", "T568A"},
      {{"t568b"}, Straight, straight, "T568B", "T568B"},
      {{"t568-crossover"}, Crossover, crossed, "T568A", "T568B"},
      {{"t568-crossover", "t568-crossover"}, Straight, straight, "T568A", "T568B"},
      {{"t568-crossover", "t568b"}, Crossover, crossed, "T568A", "T568B"},
      {{"t568a", "t568b"}, Straight, straight, "T568A", "T568B"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.cables);
    const Judged judged(row.cables);
    CHECK(judged.judgement.kind == row.kind);
    CHECK(crossing(judged.map) == row.crossing);
    CHECK(judged.judgement.split.empty());
    CHECK(judged.judgement.pairs_stated);
    CHECK(judged.judgement.pairs.size() == 4);
    CHECK(wiring_scheme(*judged.map.a) == row.first);
    CHECK(wiring_scheme(*judged.map.b) == row.last);
  }
  for (const auto& [name, colours] : {std::pair{"t568a", a}, std::pair{"t568b", b}}) {
    const auto file = shipped(name);
    for (const Plug& plug : file->harness().plugs) {
      for (int k = 1; k <= 8; ++k) {
        CAPTURE(k);
        CHECK(plug.lead_in(k)->colour == std::get<WireColour>(parse_colour(colours[k - 1])));
      }
    }
  }
}

TEST_CASE("split pairs pass continuity and are found") {
  const std::vector<int> straight{1, 2, 3, 4, 5, 6, 7, 8};
  // Pairs 1-2, 3-4, 5-6, 7-8: cable tester manual p. 5.
  const Judged split(network_cable(straight, "1-2 3-4 5-6 7-8"));
  CHECK(split.judgement.kind == CableKind::Straight);
  CHECK(split.judgement.split ==
        std::vector<SplitPair>{{0, false, 3, 6}, {0, false, 4, 5}, {0, true, 3, 6}, {0, true, 4, 5}});
  const Judged right(network_cable(straight, "1-2 3-6 4-5 7-8"));
  CHECK(right.judgement.split.empty());
  // The same fault at both ends of the same cable beeps through as straight; at one end alone it is a fault
  // too.
  const Judged one_end(network_cable({1, 2, 4, 3, 5, 6, 7, 8}, "1-2 3-6 4-5 7-8"));
  CHECK(one_end.judgement.kind == CableKind::Other);
  CHECK(one_end.judgement.split == std::vector<SplitPair>{{0, true, 3, 6}, {0, true, 4, 5}});
}

TEST_CASE("ribbons: both numberings, and the ways to press a socket on wrongly") {
  using enum CableKind;
  const auto expect = [](const std::string& name, CableKind kind, const std::string& how) {
    CAPTURE(name);
    const Judged judged({name});
    CHECK(judged.judgement.kind == kind);
    CHECK(crossing(judged.map) == how);
  };
  expect("ribbon-2x5", Straight, "1-1 2-2 3-3 4-4 5-5 6-6 7-7 8-8 9-9 10-10");
  // Zigzag 1..10 is row by row 1 6 2 7 3 8 4 9 5 10: page on data cables (rows of 1 to 5 and 6 to 10).
  expect("ribbon-2x5-by-row", Straight, "1-1 2-6 3-2 4-7 5-3 6-8 7-4 8-9 9-5 10-10");
  // k to k+1 (odd), k-1 (even): ribbon pinout questions and answers.
  expect("ribbon-2x5-rows-exchanged", RowsExchanged, "1-2 2-1 3-4 4-3 5-6 6-5 7-8 8-7 9-10 10-9");
  const Judged twice({"ribbon-2x5-rows-exchanged", "ribbon-2x5-rows-exchanged"});
  CHECK(twice.judgement.kind == Straight);
}

TEST_CASE("every shipped file is in a table above") {
  std::set<std::string> names;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(PLUGWARD_SOURCE_DIR) + "/harnesses/standard")) {
    if (entry.path().extension() == ".xml") names.insert(entry.path().stem().string());
  }
  CHECK(names == std::set<std::string>{"de9-dce",
                                       "de9-dte",
                                       "de9-straight",
                                       "de9-to-2x5-by-number",
                                       "de9-to-2x5-ribbon",
                                       "din-47100",
                                       "fan-3-wire",
                                       "fan-4-wire",
                                       "led-strip-addressable",
                                       "led-strip-common-plus",
                                       "null-modem",
                                       "null-modem-three-wires",
                                       "ribbon-2x5",
                                       "ribbon-2x5-by-row",
                                       "ribbon-2x5-rows-exchanged",
                                       "sensor-m12-8-wires",
                                       "sensor-m12-changeover",
                                       "sensor-m12-npn",
                                       "sensor-m12-pnp",
                                       "sensor-m8-npn",
                                       "sensor-m8-pnp",
                                       "servo-gvs",
                                       "servo-sgv",
                                       "servo-vgs",
                                       "t568-crossover",
                                       "t568a",
                                       "t568b"});
}
