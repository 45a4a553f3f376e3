// SPDX-License-Identifier: MIT
// Every judging rule fires in a case of its own, and nothing that is not known, or that does harm, is passed over
// in silence.
#include <doctest/doctest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "judge/judgement.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

const std::string v5 = "<pin n='1' function='supply' rail='5V' limit='1 A'/>";
const std::string g2 = "<pin n='2' function='ground'/>";
const std::string s3 =
    "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 V' "
    "high-above='2 V' pull='up' pull-ohms='10 kohm'/>";
const std::string limit3 = v5 + g2 + s3;
const std::string heat =
    "<pin n='1' function='supply' rail='24V' limit='5 A'/>"
    "<pin n='2' function='switched' signal='heater' ohms='0.05 ohm' limit='5 A' at-reset='off'/>";
const std::string gate =
    "<device id='gate' use='limit'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
    "<terminal id='S' function='output' signal='limit'/>"
    "<load plus='V' minus='G' needs='4.5..5.5 V' draws='20 mA' reversed='destroyed'/>"
    "<driver terminal='S' plus='V' minus='G' kind='push-pull'/></device>";
const std::string open_switch = "<dry-switch id='k' use='limit' rests='open'/>";
const std::string fan24 = "<fan id='f' needs='20..28 V' draws='0.1 A' reversed='blocked'/>";

struct Row {
  std::string name;
  std::string header;
  std::string harness;
  std::string expected;
  std::set<Rule> rules{};  ///< that this row is there for
};

std::string judged(const Row& row) {
  const Bench bench(board_of(row.header), harness_of(row.harness));
  return told(assess(bench.fitting({{"p", "J1"}})));
}

/// Rows that show each judging rule.
std::vector<Row> rule_rows() {
  using enum Rule;
  return {
      {"housing of another family",
       header_of_pins("limit", 3, limit3, "eh-2.50"),
       open_switch + plug_of_leads("- A B"),
       "TODO:housing of another family",
       {HousingMismatch, WrongFunction, NotConnected}},
      {"another pitch",
       header_of_pins("limit", 3, limit3, "pin-2.54"),
       open_switch + plug_of_leads("- A B"),
       "TODO:another pitch",
       {PitchMismatch}},
      {"fewer positions",
       header_of_pins("limit", 3, g2 + s3 + v5),
       open_switch + plug_of_leads("A B"),
       "TODO:fewer positions",
       {PositionsMismatch}},
      {"key removed",
       header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("- A B", "xh-2.50", " key='removed'"),
       "TODO:key removed",
       {AlteredKey}},
      {"wrong function",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("V S G"),
       "TODO:wrong function",
       {WrongFunction, FloatingInput}},
      {"not connected",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("V G -"),
       "TODO:not connected",
       {NotConnected}},
      {"wrong use",
       header_of_pins("probe", 3, limit3),
       "<dry-switch id='k' use='filament' signal='filament' rests='open'/>" + plug_of_leads("- A B"),
       "TODO:wrong use",
       {WrongUse, WrongFunction}},
      {"split coil",
       header_of_pins("motor", 4,
                      "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1 A'/>"
                      "<pin n='2' function='coil' coil='2' end='A' rail='24V' limit='1 A'/>"
                      "<pin n='3' function='coil' coil='1' end='B' rail='24V' limit='1 A'/>"
                      "<pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1 A'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("A1 B1 A2 B2"),
       "TODO:split coil",
       {SplitCoil}},
      {"turned motor",
       header_of_pins("motor", 4,
                      "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1 A'/>"
                      "<pin n='2' function='coil' coil='1' end='B' rail='24V' limit='1 A'/>"
                      "<pin n='3' function='coil' coil='2' end='A' rail='24V' limit='1 A'/>"
                      "<pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1 A'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("B1 A1 A2 B2"),
       "TODO:turned motor",
       {TurnedMotor}},
      {"inverted sense",
       header_of_pins("limit", 3, limit3),
       "<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- A B"),
       "TODO:inverted sense",
       {InvertedSense}},
      {"short circuit",
       header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("A B -"),
       "TODO:short circuit",
       {ShortCircuit}},
      {"overvoltage",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' "
                          "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "TODO:overvoltage",
       {Overvoltage}},
      {"reversed supply",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("G V S"),
       "TODO:reversed supply",
       {ReversedSupply}},
      {"supply too high",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='1 A'/>" + g2),
       "<fan id='f' needs='10..14 V' draws='0.1 A' reversed='blocked'/>" + plug_of_leads("V G"),
       "TODO:supply too high",
       {SupplyTooHigh, AlwaysOn}},
      {"supply too low",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='12V' limit='1 A'/>" + g2),
       fan24 + plug_of_leads("V G"),
       "TODO:supply too low",
       {SupplyTooLow}},
      {"heater for half the volts",
       header_of_pins("heater", 2, heat, "screw-5.08"),
       "<heater-element id='h' volts='12 V' watts='40 W'/>" + plug_of_leads("A B", "screw-5.08"),
       "TODO:heater for half the volts",
       {HeaterPower, PinOvercurrent}},
      {"heater always on",
       header_of_pins("heater", 2, "<pin n='1' function='supply' rail='24V' limit='5 A'/>" + g2, "screw-5.08"),
       "<heater-element id='h' volts='24 V' watts='40 W'/>" + plug_of_leads("A B", "screw-5.08"),
       "TODO:heater always on",
       {AlwaysOn}},
      {"clamp current",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' clamp='3V3' injection='5 mA' "
                          "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "TODO:clamp current",
       {ClampCurrent}},
      {"back feed",
       header_of_pins("limit", 3, limit3),
       "<device id='gate' use='limit'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<terminal id='S' function='output' signal='limit'/>"
       "<load plus='V' minus='G' needs='4.5..6 V' draws='20 mA'/><source plus='V' minus='G' volts='5.2 V'/>"
       "<driver terminal='S' plus='V' minus='G' kind='push-pull'/></device>" +
           plug_of_leads("V G S"),
       "TODO:back feed",
       {BackFeed}},
      {"contact overcurrent",
       header_of_pins("supply", 2, "<pin n='1' function='supply' rail='24V' limit='10 A'/>" + g2),
       "<device id='pump' use='supply'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='20..28 V' draws='5 A'/></device>" +
           plug_of_leads("V G"),
       "TODO:contact overcurrent",
       {ContactOvercurrent}},
      {"rail overload",
       header_of_pins("led", 3,
                      "<pin n='1' function='supply' rail='5V' limit='10 A'/>"
                      "<pin n='2' function='output' signal='led-data' rail='5V' high='4.4..5 V'/>"
                      "<pin n='3' function='ground'/>",
                      "screw-5.08"),
       "<led-string id='l' count='50'/>" + plug_of_leads("V D G", "screw-5.08"),
       "TODO:rail overload",
       {RailOverload}},
      {"wire overcurrent",
       header_of_pins("supply", 2, "<pin n='1' function='supply' rail='24V' limit='10 A'/>" + g2, "screw-5.08"),
       "<device id='pump' use='supply'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='20..28 V' draws='9 A'/></device>" +
           plug_of_leads("V G", "screw-5.08"),
       "TODO:wire overcurrent",
       {WireOvercurrent}},
      {"level high",
       header_of_pins("led", 3,
                      "<pin n='1' function='supply' rail='5V' limit='2 A'/>"
                      "<pin n='2' function='output' signal='led-data' rail='3V3' high='2.9..3.3 V'/>"
                      "<pin n='3' function='ground'/>"),
       "<led-string id='l' count='8'/>" + plug_of_leads("V D G"),
       "TODO:level high",
       {LevelHigh}},
      {"level low",
       header_of_pins("sensor", 3,
                      "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>"
                      "<pin n='3' function='input' signal='sensor' rail='3V3' withstands='-0.3..5.5 V' "
                      "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' drop='2 V' leak='10 uA' rests='off'/>" +
           plug_of_leads("V G Q"),
       "TODO:level low",
       {LevelLow}},
      {"floating input",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
                          "low-below='0.8 V' high-above='2 V'/>"),
       open_switch + plug_of_leads("- A B"),
       "TODO:floating input",
       {FloatingInput}},
      {"unknown pin",
       header_of_pins("limit", 3, g2 + s3),
       gate + plug_of_leads("V G S"),
       "TODO:unknown pin",
       {UnknownPin}},
      {"unknown lead",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("? G S"),
       "TODO:unknown lead",
       {UnknownLead}},
      {"unknown limit",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' low-below='0.8 V' "
                          "high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "TODO:unknown limit",
       {UnknownLimit}},
      {"unknown rating",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='2 A'/>" + g2, "eh-2.50"),
       "<fan id='f' needs='20..28 V' draws='0.8 A'/>" + plug_of_leads("V G", "eh-2.50"),
       "TODO:unknown rating",
       {UnknownRating}},
      {"unstated jumper",
       header_of_pins("fan", 2, "<pin n='1' function='supply' jumper='JP' limit='1 A'/>" + g2),
       fan24 + plug_of_leads("V G"),
       "TODO:unstated jumper",
       {UnstatedJumper}},
      {"assumed",
       header_of_pins("limit", 3, v5 + "<pin n='2' function='ground' evidence='guess'/>" + s3),
       gate + plug_of_leads("V G S"),
       "TODO:assumed",
       {Assumed}},
      {"contested evidence",
       header_of_pins("limit", 3,
                      v5 +
                          "<pin n='2' function='ground' evidence='print'/>"
                          "<pin n='2' function='supply' rail='24V' evidence='drawing'/>" +
                          s3),
       gate + plug_of_leads("V G S"),
       "TODO:contested evidence",
       {ContestedEvidence}},
      {"too many states",
       [] {
         std::string pins = "<pin n='1' function='ground'/>";
         for (int n = 2; n <= 17; ++n) {
           pins += format(
               "<pin n='{}' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 V' "
               "high-above='2 V' pull='up' pull-ohms='10 kohm'/>",
               n);
         }
         return header_of_pins("limit", 17, pins);
       }(),
       [] {
         std::string device = "<device id='k' use='limit'><terminal id='G' function='ground'/>";
         std::string leads = "G";
         for (int n = 2; n <= 17; ++n) {
           device += format(
               "<terminal id='S{0}' function='output' signal='limit'/><switch a='S{0}' b='G' rests='open'/>", n);
           leads += format(" S{}", n);
         }
         return device + "</device>" + plug_of_leads(leads);
       }(),
       "TODO:too many states",
       {TooManyStates}},
  };
}

}  // namespace

TEST_CASE("what each judging rule says") {
  for (const Row& row : rule_rows()) {
    CAPTURE(row.name);
    const std::string got = judged(row);
#ifdef SHOW
    printf("@@%s\n%s@@END\n", row.name.c_str(), got.c_str());
#endif
    CHECK(got == row.expected);
  }
}

TEST_CASE("no judging rule is without its case") {
  std::set<Rule> fired;
  for (const Row& row : rule_rows()) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.header), harness_of(row.harness));
    std::set<Rule> here;
    for (const Finding& f : assess(bench.fitting({{"p", "J1"}})).findings) here.insert(f.rule);
    for (const Rule rule : row.rules) {
      CAPTURE(rule_info(rule).id);
      CHECK(here.contains(rule));
    }
    fired.insert(here.begin(), here.end());
  }
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(fired.contains(rule.rule) == (rule.kind == RuleKind::Judging));
  }
}

TEST_CASE("nothing unknown passes: each of these was, or could be, taken for clean") {
  const std::vector<Row> rows{
      {"a plug of which no lead is described", header_of_pins("limit", 3, limit3),
       "<plug id='p' family='xh-2.50' positions='3'/>", "TODO:a plug of which no lead is described"},
      {"leads without any device", header_of_pins("limit", 3, limit3), plug_of_leads("? ? ?"),
       "TODO:leads without any device"},
      {"a pin said to be unused by assumption only",
       header_of_pins("limit", 3, "<pin n='1' function='unused' evidence='guess'/>" + g2 + s3),
       open_switch + plug_of_leads("? A B"), "TODO:a pin said to be unused by assumption only"},
      {"an unknown lead on an unused pin brings nothing: the missing terminal is missing",
       header_of_pins("limit", 3, "<pin n='1' function='unused'/>" + g2 + s3), gate + plug_of_leads("? G S"),
       "TODO:an unknown lead on an unused pin brings nothing: the missing terminal is missing"},
      {"an unknown lead on an unused pin does not excuse too low a supply",
       header_of_pins("sensor", 4,
                      "<pin n='1' function='unused'/><pin n='2' function='ground'/>"
                      "<pin n='3' function='supply' rail='5V'/><pin n='4' function='ground'/>"),
       "<device id='d' use='sensor'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='10..30 V' draws='10 mA'/></device>" +
           plug_of_leads("? G V -"),
       "TODO:an unknown lead on an unused pin does not excuse too low a supply"},
      {"a plug whose leads are only assumed", header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("- A B", "xh-2.50", " evidence='guess'"),
       "TODO:a plug whose leads are only assumed"},
      {"a supply terminal of which nothing says what it takes", header_of_pins("limit", 3, heat + g2),
       "<device id='d' use='limit'><terminal id='V' function='supply'/></device>" + plug_of_leads("V - -"),
       "TODO:a supply terminal of which nothing says what it takes"},
      {"an output of which nothing says how it drives", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='G' function='ground'/>"
       "<terminal id='S' function='output' signal='limit'/></device>" +
           plug_of_leads("- G S"),
       "TODO:an output of which nothing says how it drives"},
      {"a proximity switch of which neither drop nor leak is stated",
       header_of_pins("sensor", 3,
                      "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>"
                      "<pin n='3' function='input' signal='sensor' rail='3V3' withstands='-0.3..5.5 V' "
                      "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' rests='off'/>" + plug_of_leads("V G Q"),
       "TODO:a proximity switch of which neither drop nor leak is stated"},
      {"an input of the device without thresholds, an output without levels",
       header_of_pins("probe", 3,
                      "<pin n='1' function='output' signal='servo' rail='3V3'/><pin n='2' function='ground'/>"
                      "<pin n='3' function='supply' rail='5V'/>"),
       "<device id='d' use='probe'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<terminal id='P' function='input' signal='servo' withstands='-0.3..5.5 V'/>"
       "<load plus='V' minus='G' needs='4.5..5.5 V' draws='0.2 A'/></device>" +
           plug_of_leads("P G V"),
       "TODO:an input of the device without thresholds, an output without levels"},
      {"an input of the board without thresholds",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
                          "pull='up' pull-ohms='10 kohm'/>"),
       open_switch + plug_of_leads("- A B"), "TODO:an input of the board without thresholds"},
      {"a bridge without a rail",
       header_of_pins("motor", 4,
                      "<pin n='1' function='coil' coil='1' end='A'/><pin n='2' function='coil' coil='1' end='B'/>"
                      "<pin n='3' function='coil' coil='2' end='A' rail='24V'/>"
                      "<pin n='4' function='coil' coil='2' end='B' rail='24V'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("A1 B1 A2 B2"), "TODO:a bridge without a rail"},
      {"outputs of the device that name no signal, on a header of several inputs",
       header_of_pins("display", 3,
                      g2 +
                          "<pin n='1' function='input' signal='button' rail='3V3' withstands='-0.3..5.5 V' "
                          "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"
                          "<pin n='3' function='input' signal='encoder' rail='3V3' withstands='-0.3..5.5 V' "
                          "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<device id='d' use='display'><terminal id='G' function='ground'/><terminal id='S' function='output'/>"
       "<switch a='S' b='G' rests='open'/></device>" +
           plug_of_leads("S G -"),
       "TODO:outputs of the device that name no signal, on a header of several inputs"},
      {"a terminal whose function is unknown", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='X' function='unknown'/></device>" + plug_of_leads("- X -"),
       "TODO:a terminal whose function is unknown"},
      {"a terminal of no part", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='X'/></device>" + plug_of_leads("X - -"),
       "TODO:a terminal of no part"},
      {"two leads of one terminal on two rails",
       header_of_pins("fan", 3,
                      "<pin n='1' function='supply' rail='24V' limit='1 A'/><pin n='2' function='ground'/>"
                      "<pin n='3' function='supply' rail='12V' limit='1 A'/>"),
       fan24 + plug_of_leads("V G V"), "TODO:two leads of one terminal on two rails"},
      {"a needed lead beyond the end of the header",
       header_of_pins("limit", 2, g2 + "<pin n='1' function='supply' rail='5V'/>", "pin-2.54"),
       gate + plug_of_leads("V G S", "pin-2.54"), "TODO:a needed lead beyond the end of the header"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.header), harness_of(row.harness));
    const Assessment assessment = assess(bench.fitting({{"p", "J1"}}));
    const std::string got = told(assessment);
#ifdef SHOW
    printf("@@%s\n%s@@END\n", row.name.c_str(), got.c_str());
#endif
    CHECK_FALSE(assessment.clean());
    CHECK(got == row.expected);
  }
}
