// SPDX-License-Identifier: MIT
// Whole tables for benches, and a twin: the currents as sums over every snapshot of the circuit.
#include "judge/budget.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "base/file.h"
#include "fit/seating.h"
#include "judge/judgement.h"
#include "judge/words.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string amps(double value) {
  return format("{:.4g}", value);
}

std::string table(const Budget& b) {
  std::string text;
  for (const BudgetRow& row : b.rows) {
    if (row.amps < 0.001) continue;
    text += format("{} {}: {}{} ({}){}\n", to_word(row.kind), row.what, amps(row.amps),
                   row.limit ? " of " + amps(*row.limit) : "", row.basis,
                   row.state.empty() ? "" : " | " + row.state);
  }
  for (const HeaterBudget& h : b.heaters)
    text +=
        format("heater {}: {:.4g}..{:.4g} W of {:.4g}\n", h.what, h.least.value, h.most.value, h.rated.value);
  for (const StringBudget& s : b.strings)
    text += format("string {}: {} x, {:.3g}, {:.4g} A, {:.4g} V{}\n", s.what, s.count, s.brightness,
                   s.draws.value, s.near.value, s.far ? format(", far {:.4g} V", s.far->value) : "");
  for (const FuseBudget& f : b.fuses) text += f.words + "\n";
  return text;
}

}  // namespace

TEST_CASE("tables, whole") {
  struct Row {
    std::string name, board, harness;
    std::map<std::string, std::string> jumpers;
    std::string expected;
  };
  const std::string fan_header =
      header_of_pins("fan", 2,
                     "<pin n='1' function='supply' jumper='JP' limit='1 A'/>"
                     "<pin n='2' function='switched' limit='1 A' ohms='0.1 ohm'/>");
  const std::string fan = "<fan id='f' needs='4..26 V' draws='0.15 A'/>" + plug_of_leads("V G");
  const std::string heat_header =
      header_of_pins("heater", 2,
                     "<pin n='1' function='supply' rail='24V' limit='6 A'/>"
                     "<pin n='2' function='switched' limit='6 A' ohms='0.02 ohm' at-reset='off'/>",
                     "vh-3.96");
  const auto heater = [](int watts, std::string_view gauge) {
    return format(
        "<heater-element id='h' volts='24 V' watts='{} W'/><plug id='p' family='vh-3.96' positions='2'>"
        "<lead cavity='1' colour='RD' gauge='{}' length='1000 mm' to='A'/>"
        "<lead cavity='2' colour='RD' gauge='{}' length='1000 mm' to='B'/></plug>",
        watts, gauge, gauge);
  };
  const std::string led_header = header_of_pins(
      "led", 3,
      "<pin n='1' function='supply' rail='5V' limit='1 A'/><pin n='2' function='output' signal='led-data' "
      "rail='5V' high='4.4..5 V' limit='8 mA'/><pin n='3' function='ground'/>");
  const std::vector<Row> rows{
      {"a jumper that is not stated counts in both positions",
       fan_header,
       fan,
       {},
       R"(supply all rails, from '24V': 0.2396 (where the board is fed is not described)
rail rail '24V': 0.2396 of 10 (rail limit) | JP at 24V, J1.2 on
rail rail '5V': 0.04991 of 2 (rail limit) | JP at 5V, J1.2 on
jumper all pins on jumper JP (V) at 5V: 0.04991 of 2 (limit of its rail) | JP at 5V, J1.2 on
jumper all pins on jumper JP (V) at 24V: 0.2396 of 10 (limit of its rail) | JP at 24V, J1.2 on
header header 'J1' from '5V': 0.04991 of 1 (pin limit) | JP at 5V, J1.2 on
header header 'J1' from '24V': 0.2396 of 1 (pin limit) | JP at 24V, J1.2 on
pin J1.1: 0.2396 of 1 (pin limit) | JP at 24V, J1.2 on
pin J1.2: 0.2396 of 1 (pin limit) | JP at 24V, J1.2 on
contact contact at J1.1: 0.2396 of 3 (contact rating at 22 AWG) | JP at 24V, J1.2 on
wire BK lead in cavity 1 of 'p': 0.2396 of 7 (22 AWG alone in free air) | JP at 24V, J1.2 on
bundle BK lead in cavity 1 of 'p': 0.2396 of 2.5 (22 AWG in a bundle) | JP at 24V, J1.2 on
contact contact at J1.2: 0.2396 of 3 (contact rating at 22 AWG) | JP at 24V, J1.2 on
wire BK lead in cavity 2 of 'p': 0.2396 of 7 (22 AWG alone in free air) | JP at 24V, J1.2 on
bundle BK lead in cavity 2 of 'p': 0.2396 of 2.5 (22 AWG in a bundle) | JP at 24V, J1.2 on
)"},
      {"a jumper that is stated",
       fan_header,
       fan,
       {{"JP", "5V"}},
       R"(supply all rails, from '24V': 0.04991 (where the board is fed is not described)
rail rail '5V': 0.04991 of 2 (rail limit) | J1.2 on
jumper all pins on jumper JP (V) at 5V: 0.04991 of 2 (limit of its rail) | J1.2 on
header header 'J1' from '5V': 0.04991 of 1 (pin limit) | J1.2 on
pin J1.1: 0.04991 of 1 (pin limit) | J1.2 on
pin J1.2: 0.04991 of 1 (pin limit) | J1.2 on
contact contact at J1.1: 0.04991 of 3 (contact rating at 22 AWG) | J1.2 on
wire BK lead in cavity 1 of 'p': 0.04991 of 7 (22 AWG alone in free air) | J1.2 on
bundle BK lead in cavity 1 of 'p': 0.04991 of 2.5 (22 AWG in a bundle) | J1.2 on
contact contact at J1.2: 0.04991 of 3 (contact rating at 22 AWG) | J1.2 on
wire BK lead in cavity 2 of 'p': 0.04991 of 7 (22 AWG alone in free air) | J1.2 on
bundle BK lead in cavity 2 of 'p': 0.04991 of 2.5 (22 AWG in a bundle) | J1.2 on
)"},
      {"a heater on its output",
       heat_header,
       heater(40, "18 AWG"),
       {},
       R"(supply all rails, from '24V': 1.655 (where the board is fed is not described)
rail rail '24V': 1.655 of 10 (rail limit) | J1.2 on
header header 'J1' from '24V': 1.655 of 6 (pin limit) | J1.2 on
pin J1.1: 1.655 of 6 (pin limit) | J1.2 on
pin J1.2: 1.655 of 6 (pin limit) | J1.2 on
contact contact at J1.1: 1.655 of 7 (contact rating at 18 AWG) | J1.2 on
wire RD lead in cavity 1 of 'p': 1.655 of 16 (18 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 1 of 'p': 1.655 of 5 (18 AWG in a bundle) | J1.2 on
contact contact at J1.2: 1.655 of 7 (contact rating at 18 AWG) | J1.2 on
wire RD lead in cavity 2 of 'p': 1.655 of 16 (18 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 2 of 'p': 1.655 of 5 (18 AWG in a bundle) | J1.2 on
heater h: 39.44..39.44 W of 40
'p': a blade fuse of 3 A; 1.655 A flow, and the narrowest place takes 7 A (contact rating at 18 AWG)
)"},
      {"a bed whose next fuse is more than the contact takes",
       heat_header,
       heater(200, "16 AWG"),
       {},
       R"(supply all rails, from '24V': 8.091 (where the board is fed is not described)
rail rail '24V': 8.091 of 10 (rail limit) | J1.2 on
header header 'J1' from '24V': 8.091 of 6 (pin limit) | J1.2 on
pin J1.1: 8.091 of 6 (pin limit) | J1.2 on
pin J1.2: 8.091 of 6 (pin limit) | J1.2 on
contact contact at J1.1: 8.091 of 10 (contact rating at 16 AWG) | J1.2 on
wire RD lead in cavity 1 of 'p': 8.091 of 22 (16 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 1 of 'p': 8.091 of 6 (16 AWG in a bundle) | J1.2 on
contact contact at J1.2: 8.091 of 10 (contact rating at 16 AWG) | J1.2 on
wire RD lead in cavity 2 of 'p': 8.091 of 22 (16 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 2 of 'p': 8.091 of 6 (16 AWG in a bundle) | J1.2 on
heater h: 188.5..188.5 W of 200
'p': no blade fuse suits; 8.091 A flow, and the narrowest place takes 10 A (contact rating at 16 AWG): a fuse of 15 A wants contacts for 15 A
)"},
      {"a heater whose next fuse is more than the leads stand",
       heat_header,
       heater(100, "22 AWG"),
       {},
       R"(supply all rails, from '24V': 4.05 (where the board is fed is not described)
rail rail '24V': 4.05 of 10 (rail limit) | J1.2 on
header header 'J1' from '24V': 4.05 of 6 (pin limit) | J1.2 on
pin J1.1: 4.05 of 6 (pin limit) | J1.2 on
pin J1.2: 4.05 of 6 (pin limit) | J1.2 on
contact contact at J1.1: 4.05 (no contact rating of 'vh-3.96' at 22 AWG is published) | J1.2 on
wire RD lead in cavity 1 of 'p': 4.05 of 7 (22 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 1 of 'p': 4.05 of 2.5 (22 AWG in a bundle) | J1.2 on
contact contact at J1.2: 4.05 (no contact rating of 'vh-3.96' at 22 AWG is published) | J1.2 on
wire RD lead in cavity 2 of 'p': 4.05 of 7 (22 AWG alone in free air) | J1.2 on
bundle RD lead in cavity 2 of 'p': 4.05 of 2.5 (22 AWG in a bundle) | J1.2 on
heater h: 94.48..94.48 W of 100
'p': no blade fuse suits; 4.05 A flow, and the narrowest place takes 5 A (22 AWG in a bundle; not all of its wires and contacts are known): a fuse of 7.5 A wants leads of 20 AWG or thicker
)"},
      {"a heater of which nothing is known",
       heat_header,
       "<heater-element id='h' volts='24 V' watts='40 W'/><plug id='p' family='vh-3.96' positions='2'>"
       "<lead cavity='1' colour='RD' to='A'/><lead cavity='2' colour='RD' to='B'/></plug>",
       {},
       R"(supply all rails, from '24V': 1.648 (where the board is fed is not described)
rail rail '24V': 1.648 of 10 (rail limit) | J1.2 on
header header 'J1' from '24V': 1.648 of 6 (pin limit) | J1.2 on
pin J1.1: 1.648 of 6 (pin limit) | J1.2 on
pin J1.2: 1.648 of 6 (pin limit) | J1.2 on
contact contact at J1.1: 1.648 (contact rating not known: the lead's gauge is not stated) | J1.2 on
contact contact at J1.2: 1.648 (contact rating not known: the lead's gauge is not stated) | J1.2 on
heater h: 39.13..39.13 W of 40
'p': 1.648 A flow; which fuse suits cannot be told: what its wires and contacts may carry is not known
)"},
      {"LEDs at a part of their brightness, tracks stated",
       led_header,
       "<led-string id='bar' count='30' brightness='40 %' loop='0.5 ohm' needs='4.5..5.5 V'/>" +
           plug_of_leads("V D G"),
       {},
       R"(supply all rails, from '24V': 0.7126 (where the board is fed is not described)
rail rail '5V': 0.7126 of 2 (rail limit)
header header 'J1' from '5V': 0.7126 of 1 (pin limit)
pin J1.1: 0.7126 of 1 (pin limit)
pin J1.3: 0.7126 (pin limit not stated)
contact contact at J1.1: 0.7126 of 3 (contact rating at 22 AWG)
wire BK lead in cavity 1 of 'p': 0.7126 of 7 (22 AWG alone in free air)
bundle BK lead in cavity 1 of 'p': 0.7126 of 2.5 (22 AWG in a bundle)
contact contact at J1.3: 0.7126 of 3 (contact rating at 22 AWG)
wire BK lead in cavity 3 of 'p': 0.7126 of 7 (22 AWG alone in free air)
bundle BK lead in cavity 3 of 'p': 0.7126 of 2.5 (22 AWG in a bundle)
string bar: 30 x, 0.4, 0.72 A, 4.949 V, far 4.769 V
)"},
      {"a motor takes what its driver is set to",
       header_of_pins("motor", 4,
                      "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1.8 A'/>"
                      "<pin n='2' function='coil' coil='1' end='B' rail='24V' limit='1.8 A'/>"
                      "<pin n='3' function='coil' coil='2' end='A' rail='24V' limit='1.8 A'/>"
                      "<pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1.8 A'/>"),
       "<motor id='m' ohms='2 ohm' amps='1.2 A'/>" + plug_of_leads("A1 B1 A2 B2"),
       {},
       R"(supply all rails, from '24V': 1.67 (where the board is fed is not described)
rail rail '24V': 1.67 of 10 (rail limit) | J1.1 high, J1.2 low, J1.3 high, J1.4 low
pin J1.1: 1.2 of 1.8 (pin limit) | J1.1 high, J1.2 low
pin J1.2: 1.2 of 1.8 (pin limit) | J1.1 low, J1.2 high
pin J1.3: 1.2 of 1.8 (pin limit) | J1.3 high, J1.4 low
pin J1.4: 1.2 of 1.8 (pin limit) | J1.3 low, J1.4 high
contact contact at J1.1: 1.2 of 3 (contact rating at 22 AWG) | J1.1 high, J1.2 low
wire BK lead in cavity 1 of 'p': 1.2 of 7 (22 AWG alone in free air) | J1.1 high, J1.2 low
bundle BK lead in cavity 1 of 'p': 1.2 of 2.5 (22 AWG in a bundle) | J1.1 high, J1.2 low
contact contact at J1.2: 1.2 of 3 (contact rating at 22 AWG) | J1.1 low, J1.2 high
wire BK lead in cavity 2 of 'p': 1.2 of 7 (22 AWG alone in free air) | J1.1 low, J1.2 high
bundle BK lead in cavity 2 of 'p': 1.2 of 2.5 (22 AWG in a bundle) | J1.1 low, J1.2 high
contact contact at J1.3: 1.2 of 3 (contact rating at 22 AWG) | J1.3 high, J1.4 low
wire BK lead in cavity 3 of 'p': 1.2 of 7 (22 AWG alone in free air) | J1.3 high, J1.4 low
bundle BK lead in cavity 3 of 'p': 1.2 of 2.5 (22 AWG in a bundle) | J1.3 high, J1.4 low
contact contact at J1.4: 1.2 of 3 (contact rating at 22 AWG) | J1.3 low, J1.4 high
wire BK lead in cavity 4 of 'p': 1.2 of 7 (22 AWG alone in free air) | J1.3 low, J1.4 high
bundle BK lead in cavity 4 of 'p': 1.2 of 2.5 (22 AWG in a bundle) | J1.3 low, J1.4 high
)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.board), harness_of(row.harness));
    CHECK(table(budget(bench.fitting({{"p", "J1"}}, row.jumpers))) == row.expected);
  }
}

TEST_CASE("where limits come from is told, and a lead's loss is that of its length, gauge and temperature") {
  const Bench bench(board_of(header_of_pins(
                        "fan", 2, "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>")),
                    harness_of("<fan id='f' needs='24 V' draws='1 A'/>" + plug_of_leads("V G")));
  const Budget b = budget(bench.fitting({{"p", "J1"}}), {.warm = Celsius(80.0)});
  std::map<std::string, std::string> sources;
  for (const BudgetRow& row : b.rows) sources[std::string(to_word(row.kind))] = row.source;
  CHECK(sources ==
        std::map<std::string, std::string>{{"supply", ""},
                                           {"rail", "the board file"},
                                           {"header", ""},
                                           {"pin", ""},
                                           {"contact", "JST eXH.pdf (quoted)"},
                                           {"wire",
                                            "chassis wiring: Handbook of Electronic Tables and Formulas, as "
                                            "copied in \"AWG Current Capacity\""},
                                           {"bundle", "TFE wire, bundled: archived \"wire table\" page"}});
  REQUIRE(b.losses.size() == 2);
  const LeadLoss& loss = b.losses[0];
  CHECK(loss.what == "BK lead in cavity 1 of 'p'");
  // 300 mm of 22 AWG: 52.962 ohm/km x 0.3 m = 15.89 mohm; copper + 23.58 % at 80 C.
  CHECK(loss.cold.value == doctest::Approx(loss.amps * 0.015889).epsilon(1e-4));
  CHECK(loss.warm.value == doctest::Approx(loss.cold.value * 1.2358).epsilon(1e-4));
  CHECK(*loss.share_both_ways() == doctest::Approx(2 * loss.cold.value / 24.0));
  CHECK(!b.losses[1].share_both_ways());  // ground: its supply lead says it
}

TEST_CASE("states with a short circuit are left out, and that is said") {
  const Bench bench(board_of(header_of_pins("limit", 2,
                                            "<pin n='1' function='supply' rail='5V'/><pin n='2' "
                                            "function='ground'/>")),
                    harness_of("<dry-switch id='s' use='limit' rests='open'/>" + plug_of_leads("A B")));
  const Budget b = budget(bench.fitting({{"p", "J1"}}));
  CHECK(b.shorted);
  CHECK(table(b) == "");
}

// The twin
// ---------------------------------------------------------------------------------------------------

namespace {

bool is(const Locus& l, int header, int pin, int device, int terminal, int rail) {
  return l.header == header && l.pin == pin && l.device == device && l.terminal == terminal && l.rail == rail;
}

/// Every figure of the budget, from the snapshots alone.
struct Twin {
  const Fitting& fitting;
  std::vector<Contact> contacts;
  std::map<Contact, double> contact;
  std::map<std::pair<int, std::string>, std::map<std::vector<double>, double>>
      of_header;                                          // (header, island) -> corner -> A
  std::map<std::pair<int, std::string>, double> of_rail;  // (rail, island)

  explicit Twin(const Fitting& f) : fitting(f) {
    for (const Placement& p : fitting.placements) {
      const Plug& plug = plug_of(fitting, p.plug);
      const Seating home = home_seating(plug, p.header, *fitting.board);
      for (std::size_t l = 0; l < plug.leads.size(); ++l) {
        const int pin = home.pin_of_cavity[static_cast<std::size_t>(plug.leads[l].cavity) - 1];
        if (pin != 0) contacts.push_back({p.plug, static_cast<int>(l), p.header, pin});
      }
    }
    for_each_snapshot(fitting, contacts, {}, [&](const Snapshot& s) { count(s); });
  }

  int rail_of(const Contact& c) const {
    const Pin& pin = pin_of(fitting, c);
    const std::string& id = pin.jumper.empty() ? pin.rail : fitting.jumpers.at(pin.jumper);
    for (std::size_t r = 0; r < fitting.board->rails.size(); ++r) {
      if (fitting.board->rails[r].id == id) return static_cast<int>(r);
    }
    return -1;
  }

  static double contact_ohms(const Lead& lead) {
    return 0.02 + (lead.gauge && lead.length ? wire_resistance(*lead.gauge, *lead.length).value : 0.05);
  }

  /// Out of the pin; nothing when the contact is in another island.
  std::optional<double> amps(const Snapshot& s, const Contact& c) const {
    const Lead& lead = lead_of(fitting, c);
    if (!lead.to) return std::nullopt;
    const PinFunction function = pin_of(fitting, c).function;
    for (std::size_t i = 0; i < s.network.resistors.size(); ++i) {
      const auto& r = s.network.resistors[i];
      if (std::abs(r.ohms - contact_ohms(lead)) > 1e-12) continue;
      for (const bool turned : {false, true}) {
        const int near = turned ? r.b : r.a, far = turned ? r.a : r.b;
        const Locus& pin = s.nodes[static_cast<std::size_t>(near)].locus;
        const Locus& end = s.nodes[static_cast<std::size_t>(far)].locus;
        const bool at_pin = function == PinFunction::Ground   ? near == 0
                            : function == PinFunction::Supply ? is(pin, -1, -1, -1, -1, rail_of(c))
                                                              : is(pin, c.header, c.pin, -1, -1, -1);
        if (at_pin && is(end, -1, -1, lead.to->device, lead.to->terminal, -1))
          return (turned ? -1 : 1) * s.solution.resistor_amps(s.network, i);
      }
    }
    return std::nullopt;
  }

  void count(const Snapshot& s) {
    std::string island;
    for (const NodeInfo& node : s.nodes) island += node.name + " ";
    std::vector<double> corner(fitting.board->rails.size(), 0.0);
    std::map<int, int> node_of_rail;
    for (const auto& fixed : s.network.fixed) {
      const int rail = s.nodes[static_cast<std::size_t>(fixed.node)].locus.rail;
      if (rail < 0) continue;
      corner[static_cast<std::size_t>(rail)] = fixed.volts;
      node_of_rail[rail] = fixed.node;
    }
    std::map<int, double> headers;
    for (const Contact& c : contacts) {
      const auto a = amps(s, c);
      if (!a) continue;
      contact[c] = std::max(contact[c], std::abs(*a));
      if (pin_of(fitting, c).function == PinFunction::Supply) headers[c.header] += *a;
    }
    for (const auto& [header, sum] : headers) {
      auto& here = of_header[{header, island}];
      here[corner] = here.contains(corner) ? std::max(here[corner], sum) : sum;
    }
    for (const auto& [rail, node] : node_of_rail) {
      double sum = 0;
      for (std::size_t i = 0; i < s.network.resistors.size(); ++i) {
        if (s.network.resistors[i].a == node) sum += s.solution.resistor_amps(s.network, i);
        if (s.network.resistors[i].b == node) sum -= s.solution.resistor_amps(s.network, i);
      }
      for (std::size_t i = 0; i < s.network.diodes.size(); ++i) {
        if (s.network.diodes[i].anode == node) sum += s.solution.diode_amps(s.network, i);
        if (s.network.diodes[i].cathode == node) sum -= s.solution.diode_amps(s.network, i);
      }
      of_rail[{rail, island}] = std::max(of_rail[{rail, island}], sum);
    }
  }

  double of_contact(const Contact& c) const {
    INFO(pin_name(fitting, c));
    REQUIRE(contact.contains(c));
    return contact.at(c);
  }

  double rail(int index) const {
    double sum = 0;
    for (const auto& [key, most] : of_rail) sum += key.first == index ? most : 0.0;
    return sum;
  }
};

std::vector<std::string> shipped(const std::string& folder, const std::string& root) {
  std::vector<std::string> names;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(PLUGWARD_SOURCE_DIR) + "/" + folder)) {
    const bool described = entry.path().extension() == ".xml" &&
                           read_file(entry.path().string()).find("\n<" + root + " ") != std::string::npos;
    if (described) names.push_back(entry.path().stem().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

/// A device with a supply of its own also has states without power, which are no part of a budget.
bool has_own_supply(const Harness& harness) {
  return std::any_of(harness.devices.begin(), harness.devices.end(), [](const Device& device) {
    return std::any_of(device.parts.begin(), device.parts.end(),
                       [](const Part& part) { return std::holds_alternative<Source>(part); });
  });
}

}  // namespace

TEST_CASE("every shipped pair: contacts, headers and rails as summed over every state of the circuit") {
  int compared = 0;
  for (const std::string& board : shipped("boards", "board")) {
    for (const std::string& name : shipped("harnesses", "harness")) {
      const Bench bench = Bench::shipped(board, name);
      if (has_own_supply(*bench.harness)) continue;
      std::map<std::string, std::string> jumpers;
      for (const Jumper& jumper : bench.board->jumpers) jumpers[jumper.id] = jumper.rails.back();
      for (const Plug& plug : bench.harness->plugs) {
        for (const Header& header : bench.board->headers) {
          const Fitting fitting = bench.fitting({{plug.id, header.id}}, jumpers);
          const Budget b = budget(fitting);
          if (b.shorted || b.cut_short) continue;  // whose states the snapshots do not mark
          CAPTURE(board);
          CAPTURE(plug.id);
          CAPTURE(header.id);
          const Twin twin(fitting);
          for (const BudgetRow& row : b.rows) {
            CAPTURE(row.what);
            if (row.kind == BudgetKind::Rail) {
              CHECK(row.amps == doctest::Approx(twin.rail(row.at.rail)).epsilon(1e-9).scale(1.0));
              ++compared;
            }
            if (row.kind == BudgetKind::Contact) {
              const Contact c{row.at.plug, row.at.lead, row.at.header, row.at.pin};
              const Pin& pin = pin_of(fitting, c);
              if (pin.function == PinFunction::Coil) {
                CHECK(row.amps <= pin.limit->value);  // set, not solved
              } else {
                CHECK(row.amps == doctest::Approx(twin.of_contact(c)).epsilon(1e-9).scale(1.0));
              }
              ++compared;
            }
            if (row.kind == BudgetKind::Header) {
              double sum = 0;
              int islands = 0;
              for (const auto& [key, by_corner] : twin.of_header) {
                if (key.first != row.at.header) continue;
                ++islands;
                double best = -1e9;
                for (const auto& [corner, value] : by_corner) best = std::max(best, value);
                sum += best;
              }
              if (islands == 1) {
                CHECK(row.amps == doctest::Approx(std::max(0.0, sum)).epsilon(1e-9).scale(1.0));
              } else {
                CHECK(row.amps <= sum + 1e-9);
              }
              ++compared;
            }
          }
        }
      }
    }
  }
  CHECK(compared > 1000);
}
