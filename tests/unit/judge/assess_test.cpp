// SPDX-License-Identifier: MIT
// Every judging rule fires in a case of its own, and nothing that is not known, or that does harm, is passed
// over in silence.
#include <doctest/doctest.h>

#include <map>
#include <optional>
#include <set>
#include <stdexcept>
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
    "<pin n='1' function='supply' rail='24V' limit='5 A'/><pin n='2' function='switched' signal='heater' "
    "ohms='0.05 ohm' limit='5 A' at-reset='off'/>";
const std::string gate =
    "<device id='gate' use='limit'><terminal id='V' function='supply'/><terminal id='G' "
    "function='ground'/><terminal id='S' function='output' signal='limit'/><load plus='V' minus='G' "
    "needs='4.5..5.5 V' draws='20 mA' reversed='destroyed'/><driver terminal='S' plus='V' minus='G' "
    "kind='push-pull'/></device>";
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
       "fault housing-mismatch: plug 'p' is of family 'xh-2.50', header 'J1' of 'eh-2.50': same pitch of 2.5 "
       "mm, other housing\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n",
       {HousingMismatch}},
      {"another pitch",
       header_of_pins("limit", 3, limit3, "pin-2.54"),
       open_switch + plug_of_leads("- A B"),
       "fault pitch-mismatch: plug 'p' has a pitch of 2.5 mm ('xh-2.50'), header 'J1' one of 2.54 mm "
       "('pin-2.54'): 0.08 mm off at position 3 when the first contacts are aligned\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n",
       {PitchMismatch}},
      {"fewer positions",
       header_of_pins("limit", 3, g2 + s3 + v5),
       open_switch + plug_of_leads("A B"),
       "harm short-circuit: short circuit at J1.1: 41.06 A | switch closed | 5V - J1.1 - BK - A - B - BK - "
       "J1.2 - ground\n"
       "fault wrong-function: terminal 'A' (BK) wants an input for 'limit' and meets J1.1, supply 5V\n"
       "note positions-mismatch: plug 'p' has 2 positions, header 'J1' has 3: it can sit in more than one "
       "place\n",
       {PositionsMismatch}},
      {"key removed",
       header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("- A B", "xh-2.50", " key='removed'"),
       "note altered-key: the key of plug 'p' was removed: nothing keeps the plug from going on turned\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n",
       {AlteredKey}},
      {"wrong function",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("V S G"),
       "harm pin-overcurrent: 4.665 A through J1.1, limit 1 A | output 'S' high | 5V - J1.1 - BK - V - S - "
       "BK - J1.2 - ground\n"
       "harm contact-overcurrent: 4.665 A through the contact of J1.1, rated 3 A | output 'S' high | 5V - "
       "J1.1 - BK - V - S - BK - J1.2 - ground\n"
       "harm contact-overcurrent: 4.665 A through the contact of J1.2, rated 3 A | output 'S' high | 5V - "
       "J1.1 - BK - V - S - BK - J1.2 - ground\n"
       "harm rail-overload: 4.665 A drawn from rail '5V', limit 2 A | output 'S' high | \n"
       "fault wrong-function: terminal 'G' (BK) wants ground and meets J1.3, input 'limit'\n"
       "fault wrong-function: terminal 'S' (BK) wants an input for 'limit' and meets J1.2, ground\n"
       "fault supply-too-low: the load of 'gate' gets 41.46 mV at best, and needs 4.5 V |  | 5V - J1.1 - BK "
       "- V\n"
       "doubt unknown-limit: -4.959 V on 'S', and what it withstands is not stated |  | ground - J1.2 - BK - "
       "S\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands -4.959 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n",
       {WrongFunction, ContactOvercurrent}},
      {"not connected",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("V G -"),
       "fault not-connected: terminal 'S' meets no pin; it wants an input for 'limit'\n",
       {NotConnected}},
      {"wrong use",
       header_of_pins("probe", 3, limit3),
       "<dry-switch id='k' use='filament' signal='filament' rests='open'/>" + plug_of_leads("- A B"),
       "fault wrong-function: terminal 'B' (BK) wants an input for 'filament' and meets J1.3, input 'limit'\n"
       "fault wrong-use: header 'J1' is for 'probe', the device 'k' is for 'filament'\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n",
       {WrongUse, WrongFunction}},
      {"split coil",
       header_of_pins(
           "motor", 4,
           "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1 A'/><pin n='2' function='coil' "
           "coil='2' end='A' rail='24V' limit='1 A'/><pin n='3' function='coil' coil='1' end='B' rail='24V' "
           "limit='1 A'/><pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1 A'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("A1 B1 A2 B2"),
       "fault split-coil: each winding of the motor lies across two bridges, so it shakes and does not turn: "
       "'A1' meets bridge 1 end A, 'B1' meets bridge 2 end A, 'A2' meets bridge 1 end B, 'B2' meets bridge 2 "
       "end B\n",
       {SplitCoil}},
      {"turned motor",
       header_of_pins(
           "motor", 4,
           "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1 A'/><pin n='2' function='coil' "
           "coil='1' end='B' rail='24V' limit='1 A'/><pin n='3' function='coil' coil='2' end='A' rail='24V' "
           "limit='1 A'/><pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1 A'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("B1 A1 A2 B2"),
       "note turned-motor: the motor runs, but the other way round than its labels say on 'J1'\n"
       "setting: invert the direction of the motor on 'J1' (a setting does here what moving contacts would "
       "do)\n",
       {TurnedMotor}},
      {"inverted sense",
       header_of_pins("limit", 3, limit3),
       "<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- A B"),
       "note inverted-sense: J1.3 is held low at rest, against its pull: firmware that takes low for "
       "triggered must be told\n"
       "setting: input 'limit' on J1.3 is low at rest and high when the device works (the switch rests "
       "closed and joins the input to ground)\n",
       {InvertedSense}},
      {"short circuit",
       header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("A B -"),
       "harm short-circuit: short circuit at J1.1: 41.06 A | switch closed | 5V - J1.1 - BK - A - B - BK - "
       "J1.2 - ground\n"
       "fault wrong-function: terminal 'A' (BK) wants an input for 'limit' and meets J1.1, supply 5V\n",
       {ShortCircuit}},
      {"overvoltage",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' "
                          "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "harm overvoltage: 4.999 V on J1.3, which withstands 3.6 V | output 'S' high | 5V - J1.1 - BK - V - S "
       "- BK - J1.3\n",
       {Overvoltage}},
      {"reversed supply",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("G V S"),
       "harm reversed-supply: the load of 'gate' gets its supply reversed: -4.968 V |  | 5V - J1.1 - BK - G\n"
       "fault wrong-function: terminal 'V' (BK) wants a supply of 4.5..5.5 V and meets J1.2, ground\n"
       "fault wrong-function: terminal 'G' (BK) wants ground and meets J1.1, supply 5V\n"
       "fault floating-input: J1.3 stays at 3.3 V whatever the device does |  | 3V3 - J1.3\n"
       "doubt unknown-limit: -1.684 V on 'S', and what it withstands is not stated |  | 3V3 - J1.3 - BK - S\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands -1.684 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n",
       {ReversedSupply}},
      {"supply too high",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='1 A'/>" + g2),
       "<fan id='f' needs='10..14 V' draws='0.1 A' reversed='blocked'/>" + plug_of_leads("V G"),
       "harm supply-too-high: the load of 'f' gets 23.99 V, and takes 14 V at most |  | 24V - J1.1 - BK - V\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has "
       "power\n",
       {SupplyTooHigh, AlwaysOn}},
      {"supply too low",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='12V' limit='1 A'/>" + g2),
       fan24 + plug_of_leads("V G"),
       "fault supply-too-low: the load of 'f' gets 12 V at best, and needs 20 V |  | 12V - J1.1 - BK - V\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has "
       "power\n",
       {SupplyTooLow}},
      {"heater for half the volts",
       header_of_pins("heater", 2, heat, "screw-5.08"),
       "<heater-element id='h' volts='12 V' watts='40 W'/>" + plug_of_leads("A B", "screw-5.08"),
       "harm heater-power: the heater of 'h' heats with 149.7 W, more than 48 W | J1.2 on | 24V - J1.1 - BK "
       "- A\n"
       "harm pin-overcurrent: 6.449 A through J1.1, limit 5 A | J1.2 on | 24V - J1.1 - BK - A - B - BK - "
       "J1.2 - ground\n"
       "harm pin-overcurrent: 6.449 A through J1.2, limit 5 A | J1.2 on | 24V - J1.1 - BK - A - B - BK - "
       "J1.2 - ground\n"
       "doubt unknown-rating: 6.449 A through the contact of J1.1, and no rating is published for its gauge "
       "| J1.2 on | 24V - J1.1 - BK - A - B - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 1 of 'p' => 6.449 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 1 of 'p' carries, cost 0)\n"
       "doubt unknown-rating: 6.449 A through the contact of J1.2, and no rating is published for its gauge "
       "| J1.2 on | 24V - J1.1 - BK - A - B - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 2 of 'p' => 6.449 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 2 of 'p' carries, cost 0)\n",
       {HeaterPower, PinOvercurrent}},
      {"heater always on",
       header_of_pins("heater", 2, "<pin n='1' function='supply' rail='24V' limit='5 A'/>" + g2,
                      "screw-5.08"),
       "<heater-element id='h' volts='24 V' watts='40 W'/>" + plug_of_leads("A B", "screw-5.08"),
       "harm always-on: the heater of 'h' heats with 39.6 W while nothing is switched on |  | 24V - J1.1 - "
       "BK - A\n"
       "fault wrong-function: terminal 'B' (BK) wants a switched output and meets J1.2, ground\n",
       {AlwaysOn}},
      {"clamp current",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' clamp='3V3' injection='5 "
                          "mA' low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "harm clamp-current: 0.6754 A flows into the protection diode of J1.3, which stands 5 mA | output 'S' "
       "high | 5V - J1.1 - BK - V - S - BK - J1.3\n",
       {ClampCurrent}},
      {"back feed",
       header_of_pins("limit", 3, limit3),
       "<device id='gate' use='limit'><terminal id='V' function='supply'/><terminal id='G' "
       "function='ground'/><terminal id='S' function='output' signal='limit'/><load plus='V' minus='G' "
       "needs='4.5..6 V' draws='20 mA'/><source plus='V' minus='G' volts='5.2 V'/><driver terminal='S' "
       "plus='V' minus='G' kind='push-pull'/></device>" +
           plug_of_leads("V G S"),
       "harm overvoltage: -1.086 V on J1.3, which stands no less than -0.3 V | board without power, output "
       "'S' low | G - S - BK - J1.3\n"
       "harm pin-overcurrent: 1.153 A through J1.1, limit 1 A |  | V - BK - J1.1 - 5V\n"
       "harm back-feed: 1.153 A flows backwards into J1.1 |  | V - BK - J1.1 - 5V\n"
       "doubt unknown-limit: 1.086 V on J1.3, and what it withstands is not stated | board without power, "
       "output 'S' high | V - S - BK - J1.3\n"
       "  look up what J1.3 withstands (data sheet of the part behind it) => it withstands 1.086 V as well: "
       "safe here; it does not: do not join (what J1.3 withstands, cost 0)\n",
       {BackFeed}},
      {"contact overcurrent",
       header_of_pins("supply", 2, "<pin n='1' function='supply' rail='24V' limit='10 A'/>" + g2),
       "<device id='pump' use='supply'><terminal id='V' function='supply'/><terminal id='G' "
       "function='ground'/><load plus='V' minus='G' needs='20..28 V' draws='5 A'/></device>" +
           plug_of_leads("V G"),
       "harm contact-overcurrent: 4.926 A through the contact of J1.1, rated 3 A |  | 24V - J1.1 - BK - V - "
       "G - BK - J1.2 - ground\n"
       "harm contact-overcurrent: 4.926 A through the contact of J1.2, rated 3 A |  | 24V - J1.1 - BK - V - "
       "G - BK - J1.2 - ground\n",
       {ContactOvercurrent}},
      {"rail overload",
       header_of_pins("led", 3,
                      "<pin n='1' function='supply' rail='5V' limit='10 A'/><pin n='2' function='output' "
                      "signal='led-data' rail='5V' high='4.4..5 V'/><pin n='3' function='ground'/>",
                      "screw-5.08"),
       "<led-string id='l' count='50'/>" + plug_of_leads("V D G", "screw-5.08"),
       "harm rail-overload: 3.25 A drawn from rail '5V', limit 2 A\n",
       {RailOverload}},
      {"wire overcurrent",
       header_of_pins("supply", 2, "<pin n='1' function='supply' rail='24V' limit='10 A'/>" + g2,
                      "screw-5.08"),
       "<device id='pump' use='supply'><terminal id='V' function='supply'/><terminal id='G' "
       "function='ground'/><load plus='V' minus='G' needs='20..28 V' draws='9 A'/></device>" +
           plug_of_leads("V G", "screw-5.08"),
       "harm wire-overcurrent: 8.764 A through J1.1, a wire for 7 A |  | 24V - J1.1 - BK - V - G - BK - J1.2 "
       "- ground\n"
       "harm wire-overcurrent: 8.764 A through J1.2, a wire for 7 A |  | 24V - J1.1 - BK - V - G - BK - J1.2 "
       "- ground\n"
       "doubt unknown-rating: 8.764 A through the contact of J1.1, and no rating is published for its gauge "
       "|  | 24V - J1.1 - BK - V - G - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 1 of 'p' => 8.764 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 1 of 'p' carries, cost 0)\n"
       "doubt unknown-rating: 8.764 A through the contact of J1.2, and no rating is published for its gauge "
       "|  | 24V - J1.1 - BK - V - G - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 2 of 'p' => 8.764 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 2 of 'p' carries, cost 0)\n",
       {WireOvercurrent}},
      {"level high",
       header_of_pins("led", 3,
                      "<pin n='1' function='supply' rail='5V' limit='2 A'/><pin n='2' function='output' "
                      "signal='led-data' rail='3V3' high='2.9..3.3 V'/><pin n='3' function='ground'/>"),
       "<led-string id='l' count='8'/>" + plug_of_leads("V D G"),
       "fault level-high: 'D' reaches 2.881 V when high, and is read as high from 3.473 V |  | J1.2 - BK - "
       "D\n",
       {LevelHigh}},
      {"level low",
       header_of_pins("sensor", 3,
                      "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/><pin n='3' "
                      "function='input' signal='sensor' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 "
                      "V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' drop='2 V' leak='10 uA' pull='none' "
       "rests='off'/>" +
           plug_of_leads("V G Q"),
       "doubt level-low: J1.3 falls to 2.001 V when low in the worst case, and is read as low below 0.8 V | "
       "output 'Q' on | ground - J1.2 - BK - G - Q - BK - J1.3\n"
       "  device fed, its signal lead off the board, with 10 kohm from it to 3.3 V: volts from the lead to "
       "ground while it is low => 0.8 V or less: read as low; more: not (whether J1.3 reaches its low level, "
       "cost 3)\n"
       "setting: input 'sensor' on J1.3 is high at rest and low when the device works (the sinking output is "
       "off at rest)\n",
       {LevelLow}},
      {"floating input",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
                          "low-below='0.8 V' high-above='2 V'/>"),
       open_switch + plug_of_leads("- A B"),
       "fault floating-input: nothing drives J1.3 in this state | switch open | \n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n",
       {FloatingInput}},
      {"unknown pin",
       header_of_pins("limit", 3, g2 + s3),
       gate + plug_of_leads("V G S"),
       "doubt unknown-limit: 3.3 V on 'S', and what it withstands is not stated | output 'S' high | 3V3 - "
       "J1.3 - BK - S\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands 3.3 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n"
       "doubt unknown-pin: the BK lead in cavity 1 of 'p' meets J1.1, of which nothing is known\n"
       "  board powered alone, nothing plugged in: volts from J1.1 to ground => 24 V: supply 24V; 12 V: "
       "supply 12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest "
       "(continuity to the supply minus with power off tells ground) (what J1.1 is, cost 2)\n",
       {UnknownPin}},
      {"unknown lead",
       header_of_pins("limit", 3, limit3),
       gate + plug_of_leads("? G S"),
       "doubt unknown-limit: 3.3 V on 'S', and what it withstands is not stated | output 'S' high | 3V3 - "
       "J1.3 - BK - S\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands 3.3 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n"
       "doubt unknown-lead: where the BK lead in cavity 1 of 'p' goes is not known, and it meets J1.1, "
       "supply 5V\n"
       "  plug off the board: continuity from the BK lead in cavity 1 of 'p' to terminals V, G, S => the one "
       "that beeps is where the lead goes; none: find the far end by eye (where the BK lead in cavity 1 of "
       "'p' goes, cost 1)\n",
       {UnknownLead}},
      {"unknown limit",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' low-below='0.8 V' "
                          "high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       gate + plug_of_leads("V G S"),
       "doubt unknown-limit: 4.999 V on J1.3, and what it withstands is not stated | output 'S' high | 5V - "
       "J1.1 - BK - V - S - BK - J1.3\n"
       "  look up what J1.3 withstands (data sheet of the part behind it) => it withstands 4.999 V as well: "
       "safe here; it does not: do not join (what J1.3 withstands, cost 0)\n",
       {UnknownLimit}},
      {"unknown rating",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='2 A'/>" + g2, "eh-2.50"),
       "<fan id='f' needs='20..28 V' draws='0.8 A'/>" + plug_of_leads("V G", "eh-2.50"),
       "doubt unknown-rating: 0.7981 A through the contact of J1.1, and no rating is published for its gauge "
       "|  | 24V - J1.1 - BK - V - G - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 1 of 'p' => 0.7981 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 1 of 'p' carries, cost 0)\n"
       "doubt unknown-rating: 0.7981 A through the contact of J1.2, and no rating is published for its gauge "
       "|  | 24V - J1.1 - BK - V - G - BK - J1.2 - ground\n"
       "  look up the contact maker's rating for the gauge of the BK lead in cavity 2 of 'p' => 0.7981 A or "
       "more: safe here; less: use a thicker lead or another contact (what the contact of the BK lead in "
       "cavity 2 of 'p' carries, cost 0)\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has "
       "power\n",
       {UnknownRating}},
      {"unstated jumper",
       header_of_pins("fan", 2, "<pin n='1' function='supply' jumper='JP' limit='1 A'/>" + g2),
       fan24 + plug_of_leads("V G"),
       "doubt unstated-jumper: where jumper JP (V) sits is not stated (JP at 5V: the load of 'f' gets 4.999 "
       "V at best, and needs 20 V; JP at 24V: nothing against it)\n"
       "  look where jumper JP (V) sits, then say --jumper JP=POSITION; or board powered alone, nothing "
       "plugged in: volts from J1.1 to ground => 5 V: JP is at 5V; 24 V: JP is at 24V (where JP sits, cost "
       "0)\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has "
       "power\n",
       {UnstatedJumper}},
      {"assumed",
       header_of_pins("limit", 3, v5 + "<pin n='2' function='ground' evidence='guess'/>" + s3),
       gate + plug_of_leads("V G S"),
       "doubt assumed: that J1.2 is ground is an assumption ('guess')\n"
       "  power off, nothing plugged in: continuity from J1.2 to the supply minus => a beep: ground; no "
       "beep: not ground (what J1.2 is, cost 1)\n",
       {Assumed}},
      {"contested evidence",
       header_of_pins("limit", 3,
                      v5 +
                          "<pin n='2' function='ground' evidence='print'/><pin n='2' function='supply' "
                          "rail='24V' evidence='drawing'/>" +
                          s3),
       gate + plug_of_leads("V G S"),
       "doubt contested-evidence: J1.2 is ground by one statement and supply from 24V, by 'drawing' "
       "(makers-drawing) by another\n"
       "  power off, nothing plugged in: continuity from J1.2 to the supply minus => a beep: ground; no "
       "beep: supply from 24V, by 'drawing' (makers-drawing) (what J1.2 is, cost 1)\n",
       {ContestedEvidence}},
      {"a figure and a housing that nobody has told",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='1 A'/>" + g2),
       "<fan id='f' needs='20..28 V'/><plug id='p' family='unknown-2.54' positions='2'><lead cavity='1' "
       "colour='RD' to='V'/><lead cavity='2' colour='BK' to='G'/></plug>",
       "doubt unknown-figure: not stated: what 'f' draws\n"
       "  read the amps of 'f' off its label or data sheet => state them as 'draws' (what 'f' draws, cost 0)\n"
       "doubt unknown-housing: not stated: which housing plug 'p' has\n"
       "  measure over the contacts of plug 'p' with a caliper, from the first to the last of a row, and divide by "
       "one less than their count; look for ramp, latch and shroud => one of pin-2.54 (2.54 mm), kk-2.54 (2.54 mm), "
       "box-2.54 (2.54 mm), xh-2.50 (2.5 mm), eh-2.50 (2.5 mm), sm-2.50 (2.5 mm); state it as 'family' (which "
       "housing plug 'p' has, cost 0)\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has power\n",
       {UnknownFigure, UnknownHousing}},
      // Ten outputs, each off, on, or on with its drop: 3^10 = 59049 states, more than 20000.
      {"resistor power",
       header_of_pins("spare", 2, "<pin n='1' function='supply' rail='24V' limit='1 A'/>" + g2),
       "<device id='k' use='spare'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='20..30 V' draws='10 mA'/><resistor a='V' b='G' ohms='1 kohm' "
       "limit='0.5 W'/></device>" +
           plug_of_leads("V G"),
       "harm resistor-power: the resistor of 'k' turns 0.5759 W into heat, made for 0.5 W |  | 24V - J1.1 - BK - "
       "V\n"
       "doubt unknown-limit: whether the resistor of 'k' stands up to 0.576 W is not known\n"
       "  look up what the resistor of 'k' stands => 0.576 W or more: safe here; less: do not join (terminal 'V' on "
       "J1.1, cost 0)\n",
       {ResistorPower}},
      {"too many states",
       [] {
         std::string pins = v5 + g2;
         for (int n = 3; n <= 12; ++n) {
           pins += format(
               "<pin n='{}' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
               "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>",
               n);
         }
         return header_of_pins("limit", 12, pins);
       }(),
       [] {
         std::string device =
             "<device id='k' use='limit'><terminal id='V' function='supply'/><terminal id='G' "
             "function='ground'/><load plus='V' minus='G' needs='4..6 V' draws='10 mA'/>";
         std::string leads = "V G";
         for (int n = 3; n <= 12; ++n) {
           device += format(
               "<terminal id='S{0}' function='output' signal='limit' withstands='-0.5..5.5 V'/><driver "
               "terminal='S{0}' plus='V' minus='G' kind='sinking' drop='0.2 V'/>",
               n);
           leads += format(" S{}", n);
         }
         return device + "</device>" + plug_of_leads(leads);
       }(),
       "doubt too-many-states: the circuit has more states than were tried\n"
       "  device fed, plug off the board: volts on every lead against its ground, in every position of the "
       "device => each within what the pin that it is to meet withstands: safe; else: do not join (what the "
       "states do that were not tried, cost 3)\n",
       {TooManyStates}},
  };
}

}  // namespace

TEST_CASE("what each judging rule says") {
  for (const Row& row : rule_rows()) {
    CAPTURE(row.name);
    const std::string got = judged(row);
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
  fired.insert(Rule::UnknownSeat);  // of a whole loom: tests/unit/plan/loom_bench_test.cpp
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    CHECK(fired.contains(rule.rule) == (rule.kind == RuleKind::Judging));
  }
}

namespace {

/// The text without its k-th attribute; "" when there is none.
std::string without_attribute(const std::string& text, std::size_t k) {
  std::size_t end = 0;
  for (std::size_t n = 0;; ++n) {
    const std::size_t equals = text.find("='", end);
    if (equals == std::string::npos) return "";
    end = text.find('\'', equals + 2) + 1;
    if (n != k) continue;
    const std::size_t begin = text.rfind(' ', equals);
    return text.substr(0, begin) + text.substr(end);
  }
}

}  // namespace

TEST_CASE("to leave a statement out never makes clean what was not") {
  int left_out = 0;
  for (const Row& row : rule_rows()) {
    const Bench whole(board_of(row.header), harness_of(row.harness));
    if (assess(whole.fitting({{"p", "J1"}})).clean()) continue;
    for (const bool of_board : {true, false}) {
      const std::string& text = of_board ? row.header : row.harness;
      for (std::size_t k = 0;; ++k) {
        const std::string less = without_attribute(text, k);
        if (less.empty()) break;
        if (row.rules.contains(Rule::Assumed)) continue;  // what the guess stood for is then measured
        std::optional<Bench> bench;
        try {
          bench.emplace(board_of(of_board ? less : row.header), harness_of(of_board ? row.harness : less));
        } catch (const std::runtime_error&) {
          continue;  // it has to be stated
        }
        ++left_out;
        CAPTURE(row.name);
        CAPTURE(less);
        CHECK_FALSE(assess(bench->fitting({{"p", "J1"}})).clean());
      }
    }
  }
  MESSAGE(left_out, " statements left out");
  CHECK(left_out > 200);
}

TEST_CASE("nothing unknown passes: each of these was, or could be, taken for clean") {
  const std::vector<Row> rows{
      {"a plug of which no lead is described", header_of_pins("limit", 3, limit3),
       "<plug id='p' family='xh-2.50' positions='3'/>",
       "doubt unknown-lead: no lead of plug 'p' is described\n"
       "  look at the wire side of 'p', cavity by cavity => a contact: describe its lead; all cavities "
       "empty: there is nothing to plug in (what sits in 'p', cost 0)\n"},
      {"leads without any device", header_of_pins("limit", 3, limit3), plug_of_leads("? ? ?"),
       "doubt unknown-lead: where the BK lead in cavity 1 of 'p' goes is not known, and it meets J1.1, "
       "supply 5V\n"
       "  plug off the board: continuity from the BK lead in cavity 1 of 'p' to the contacts at the far end "
       "=> the one that beeps is where the lead goes; none: find the far end by eye (where the BK lead in "
       "cavity 1 of 'p' goes, cost 1)\n"
       "doubt unknown-lead: where the BK lead in cavity 2 of 'p' goes is not known, and it meets J1.2, "
       "ground\n"
       "  plug off the board: continuity from the BK lead in cavity 2 of 'p' to the contacts at the far end "
       "=> the one that beeps is where the lead goes; none: find the far end by eye (where the BK lead in "
       "cavity 2 of 'p' goes, cost 1)\n"
       "doubt unknown-lead: where the BK lead in cavity 3 of 'p' goes is not known, and it meets J1.3, input "
       "'limit'\n"
       "  plug off the board: continuity from the BK lead in cavity 3 of 'p' to the contacts at the far end "
       "=> the one that beeps is where the lead goes; none: find the far end by eye (where the BK lead in "
       "cavity 3 of 'p' goes, cost 1)\n"},
      {"a pin said to be unused by assumption only",
       header_of_pins("limit", 3, "<pin n='1' function='unused' evidence='guess'/>" + g2 + s3),
       open_switch + plug_of_leads("? A B"),
       "doubt assumed: that J1.1 is connected to nothing is an assumption ('guess')\n"
       "  board powered alone, nothing plugged in: volts from J1.1 to ground => 24 V: supply 24V; 12 V: "
       "supply 12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest "
       "(continuity to the supply minus with power off tells ground) (what J1.1 is, cost 2)\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n"},
      {"an unknown lead on an unused pin brings nothing: the missing terminal is missing",
       header_of_pins("limit", 3, "<pin n='1' function='unused'/>" + g2 + s3), gate + plug_of_leads("? G S"),
       "fault not-connected: terminal 'V' meets no pin; it wants a supply of 4.5..5.5 V\n"
       "doubt unknown-limit: 3.3 V on 'S', and what it withstands is not stated | output 'S' high | 3V3 - "
       "J1.3 - BK - S\n"
       "  look up what 'S' withstands (data sheet of the part behind it) => it withstands 3.3 V as well: "
       "safe here; it does not: do not join (what 'S' withstands, cost 0)\n"},
      {"an unknown lead on an unused pin does not excuse too low a supply",
       header_of_pins("sensor", 4,
                      "<pin n='1' function='unused'/><pin n='2' function='ground'/><pin n='3' "
                      "function='supply' rail='5V'/><pin n='4' function='ground'/>"),
       "<device id='d' use='sensor'><terminal id='V' function='supply'/><terminal id='G' "
       "function='ground'/><load plus='V' minus='G' needs='10..30 V' draws='10 mA'/></device>" +
           plug_of_leads("? G V -"),
       "fault supply-too-low: the load of 'd' gets 5 V at best, and needs 10 V |  | 5V - J1.3 - BK - V\n"},
      {"a plug whose leads are only assumed", header_of_pins("limit", 3, limit3),
       open_switch + plug_of_leads("- A B", "xh-2.50", " evidence='guess'"),
       "doubt assumed: which lead sits in which cavity of 'p' is an assumption ('guess')\n"
       "  look at the wire side of 'p', cavity by cavity => agrees: name that evidence in the file; differs: "
       "correct the file (what sits in 'p', cost 0)\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n"},
      {"a supply terminal of which nothing says what it takes", header_of_pins("limit", 2, heat),
       "<device id='d' use='limit'><terminal id='V' function='supply'/></device>" + plug_of_leads("V -"),
       "doubt unknown-limit: what supply terminal 'V' takes is not stated, and it meets J1.1, supply 24V\n"
       "  read volts and amps of 'd' off its type plate or data sheet => state them as a load from 'V' "
       "(terminal 'V' on J1.1, cost 0)\n"},
      {"an output of which nothing says how it drives", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='G' function='ground'/><terminal id='S' function='output' "
       "signal='limit' withstands='-0.3..5.5 V'/></device>" +
           plug_of_leads("- G S"),
       "doubt unknown-limit: how terminal 'S' drives is not stated, and it meets J1.3, input 'limit'\n"
       "  look up the output of 'd' in its data sheet => state it as a driver or switch at 'S' (terminal 'S' "
       "on J1.3, cost 0)\n"},
      {"a proximity switch of which neither drop nor leak is stated",
       header_of_pins("sensor", 3,
                      "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/><pin n='3' "
                      "function='input' signal='sensor' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 "
                      "V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<proximity id='q' kind='sinking' needs='10..30 V' draws='15 mA' pull='none' rests='off'/>" +
           plug_of_leads("V G Q"),
       "doubt unknown-limit: how many volts terminal 'Q' keeps when it conducts is not stated, and it meets "
       "J1.3, input 'sensor'\n"
       "  look up the output of 'q' in its data sheet => state it as its drop; proximity switches keep up to "
       "2 or 3 V (terminal 'Q' on J1.3, cost 0)\n"
       "doubt unknown-limit: what terminal 'Q' leaks when it is off is not stated, and it meets J1.3, input "
       "'sensor'\n"
       "  look up the output of 'q' in its data sheet => state it as its leak; proximity switches leak up to "
       "0.5 mA (terminal 'Q' on J1.3, cost 0)\n"
       "setting: input 'sensor' on J1.3 is high at rest and low when the device works (the sinking output is "
       "off at rest)\n"},
      {"an input of the device without thresholds, an output without levels",
       header_of_pins("probe", 3,
                      "<pin n='1' function='output' signal='servo' rail='3V3'/><pin n='2' "
                      "function='ground'/><pin n='3' function='supply' rail='5V'/>"),
       "<device id='d' use='probe'><terminal id='V' function='supply'/><terminal id='G' "
       "function='ground'/><terminal id='P' function='input' signal='servo' withstands='-0.3..5.5 V'/><load "
       "plus='V' minus='G' needs='4.5..5.5 V' draws='0.2 A'/></device>" +
           plug_of_leads("P G V"),
       "doubt unknown-limit: from which voltage terminal 'P' reads low and high is not stated, and it meets "
       "J1.1, output 'servo'\n"
       "  look up the input of 'd' in its data sheet => state it as a receiver at 'P' (terminal 'P' on J1.1, "
       "cost 0)\n"
       "doubt unknown-limit: how high J1.1 drives is not stated, and terminal 'P' reads it\n"
       "  look up the output levels of the part behind J1.1 => state the guaranteed and the highest level as "
       "'high' (terminal 'P' on J1.1, cost 0)\n"},
      {"an input of the board without thresholds",
       header_of_pins("limit", 3,
                      v5 + g2 +
                          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' "
                          "pull='up' pull-ohms='10 kohm'/>"),
       open_switch + plug_of_leads("- A B"),
       "doubt unknown-limit: from which voltages J1.3 reads low and high is not stated\n"
       "  look up from which voltages J1.3 reads low and high (data sheet of the part behind it) => state "
       "them as low-below and high-above, then judge again (how J1.3 reads, cost 0)\n"
       "setting: input 'limit' on J1.3 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n"},
      {"a bridge without a rail",
       header_of_pins("motor", 4,
                      "<pin n='1' function='coil' coil='1' end='A'/><pin n='2' function='coil' coil='1' "
                      "end='B'/><pin n='3' function='coil' coil='2' end='A' rail='24V'/><pin n='4' "
                      "function='coil' coil='2' end='B' rail='24V'/>"),
       "<motor id='m' ohms='2 ohm' amps='1 A'/>" + plug_of_leads("A1 B1 A2 B2"),
       "doubt unknown-limit: which rail feeds the bridge behind J1.1 is not stated\n"
       "  look up the supply of the motor drivers => state it as 'rail' (terminal 'A1' on J1.1, cost 0)\n"
       "doubt unknown-limit: which rail feeds the bridge behind J1.2 is not stated\n"
       "  look up the supply of the motor drivers => state it as 'rail' (terminal 'B1' on J1.2, cost 0)\n"},
      {"outputs of the device that name no signal, on a header of several inputs",
       header_of_pins("display", 3,
                      g2 + "<pin n='1' function='input' signal='button' rail='3V3' withstands='-0.3..5.5 V' "
                           "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/><pin n='3' "
                           "function='input' signal='encoder' rail='3V3' withstands='-0.3..5.5 V' "
                           "low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>"),
       "<device id='d' use='display'><terminal id='G' function='ground'/><terminal id='S' function='output' "
       "withstands='-0.3..5.5 V'/><switch a='S' b='G' rests='open'/></device>" +
           plug_of_leads("S G -"),
       "doubt unknown-lead: which signal terminal 'S' gives is not stated, and it meets J1.1, input "
       "'button', one of several inputs\n"
       "  look up what terminal 'S' of 'd' is for => state it as its signal (terminal 'S' on J1.1, cost 0)\n"
       "setting: input 'button' on J1.1 is high at rest and low when the device works (the switch rests open "
       "and joins the input to ground)\n"},
      {"a terminal whose function is unknown", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='X' function='unknown'/></device>" + plug_of_leads("- X -"),
       "doubt unknown-lead: what terminal 'X' (BK) is for is not known, and it meets J1.2, ground\n"
       "  read the device's type plate or data sheet for terminal 'X' => its function; then state it in the "
       "harness file (what terminal 'X' is for, cost 0)\n"},
      {"a terminal of no part", header_of_pins("limit", 3, limit3),
       "<device id='d' use='limit'><terminal id='X'/></device>" + plug_of_leads("X - -"),
       "doubt unknown-lead: what terminal 'X' (BK) is for is not known, and it meets J1.1, supply 5V\n"
       "  read the device's type plate or data sheet for terminal 'X' => its function; then state it in the "
       "harness file (what terminal 'X' is for, cost 0)\n"},
      {"two leads of one terminal on two rails",
       header_of_pins("fan", 3,
                      "<pin n='1' function='supply' rail='24V' limit='1 A'/><pin n='2' "
                      "function='ground'/><pin n='3' function='supply' rail='12V' limit='1 A'/>"),
       fan24 + plug_of_leads("V G V"),
       "harm short-circuit: short circuit at J1.1: 167.2 A |  | 24V - J1.1 - BK - V - BK - J1.3 - 12V\n"
       "fault supply-too-low: the load of 'f' gets 18 V at best, and needs 20 V |  | 24V - J1.1 - BK - V\n"
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'G' runs whenever the board has "
       "power\n"},
      {"a solenoid of 12 V on 24 V: at most 24 V / 24 ohm = 1 A through a winding for 0.5 A",
       header_of_pins("spare", 2, heat),
       "<device id='d' use='spare'><terminal id='A'/><terminal id='B'/><coil a='A' b='B' ohms='24 ohm' "
       "amps='0.5 A'/></device>" +
           plug_of_leads("A B"),
       "doubt unknown-limit: whether the coil of 'd' stands up to 1 A is not known\n"
       "  look up what the coil of 'd' stands => 1 A or more: safe here; less: do not join (terminal 'A' on "
       "J1.1, cost 0)\n"},
      {"a resistor of a quarter watt", header_of_pins("spare", 2, v5 + g2),
       "<device id='d' use='spare'><terminal id='A' function='supply'/><terminal id='B' "
       "function='ground'/><terminal id='C'/><resistor a='A' b='C' ohms='50 ohm' limit='0.25 W'/><load "
       "plus='C' minus='B' needs='1..5 V' draws='10 mA'/></device>" +
           plug_of_leads("A B"),
       "doubt unknown-limit: whether the resistor of 'd' stands up to 0.5 W is not known\n"
       "  look up what the resistor of 'd' stands => 0.5 W or more: safe here; less: do not join (terminal "
       "'A' on J1.1, cost 0)\n"},
      {"a supply of no stated limit",
       "<rail id='X' volts='24 V'/><header id='J1' use='spare' family='screw-5.08' positions='2'><pin n='1' "
       "function='supply' rail='X'/><pin n='2' function='ground'/></header>",
       "<device id='d' use='spare'><terminal id='A' function='supply'/><terminal id='B' "
       "function='ground'/><load plus='A' minus='B' needs='20..28 V' draws='1.5 A'/></device>" +
           plug_of_leads("A B", "screw-5.08"),
       "doubt unknown-limit: how much rail 'X' gives at J1.1 is not stated, and 'A' draws 1.5 A\n"
       "  look up the limit of rail 'X' => 1.5 A or more left over: state it as 'limit'; less: do not join "
       "(terminal 'A' on J1.1, cost 0)\n"},
      {"a needed lead beyond the end of the header",
       header_of_pins("limit", 2, g2 + "<pin n='1' function='supply' rail='5V'/>", "pin-2.54"),
       gate + plug_of_leads("V G S", "pin-2.54"),
       "fault not-connected: terminal 'S' meets no pin; it wants an input for 'limit'\n"
       "note positions-mismatch: plug 'p' has 3 positions, header 'J1' has 2: it can sit in more than one "
       "place\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.header), harness_of(row.harness));
    const Assessment assessment = assess(bench.fitting({{"p", "J1"}}));
    const std::string got = told(assessment);
    CHECK_FALSE(assessment.clean());
    CHECK(got == row.expected);
  }
}
