// SPDX-License-Identifier: MIT
// Whole verdicts against cases that are published, or that follow from published figures by arithmetic.
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

/// What stands in the way: a rule that must be among the findings, with its weight. Nothing for MATE.
struct Against {
  Rule rule{};
  Weight weight = Weight::Note;
};

struct Row {
  std::string name;
  std::string source;  ///< of the expectation
  std::string header;
  std::string harness;
  Verdict verdict{};
  Against against{};
  std::string volts = "5 V";  ///< of the rail '5V'
};

Bench bench_of(const Row& row) {
  std::string board = board_of(row.header);
  const std::string rail = "<rail id='5V' volts='5 V'";
  board.replace(board.find(rail), rail.size(), "<rail id='5V' volts='" + row.volts + "'");
  return Bench(board, harness_of(row.harness));
}

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    const Bench bench = bench_of(row);
    const Advice advice = advise(bench.fitting({{"p", "J1"}}));
    const std::string said = row.name + " (" + row.source + ")\n" + told(advice.now) + advice.summary;
    CAPTURE(said);
    CHECK(to_word(advice.verdict) == to_word(row.verdict));
    if (row.verdict == Verdict::Mate) {
      CHECK(advice.now.clean());
      continue;
    }
    CHECK(std::any_of(advice.now.findings.begin(), advice.now.findings.end(), [&](const Finding& f) {
      return f.rule == row.against.rule && f.weight == row.against.weight;
    }));
  }
}

/// An input of a 3.3 V controller. `more` states its limits.
std::string input(int n, const std::string& signal, const std::string& more) {
  return format(
      "<pin n='{}' function='input' signal='{}' rail='3V3' low-below='0.8 V' high-above='2 V' pull='up' "
      "pull-ohms='10 kohm' {}/>",
      n, signal, more);
}

// STM32F103x6 data sheet: a pin that is not tolerant stands VDD + 0.3 V, a tolerant one 5.5 V.
const std::string not_tolerant = "withstands='-0.3..3.6 V'";
const std::string tolerant = "withstands='-0.3..5.5 V'";

std::string supply(int n, const std::string& rail, const std::string& more = "limit='1 A'") {
  return format("<pin n='{}' function='supply' rail='{}' {}/>", n, rail, more);
}
std::string ground(int n) {
  return format("<pin n='{}' function='ground'/>", n);
}
std::string output(int n, const std::string& signal, const std::string& high) {
  return format("<pin n='{}' function='output' signal='{}' rail='5V' high='{}' limit='20 mA'/>", n, signal,
                high);
}

}  // namespace

TEST_CASE("servos") {
  const std::string servo =
      "<device id='servo' use='servo'><terminal id='V' function='supply'/><terminal id='G' "
      "function='ground'/>"
      "<terminal id='S' function='input' signal='servo' withstands='-0.3..5.5 V'/>"
      "<load plus='V' minus='G' needs='4.8..5.5 V' draws='0.3 A' reversed='destroyed'/>"
      "<receiver terminal='S' plus='V' minus='G' low-below='0.8 V' high-above='2 V'/></device>";
  const auto header = [](const std::string& order) {
    std::string pins;
    for (int n = 1; n <= 3; ++n) {
      const char c = order[static_cast<std::size_t>(n) - 1];
      pins += c == 'V' ? supply(n, "5V") : c == 'G' ? ground(n) : output(n, "servo", "4.4..5 V");
    }
    return header_of_pins("servo", 3, pins, "pin-2.54");
  };
  const auto plug = [&](const std::string& order) { return servo + plug_of_leads(order, "pin-2.54"); };
  const std::string normal = "servo driver manual p. 3; Robot Builder's Bonanza p. 256: ground, V+, signal";
  const std::string table = "servo connector table of a model-building site";
  check({
      {"Futaba, Hitec, JR order on its own", normal, header("GVS"), plug("G V S"), Verdict::Mate},
      {"G V S on S V G: power is right, ground and signal are exchanged",
       normal,
       header("SVG"),
       plug("G V S"),
       Verdict::Repin,
       {Rule::WrongFunction, Weight::Fault}},
      {"KO style, V+ on an outer pin",
       table,
       header("GVS"),
       plug("V G S"),
       Verdict::Repin,
       {Rule::ReversedSupply, Weight::Harm}},
      {"Conrad style, signal outside and V+ outside",
       table,
       header("GVS"),
       plug("S G V"),
       Verdict::Repin,
       {Rule::ReversedSupply, Weight::Harm}},
  });
  const Bench turned(board_of(header("SVG")), harness_of(plug("G V S")));
  CHECK(advise(turned.fitting({{"p", "J1"}})).softer ==
        std::vector<std::string>{
            "turned by 180 degrees, cavity 1 of 'p' on J1.3, it is right as it is; mark that end "
            "of the housing, since nothing keeps it from going on the other way"});
}

TEST_CASE("limit switches") {
  const std::string changeover =
      "<device id='k' use='limit'><terminal id='C' signal='limit'/><terminal id='NC' signal='limit'/>"
      "<terminal id='NO' function='spare'/><switch a='C' b='NC' rests='closed'/><switch a='C' b='NO' "
      "rests='open'/>"
      "</device>";
  const std::string gate = "<optical-switch id='o' needs='4.5..5.5 V' draws='20 mA' rests='off'/>";
  const std::string vgs =
      header_of_pins("limit", 3, supply(1, "5V") + ground(2) + input(3, "limit", tolerant));
  const std::string guide = "an assembly guide: 5 V, ground, signal against common, NO, NC";
  const std::string opto = "\"OptoEndstop 2.0\", RepRap wiki: pins 5 V, S, G; high level 5 V";
  check({
      {"C NO NC straight on V G S: pressed, it joins 5 V to ground",
       guide,
       vgs,
       changeover + plug_of_leads("C NO NC"),
       Verdict::Repin,
       {Rule::ShortCircuit, Weight::Harm}},
      {"C on signal, NC on ground, V open", guide, vgs,
       "<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- B A"), Verdict::Mate},
      {"a switch that rests open across V and G",
       guide,
       vgs,
       "<dry-switch id='k' use='limit' rests='open'/>" + plug_of_leads("A B -"),
       Verdict::Repin,
       {Rule::ShortCircuit, Weight::Harm}},
      {"optical, V G S on V G S", opto, vgs, gate + plug_of_leads("V G S"), Verdict::Mate},
      {"optical, S G V on V G S: V and S are exchanged",
       opto,
       vgs,
       gate + plug_of_leads("S G V"),
       Verdict::Repin,
       {Rule::WrongFunction, Weight::Fault}},
      {"optical of 5 V on an input that is not tolerant",
       opto + "; STM32F103x6 data sheet",
       header_of_pins("limit", 3, supply(1, "5V") + ground(2) + input(3, "limit", not_tolerant)),
       gate + plug_of_leads("V G S"),
       Verdict::Adapt,
       {Rule::Overvoltage, Weight::Harm}},
  });
  // Idle low: NC to ground on a pulled-up input ("Limit switches NC vs NO").
  const Bench idle(board_of(vgs),
                   harness_of("<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- B A")));
  CHECK(assess(idle.fitting({{"p", "J1"}})).settings ==
        std::vector<Setting>{{"input 'limit' on J1.3 is low at rest and high when the device works",
                              "the switch rests closed and joins the input to ground"}});
  // The short exists only while the switch is closed.
  const Bench open(board_of(vgs),
                   harness_of("<dry-switch id='k' use='limit' rests='open'/>" + plug_of_leads("A B -")));
  const Assessment across = assess(open.fitting({{"p", "J1"}}));
  REQUIRE(!across.findings.empty());
  CHECK(across.findings.front().rule == Rule::ShortCircuit);
  CHECK(across.findings.front().state == "switch closed");
}

TEST_CASE("fans of three and four wires") {
  // Pins 1 ground, 2 supply, 3 sense, 4 control; 12 V +-5 %; control at most 5.25 V open, 5 mA.
  const std::string source = "4-Wire PWM Controlled Fans Specification pp. 9-10";
  const auto header = [](const std::string& rail, const std::string& limits) {
    return header_of_pins(
        "fan", 4,
        ground(1) + supply(2, rail, "limit='2 A'") + input(3, "tach", tolerant) +
            format("<pin n='4' function='output' drive='open-drain' signal='pwm' rail='3V3' "
                   "low='0.4 V' limit='8 mA' {}/>",
                   limits),
        "kk-2.54");
  };
  const std::string three = "<fan id='f' needs='11.4..12.6 V' draws='0.2 A' sense='yes'/>";
  const std::string four = "<fan id='f' needs='11.4..12.6 V' draws='0.2 A' sense='yes' control='yes'/>";
  check({
      {"three-pin plug on a four-pin header", source, header("12V", tolerant),
       three + plug_of_leads("G V S", "kk-2.54"), Verdict::Mate},
      {"four-wire fan on 12 V, tolerant open drain", source, header("12V", tolerant),
       four + plug_of_leads("G V S C", "kk-2.54"), Verdict::Mate},
      {"four-wire fan on 24 V",
       source,
       header("24V", tolerant),
       four + plug_of_leads("G V S C", "kk-2.54"),
       Verdict::Adapt,
       {Rule::SupplyTooHigh, Weight::Harm}},
      // The fan runs without its control lead: taking it out comes before adding a part.
      {"control pin pulled to 5.25 V on a pin that is not tolerant",
       source + "; STM32F103x6 data sheet",
       header("12V", not_tolerant),
       four + plug_of_leads("G V S C", "kk-2.54"),
       Verdict::Repin,
       {Rule::Overvoltage, Weight::Harm}},
  });
}

TEST_CASE("proximity switches") {
  const auto sensor = [](const std::string& more) {
    return format("<proximity id='q' needs='10..30 V' draws='15 mA' {}/>", more) + plug_of_leads("V G Q");
  };
  const auto header = [](const std::string& rail) {
    return header_of_pins("sensor", 3, supply(1, rail) + ground(2) + input(3, "sensor", tolerant));
  };
  const std::string range = "sensor data sheet 911276_eng: 10..30 V, drop up to 2 V";
  const std::string leak = "sensor data sheets NBB5-18GK50-E2-5M (0.5 mA off) and 911276_eng (10 uA)";
  check({
      {"10..30 V on 5 V",
       range,
       header("5V"),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='10 uA'"),
       Verdict::Adapt,
       {Rule::SupplyTooLow, Weight::Fault}},
      {"sourcing output of 24 V less 3 V straight on an input",
       "sensor data sheet NBB5-18GK50-E2-5M",
       header_of_pins("sensor", 3,
                      supply(1, "24V") + ground(2) +
                          "<pin n='3' function='input' signal='sensor' rail='3V3' withstands='-0.3..5.5 V' "
                          "low-below='0.8 V' high-above='2 V' pull='down' pull-ohms='10 kohm'/>"),
       sensor("kind='sourcing' drop='3 V' leak='10 uA'"),
       Verdict::Adapt,
       {Rule::Overvoltage, Weight::Harm}},
      {"the same on an input pulled up: it never falls when the output is off, unless a divider pulls it down",
       "sensor data sheet NBB5-18GK50-E2-5M",
       header("24V"),
       sensor("kind='sourcing' drop='3 V' leak='10 uA'"),
       Verdict::Adapt,
       {Rule::FloatingInput, Weight::Fault}},
      {"10 uA through 10 kohm: 3.2 V, high (arithmetic)", leak, header("24V"),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='10 uA'"), Verdict::Mate},
      {"0.1 mA through 10 kohm: 2.3 V, high (arithmetic)", leak, header("24V"),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='0.1 mA'"), Verdict::Mate},
      {"0.5 mA through 10 kohm: not high (arithmetic)",
       leak,
       header("24V"),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='0.5 mA'"),
       Verdict::Measure,
       {Rule::LevelHigh, Weight::Doubt}},
      {"on-state only guaranteed below 2 V: a low is not",
       range,
       header("24V"),
       sensor("kind='sinking' pull='none' drop='2 V' leak='10 uA'"),
       Verdict::Measure,
       {Rule::LevelLow, Weight::Doubt}},
      {"sinking with a pull-up of its own to 24 V",
       "issue thread on inductive limit switches",
       header("24V"),
       sensor("kind='sinking' drop='0.5 V' leak='10 uA' pull='10 kohm'"),
       Verdict::Adapt,
       {Rule::Overvoltage, Weight::Harm}},
      {"whether it has one is not stated",
       "issue thread on inductive limit switches",
       header("24V"),
       sensor("kind='sinking' drop='0.5 V' leak='10 uA'"),
       Verdict::Measure,
       {Rule::UnknownLimit, Weight::Doubt}},
      {"the same on an input that stands the supply", "issue thread on inductive limit switches",
       header_of_pins("sensor", 3,
                      supply(1, "24V") + ground(2) + input(3, "sensor", "withstands='-0.3..30 V'")),
       sensor("kind='sinking' drop='0.5 V' leak='10 uA'"), Verdict::Mate},
      {"normally closed: conducts at rest", "Q&A thread on a sinking normally closed sensor", header("24V"),
       sensor("kind='sinking' pull='none' drop='0.5 V' leak='10 uA' rests='on'"), Verdict::Mate},
  });
  // Reads triggered until metal is near: a setting, and a note that says so.
  const Bench closed(board_of(header("24V")),
                     harness_of(sensor("kind='sinking' pull='none' drop='0.5 V' leak='10 uA' rests='on'")));
  CHECK(told(assess(closed.fitting({{"p", "J1"}}))) ==
        "note inverted-sense: J1.3 is held low at rest, against its pull: firmware that takes low for "
        "triggered must "
        "be told\n"
        "setting: input 'sensor' on J1.3 is low at rest and high when the device works (the sinking output "
        "is on at "
        "rest)\n");
}

TEST_CASE("addressable LEDs") {
  // WS2812B data sheet: high from 0.7 of the supply, supply up to 5.3 V; three power guides: 60 mA each.
  const std::string sheet = "WS2812B data sheet";
  const auto header = [](const std::string& rail, const std::string& high) {
    return header_of_pins("led", 3, supply(1, rail) + output(2, "led-data", high) + ground(3));
  };
  const auto leds = [](int count, const std::string& each, const std::string& leads = "V D G") {
    return format("<led-string id='l' count='{}' each='{}' out='yes'/>", count, each) + plug_of_leads(leads);
  };
  const std::string one = leds(1, "1 mA");
  const Against low{Rule::LevelHigh, Weight::Fault};
  check({
      {"5.0 V, data 3.3 V: asks for 3.50 V (arithmetic)", sheet, header("5V", "3.3 V"), one, Verdict::Adapt,
       low},
      {"4.5 V, data 3.3 V: asks for 3.15 V (arithmetic)",
       sheet,
       header("5V", "3.3 V"),
       one,
       Verdict::Mate,
       {},
       "4.5 V"},
      {"4.71 V is the highest supply for 3.3 V: 3.3 / 0.7 = 4.714 V (arithmetic)",
       sheet,
       header("5V", "3.3 V"),
       one,
       Verdict::Mate,
       {},
       "4.71 V"},
      {"4.72 V is beyond it (arithmetic)", sheet, header("5V", "3.3 V"), one, Verdict::Adapt, low, "4.72 V"},
      {"4.5 V on the guaranteed 3.1 V of LVCMOS (arithmetic)",
       sheet + "; FPGA \"Single-Ended I/O Standards\"", header("5V", "3.1 V"), one, Verdict::Adapt, low,
       "4.5 V"},
      {"4.42 V on 3.1 V: 3.1 / 0.7 = 4.429 V (arithmetic)",
       sheet,
       header("5V", "3.1 V"),
       one,
       Verdict::Mate,
       {},
       "4.42 V"},
      {"5.25 V, data 3.3 V: asks for 3.675 V (arithmetic)", sheet, header("5V", "3.3 V"), one, Verdict::Adapt,
       low, "5.25 V"},
      {"5.0 V, data through a 74HCT of 4.4 V", sheet + "; \"Logic levels\"", header("5V", "4.4..5 V"), one,
       Verdict::Mate},
      {"on 12 V", sheet, header("12V", "4.4..5 V"), one, Verdict::Adapt, {Rule::SupplyTooHigh, Weight::Harm}},
      {"on 24 V", sheet, header("24V", "4.4..5 V"), one, Verdict::Adapt, {Rule::SupplyTooHigh, Weight::Harm}},
      {"30 LEDs, 1.8 A full white, on a pin of 1 A (arithmetic)",
       "three LED-strip power guides",
       header("5V", "4.4..5 V"),
       leds(30, "60 mA"),
       Verdict::Apart,
       {Rule::PinOvercurrent, Weight::Harm}},
      {"30 LEDs at 20 mA, 0.6 A (arithmetic)", "three LED-strip power guides", header("5V", "4.4..5 V"),
       leds(30, "20 mA"), Verdict::Mate},
      {"the far end of the string on the data pin",
       sheet,
       header("5V", "4.4..5 V"),
       leds(1, "1 mA", "V Q G"),
       Verdict::Adapt,  // refused as it is; a lead from the near end is what it lacks
       {Rule::NotConnected, Weight::Fault}},
  });
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
  check({
      {"on low-side switches", source, low_side("12V"), strip, Verdict::Mate},
      {"on a header that gives plus for each colour",
       source,
       header_of_pins("led", 4, ground(1) + supply(2, "12V") + supply(3, "12V") + supply(4, "12V")),
       strip,
       Verdict::Apart,
       {Rule::ReversedSupply, Weight::Fault}},
      {"12 V strip on 24 V",
       source,
       low_side("24V"),
       strip,
       Verdict::Adapt,
       {Rule::SupplyTooHigh, Weight::Harm}},
  });
}

TEST_CASE("logic levels from driver to input") {
  // Receivers fed with 5 V; VIL and VIH: 5 V TTL and 74HCT 0.8/2.0, 5 V CMOS 1.5/3.5, AVR 0.3/0.6 of VCC.
  const auto to_device = [](const std::string& thresholds) {
    return "<device id='d' use='spare'><terminal id='V' function='supply'/><terminal id='G' "
           "function='ground'/>"
           "<terminal id='I' function='input' signal='data'/>"
           "<load plus='V' minus='G' needs='4.5..5.5 V' draws='10 mA'/>"
           "<receiver terminal='I' plus='V' minus='G' above-supply='0.5 V' " +
           thresholds + "/></device>" + plug_of_leads("V G I");
  };
  const auto from_device =
      "<device id='d' use='spare'><terminal id='V' function='supply'/>"
      "<terminal id='G' function='ground'/><terminal id='O' function='output' signal='data'/>"
      "<load plus='V' minus='G' needs='4.5..5.5 V' draws='10 mA'/>"
      "<driver terminal='O' plus='V' minus='G' kind='push-pull'/></device>" +
      plug_of_leads("V G O");
  const auto out = [](const std::string& high) {
    return header_of_pins("spare", 3, supply(1, "5V") + ground(2) + output(3, "data", high));
  };
  const auto in = [](const std::string& limits) {
    return header_of_pins("spare", 3, supply(1, "5V") + ground(2) + input(3, "data", limits));
  };
  const std::string ttl = to_device("low-below='0.8 V' high-above='2 V'");
  const std::string cmos = to_device("low-below='1.5 V' high-above='3.5 V'");
  const std::string levels = "\"Logic levels\"; distributor FAQ citing JEITA ED-5007";
  const Against low{Rule::LevelHigh, Weight::Fault};
  const Against doubt{Rule::LevelHigh, Weight::Doubt};
  check({
      {"3.3 V LVTTL, 2.4 V guaranteed, on 5 V TTL", levels, out("2.4..3.3 V"), ttl, Verdict::Mate},
      {"3.3 V on 5 V CMOS, short by 0.2 V (arithmetic)", levels, out("3.3 V"), cmos, Verdict::Adapt, low},
      {"5 V TTL, 2.4 V guaranteed and 5 V at most, on 5 V CMOS", levels, out("2.4..5 V"), cmos,
       Verdict::Measure, doubt},
      {"5 V CMOS on an input of VDD + 0.3 V",
       "STM32F103x6 data sheet",
       in(not_tolerant),
       from_device,
       Verdict::Adapt,
       {Rule::Overvoltage, Weight::Harm}},
      {"5 V CMOS on a tolerant input", "STM32F103x6, STM32F407 data sheets", in(tolerant), from_device,
       Verdict::Mate},
      {"3.3 V on an AVR at 5 V: 0.6 x 5 = 3.0 V (arithmetic)", "ATmega640/1280/2560 data sheet p. 370",
       out("3.3 V"), to_device("low-below-share='0.3' high-above-share='0.6'"), Verdict::Mate},
      {"74HCT at 5 V on an addressable LED's 3.5 V", levels, out("4.4..5 V"),
       to_device("low-below-share='0.3' high-above-share='0.7'"), Verdict::Mate},
      {"5 V into a tolerant input whose pull is on",
       "STM32F101 data sheet p. 52 note 1",
       in(tolerant + " withstands-pulled='3.6 V'"),
       from_device,
       Verdict::Adapt,
       {Rule::Overvoltage, Weight::Harm}},
  });
}

TEST_CASE("a device with its own 5 V on a tolerant input of a board without power: 3.6 V at most") {
  const std::string device =
      "<device id='d' use='spare'><terminal id='G' function='ground'/><terminal id='V'/>"
      "<terminal id='O' function='output' signal='data'/><source plus='V' minus='G' volts='5 V'/>"
      "<driver terminal='O' plus='V' minus='G' kind='push-pull'/></device>"
      "<plug id='p' family='xh-2.50' positions='2'><lead cavity='1' colour='BK' gauge='22 AWG' to='G'/>"
      "<lead cavity='2' colour='WH' gauge='22 AWG' to='O'/></plug>";
  const Row row{
      "", "",
      header_of_pins("spare", 2, ground(1) + input(2, "data", tolerant + " withstands-unpowered='3.6 V'")),
      device};
  const Bench bench = bench_of(row);
  const Advice advice = advise(bench.fitting({{"p", "J1"}}));
  CAPTURE(told(advice.now));
  CHECK(to_word(advice.verdict) == "ADAPT");
  REQUIRE(!advice.now.findings.empty());
  // AN4899 p. 17: with VDD = 0 V a tolerant pin stands 3.6 V.
  CHECK(advice.now.findings.front().rule == Rule::Overvoltage);
  CHECK(advice.now.findings.front().state == "board without power, output 'O' high");
  CHECK(advice.now.findings.front().limit == doctest::Approx(3.6));
}

TEST_CASE("loads on the wrong thing") {
  const std::string heater =
      "<heater-element id='h' volts='12 V' watts='40 W'/>"
      "<plug id='p' family='screw-5.08' positions='2'>"
      "<lead cavity='1' colour='RD' gauge='18 AWG' length='100 mm' to='A'/>"
      "<lead cavity='2' colour='RD' gauge='18 AWG' length='100 mm' to='B'/></plug>";
  const std::string heat =
      header_of_pins("heater", 2,
                     supply(1, "24V", "limit='10 A'") +
                         "<pin n='2' function='switched' signal='heater' ohms='0.01 ohm' "
                         "limit='10 A' at-reset='off'/>",
                     "screw-5.08");
  const std::string lamp =
      "<device id='l' use='spare'><terminal id='A' function='input' signal='lamp'/><terminal id='K' "
      "function='ground'/>"
      "<load plus='A' minus='K' needs='3..3.6 V' draws='60 mA' reversed='blocked'/></device>" +
      plug_of_leads("A K");
  check({
      {"12 V 40 W on 24 V",
       "a heater's power is V^2/R (arithmetic)",
       heat,
       heater,
       Verdict::Apart,
       {Rule::HeaterPower, Weight::Harm}},
      {"60 mA from a logic output",
       "STM32F103x6 data sheet: 25 mA; ATmega640 data sheet: 20 mA",
       header_of_pins("spare", 2,
                      "<pin n='1' function='output' signal='lamp' rail='3V3' high='2.9..3.3 V' ohms='10 ohm' "
                      "limit='25 mA'/>" +
                          ground(2)),
       lamp,
       Verdict::Apart,
       {Rule::PinOvercurrent, Weight::Harm}},
  });
  const Bench bench(board_of(heat), harness_of(heater));
  const Assessment hot = assess(bench.fitting({{"p", "J1"}}));
  REQUIRE(!hot.findings.empty());
  // 24^2 / (12^2 / 40) = 160 W (arithmetic), less what leads, contacts and switch take: 3.6 ohm + 0.05 ohm.
  CHECK(hot.findings.front().figure.value_or(0) == doctest::Approx(160.0).epsilon(0.04));
}
