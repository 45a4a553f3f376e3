// SPDX-License-Identifier: MIT
// Whole sections for a whole board: several harnesses on shared rails.
#include "report/budget_text.h"

#include <doctest/doctest.h>

#include <deque>
#include <map>
#include <string>
#include <vector>

#include "plan/place.h"
#include "report/budget_json.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string section(const Fitting& fitting) {
  Paper paper({});
  write_budget(paper, fitting, budget(fitting));
  return paper.text();
}

/// Harnesses on one board, as one: the plug of each is called 'p'.
struct FullBoard {
  Bench board;
  std::deque<Bench> benches;
  Harness harness;

  FullBoard(const std::string& board_text, const std::vector<std::string>& harnesses)
      : board(board_text, harnesses.front()) {
    std::vector<const Harness*> list;
    for (const std::string& text : harnesses) benches.emplace_back(board_text, text);
    for (const Bench& bench : benches) list.push_back(bench.harness.get());
    harness = merged(list);
  }

  Fitting fitting(const std::vector<std::string>& headers,
                  const std::map<std::string, std::string>& jumpers = {}) const {
    Fitting all{board.board.get(), &harness, &board.catalogue, {}, jumpers};
    for (std::size_t i = 0; i < headers.size(); ++i) {
      const Header* header = board.board->header(headers[i]);
      all.placements.push_back({static_cast<int>(i), static_cast<int>(header - board.board->headers.data())});
    }
    return all;
  }
};

std::string harness_text(std::string_view id, std::string_view body) {
  return format("<harness id='{}' title='H' evidence='e'><evidence id='e' kind='measurement'/>{}</harness>",
                id, body);
}

std::string plug_text(std::string_view family, std::string_view gauge, int length,
                      const std::vector<std::string>& terminals) {
  std::string leads;
  for (std::size_t i = 0; i < terminals.size(); ++i) {
    leads += format("<lead cavity='{}' colour='RD' gauge='{}' length='{} mm' to='{}'/>", i + 1, gauge, length,
                    terminals[i]);
  }
  return format("<plug id='p' family='{}' positions='{}'>{}</plug>", family, terminals.size(), leads);
}

const std::string full_board =
    "<board id='b' title='B' width='100 mm' height='80 mm' evidence='e'><evidence id='e' kind='measurement'/>"
    "<rail id='24V' volts='22.8..25.2 V' limit='12 A'/><rail id='12V' volts='12 V' limit='1 A'/>"
    "<rail id='5V' volts='4.9..5.2 V' limit='1.5 A'/>"
    "<jumper id='JF' label='FAN V' rails='12V 24V'/>"
    "<header id='IN' use='supply' family='screw-5.08' positions='2'>"
    "<pin n='1' function='supply' rail='24V' limit='12 A'/><pin n='2' function='ground' limit='12 "
    "A'/></header>"
    "<header id='F1' use='fan' family='xh-2.50' positions='2'>"
    "<pin n='1' function='supply' jumper='JF' limit='1 A'/>"
    "<pin n='2' function='switched' limit='1 A' at-reset='off'/></header>"
    "<header id='F2' use='fan' family='xh-2.50' positions='2'>"
    "<pin n='1' function='supply' jumper='JF' limit='1 A'/><pin n='2' function='ground'/></header>"
    "<header id='HEAT' use='heater' family='vh-3.96' positions='2'>"
    "<pin n='1' function='supply' rail='24V' limit='6 A'/>"
    "<pin n='2' function='switched' ohms='0.02 ohm' limit='6 A' at-reset='off'/></header>"
    "<header id='BED' use='bed' family='screw-5.08' positions='2'>"
    "<pin n='1' function='supply' rail='24V' limit='10 A'/>"
    "<pin n='2' function='switched' ohms='0.01 ohm' limit='10 A' at-reset='off'/></header>"
    "<header id='LED' use='led' family='xh-2.50' positions='3'>"
    "<pin n='1' function='supply' rail='5V' limit='1 A'/>"
    "<pin n='2' function='output' signal='led-data' rail='5V' high='4.4..5.2 V' limit='8 mA'/>"
    "<pin n='3' function='ground'/></header></board>";

const std::string fan = "<fan id='fan' needs='10..26 V' draws='0.15 A' reversed='blocked'/>";

}  // namespace

TEST_CASE("a whole board: two fans on one jumper, heater, bed and an LED bar") {
  const FullBoard all(
      full_board, {harness_text("fan-1", fan + plug_text("xh-2.50", "26 AWG", 600, {"V", "G"})),
                   harness_text("fan-2", fan + plug_text("xh-2.50", "26 AWG", 600, {"V", "G"})),
                   harness_text("nozzle", "<heater-element id='nozzle' volts='24 V' watts='40 W'/>" +
                                              plug_text("vh-3.96", "18 AWG", 900, {"A", "B"})),
                   harness_text("plate", "<heater-element id='plate' use='bed' volts='24 V' watts='200 W'/>" +
                                             plug_text("screw-5.08", "14 AWG", 900, {"A", "B"})),
                   harness_text("light",
                                "<led-string id='bar' count='60' brightness='25 %' loop='0.4 ohm' "
                                "needs='4.2..5.3 V'/>" +
                                    plug_text("xh-2.50", "22 AWG", 450, {"V", "D", "G"}))});
  const Fitting fitting = all.fitting({"F1", "F2", "HEAT", "BED", "LED"}, {{"JF", "24V"}});
  CHECK(section(fitting) == R"(Currents, each at its worst
  BED.1, BED.2 ('plate/p')     8.56 A   of 8 A    107 % over  14 AWG in a bundle
  all rails, from '24V'        11.7 A   of 12 A   97 %        limit of IN.1
  LED.1 ('light/p')            0.969 A  of 1 A    97 %        pin limit
  rail '24V'                   10.7 A   of 12 A   89 %        rail limit
  rail '5V'                    0.969 A  of 1.5 A  65 %        rail limit
  LED.3 ('light/p')            0.969 A  of 2.5 A  39 %        22 AWG in a bundle
  HEAT.1, HEAT.2 ('nozzle/p')  1.74 A   of 5 A    35 %        18 AWG in a bundle
  4 smaller ones are left out: below a quarter of the limit
  - plug 'plate/p': 8.56 A is more than the 8 A of 14 AWG in a bundle; lay the
    leads apart, or take thicker ones
  - 'nozzle/nozzle': 35.62..43.51 W over the rail's tolerance; rated 40 W at 24
    V
  - 'plate/plate': 172.6..210.9 W over the rail's tolerance; rated 200 W at 24 V
  - 'light/bar': 60 LEDs at 25 % brightness count with 0.9 A; no less than 4.82
    V at the near end, 4.64 V at the far end
  - 'nozzle/p': a blade fuse of 3 A; 1.738 A flow, and the narrowest place takes
    7 A (contact rating at 18 AWG)
  - 'plate/p': no blade fuse suits; 8.557 A flow, and the narrowest place takes
    12 A (contact rating, published without a gauge): a fuse of 15 A wants
    contacts for 15 A
  - wire: TFE wire, bundled: archived "wire table" page
  - wire: chassis wiring: Handbook of Electronic Tables and Formulas, as copied
    in "AWG Current Capacity"
)");
  Json json;
  put_budget(json, fitting, budget(fitting));
  CHECK(json["budget"].size() == 54);
  CHECK(
      json["budget"][0].dump() ==
      R"({"kind":"supply","what":"all rails, from '24V'","at":{"rail":"24V","header":"IN","pin":1,"plug":null,"cavity":null},"amps":11.6836,"limit":12.0,"share":0.973635,"basis":"limit of IN.1","source":"the board file","state":null})");
  CHECK(
      json["budget"][47].dump() ==
      R"({"kind":"bundle","what":"RD lead in cavity 1 of 'light/p'","at":{"rail":null,"header":"LED","pin":1,"plug":"light/p","cavity":1},"amps":0.969165,"limit":2.5,"share":0.387666,"basis":"22 AWG in a bundle","source":"TFE wire, bundled: archived \"wire table\" page","state":null})");
  CHECK(
      json["lead_losses"][0].dump() ==
      R"({"what":"RD lead in cavity 1 of 'fan-1/p'","at":{"rail":null,"header":"F1","pin":1,"plug":"fan-1/p","cavity":1},"amps":0.209475,"length_mm":600.0,"gauge":"26 AWG","volts_at_20_c":0.0168298,"volts_warm":0.0194754,"warm_c":60.0,"share_both_ways":0.0014763})");
  CHECK(
      json["heaters"].dump() ==
      R"([{"device":"nozzle/nozzle","rated_volts":24.0,"rated_watts":40.0,"least_watts":35.6151,"most_watts":43.5076},{"device":"plate/plate","rated_volts":24.0,"rated_watts":200.0,"least_watts":172.63,"most_watts":210.886}])");
  CHECK(
      json["led_strings"].dump() ==
      R"([{"device":"light/bar","count":60,"brightness":0.25,"amps":0.9,"near_volts":4.81994,"far_volts":4.63994}])");
  CHECK(
      json["fuses"][0].dump() ==
      R"json({"at":{"rail":null,"header":"HEAT","pin":null,"plug":"nozzle/p","cavity":null},"load":1.73821,)json"
      R"json("weakest":7.0,"fuse":3.0,"words":"'nozzle/p': a blade fuse of 3 A; 1.738 A flow, and the narrowest )json"
      R"json(place takes 7 A (contact rating at 18 AWG)"})json");
}

TEST_CASE("remarks: wires in a bundle, long leads, short circuits; nothing flows, nothing is said") {
  struct Row {
    const char* name;
    std::string body;
    const char* header;
    std::string expected;
  };
  const std::vector<Row> rows{
      {"nothing is fed",
       "<dry-switch id='s' use='limit' rests='open'/>" + plug_text("xh-2.50", "26 AWG", 300, {"A"}), "LED",
       ""},
      {"a wire in a bundle and a long lead",
       "<fan id='f' needs='20..28 V' draws='3 A'/>" + plug_text("vh-3.96", "22 AWG", 1500, {"V", "G"}),
       "HEAT", R"(Currents, each at its worst
  HEAT.1, HEAT.2 ('p')   3.07 A  of 2.5 A  123 % over  22 AWG in a bundle
  all rails, from '24V'  3.07 A  of 12 A   26 %        limit of IN.1
  rail '24V'             3.07 A  of 12 A   26 %        rail limit
  - plug 'p': 3.07 A is more than the 2.5 A of 22 AWG in a bundle; lay the leads
    apart, or take thicker ones
  - 'p': a blade fuse of 4 A; 3.066 A flow, and the narrowest place takes 5 A
    (22 AWG in a bundle; not all of its wires and contacts are known)
  - wire: chassis wiring: Handbook of Electronic Tables and Formulas, as copied
    in "AWG Current Capacity"
  - wire: TFE wire, bundled: archived "wire table" page
)"},
      {"a short circuit",
       "<dry-switch id='s' use='fan' rests='open'/><fan id='f' needs='20..28 V' draws='0.1 A'/>"
       "<plug id='p' family='xh-2.50' positions='2'><lead cavity='1' colour='RD' to='s.A'/>"
       "<lead cavity='2' colour='BK' to='s.B'/></plug>",
       "F2", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(full_board, harness_text("h", row.body));
    CHECK(section(bench.fitting({{"p", row.header}}, {{"JF", "24V"}})) == row.expected);
  }
}
