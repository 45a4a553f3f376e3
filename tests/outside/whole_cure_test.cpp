// SPDX-License-Identifier: MIT
// Whole cures, from the descriptions to parts that were judged, for cases that are published or follow from
// published figures by arithmetic. What is published and wrong is built in by hand and must not judge clean.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

struct Row {
  std::string name;
  std::string source;  ///< of the case
  std::string header;
  std::string harness;
  std::string expected;       ///< "ADAPT: divider, a voltage divider of ... | readings", or the verdict alone
  std::string volts = "5 V";  ///< of the rail '5V'
};

Bench bench_of(const std::string& header, const std::string& harness, const std::string& volts = "5 V") {
  std::string board = board_of(header);
  const std::string rail = "<rail id='5V' volts='5 V'";
  board.replace(board.find(rail), rail.size(), "<rail id='5V' volts='" + volts + "'");
  return Bench(board, harness_of(harness));
}

/// Node 'O', the output behind the resistors, is no terminal that a lead could go to.
Fitting with_inner_node(const Bench& bench) {
  Device& device = bench.harness->devices.front();
  if (const auto node = device.terminal("O")) device.terminals[static_cast<std::size_t>(*node)].inner = true;
  return bench.fitting({{"p", "J1"}});
}

/// The verdict, and of every cure its kind and name, and what its last step says that a meter reads.
std::string cures_of(const Advice& advice) {
  std::string text(to_word(advice.verdict));
  for (const Cure& cure : advice.cures) {
    text += format("\n{}: {}", cure.kind, cure.name);
    const std::string& last = cure.steps.back();
    const std::size_t begin = last.find("both states: ");
    if (begin != std::string::npos)
      text += format(" | {}", last.substr(begin + 13, last.find(';') - begin - 13));
  }
  return text;
}

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    const Bench bench = bench_of(row.header, row.harness, row.volts);
    const Fitting fitting = with_inner_node(bench);
    const Advice advice = advise(fitting, {.wrong_seatings = false});
    const std::string name = row.name + " (" + row.source + ")\n" + told(advice.now) + advice.summary;
    CAPTURE(name);
    const std::string got = cures_of(advice);
    CHECK(got == row.expected);
    CHECK(advice.cured.has_value() == !advice.cures.empty());
    if (!advice.cured) continue;
    Fitting changed = fitting;
    changed.harness = &*advice.cured;
    CHECK(assess(changed).clean());
    // Where a lead is missing there is nothing else to be looked at.
    for (const Cure& cure : advice.cures) CHECK(cure.next_best.empty() == (cure.kind == "lead"));
  }
}

/// Published, and wrong: the worst rule that speaks against it.
struct WrongRow {
  std::string name;
  std::string source;
  std::string header;
  std::string harness;
  Rule against{};
};

void check_wrong(const std::vector<WrongRow>& rows) {
  for (const WrongRow& row : rows) {
    const Bench bench = bench_of(row.header, row.harness);
    const Assessment seen = assess(with_inner_node(bench));
    const std::string name = row.name + " (" + row.source + ")\n" + told(seen);
    CAPTURE(name);
    CHECK_FALSE(seen.clean());
    CHECK(std::any_of(seen.findings.begin(), seen.findings.end(),
                      [&](const Finding& f) { return f.rule == row.against && f.weight != Weight::Note; }));
  }
}

std::string supply(int n, const std::string& rail, const std::string& more = "limit='1 A'") {
  return format("<pin n='{}' function='supply' rail='{}' {}/>", n, rail, more);
}
std::string ground(int n) {
  return format("<pin n='{}' function='ground'/>", n);
}
/// An input of a 3.3 V controller that is not tolerant: VDD + 0.3 V (STM32F103x6 data sheet).
std::string input(int n, const std::string& more = "", const std::string& withstands = "3.6 V") {
  return format(
      "<pin n='{}' function='input' signal='sensor' rail='3V3' withstands='-0.3..{}' "
      "low-below='0.8 V' high-above='2 V' {}/>",
      n, withstands, more);
}

}  // namespace

TEST_CASE("addressable LEDs") {
  // WS2812B data sheet: high from 0.7 of the supply, at most 5.3 V; three power guides: 60 mA each.
  const std::string sheet = "WS2812B data sheet";
  const auto header = [](const std::string& rail, const std::string& high) {
    return header_of_pins("led", 3,
                          supply(1, rail) +
                              format("<pin n='2' function='output' signal='led-data' rail='5V' high='{}' "
                                     "limit='20 mA'/>",
                                     high) +
                              ground(3));
  };
  const auto leds = [](int count, const std::string& each, const std::string& leads = "V D G") {
    return format("<led-string id='l' count='{}' each='{}' out='yes'/>", count, each) + plug_of_leads(leads);
  };
  const std::string one = leds(1, "1 mA");
  check({
      {"5.0 V, data 3.3 V: 3.50 V asked for, short by 0.20 V", sheet, header("5V", "3.3 V"), one,
       "ADAPT\nlevel-buffer: a level buffer of the 74HCT family | 4.90..5.00 V when high and 0.00..0.10 V "
       "when low"},
      {"4.5 V, data 3.3 V: 3.15 V asked for", sheet, header("5V", "3.3 V"), one, "MATE", "4.5 V"},
      {"highest supply for 3.3 V: 3.3 / 0.7 = 4.714 V; below it", sheet, header("5V", "3.3 V"), one, "MATE",
       "4.714 V"},
      {"and above it", sheet, header("5V", "3.3 V"), one,
       "ADAPT\nlevel-buffer: a level buffer of the 74HCT family | 4.61..4.72 V when high and 0.00..0.10 V "
       "when low",
       "4.715 V"},
      {"guaranteed 3.3 V - 0.2 V: 3.1 / 0.7 = 4.429 V; 4.5 V is beyond it",
       sheet + "; FPGA \"Single-Ended I/O Standards\"", header("5V", "3.1 V"), one,
       "ADAPT\nlevel-buffer: a level buffer of the 74HCT family | 4.40..4.50 V when high and 0.00..0.10 V "
       "when low",
       "4.5 V"},
      {"guaranteed 2.4 V of LVTTL: 3.43 V, below what the LED works from",
       sheet + "; chip maker's \"3.3V LVTTL\" page", header("5V", "2.4 V"), one,
       "ADAPT\nlevel-buffer: a level buffer of the 74HCT family | 4.40..4.50 V when high and 0.00..0.10 V "
       "when low",
       "4.5 V"},
      {"5.25 V, data 3.3 V: 3.675 V asked for", sheet, header("5V", "3.3 V"), one,
       "ADAPT\nlevel-buffer: a level buffer of the 74HCT family | 5.15..5.25 V when high and 0.00..0.10 V "
       "when low",
       "5.25 V"},
      {"5.0 V, data through 74HCT: 4.4 V", sheet + "; \"Logic levels\"", header("5V", "4.4..5 V"), one,
       "MATE"},
      {"on 12 V", sheet, header("12V", "4.4..5 V"), one, "ADAPT\nregulator: a step-down regulator to 5 V"},
      {"on 24 V", sheet, header("24V", "4.4..5 V"), one, "ADAPT\nregulator: a step-down regulator to 5 V"},
      {"30 LEDs, 1.8 A full white, pin of 1 A", "three LED-strip power guides", header("5V", "4.4..5 V"),
       leds(30, "60 mA"), "APART"},
      {"30 LEDs at 20 mA, 0.6 A", "three LED-strip power guides", header("5V", "4.4..5 V"), leds(30, "20 mA"),
       "MATE"},
      {"data out instead of data in", sheet, header("5V", "4.4..5 V"), leds(1, "1 mA", "V Q G"),
       "ADAPT\nlead: a lead from terminal 'D'"},
  });
  check_wrong({
      {"5 V LEDs on 12 V as they are", "seller page that gives 3.5..7.5 V: beyond the sheet's 5.3 V",
       header("12V", "4.4..5 V"),
       "<led-string id='l' count='1' each='1 mA' needs='3.5..7.5 V'/>" + plug_of_leads("V D G"),
       Rule::SupplyTooHigh},
  });
}

TEST_CASE("LEDs by the sheet on 7 V, which a seller allows") {
  // Wrong on a seller page: 3.5..7.5 V. WS2812B data sheet: 5.3 V at most.
  std::string board = board_of(header_of_pins(
      "led", 3,
      supply(1, "12V") + "<pin n='2' function='output' signal='led-data' rail='5V' high='4.4..5 V'/>" +
          ground(3)));
  const std::string rail = "<rail id='12V' volts='12 V'";
  board.replace(board.find(rail), rail.size(), "<rail id='12V' volts='7 V'");
  const Bench bench(board, harness_of("<led-string id='l' count='1' each='1 mA'/>" + plug_of_leads("V D G")));
  const Assessment seen = assess(bench.fitting({{"p", "J1"}}));
  REQUIRE(!seen.findings.empty());
  CHECK(seen.findings.front().rule == Rule::SupplyTooHigh);
  CHECK(seen.findings.front().message == "the load of 'l' gets 7 V, and takes 5.3 V at most");
}

TEST_CASE("colour strips with a common plus") {
  const std::string source = "two RGB wiring pages: the fourth wire is plus, R, G and B are switched minuses";
  const std::string strip = "<rgb-strip id='s' volts='11..13 V' draws='0.2 A'/>" + plug_of_leads("V R G B");
  const auto low_side = [](const std::string& rail) {
    std::string pins = supply(1, rail, "limit='2 A'");
    for (int n = 2; n <= 4; ++n) {
      pins += format("<pin n='{}' function='switched' ohms='0.05 ohm' limit='1 A' at-reset='off'/>", n);
    }
    return header_of_pins("led", 4, pins);
  };
  const std::string plus_each =
      header_of_pins("led", 4, ground(1) + supply(2, "12V") + supply(3, "12V") + supply(4, "12V"));
  check({
      {"on low-side switches", source, low_side("12V"), strip, "MATE"},
      {"on plus for each colour", source, plus_each, strip, "APART"},
      {"12 V strip on 24 V", source, low_side("24V"), strip, "ADAPT"},
  });
  check_wrong({{"fourth wire taken for ground", "two other pages, wrong for strips with a common plus",
                plus_each, strip, Rule::ReversedSupply}});
}

TEST_CASE("sensors of 10..30 V on inputs of a 3.3 V controller") {
  const auto sensor = [](const std::string& more, const std::string& needs = "10..30 V") {
    return format("<proximity id='q' needs='{}' draws='15 mA' {}/>", needs, more) + plug_of_leads("V G Q");
  };
  const auto header = [](const std::string& rail, const std::string& pin) {
    return header_of_pins("sensor", 3, supply(1, rail) + ground(2) + pin);
  };
  const std::string sheet = "sensor data sheets 911276_eng and NBB5-18GK50-E2-5M";
  const std::string pulled = "pull='up' pull-ohms='10 kohm'";
  check({
      {"10..30 V on 5 V", sheet, header("5V", input(3, pulled)),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='10 uA'"), "ADAPT\nsupply: a supply of 24 V"},
      {"sourcing, 24 V less 3 V", "NBB5-18GK50-E2-5M", header("24V", input(3)),
       sensor("kind='sourcing' drop='3 V' leak='0.5 mA'"),
       "ADAPT\ndivider: a voltage divider of 9.1 kohm and 1.2 kohm | 2.40..2.85 V when high and 0.00..0.61 V "
       "when low"},
      {"sinking with a resistor of its own to 24 V", "issue thread on inductive limit switches",
       header("24V", input(3, pulled, "5.5 V")),
       sensor("kind='sinking' drop='0.3 V' leak='10 uA' pull='10 kohm'"),
       "ADAPT\nseries-diode: a Schottky diode in the lead | 3.30 V when high and 0.30..0.61 V when "
       "low"},
      {"the same with a drop of 2 V: low is not low behind a diode",
       "911276_eng: drop up to 2 V; \"24V input optocoupler selection\": 1.2 V, 10 mA, 2.2 kohm",
       header("24V", input(3, pulled, "5.5 V")),
       sensor("kind='sinking' drop='2 V' leak='10 uA' pull='10 kohm'"),
       "ADAPT\noptocoupler: an optocoupler with 2.2 kohm | 3.29..3.30 V when high and 0.00..0.41 V when low"},
      {"0.5 mA leak into a pull-up", "NBB5-18GK50-E2-5M; arithmetic", header("3V3", input(3)),
       sensor("kind='sinking' pull='none' drop='0.3 V' leak='0.5 mA'", "3..5 V"),
       "ADAPT\npull-up: a pull-up of 2.2 kohm | 2.14..3.30 V when high and 0.00..0.31 V when low"},
      {"sinking where only 5 V is near: a divided pull-up (common practice, no source)", "arithmetic",
       header("5V", input(3)), sensor("kind='sinking' pull='none' drop='0.3 V' leak='10 uA'", "4..6 V"),
       "ADAPT\npull-up: a pull-up of 18 kohm with 22 kohm to ground | 2.62..2.78 V when high and 0.00..0.31 "
       "V when low"},
      {"the same against a pull-down inside (common practice, no source)", "arithmetic",
       header("5V", input(3, "pull='down'")),
       sensor("kind='sinking' pull='none' drop='0.3 V' leak='10 uA'", "4..6 V"),
       "ADAPT\npull-up: a pull-up of 15 kohm with 30 kohm to ground | 2.56..2.69 V when high and 0.00..0.31 "
       "V when low"},
      {"a switch to ground against a pull-down inside (common practice, no source)", "arithmetic",
       header_of_pins("limit", 3,
                      supply(1, "5V") + ground(2) +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' "
                          "low-below='0.8 V' high-above='2 V' pull='down'/>"),
       "<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- A B"), "ADAPT"},
      {"sourcing 3.3 V, nothing pulls it down",
       "\"3 Wires Inductive Proximity Sensors\" catalogue: its load is to minus", header("3V3", input(3)),
       sensor("kind='sourcing' drop='0.4 V' leak='0.1 mA'", "3..5 V"),
       "ADAPT\npull-down: a pull-down of 6.2 kohm | 2.89..3.30 V when high and 0.00..0.66 V when low"},
  });
}

TEST_CASE("a series resistor before a protection diode, where no divider does it") {
  // STM32F107 data sheet p. 55: +-5 mA. (5.5 V - 3.3 V - 0.3 V) / 2.5 mA = 760 ohm, 800 ohm less 5 %
  // (arithmetic; half of what is allowed: common practice, no source).
  check({{"5 V into 3.3 V", "STM32F107 data sheet p. 55",
          header_of_pins("sensor", 3,
                         supply(1, "5V", "limit='2 A'") + ground(2) +
                             "<pin n='3' function='input' signal='sensor' rail='3V3' clamp='3V3' "
                             "injection='5 mA' low-below='0.8 V' high-above='3 V' pull='down' "
                             "pull-ohms='10 kohm'/>"),
          "<proximity id='q' needs='4..6 V' draws='15 mA' kind='sourcing' drop='0 V' leak='0.01 mA'/>" +
              plug_of_leads("V G Q"),
          "ADAPT\nseries-resistor: a series resistor of 820 ohm | 3.60..3.61 V when high and 0.00..0.10 V "
          "when low",
          "4.5..5.5 V"}});
}

TEST_CASE("published dividers that do not suit, built in by hand") {
  const auto built = [](const std::string& needs, const std::string& drop, const std::string& upper,
                        const std::string& lower) {
    return format(
               "<device id='q' use='sensor'><terminal id='V' function='supply'/><terminal id='G' "
               "function='ground'/>"
               "<terminal id='Q' function='output' signal='sensor'/><terminal id='O'/>"
               "<load plus='V' minus='G' needs='{}' draws='15 mA'/>"
               "<driver terminal='O' plus='V' minus='G' kind='sourcing' drop='{}' leak='0.01 mA' "
               "pull='none'/>"
               "<resistor a='O' b='Q' ohms='{}'/><resistor a='Q' b='G' ohms='{}'/></device>",
               needs, drop, upper, lower) +
           plug_of_leads("V G Q");
  };
  const auto header = [](const std::string& rail) {
    return header_of_pins("sensor", 3, supply(1, rail) + ground(2) + input(3));
  };
  check_wrong({
      {"287 kohm and 31.6 kohm at 10..12 V: 0.69 V at the worst",
       "\"24V to 3.3V level conversion circuit\", for 24 V", header("12V"),
       built("10..30 V", "3 V", "287 kohm", "31.6 kohm"), Rule::LevelHigh},
      {"10 kohm above 47 kohm, printed as 0.877 V and in truth 4.123 V", "voltage-divider note, in error",
       header("5V"), built("4..6 V", "0 V", "10 kohm", "47 kohm"), Rule::Overvoltage},
      {"no divider", "24 V straight on an input", header("24V"),
       built("10..30 V", "3 V", "0.01 ohm", "1000 kohm"), Rule::Overvoltage},
  });
  // "Sinking output switch" thread: 6.8 kohm and 1 kohm give 3.08 V at 24 V, and 3.846 V at 30 V.
  std::string board = board_of(header("24V"));
  const Bench right(board, harness_of(built("10..30 V", "3 V", "6.8 kohm", "1 kohm")));
  CHECK(told(assess(with_inner_node(right))) == "");
  const std::string rail = "<rail id='24V' volts='24 V'";
  board.replace(board.find(rail), rail.size(), "<rail id='24V' volts='30 V'");
  const Bench high(board, harness_of(built("10..30 V", "3 V", "6.8 kohm", "1 kohm")));
  CHECK(told(assess(with_inner_node(high))) ==
        "harm overvoltage: 3.846 V on J1.3, which withstands 3.6 V | output 'O' on | 24V - J1.1 - BK - V - O "
        "- Q "
        "- BK - J1.3\n");
}

TEST_CASE("pull-ups that leak too far, and too little series resistance, built in by hand") {
  const std::string sensor =
      "<device id='q' use='sensor'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
      "<terminal id='Q' function='output' signal='sensor'/><load plus='V' minus='G' needs='3..5 V' draws='5 "
      "mA'/>"
      "<driver terminal='Q' plus='V' minus='G' kind='sinking' drop='0.3 V' leak='{}' pull='none'/>"
      "<resistor a='V' b='Q' ohms='10 kohm'/></device>";
  const std::string header = header_of_pins("sensor", 3, supply(1, "3V3") + ground(2) + input(3));
  const auto leaking = [&](const std::string& leak) {
    std::string text = sensor;
    return text.replace(text.find("{}"), 2, leak) + plug_of_leads("V G Q");
  };
  check({{"10 uA: 3.20 V", "911276_eng", header, leaking("0.01 mA"), "MATE"},
         {"0.1 mA: 2.30 V", "catalogue of proximity switches", header, leaking("0.1 mA"), "MATE"}});
  check_wrong({{"0.5 mA through 10 kohm: never high", "NBB5-18GK50-E2-5M; arithmetic", header,
                leaking("0.5 mA"), Rule::LevelHigh}});
  // 24 V through 1 kohm into a diode that stands 5 mA; 4.08 kohm is the least (STM32F107 data sheet p. 55).
  const auto through = [](const std::string& ohms) {
    return format(
               "<device id='q' use='sensor'><terminal id='V' function='supply'/><terminal id='G' "
               "function='ground'/><terminal id='Q' function='output' signal='sensor'/><terminal id='O'/>"
               "<load plus='V' minus='G' needs='10..30 V' draws='5 mA'/>"
               "<driver terminal='O' plus='V' minus='G' kind='sourcing' drop='0 V' leak='0 mA' pull='none'/>"
               "<resistor a='O' b='Q' ohms='{}'/></device>",
               ohms) +
           plug_of_leads("V G Q");
  };
  const auto clamped = [](const std::string& injection) {
    return header_of_pins("sensor", 3,
                          supply(1, "24V") + ground(2) +
                              format("<pin n='3' function='input' signal='sensor' rail='3V3' clamp='3V3' "
                                     "injection='{}' low-below='0.8 V' high-above='2 V' pull='down' "
                                     "pull-ohms='100 kohm'/>",
                                     injection));
  };
  check_wrong({{"1 kohm", "STM32F107 data sheet p. 55: 5 mA; arithmetic", clamped("5 mA"), through("1 kohm"),
                Rule::ClampCurrent},
               {"3.9 kohm", "the same", clamped("5 mA"), through("3.9 kohm"), Rule::ClampCurrent}});
  check({{"4.3 kohm", "the same", clamped("5 mA"), through("4.3 kohm"), "MATE"}});
}
