// SPDX-License-Identifier: MIT
#include "draw/mating_facts.h"

#include <doctest/doctest.h>

#include "unit/draw/fixtures.h"

namespace plugward {
namespace {

/// "#heading" or "sign|text", one a line.
std::string panel_of(const test::Fixture& f, int placement = 0) {
  std::string text;
  for (const Paragraph& p : panel_text(gather(f.fitting, f.advice, placement)))
    text += (p.heading ? "#" : p.sign + "|") + p.text + "\n";
  return text;
}

SeatingJudgement seated(std::string words, Weight worst, int plug = 0) {
  SeatingJudgement wrong;
  wrong.plug = plug;
  wrong.seating.words = std::move(words);
  wrong.worst = worst;
  return wrong;
}

}  // namespace

TEST_CASE("the description says everything that the picture shows") {
  const test::FixturePtr f = test::probe_to_repin();
  CHECK(describe(gather(f->fitting, f->advice, 0), View::WireSide) ==
        "Verdict REPIN. Exchange the contacts in cavities 1 and 3; then the plug may be mated. The plug is "
        "seen from the wire "
        "side, wires towards you. Now: Cavity 1: BN G, ground, meets J9.1. Cavity 2: RD V, supply, meets "
        "J9.2. Cavity 3: OG P, "
        "servo in, meets J9.3. Moves: 1. take BN (G) out of cavity 1 and hold it beside the housing. 2. move "
        "OG (P) from "
        "cavity 3 to cavity 1. 3. seat BN (G), the one held, in cavity 3. Then: Cavity 1: OG P, servo in, ✓ "
        "suits J9.1. "
        "Cavity 2: RD V, supply, ✓ suits J9.2. Cavity 3: BN G, ground, ✓ suits J9.3. Header J9 PROBE from "
        "pin 1: 1 servo out, "
        "2.9..3.4 V; 2 supply 5V, 4.75..5.25 V; 3 ground.");
}

TEST_CASE("findings are flagged at their leads and pins, in the order of the judge") {
  const test::FixturePtr f = test::limit_apart();
  // One that belongs to no lead here takes no flag away from the others.
  Finding elsewhere;
  elsewhere.weight = Weight::Harm;
  f->advice.now.findings.insert(f->advice.now.findings.begin(), 5, elsewhere);
  const MatingFacts facts = gather(f->fitting, f->advice, 0);
  std::vector<int> numbers;
  for (const Flagged& flagged : facts.flagged) numbers.push_back(flagged.number);
  CHECK(numbers == std::vector<int>{0, 0, 0, 0, 0, 1, 2});
  CHECK(flags_of_lead(facts, 0) == "2");
  CHECK(flags_of_lead(facts, 1) == "1");
  CHECK(flags_of_lead(facts, 2) == "");
  CHECK(flags_of_pin(facts, 1) == "2");
  CHECK(flags_of_pin(facts, 2) == "1");
  CHECK(meeting_words(facts, 0, 1, false) == "✗ wrong on J9.1");
  // Not blamed is not the same as good.
  CHECK(meeting_words(facts, 2, 3, false) == "meets J9.3");
  CHECK(meeting_words(facts, 2, 4, false) == "meets no pin");
}

TEST_CASE("what is found of a part is flagged at the leads of its ends") {
  const test::FixturePtr f = test::motor_mates();
  f->advice.verdict = Verdict::Apart;
  Finding coil;
  coil.weight = Weight::Harm;
  coil.at.device = 0;
  coil.at.part = 1;
  f->advice.now.findings = {coil};
  const MatingFacts facts = gather(f->fitting, f->advice, 0);
  CHECK(flags_of_lead(facts, 0) == "");
  CHECK(flags_of_lead(facts, 1) == "");
  CHECK(flags_of_lead(facts, 2) == "1");
  CHECK(flags_of_lead(facts, 3) == "1");
  // A place in the files says more.
  f->advice.now.findings[0].first = f->harness.plugs[0].leads[3].span;
  const MatingFacts placed = gather(f->fitting, f->advice, 0);
  CHECK(flags_of_lead(placed, 2) == "");
  CHECK(flags_of_lead(placed, 3) == "1");
}

TEST_CASE("a device written in one line: only the terminal that is named is flagged, not all that share its span") {
  const test::FixturePtr f = test::motor_mates();
  f->advice.verdict = Verdict::Adapt;
  Finding level;
  level.weight = Weight::Fault;
  level.at.device = 0;
  level.at.part = 0;
  level.at.terminal = f->harness.plugs[0].leads[1].to->terminal;
  for (Terminal& terminal : f->harness.devices[0].terminals) terminal.span = {1, 10, 20};
  level.first = {1, 10, 20};
  f->advice.now.findings = {level};
  const MatingFacts facts = gather(f->fitting, f->advice, 0);
  CHECK(flags_of_lead(facts, 0) == "");
  CHECK(flags_of_lead(facts, 1) == "1");
  CHECK(flags_of_lead(facts, 2) == "");
  CHECK(flags_of_lead(facts, 3) == "");
}

TEST_CASE("a doubt is not called wrong") {
  const test::FixturePtr f = test::fan_to_measure();
  CHECK(meeting_words(gather(f->fitting, f->advice, 0), 0, 1, false) == "? in doubt on J7.1");
}

TEST_CASE("only MATE and a finished plan call a lead suited") {
  const test::FixturePtr f = test::motor_mates();
  CHECK(meeting_words(gather(f->fitting, f->advice, 0), 0, 1, false) == "✓ suits J1.1");
  f->advice.verdict = Verdict::Measure;
  CHECK(meeting_words(gather(f->fitting, f->advice, 0), 0, 1, false) == "meets J1.1");
}

TEST_CASE("a plug that a plan leaves alone is suited, one without a plan is not called so") {
  const test::FixturePtr f = test::probe_to_repin();
  f->advice.plan->plugs[0].steps.clear();
  CHECK(meeting_words(gather(f->fitting, f->advice, 0), 0, 1, false) == "✓ suits J9.1");
  f->advice.plan.reset();
  CHECK(meeting_words(gather(f->fitting, f->advice, 0), 0, 1, false) == "meets J9.1");
}

TEST_CASE("the panel of a plug that mates checks every lead off") {
  const test::FixturePtr f = test::motor_mates();
  CHECK(panel_of(*f) ==
        "|The plug may be mated as it is.\n"
        "#Nothing to move; lead by lead\n"
        "✓|1 BK (A1) meets 1 motor 1A\n"
        "✓|2 GN (B1) meets 2 motor 1B\n"
        "✓|3 BU (A2) meets 3 motor 2A\n"
        "✓|4 RD (B2) meets 4 motor 2B\n"
        "#Tell the firmware\n"
        "|turn the direction of the motor on 'J1' round\n"
        "#Find cavity 1\n"
        "|a notch at one end of the housing; copies may lack the mark\n");
}

TEST_CASE("cures without a tool come first in panel and description") {
  const test::FixturePtr f = test::led_to_adapt();
  f->advice.parts = {"another housing"};
  f->advice.now.findings.clear();
  f->advice.softer = {"turned by 180 degrees it is right as it is",
                      "with jumper JP2 at 5V it may be plugged in", "'bar' may go on 'J10'",
                      "'bar' may go on 'J11'"};
  CHECK(panel_of(*f) ==
        "#First see whether this will do\n"
        "–|turned by 180 degrees it is right as it is\n"
        "–|with jumper JP2 at 5V it may be plugged in\n"
        "–|'bar' may go on 'J10'\n"
        "|… 1 more\n"
        "#Otherwise\n"
        "|Put a level buffer into the data line, then plug in.\n"
        "#Add first\n"
        "|another housing\n");
  const std::string description = describe(gather(f->fitting, f->advice, 0), View::WireSide);
  CHECK(description.rfind(
            "Verdict ADAPT. Put a level buffer into the data line, then plug in. First see whether "
            "this will do: turned by 180 degrees it is right as it is; with jumper JP2 at 5V it may "
            "be plugged in; 'bar' may go on 'J10'; 'bar' may go on 'J11'. The plug is seen from",
            0) == 0);
}

TEST_CASE("wrong seatings of this plug that do harm are warned of where it is to be plugged in") {
  const test::FixturePtr f = test::probe_to_repin();
  f->advice.plan->cautions.clear();
  f->advice.wrong = {seated("on the neighbour 'J1' (MOTOR X)", Weight::Harm, 1),
                     seated("turned by 180 degrees", Weight::Harm),
                     seated("shifted by 1 towards pin 3", Weight::Harm),
                     seated("shifted by 1 towards pin 1", Weight::Fault)};
  const std::string moves =
      "#Moves, in this order\n"
      "1|take BN (G) out of cavity 1 and hold it beside the housing\n"
      "2|move OG (P) from cavity 3 to cavity 1\n"
      "3|seat BN (G), the one held, in cavity 3\n"
      "|Then plug in, and check that cavity 1 meets pin 1.\n";
  const std::string summary = "|Exchange the contacts in cavities 1 and 3; then the plug may be mated.\n";
  CHECK(panel_of(*f) == summary +
                            "#Mind how it goes on, after the moves\n"
                            "–|turned by 180 degrees: harm\n"
                            "–|shifted by 1 towards pin 3: harm\n" +
                            moves);

  f->advice.wrong.push_back(seated("a", Weight::Harm));
  f->advice.wrong.push_back(seated("b", Weight::Harm));
  CHECK(panel_of(*f) == summary +
                            "#Mind how it goes on, after the moves\n"
                            "–|turned by 180 degrees: harm\n"
                            "–|shifted by 1 towards pin 3: harm\n"
                            "–|a: harm\n"
                            "|… 1 more\n" +
                            moves);

  f->advice.wrong = {seated("shifted by 1 towards pin 1", Weight::Fault)};
  CHECK(panel_of(*f) == summary + moves);

  f->advice.verdict = Verdict::Apart;
  f->advice.plan.reset();
  f->advice.wrong = {seated("turned by 180 degrees", Weight::Harm)};
  CHECK(panel_of(*f) == summary);
}

TEST_CASE("a plug that mates is warned of before its leads are listed") {
  const test::FixturePtr f = test::motor_mates();
  f->advice.settings.clear();
  f->advice.wrong = {seated("turned by 180 degrees", Weight::Harm)};
  CHECK(panel_of(*f).rfind("|The plug may be mated as it is.\n"
                           "#Mind how it goes on\n"
                           "–|turned by 180 degrees: harm\n"
                           "#Nothing to move; lead by lead\n",
                           0) == 0);
}

TEST_CASE("every measurement is listed") {
  const test::FixturePtr f = test::fan_to_measure();
  f->advice.now.findings.clear();
  CHECK(panel_of(*f) ==
        "|Where JP2 is fitted decides: measure first.\n"
        "#Measure this first\n"
        "|measure volts between J7.1 and ground, board powered, nothing plugged in → 4.75..5.25 V: "
        "JP2 is "
        "at 5V; 21.6..26.4 V: JP2 is at 24V\n");
  f->advice.measurements.push_back({"look at JP2", "", 0, ""});
  CHECK(panel_of(*f) ==
        "|Where JP2 is fitted decides: measure first.\n"
        "#Measure, the cheapest first\n"
        "1|measure volts between J7.1 and ground, board powered, nothing plugged in → 4.75..5.25 V: "
        "JP2 "
        "is "
        "at 5V; 21.6..26.4 V: JP2 is at 24V\n"
        "2|look at JP2\n");
}

}  // namespace plugward
