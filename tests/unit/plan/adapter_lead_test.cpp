// SPDX-License-Identifier: MIT
// The adapter lead's slow, obviously right twin: its table is carried out as a permutation, pin by pin, and
// the cable on the board so permuted is judged as any cable.
#include "plan/adapter_lead.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "fit/seating.h"
#include "plan/parts_list.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

constexpr AdviseOptions quick{.wrong_seatings = false, .softer = false};

std::string table(const Adapter& adapter) {
  std::string text = adapter.id;
  for (const AdapterLead& lead : adapter.leads) {
    text += format(" {}>{}:{}:{}", lead.a, lead.b, to_code(lead.colour), to_text(lead.gauge));
  }
  return text;
}

std::string tables(const AdapterAdvice& advice) {
  if (!advice.plan) return advice.summary;
  std::string text;
  for (const Adapter& adapter : advice.plan->adapters) text += table(adapter) + "\n";
  return text;
}

/// Where the re-pinning plan puts each lead of a plug: [lead] -> pin, 0: none.
std::vector<int> planned_pins(const Fitting& fitting, const RepinPlan& plan, const Placement& where) {
  const Plug& plug = plan.harness.plugs[static_cast<std::size_t>(where.plug)];
  const Seating home = home_seating(plug, where.header, *fitting.board);
  std::vector<int> pins;
  for (const Lead& lead : plug.leads) {
    pins.push_back(lead.cavity < 1 ? 0 : home.pin_of_cavity[static_cast<std::size_t>(lead.cavity) - 1]);
  }
  return pins;
}

/// Where the table puts each lead.
std::vector<int> table_pins(const Fitting& fitting, const Adapter& adapter) {
  const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(adapter.plug)];
  std::vector<int> pins(plug.leads.size(), 0);
  for (const AdapterLead& lead : adapter.leads) {
    CHECK(plug.leads[static_cast<std::size_t>(lead.lead)].cavity == lead.a);
    pins[static_cast<std::size_t>(lead.lead)] = lead.b;
  }
  return pins;
}

/// Position A and B each once, colours all different, no wire thinner than the cable's without a note.
void check_table(const Fitting& fitting, const Adapter& adapter) {
  const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(adapter.plug)];
  std::set<int> a;
  std::set<int> b;
  std::set<std::string> colours;
  bool thin = false;
  for (const AdapterLead& lead : adapter.leads) {
    a.insert(lead.a);
    b.insert(lead.b);
    colours.insert(to_code(lead.colour));
    thin = thin || thinner(lead.gauge, plug.leads[static_cast<std::size_t>(lead.lead)].gauge);
  }
  CHECK(a.size() == adapter.leads.size());
  CHECK(b.size() == adapter.leads.size());
  CHECK(colours.size() == adapter.leads.size());
  CHECK(adapter.a.empty.size() + a.size() == static_cast<std::size_t>(adapter.a.positions));
  CHECK(adapter.b.empty.size() + b.size() == static_cast<std::size_t>(adapter.b.positions));
  CHECK(thin == std::any_of(adapter.notes.begin(), adapter.notes.end(), [](const std::string& note) {
          return note.find("thinner than the cable's") != std::string::npos;
        }));
}

/// Every contact once, by brute counting.
void check_contacts(const AdapterAdvice& advice) {
  std::map<std::string, int> counted;
  for (const Adapter& adapter : advice.plan->adapters) {
    for (const AdapterLead& lead : adapter.leads) {
      if (adapter.a.joint == Joint::Crimp)
        ++counted["counterpart " + adapter.a.family + " " + to_text(lead.gauge)];
      if (adapter.b.joint == Joint::Crimp)
        ++counted["housing " + adapter.b.family + " " + to_text(lead.gauge)];
    }
  }
  std::map<std::string, int> listed;
  for (const PartItem& item : parts_list(advice).items) {
    if (item.kind != PartKind::Contact) continue;
    const std::string end = item.what.find("counterpart") != std::string::npos ? "counterpart " : "housing ";
    const std::string name = end + item.family + " " + to_text(*item.gauge);
    CHECK_FALSE(listed.contains(name));
    listed[name] = item.needed;
    int spares = 2;
    while (spares * 5 < item.needed) ++spares;
    CHECK(item.buy() == item.needed + spares);
  }
  CHECK(listed == counted);
}

/// Several crossings judged from the cable's end by the twin.
Assessment by_permutation(const Fitting& fitting, const AdapterPlan& plan) {
  Harness cable = *fitting.harness;
  Board board = *fitting.board;
  for (const Adapter& adapter : plan.adapters) {
    Header& header = board.headers[static_cast<std::size_t>(adapter.header)];
    Plug& plug = cable.plugs[static_cast<std::size_t>(adapter.plug)];
    plug.family = header.family;
    plug.positions = header.positions;
    plug.rows = header.rows;
    plug.numbering = header.numbering;
    const std::vector<int> pins = table_pins(fitting, adapter);
    for (std::size_t l = 0; l < pins.size(); ++l) plug.leads[l].cavity = pins[l];
  }
  Fitting changed = fitting;
  changed.harness = &cable;
  changed.board = &board;
  return assess(changed);
}

std::vector<std::map<std::string, std::string>> jumper_settings(const Board& board) {
  std::map<std::string, std::string> first;
  std::map<std::string, std::string> last;
  for (const Jumper& jumper : board.jumpers) {
    first[jumper.id] = jumper.rails.front();
    last[jumper.id] = jumper.rails.back();
  }
  if (first.empty()) return {first};
  return {first, last};
}

const std::string kite = "kite-probe";

}  // namespace

TEST_CASE("every shipped harness on every header: where contacts would move, a lead does the same") {
  int repinned = 0;
  int adapted = 0;
  for (const std::string board : {"heron-m7", "heron-a4"}) {
    for (const std::string harness :
         {"changeover-limit", "fan-12v", "fan-24v", "firefly-led-bar", "inductive-sensor", "kite-probe",
          "limit-switch", "mystery-lead", "nozzle-heater", "optical-switch", "thermistor", "x-motor"}) {
      const Bench bench = Bench::shipped(board, harness);
      for (const auto& jumpers : jumper_settings(*bench.board)) {
        for (const Plug& plug : bench.harness->plugs) {
          for (const Header& header : bench.board->headers) {
            const Fitting fitting = bench.fitting({{plug.id, header.id}}, jumpers);
            const Advice advice = advise(fitting, quick);
            const AdapterAdvice adapter = advise_adapter(fitting, advice, quick);
            const std::string name = format("{} '{}' on {} {}", harness, plug.id, board, header.id);
            CAPTURE(name);
            CAPTURE(adapter.summary);
            CHECK(adapter.nothing_to_do == (advice.verdict == Verdict::Mate));
            if (advice.verdict == Verdict::Repin) {
              ++repinned;
              REQUIRE(adapter.plan);
              CHECK(table_pins(fitting, adapter.plan->adapters.front()) ==
                    planned_pins(fitting, *advice.plan, fitting.placements.front()));
            }
            if (advice.verdict == Verdict::Measure || advice.verdict == Verdict::Mate)
              CHECK_FALSE(adapter.plan);
            if (!adapter.plan) continue;
            ++adapted;
            CHECK(told(assess(seen_from_board(fitting, *adapter.plan))) == told(adapter.plan->after));
            CHECK(adapter.plan->after.clean());
            for (const Adapter& one : adapter.plan->adapters) check_table(fitting, one);
            check_contacts(adapter);
            if (!adapter.plan->cures.empty()) continue;
            CHECK(assess(seen_from_cable(fitting, *adapter.plan)).clean());
            CHECK(by_permutation(fitting, *adapter.plan).clean());
          }
        }
      }
    }
  }
  CHECK(repinned >= 20);
  CHECK(adapted > repinned);
}

TEST_CASE("one lead for each plug that needs one") {
  const Bench m7 = Bench::shipped("heron-m7", kite);
  const Fitting one = m7.fitting({{"control", "J9"}, {"trigger", "J10"}}, {{"JP2", "5V"}});
  const AdapterAdvice first = advise_adapter(one, advise(one));
  CHECK(tables(first) == "adapter-J9 1>3:BN:26 AWG 2>2:RD:26 AWG 3>1:OG:26 AWG\n");
  CHECK(first.summary == "'control' on 'J9': a lead between, the cable stays as it is");
  CHECK(first.plan->adapters[0].a.empty.empty());
  CHECK(first.plan->adapters[0].b.empty.empty());

  const Bench a4 = Bench::shipped("heron-a4", kite);
  const Fitting two = a4.fitting({{"control", "J9"}, {"trigger", "J10"}});
  const AdapterAdvice both = advise_adapter(two, advise(two));
  CHECK(tables(both) ==
        "adapter-J9 1>3:BN:26 AWG 2>1:RD:26 AWG 3>2:OG:26 AWG\n"
        "adapter-J10 1>2:BK:26 AWG 2>1:WH:26 AWG\n");
  CHECK(both.summary ==
        "'control' on 'J9' and 'trigger' on 'J10': 2 leads between, the cable stays as it is");
}

TEST_CASE("the wires of cable and lead are in series, with one contact more") {
  const Bench bench = Bench::shipped("heron-m7", kite);
  const Fitting fitting = bench.fitting({{"control", "J9"}}, {{"JP2", "5V"}});
  const AdapterAdvice advice = advise_adapter(fitting, advise(fitting), quick);
  REQUIRE(advice.plan);
  const Lead& lead = advice.plan->harness.plugs[0].leads[1];
  // 26 AWG: 400 mm of wire and 0.02 ohm (boards/README.md).
  const double ohms = wire_resistance(awg(26), Millimetres(400.0)).value + 0.02;
  CHECK(wire_resistance(*lead.gauge, *lead.length).value == doctest::Approx(ohms).epsilon(1e-9));
  CHECK(advice.plan->harness.plugs[0].id == "adapter-J9.B");
}

TEST_CASE("the length that is asked for is judged and bought") {
  const Bench bench = Bench::shipped("heron-m7", kite);
  const Fitting fitting = bench.fitting({{"control", "J9"}}, {{"JP2", "5V"}});
  const Advice advice = advise(fitting, quick);
  const AdapterAdvice longer = advise_adapter(fitting, advice, quick, Millimetres(250.0));
  REQUIRE(longer.plan);
  CHECK(longer.plan->adapters[0].length == Millimetres(250.0));
  // 26 AWG: 300 mm of the cable, 250 mm of the lead, and 0.02 ohm (boards/README.md).
  const Lead& lead = longer.plan->harness.plugs[0].leads[1];
  const double ohms = wire_resistance(awg(26), Millimetres(550.0)).value + 0.02;
  CHECK(wire_resistance(*lead.gauge, *lead.length).value == doctest::Approx(ohms).epsilon(1e-9));
  int wires = 0;
  for (const PartItem& item : parts_list(longer).items) {
    if (item.kind != PartKind::Wire) continue;
    ++wires;
    CHECK(item.length == Millimetres(250.0));
  }
  CHECK(wires == 3);
  CHECK(std::find(longer.plan->steps.begin(), longer.plan->steps.end(),
                  "cut the leads to 250 mm, strip both ends and flag each with its two positions") !=
        longer.plan->steps.end());
  // 8 m of 26 AWG there and as much back.
  const AdapterAdvice far = advise_adapter(fitting, advice, quick, Millimetres(8000.0));
  CHECK_FALSE(far.plan.has_value());
  CHECK(far.summary ==
        "no lead between that ends clean is known: the load of 'probe' gets 4.31 V at best, and needs 4.6 V");
}

TEST_CASE("both ends' wrong seatings are told") {
  const Bench bench = Bench::shipped("heron-m7", kite);
  const Fitting fitting = bench.fitting({{"control", "J9"}}, {{"JP2", "5V"}});
  const AdapterAdvice advice = advise_adapter(fitting, advise(fitting));
  REQUIRE(advice.plan);
  // The cable's plug turned in end A puts BN on A3, which is J9.1: no other than the cable on the header as
  // it was, so the same harm is told.
  const auto turned =
      std::find_if(advice.plan->wrong_a.begin(), advice.plan->wrong_a.end(),
                   [](const SeatingJudgement& w) { return w.seating.words == "turned by 180 degrees"; });
  REQUIRE(turned != advice.plan->wrong_a.end());
  CHECK(turned->worst == Weight::Harm);
  for (const SeatingJudgement& w : advice.plan->wrong_a) CHECK(w.seating.kind != SeatingKind::Neighbour);
  const auto on_board =
      std::find_if(advice.plan->wrong_b.begin(), advice.plan->wrong_b.end(),
                   [](const SeatingJudgement& w) { return w.seating.words == "turned by 180 degrees"; });
  REQUIRE(on_board != advice.plan->wrong_b.end());
  CHECK(on_board->worst == Weight::Harm);
  CHECK(on_board->findings.front().message == turned->findings.front().message);
}

TEST_CASE("a ribbon crosses at splices, since its socket keeps the order") {
  const Bench bench(
      board_of(
          "<header id='J1' use='display' family='box-2.54' positions='6' rows='2' numbering='zigzag'>"
          "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/>"
          "<pin n='3' function='input' signal='button' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 V' "
          "high-above='2 V' pull='up' pull-ohms='10 kohm'/>"
          "<pin n='4' function='unused'/><pin n='5' function='unused'/><pin n='6' "
          "function='unused'/></header>"),
      harness_of("<device id='d' use='display'><terminal id='A' signal='button'/><terminal id='B'/>"
                 "<switch a='A' b='B' rests='open'/></device>"
                 "<plug id='p' family='box-2.54' positions='6' rows='2' numbering='zigzag'>"
                 "<lead cavity='1' colour='GY' gauge='28 AWG' length='200 mm' to='A'/>"
                 "<lead cavity='6' colour='GY' gauge='28 AWG' length='200 mm' to='B'/></plug>"));
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const Advice advice = advise(fitting, quick);
  CHECK(advice.verdict == Verdict::Adapt);
  const AdapterAdvice adapter = advise_adapter(fitting, advice, quick);
  REQUIRE(adapter.plan);
  const Adapter& one = adapter.plan->adapters.at(0);
  CHECK(one.spliced);
  CHECK(tables(adapter) == "adapter-J1 1>3:GY:28 AWG 6>2:GY:28 AWG\n");
  CHECK(one.a.empty == std::vector<int>{2, 3, 4, 5});
  CHECK(one.b.empty == std::vector<int>{1, 4, 5, 6});
  CHECK(one.notes.empty());
  std::vector<std::string> items;
  for (const PartItem& item : parts_list(adapter).items) {
    if (item.kind != PartKind::Tool) items.push_back(format("{} x {}", item.buy(), item.what));
  }
  CHECK(items == std::vector<std::string>{
                     "1 x housing of family 'box-2.54', 6 positions",
                     "1 x header or cable-side counterpart of family 'box-2.54', 6 positions",
                     "2 x flat cable, 6 conductors", "2 x heat-shrink tube, one piece over each lead"});
}

TEST_CASE("a wire whose contact would carry too much is made thicker") {
  // XH carries 3 A at 22 AWG (JST eXH.pdf) and no figure is published for 26 AWG: 1.5 A is more than a third.
  // The cable itself is the limit then, and no lead between helps it.
  const std::string pins = "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>";
  const auto fan = [](const std::string& amps, const std::string& gauge, const std::string& family) {
    return harness_of(
        format("<fan id='f' needs='20..28 V' draws='{}'/><plug id='p' family='{}' positions='2'>"
               "<lead cavity='1' colour='BK' gauge='{}' length='300 mm' to='G'/>"
               "<lead cavity='2' colour='RD' gauge='{}' length='300 mm' to='V'/></plug>",
               amps, family, gauge, gauge));
  };
  struct Row {
    std::string amps, gauge, family, header, expected;
  };
  const std::vector<Row> rows{
      {"0.9 A", "26 AWG", "xh-2.50", "xh-2.50", "adapter-J1 1>2:BK:26 AWG 2>1:RD:26 AWG\n"},
      {"1.5 A", "26 AWG", "kk-2.54", "xh-2.50", "adapter-J1 1>2:BK:22 AWG 2>1:RD:22 AWG\n"},
      {"1.5 A", "26 AWG", "xh-2.50", "xh-2.50",
       "no lead between that ends clean is known: 1.484 A through the contact of adapter-J1.A.1, and no "
       "rating is published for its gauge"},
      {"0.5 A", "18 AWG", "vh-3.96", "ph-2.00",
       "no lead between can be made: no gauge suits contacts of 'vh-3.96' and of 'ph-2.00'"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.amps);
    CAPTURE(row.header);
    const Bench bench(board_of(header_of_pins("fan", 2, pins, row.header)),
                      fan(row.amps, row.gauge, row.family));
    const Fitting fitting = bench.fitting({{"p", "J1"}});
    CHECK(tables(advise_adapter(fitting, advise(fitting, quick), quick)) == row.expected);
  }
}

TEST_CASE("why there is no lead between") {
  struct Row {
    std::string harness, plug, header;
    std::map<std::string, std::string> jumpers;
    bool nothing_to_do;
    std::string summary;
  };
  const std::vector<Row> rows{
      {kite, "trigger", "J10", {}, true, "'trigger' on 'J10': plug it in as it is, without a lead between"},
      {kite,
       "control",
       "J9",
       {},
       false,
       "no lead between cures this: 'control' on 'J9': something must be known first; one measurement "
       "settles it"},
      {"firefly-led-bar",
       "light",
       "J21",
       {},
       false,
       "no lead between cures this: 'light' on 'J21': do not join these; it can damage or hurt, and no move "
       "of contacts "
       "or added part cures it"},
  };
  for (const Row& row : rows) {
    const Bench bench = Bench::shipped("heron-m7", row.harness);
    const Fitting fitting = bench.fitting({{row.plug, row.header}}, row.jumpers);
    const AdapterAdvice advice = advise_adapter(fitting, advise(fitting));
    CHECK_FALSE(advice.plan);
    CHECK(advice.nothing_to_do == row.nothing_to_do);
    CHECK(advice.summary == row.summary);
  }
}
