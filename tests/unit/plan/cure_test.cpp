// SPDX-License-Identifier: MIT
// Whole cures: verdict, the parts with their values, why, what else was looked at. Everything that is offered
// was judged clean, over all shipped harnesses and headers.
#include "plan/cure.h"

#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string heron_m7() {
  std::ifstream in(std::string(PLUGWARD_SOURCE_DIR) + "/boards/heron-m7.xml");
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

/// "ADAPT: summary", then what and why of every cure, what it takes and what else was looked at.
std::string told(const Advice& advice) {
  std::string text = format("{}: {}\n", to_word(advice.verdict), advice.summary);
  for (const Cure& cure : advice.cures) {
    text += format("{}: {}\n  next: {}\n", cure.kind, cure.what, cure.next_best);
    for (const Component& c : cure.components) text += format("  {} {} ({})\n", c.kind, c.value, c.demands);
  }
  return text;
}

/// The cured harness, judged anew.
bool clean(const Fitting& fitting, const Advice& advice) {
  Fitting changed = fitting;
  changed.harness = &*advice.cured;
  return assess(changed).clean();
}

struct Row {
  std::string name, board, harness;
  std::map<std::string, std::string> at, jumpers;
  std::string expected;
};

std::string proximity(const std::string& attributes, const std::string& leads = "V Q G") {
  return harness_of("<proximity id='s' use='sensor' signal='sensor' needs='10..30 V' draws='15 mA' " +
                    attributes + "/>" + plug_of_leads(leads));
}

std::string input_without_pull(const std::string& rail) {
  return board_of(header_of_pins(
      "limit", 3,
      format(
          "<pin n='1' function='supply' rail='{}'/><pin n='2' function='ground'/><pin n='3' function='input' "
          "signal='limit' rail='3V3' withstands='-0.3..3.6 V' low-below='0.8 V' high-above='2 V'/>",
          rail)));
}

const std::string buffer_parts =
    "  level buffer 74HCT125 or another gate of the 74HCT family (supply 4.5..5.5 V)\n"
    "  capacitor 100 nF (ceramic)\n";
const std::string opto_parts =
    "  optocoupler  (transfer ratio 50 % or more at 10 mA, 30 V or more at the output)\n"
    "  resistor 2.2 kohm (5 %, 1 W or more)\n";

}  // namespace

TEST_CASE("whole cures") {
  const std::string m7 = heron_m7();
  const std::vector<Row> rows = {
      {"24 V sourcing sensor on a 3.3 V input with a pull-up",
       m7,
       proximity("kind='sourcing' drop='2 V' leak='0.1 mA' limit='0.2 A' rests='off'"),
       {{"p", "J21"}},
       {},
       "ADAPT: 'p' on 'J21': build in a voltage divider of 6.8 kohm and 910 ohm first\n"
       "divider: A voltage divider in the BK lead of terminal 'Q': 6.8 kohm in the lead, 910 ohm from its "
       "board "
       "side to ground.\n"
       "  next: an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor, and turns the sense "
       "round\n"
       "  resistor 6.8 kohm (1 %, 0.25 W or more)\n"
       "  resistor 910 ohm (1 %, 0.125 W or more)\n"},
      {"the same with contacts to move",
       m7,
       proximity("kind='sourcing' drop='2 V' leak='0.1 mA' limit='0.2 A' rests='off'", "V G Q"),
       {{"p", "J21"}},
       {},
       "ADAPT: 'p' on 'J21': build in a voltage divider of 6.8 kohm and 910 ohm first, and move 2 contacts\n"
       "divider: A voltage divider in the BK lead of terminal 'Q': 6.8 kohm in the lead, 910 ohm from its "
       "board "
       "side to ground.\n"
       "  next: an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor, and turns the sense "
       "round\n"
       "  resistor 6.8 kohm (1 %, 0.25 W or more)\n"
       "  resistor 910 ohm (1 %, 0.125 W or more)\n"},
      {"sinking sensor with a resistor of its own, small drop",
       m7,
       proximity("kind='sinking' drop='0.3 V' leak='0.01 mA' pull='10 kohm' limit='0.2 A' rests='off'"),
       {{"p", "J21"}},
       {},
       "ADAPT: 'p' on 'J21': build in a Schottky diode in the lead first\n"
       "series-diode: A Schottky diode in the BK lead of terminal 'Q', band (cathode) toward the device.\n"
       "  next: an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor\n"
       "  diode Schottky (40 V or more, at most 0.3 V at 1 mA)\n"},
      {"sinking sensor with a resistor of its own, drop of 2 V",
       m7,
       proximity("kind='sinking' drop='2 V' leak='0.1 mA' pull='10 kohm' limit='0.2 A' rests='off'"),
       {{"p", "J21"}},
       {},
       "ADAPT: 'p' on 'J21': build in an optocoupler with 2.2 kohm first\n"
       "optocoupler: An optocoupler: its LED with 2.2 kohm from the device's plus to its output, its "
       "transistor "
       "from J21.2 of the board to ground.\n"
       "  next: a Schottky diode in the lead: judged on the model and refused, because J21.2 falls to 2.304 "
       "V when "
       "low in the worst case, and is read as low below 0.8 V\n" +
           opto_parts},
      {"12 V fan on 24 V, its minus switched",
       m7,
       harness_of("<fan id='f' needs='10.2..13.8 V' draws='0.15 A' reversed='blocked'/>" +
                  plug_of_leads("V G")),
       {{"p", "J11"}},
       {{"JP4", "24V"}},
       "ADAPT: 'p' on 'J11': build in a step-down regulator to 12 V first\n"
       "regulator: A step-down regulator of 12 V in the BK lead of terminal 'V', its minus at the BK lead of "
       "terminal 'G'.\n"
       "  next: a linear regulator: it turns (25.2 V - 12 V) x 0.15 A = 1.98 W into heat\n"
       "  regulator 12 V out, 0.5 A (output within 5 %, input 14.6..36 V)\n"},
      {"24 V sourcing sensor on a header of 5 V: two cures, and 24 V while the board is off",
       m7,
       harness_of("<proximity id='s' use='limit' signal='limit' kind='sourcing' drop='2 V' leak='0.1 mA' "
                  "limit='0.2 A' rests='off' needs='10..30 V' draws='15 mA'/>" +
                  plug_of_leads("V G Q")),
       {{"p", "J5"}},
       {},
       "ADAPT: 'p' on 'J5': build in a supply of 24 V and a voltage divider of 12 kohm and 1.6 kohm first\n"
       "supply: A supply of 24 V for 's', its minus joined to the BK lead of terminal 'G'.\n"
       "  next: a step-up regulator on the board's 5.05 V: it draws 73.47 mA from that rail, more with its "
       "losses\n"
       "  supply 24 V, 0.5 A (ready made and closed, output within 5 %, isolated from the mains)\n"
       "divider: A voltage divider in the BK lead of terminal 'Q': 12 kohm in the lead, 1.6 kohm from its "
       "board "
       "side to ground.\n"
       "  next: an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor, and turns the sense "
       "round\n"
       "  resistor 12 kohm (1 %, 0.125 W or more)\n"
       "  resistor 1.6 kohm (1 %, 0.125 W or more)\n"},
      {"switch on an input without pull",
       input_without_pull("3V3"),
       harness_of("<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- A B")),
       {{"p", "J1"}},
       {},
       "ADAPT: 'p' on 'J1': build in a pull-up of 10 kohm first\n"
       "pull-up: A pull-up resistor of 10 kohm from the BK lead of terminal 'B' to the added supply lead "
       "(3.3 V).\n"
       "  next: a resistor of 4.7 kohm: it takes 694.7 uA instead of 347.4 uA, and less is enough\n"
       "  lead  (red, with a contact of family 'xh-2.50')\n"
       "  resistor 10 kohm (5 %, 0.125 W or more)\n"},
      {"the same where only 5 V is near, more than the input withstands",
       input_without_pull("5V"),
       harness_of("<dry-switch id='k' use='limit' rests='closed'/>" + plug_of_leads("- A B")),
       {{"p", "J1"}},
       {},
       "ADAPT: 'p' on 'J1': build in a pull-up of 20 kohm with 20 kohm to ground first\n"
       "pull-up: A pull-up resistor of 20 kohm from the BK lead of terminal 'B' to the added supply lead (5 V), "
       "and 20 kohm from it to ground.\n"
       "  next: a pull-up of 20 kohm alone: it would bring the input to 5 V\n"
       "  lead  (red, with a contact of family 'xh-2.50')\n"
       "  resistor 20 kohm (1 %, 0.125 W or more)\n"
       "  resistor 20 kohm (1 %, 0.125 W or more)\n"},
      // PRX-6: 0.5 mA through 10 kohm is not high; 3.3 V - 0.5 mA x 2.31 kohm is.
      {"0.5 mA leaks into the pull-up",
       input_without_pull("3V3"),
       harness_of("<proximity id='k' use='limit' kind='sinking' needs='3..5 V' draws='5 mA' drop='0.3 V' "
                  "leak='0.5 mA' pull='none'/>" +
                  plug_of_leads("V G Q")),
       {{"p", "J1"}},
       {},
       "ADAPT: 'p' on 'J1': build in a pull-up of 2.2 kohm first\n"
       "pull-up: A pull-up resistor of 2.2 kohm from the BK lead of terminal 'Q' to the BK lead of terminal "
       "'V' "
       "(3.3 V).\n"
       "  next: a resistor of 1 kohm: it takes 3.158 mA instead of 1.579 mA, and less is enough\n"
       "  resistor 2.2 kohm (5 %, 0.125 W or more)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(row.board, row.harness);
    const Fitting fitting = bench.fitting(row.at, row.jumpers);
    const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
    const std::string got = told(advice);
    CHECK(got == row.expected);
    CHECK(advice.cured.has_value() == !advice.cures.empty());
    if (advice.cured) CHECK(clean(fitting, advice));
  }
}

TEST_CASE("the Firefly LED bar on the Heron M7 gets a level buffer") {
  const Bench bench = Bench::shipped("heron-m7", "firefly-led-bar");
  const Advice advice = advise(bench.fitting({{"light", "J20"}}), {.wrong_seatings = false, .softer = false});
  CHECK(told(advice) ==
        "ADAPT: 'light' on 'J20': build in a level buffer of the 74HCT family first\n"
        "level-buffer: A level buffer of the 74HCT family in the GN lead of terminal 'D', fed from 'V' "
        "(4.9..5.2 "
        "V).\n"
        "  next: a supply of at most 4.143 V for the device, of which the board's 2.9 V are 0.7: a converter "
        "for all "
        "of its current\n" +
            buffer_parts);
  REQUIRE(advice.plan.has_value());
  CHECK(advice.plan->after.clean());
}

TEST_CASE("a 5 V output on the 3.6 V input of LIMIT Z") {
  const Bench bench = Bench::shipped("heron-m7", "optical-switch");
  const Advice advice = advise(bench.fitting({{"limit", "J7"}}), {.wrong_seatings = false, .softer = false});
  CHECK(told(advice) ==
        "ADAPT: 'limit' on 'J7': build in a voltage divider of 3 kohm and 3.3 kohm first\n"
        "divider: A voltage divider in the YE lead of terminal 'S': 3 kohm in the lead, 3.3 kohm from its "
        "board side "
        "to ground.\n"
        "  next: a series resistor alone: what the protection diode of J7.3 stands is not stated; an optocoupler: "
        "a logic output is not made to feed its LED\n"
        "  resistor 3 kohm (1 %, 0.125 W or more)\n"
        "  resistor 3.3 kohm (1 %, 0.125 W or more)\n");
  // The sense is what it was without the divider.
  REQUIRE(advice.settings.size() == 1);
  CHECK(advice.settings[0].what ==
        "input 'limit' on J7.3 (net PA4) is low at rest and high when the device works");
}

TEST_CASE("cures can be left out, and nothing else changes but the summary") {
  const Bench bench = Bench::shipped("heron-m7", "firefly-led-bar");
  const Fitting fitting = bench.fitting({{"light", "J20"}});
  const Advice with = advise(fitting, {.wrong_seatings = false, .softer = false});
  const Advice without = advise(fitting, {.wrong_seatings = false, .softer = false, .cures = false});
  CHECK(without.verdict == with.verdict);
  CHECK(without.parts == with.parts);
  CHECK(without.cures.empty());
  CHECK_FALSE(without.cured.has_value());
  CHECK(without.summary == "'light' on 'J20': not as it is; it needs a part");
}

TEST_CASE("whatever is offered was judged clean: every shipped harness on every header") {
  int cured = 0;
  for (const char* board : {"heron-a4", "heron-m7"}) {
    for (const char* harness :
         {"changeover-limit", "fan-12v", "fan-24v", "firefly-led-bar", "inductive-sensor", "limit-switch",
          "mystery-lead", "nozzle-heater", "optical-switch", "thermistor", "x-motor"}) {
      const Bench bench = Bench::shipped(board, harness);
      for (const Header& header : bench.board->headers) {
        CAPTURE(board);
        CAPTURE(harness);
        CAPTURE(header.id);
        std::map<std::string, std::string> jumpers;
        for (const Jumper& jumper : bench.board->jumpers) jumpers[jumper.id] = jumper.rails.back();
        const Fitting fitting = bench.fitting({{bench.harness->plugs.front().id, header.id}}, jumpers);
        const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
        CHECK(advice.cured.has_value() == !advice.cures.empty());
        if (!advice.cured) continue;
        ++cured;
        CHECK(advice.verdict == Verdict::Adapt);
        CHECK(clean(fitting, advice));
        REQUIRE(advice.plan.has_value());
        CHECK(advice.plan->after.clean());
      }
    }
  }
  CHECK(cured > 3);
}

TEST_CASE("whatever is offered for the Kite probe was judged clean: either plug on every header") {
  const Bench bench = Bench::shipped("heron-m7", "kite-probe");
  for (const Header& header : bench.board->headers) {
    for (const char* volts : {"5V", "24V"}) {
      for (const bool control : {true, false}) {
        const std::string fixed = control ? "J10" : "J9";
        if (header.id == fixed) continue;
        CAPTURE(header.id);
        CAPTURE(volts);
        CAPTURE(control);
        const Fitting fitting =
            bench.fitting({{"control", control ? header.id : "J9"}, {"trigger", control ? "J10" : header.id}},
                          {{"JP2", volts}, {"JP3", "24V"}, {"JP4", "24V"}});
        const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
        for (const Cure& cure : advice.cures) CHECK(cure.next_best.empty() == (cure.kind == "lead"));
        if (!advice.cured) continue;
        CHECK(clean(fitting, advice));
      }
    }
  }
}
