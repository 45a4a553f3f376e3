// SPDX-License-Identifier: MIT
// Whole advice: verdict, summary, steps with their reasons, cures, settings.
#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

const std::string v1 = "<pin n='1' function='supply' rail='5V' limit='1 A'/>";
const std::string g2 = "<pin n='2' function='ground'/>";
std::string limit_input(const std::string& withstands) {
  return "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3.." + withstands +
         " V' low-below='0.8 V' high-above='2 V' pull='up' pull-ohms='10 kohm'/>";
}
const std::string vgs = v1 + g2 + limit_input("5.5");
const std::string gate = "<optical-switch id='o' needs='4.5..5.5 V' draws='20 mA'/>";
const std::string closed_switch = "<dry-switch id='k' use='limit' rests='closed'/>";
const std::string heat =
    "<pin n='1' function='supply' rail='24V' limit='5 A'/>"
    "<pin n='2' function='switched' signal='heater' ohms='0.05 ohm' limit='5 A' at-reset='off'/>";
const std::string motor_pins =
    "<pin n='1' function='coil' coil='1' end='A' rail='24V' limit='1 A'/>"
    "<pin n='2' function='coil' coil='2' end='A' rail='24V' limit='1 A'/>"
    "<pin n='3' function='coil' coil='1' end='B' rail='24V' limit='1 A'/>"
    "<pin n='4' function='coil' coil='2' end='B' rail='24V' limit='1 A'/>";

std::string told(const Advice& advice) {
  std::string text = format("{}: {}\n", to_word(advice.verdict), advice.summary);
  static const std::map<StepKind, std::string> kinds{{StepKind::Move, "move"},
                                                     {StepKind::Park, "park"},
                                                     {StepKind::Hold, "hold"},
                                                     {StepKind::Insert, "insert"},
                                                     {StepKind::Insulate, "insulate"}};
  if (advice.plan) {
    for (const PlugPlan& plug : advice.plan->plugs) {
      text += format("plug {}: {} taken out\n", plug.plug, plug.extractions);
      for (const Step& s : plug.steps)
        text += format("  {} lead {} {}>{}: {}\n", kinds.at(s.kind), s.lead, s.from, s.to, s.why);
    }
  }
  for (const std::string& line : advice.softer) text += "softer: " + line + "\n";
  for (const std::string& line : advice.parts) text += "part: " + line + "\n";
  for (const Measurement& m : advice.measurements) text += format("measure ({}): {}\n", m.cost, m.settles);
  for (const Setting& s : advice.settings) text += format("setting: {} ({})\n", s.what, s.why);
  return text;
}

struct Row {
  std::string name;
  std::string header;
  std::string harness;
  std::map<std::string, std::string> jumpers;
  std::string expected;
};

}  // namespace

TEST_CASE("whole advice") {
  const std::vector<Row> rows{
      {"as it is",
       header_of_pins("limit", 3, vgs),
       gate + plug_of_leads("V G S"),
       {},
       "MATE: 'p' on 'J1': plug it in as it is\n"},
      {"a ring of two in a full housing is held, inserted",
       header_of_pins("limit", 3, vgs),
       gate + plug_of_leads("V S G"),
       {},
       "REPIN: 'p' on 'J1': move 2 contacts first\n"
       "plug 0: 2 taken out\n"
       "  hold lead 1 2>0: held beside the housing to make room\n"
       "  move lead 2 3>2: terminal 'G' wants ground: J1.2, ground\n"
       "  insert lead 1 0>3: terminal 'S' wants an input for 'limit': J1.3, input 'limit'\n"},
      {"a ring of three",
       header_of_pins("limit", 3, vgs),
       gate + plug_of_leads("S V G"),
       {},
       "REPIN: 'p' on 'J1': move 3 contacts first\n"
       "plug 0: 3 taken out\n"
       "  hold lead 0 1>0: held beside the housing to make room\n"
       "  move lead 1 2>1: terminal 'V' wants a supply of 4.5..5.5 V: J1.1, supply 5V\n"
       "  move lead 2 3>2: terminal 'G' wants ground: J1.2, ground\n"
       "  insert lead 0 0>3: terminal 'S' wants an input for 'limit': J1.3, input 'limit'\n"},
      {"an empty cavity serves for parking",
       header_of_pins("limit", 4, vgs + "<pin n='4' function='unused'/>"),
       gate + plug_of_leads("G V S -"),
       {},
       "REPIN: 'p' on 'J1': move 2 contacts first\n"
       "plug 0: 3 taken out\n"
       "  park lead 0 1>4: parked in an empty cavity to make room\n"
       "  move lead 1 2>1: terminal 'V' wants a supply of 4.5..5.5 V: J1.1, supply 5V\n"
       "  move lead 0 4>2: terminal 'G' wants ground: J1.2, ground\n"},
      {"one lead into an empty cavity: of the two ways the one move",
       header_of_pins("limit", 3, vgs),
       closed_switch + plug_of_leads("A - B"),
       {},
       "REPIN: 'p' on 'J1': move 1 contact first\n"
       "plug 0: 1 taken out\n"
       "  move lead 0 1>2: terminal 'A' wants ground: J1.2, ground\n"
       "setting: input 'limit' on J1.3 is low at rest and high when the device works (the switch rests "
       "closed and joins the input to ground)\n"},
      {"a spare lead is insulated",
       header_of_pins("limit", 3, vgs),
       "<device id='k' use='limit'><terminal id='C' signal='limit'/><terminal id='NC' signal='limit'/>"
       "<terminal id='NO' function='spare'/><switch a='C' b='NC' rests='closed'/><switch a='C' b='NO' "
       "rests='open'/>"
       "</device>" +
           plug_of_leads("NO C NC"),
       {},
       "REPIN: 'p' on 'J1': move 1 contact first\n"
       "plug 0: 1 taken out\n"
       "  insulate lead 0 1>0: terminal 'NO' has no use on this header\n"
       "setting: input 'limit' on J1.3 is low at rest and high when the device works (the switch rests "
       "closed and joins the input to ground)\n"},
      {"a split motor",
       header_of_pins("motor", 4, motor_pins),
       "<motor id='m' ohms='2 ohm'/>" + plug_of_leads("A1 B1 A2 B2"),
       {},
       "REPIN: 'p' on 'J1': move 2 contacts first\n"
       "plug 0: 2 taken out\n"
       "  hold lead 1 2>0: held beside the housing to make room\n"
       "  move lead 2 3>2: terminal 'A2' wants end A of bridge 2: J1.2, bridge 2 end A\n"
       "  insert lead 1 0>3: terminal 'B1' wants end B of bridge 1: J1.3, bridge 1 end B\n"},
      {"a turned motor may be mated: a setting does it",
       header_of_pins("motor", 4, motor_pins),
       "<motor id='m' ohms='2 ohm'/>" + plug_of_leads("B1 A2 A1 B2"),
       {},
       "MATE: 'p' on 'J1': plug it in as it is\n"
       "setting: invert the direction of the motor on 'J1' (a setting does here what moving contacts would "
       "do)\n"},
      {"the softer cure: turn the plug",
       header_of_pins("limit", 3, vgs, "pin-2.54"),
       gate + plug_of_leads("S G V", "pin-2.54"),
       {},
       "REPIN: 'p' on 'J1': move 2 contacts first\n"
       "plug 0: 2 taken out\n"
       "  hold lead 0 1>0: held beside the housing to make room\n"
       "  move lead 2 3>1: terminal 'V' wants a supply of 4.5..5.5 V: J1.1, supply 5V\n"
       "  insert lead 0 0>3: terminal 'S' wants an input for 'limit': J1.3, input 'limit'\n"
       "softer: turned by 180 degrees, cavity 1 of 'p' on J1.3, it is right as it is; mark that end of the "
       "housing, since nothing keeps it from going on the other way\n"},
      {"the softer cure: set the jumper",
       header_of_pins("fan", 2, "<pin n='1' function='supply' jumper='JP' limit='1 A'/>" + g2),
       "<fan id='f' needs='20..28 V' draws='0.1 A' reversed='blocked'/>" + plug_of_leads("V G"),
       {{"JP", "5V"}},
       "ADAPT: 'p' on 'J1': build in a supply of 24 V first\n"
       "softer: with jumper JP (V) at 24V instead of 5V it may be plugged in as it is; mind what else that "
       "jumper feeds\n"
       "part: a supply that gives 'f' at least 20 V, with its ground joined to the board's\n"},
      {"too much for the input: a part",
       header_of_pins("limit", 3, v1 + g2 + limit_input("3.6")),
       gate + plug_of_leads("V G S"),
       {},
       "ADAPT: 'p' on 'J1': build in a voltage divider of 3 kohm and 3.3 kohm first\n"
       "part: a voltage divider or level shifter that keeps J1.3 at 3.6 V or less\n"},
      {"the same, and in the wrong order",
       header_of_pins("limit", 3, v1 + g2 + limit_input("3.6")),
       gate + plug_of_leads("G V S"),
       {},
       "ADAPT: 'p' on 'J1': build in a voltage divider of 3 kohm and 3.3 kohm first, and move 2 contacts\n"
       "plug 0: 2 taken out\n"
       "  hold lead 0 1>0: held beside the housing to make room\n"
       "  move lead 1 2>1: terminal 'V' wants a supply of 4.5..5.5 V: J1.1, supply 5V\n"
       "  insert lead 0 0>2: terminal 'G' wants ground: J1.2, ground\n"
       "part: a voltage divider or level shifter that keeps J1.3 at 3.6 V or less\n"},
      {"another housing",
       header_of_pins("limit", 3, vgs, "ph-2.00"),
       gate + plug_of_leads("V G S"),
       {},
       "ADAPT: 'p' on 'J1': not as it is; it needs a part\n"
       "part: another housing for plug 'p': family 'ph-2.00', 3 positions, with its own contacts, crimped "
       "anew; they take 32 to 24 AWG, not the 22 AWG of its leads: those leads need other wire, or take an "
       "adapter lead between ('plugward repin --adapter')\n"},
      {"something must be known first",
       header_of_pins("limit", 3, v1 + limit_input("5.5")),
       gate + plug_of_leads("V G ?"),
       {},
       "MEASURE: 'p' on 'J1': something must be known first; 2 measurements settle it, the cheapest first\n"
       "measure (0): where the BK lead in cavity 3 of 'p' goes\n"
       "measure (2): what J1.2 is\n"},
      {"do not join: harm",
       header_of_pins("heater", 2, heat, "screw-5.08"),
       "<heater-element id='h' volts='12 V' watts='40 W'/>" + plug_of_leads("A B", "screw-5.08"),
       {},
       "APART: 'p' on 'J1': do not join these; it can damage or hurt, and no move of contacts or added part "
       "cures it\n"},
      {"do not join: of no use",
       header_of_pins("limit", 3, vgs),
       "<thermistor id='t' ohms='100 kohm'/>" + plug_of_leads("- A B"),
       {},
       "APART: 'p' on 'J1': do not join these; it will not work, and no move of contacts or added part cures "
       "it\n"},
      {"screw block: its leads can be moved, though it has no lance",
       header_of_pins("fan", 2, "<pin n='1' function='supply' rail='24V' limit='1 A'/>" + g2, "screw-5.08"),
       "<fan id='f' needs='20..28 V' draws='0.1 A'/>" + plug_of_leads("G V", "screw-5.08"),
       {},
       "REPIN: 'p' on 'J1': move 2 contacts first\n"
       "plug 0: 2 taken out\n"
       "  hold lead 0 1>0: held beside the housing to make room\n"
       "  move lead 1 2>1: terminal 'V' wants a supply of 20..28 V: J1.1, supply 24V\n"
       "  insert lead 0 0>2: terminal 'G' wants ground or a switched output: J1.2, ground\n"},
      {"ribbon socket: they cannot",
       "<header id='J1' use='display' family='box-2.54' positions='6' rows='2'>"
       "<pin n='1' function='supply' rail='5V' limit='1 A'/><pin n='2' function='ground'/></header>",
       "<device id='d' use='display'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='4..6 V' draws='10 mA'/></device>"
       "<plug id='p' family='box-2.54' positions='6' rows='2'><lead cavity='1' colour='BK' gauge='28 AWG' "
       "to='G'/>"
       "<lead cavity='2' colour='RD' gauge='28 AWG' to='V'/></plug>",
       {},
       "ADAPT: 'p' on 'J1': fits once its leads are in another order, which this housing does not allow\n"
       "part: a new housing: the conductors of this one cannot be moved one by one\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(row.header), harness_of(row.harness));
    const std::string got = told(advise(bench.fitting({{"p", "J1"}}, row.jumpers)));
    CHECK(got == row.expected);
  }
}

TEST_CASE("two plugs of one device are planned together") {
  const Bench bench = Bench::shipped("heron-m7", "kite-probe");
  const std::string got =
      told(advise(bench.fitting({{"control", "J9"}, {"trigger", "J10"}}, {{"JP2", "5V"}})));
  CHECK(got ==
        "REPIN: 'control' on 'J9' and 'trigger' on 'J10': move 2 contacts first\n"
        "plug 0: 2 taken out\n"
        "  hold lead 0 1>0: held beside the housing to make room\n"
        "  move lead 2 3>1: terminal 'P' wants an output for 'servo': J9.1, output 'servo'\n"
        "  insert lead 0 0>3: terminal 'G' wants ground: J9.3, ground\n"
        "softer: turned by 180 degrees, cavity 1 of 'control' on J9.3, it is right as it is; mark that end "
        "of the housing, since nothing keeps it from going on the other way\n"
        "setting: input 'probe' on J10.2 (net PC7) is high at rest and low when the device works (the switch "
        "rests open and joins the input to ground)\n");
}

TEST_CASE("a plug left aside does not hide what is wrong with the one that is placed") {
  // The device waits for its second plug, but all ends of its load are here: too low a supply is too low.
  const std::string device = "<servo-probe id='s' needs='4.6..5.5 V' draws='0.1 A' reversed='destroyed'/>";
  const std::string other =
      "<plug id='q' family='xh-2.50' positions='2'><lead cavity='1' colour='WH' to='T'/>"
      "<lead cavity='2' colour='BK' to='H'/></plug>";
  const auto judged = [&](const std::string& rail, const std::string& high) {
    const Bench bench(
        board_of(header_of_pins("probe", 3,
                                "<pin n='1' function='output' signal='servo' rail='3V3' high='" + high +
                                    "' limit='8 mA'/><pin n='2' function='supply' rail='" + rail +
                                    "' limit='1 A'/><pin n='3' function='ground'/>")),
        harness_of(device + plug_of_leads("P V G") + other));
    return std::string(to_word(advise(bench.fitting({{"p", "J1"}})).verdict));
  };
  CHECK(judged("5V", "2.9..3.3 V") == "MATE");
  CHECK(judged("3V3", "2.9..3.3 V") == "ADAPT");
  CHECK(judged("5V", "1.5..1.8 V") == "ADAPT");
}

TEST_CASE("a plan is carried out, judged and clean; its texts are those of the family") {
  const Bench bench(board_of(header_of_pins("limit", 3, vgs)), harness_of(gate + plug_of_leads("V S G")));
  const Advice advice = advise(bench.fitting({{"p", "J1"}}));
  REQUIRE(advice.plan.has_value());
  CHECK(advice.plan->after.clean());
  std::vector<int> cavities;
  for (const Lead& lead : advice.plan->harness.plugs[0].leads) cavities.push_back(lead.cavity);
  CHECK((cavities == std::vector{1, 3, 2}));
  CHECK(advice.plan->technique.size() == 6);  // five for a lance on the contact, one from the family
  CHECK(advice.plan->cautions.size() == 4);
  CHECK(advice.plan->checks.size() == 4);
  CHECK((advice.plan->tools == std::vector<std::string>{"fine flat blade or extraction tool",
                                                        "tape flags and a pen",
                                                        "meter with continuity beeper"}));
}

TEST_CASE("wrong seatings are those of the plug as it will be, and may be left out") {
  const Bench bench(board_of(header_of_pins("limit", 3, vgs, "pin-2.54")),
                    harness_of(gate + plug_of_leads("S G V", "pin-2.54")));
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const Advice advice = advise(fitting);
  REQUIRE(!advice.wrong.empty());
  std::string turned;
  for (const SeatingJudgement& s : advice.wrong) {
    CHECK(s.seating.kind != SeatingKind::Home);
    if (s.seating.kind == SeatingKind::Turned) turned = to_word(s.worst);
  }
  CHECK(turned == "harm");  // before the plan turning was the cure; afterwards it is the mistake
  for (std::size_t i = 1; i < advice.wrong.size(); ++i)
    CHECK(advice.wrong[i - 1].worst <= advice.wrong[i].worst);
  CHECK(advise(fitting, {.wrong_seatings = false, .softer = false}).wrong.empty());
  CHECK(advise(fitting, {.wrong_seatings = false, .softer = false}).softer.empty());
}

TEST_CASE("nothing to judge is no pass") {
  const Bench bench(board_of(header_of_pins("limit", 3, vgs)), harness_of(gate + plug_of_leads("V G S")));
  CHECK(to_word(advise(bench.fitting({})).verdict) == "MEASURE");
  const Bench bare(board_of(header_of_pins("limit", 3, vgs)),
                   harness_of("<plug id='p' family='xh-2.50' positions='3'/>"));
  CHECK(to_word(advise(bare.fitting({{"p", "J1"}})).verdict) == "MEASURE");
}

TEST_CASE("the positions of a dozen switches on one input are told apart") {
  // They were kept as the digits of an int, which ran over at the eleventh.
  std::string bank = "<device id='bank' use='limit'><terminal id='A' signal='limit'/><terminal id='B'/>";
  for (int i = 0; i < 12; ++i) bank += "<switch a='A' b='B' rests='open'/>";
  const Bench bench(board_of(header_of_pins("limit", 3, vgs)),
                    harness_of(bank + "</device>" + plug_of_leads("- B A")));
  const Advice advice = advise(bench.fitting({{"p", "J1"}}));
  CHECK(told(advice).starts_with("MATE: 'p' on 'J1': plug it in as it is\n"));
}
