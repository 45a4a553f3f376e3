// SPDX-License-Identifier: MIT
#include "draw/mating_facts.h"

#include <doctest/doctest.h>

#include "draw/panel_words.h"
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

TEST_CASE(
    "a device written in one line: only the terminal that is named is flagged, not all that share its span") {
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

TEST_CASE("wrong seatings of this plug are told worst first, save where it is kept apart") {
  const test::FixturePtr f = test::probe_to_repin();
  f->advice.plan->cautions.clear();
  const RepinPlan plan = *f->advice.plan;
  const SeatingJudgement turned = seated("turned by 180 degrees", Weight::Harm),
                         up = seated("shifted by 1 towards pin 3", Weight::Harm),
                         down = seated("shifted by 1 towards pin 1", Weight::Fault),
                         other = seated("on the neighbour 'J1' (MOTOR X)", Weight::Harm, 1),
                         none = seated("on the neighbour 'J2' (MOTOR Y)", Weight::Note);
  struct Row {
    std::string name;
    Verdict verdict;
    bool plan;
    std::vector<SeatingJudgement> wrong;
    std::string told, last;
  };
  const std::vector<Row> rows{
      {"after the moves; another plug's and harmless ones are left out",
       Verdict::Repin,
       true,
       {other, turned, up, down, none},
       "#Mind how it goes on, after the moves\n"
       "–|turned by 180 degrees: harm\n"
       "–|shifted by 1 towards pin 3: harm\n",
       "#Other wrong ways to plug it in\n"
       "–|does not work: shifted by 1 towards pin 1\n"},
      {"many",
       Verdict::Repin,
       true,
       {turned, up, seated("a", Weight::Harm), seated("b", Weight::Harm), seated("c", Weight::Harm), down,
        seated("d", Weight::Fault), seated("e", Weight::Doubt), seated("f", Weight::Doubt)},
       "#Mind how it goes on, after the moves\n"
       "–|turned by 180 degrees: harm\n"
       "–|shifted by 1 towards pin 3: harm\n"
       "–|a: harm\n"
       "|… 2 more\n",
       "#Other wrong ways to plug it in\n"
       "–|harm as well: b; c\n"
       "–|does not work: shifted by 1 towards pin 1; d\n"
       "–|not known: e; f\n"},
      {"nothing that matters", Verdict::Repin, true, {none}, "", ""},
      {"no harm",
       Verdict::Repin,
       true,
       {down},
       "",
       "#Mind how it goes on, after the moves\n–|does not work: shifted by 1 towards pin 1\n"},
      {"mates", Verdict::Mate, false, {turned}, "#Mind how it goes on\n–|turned by 180 degrees: harm\n", ""},
      {"parts with values",
       Verdict::Adapt,
       true,
       {turned},
       "#Mind how it goes on, with the parts built in\n–|turned by 180 degrees: harm\n",
       ""},
      {"parts in words only",
       Verdict::Adapt,
       false,
       {turned},
       "#Mind how it goes on; judged as it is now\n–|turned by 180 degrees: harm\n",
       ""},
      {"not known yet",
       Verdict::Measure,
       false,
       {turned},
       "#Mind how it goes on; judged as it is now\n–|turned by 180 degrees: harm\n",
       ""},
      {"kept apart", Verdict::Apart, false, {turned}, "", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    f->advice.verdict = row.verdict;
    f->advice.plan.reset();
    if (row.plan) f->advice.plan = plan;
    f->advice.wrong.clear();
    const std::string without = panel_of(*f);
    f->advice.wrong = row.wrong;
    const std::string summary = "|Exchange the contacts in cavities 1 and 3; then the plug may be mated.\n";
    REQUIRE(without.rfind(summary, 0) == 0);
    CHECK(panel_of(*f) == summary + row.told + without.substr(summary.size()) + row.last);
  }
}

TEST_CASE("an added part is told with the steps to build it in") {
  const test::FixturePtr f = test::led_to_adapt();
  f->advice.now.findings.clear();
  Cure one;
  one.what = "A voltage divider in the BK lead: 6.8 kohm and 910 ohm.";
  one.steps = {"power off", "cut the BK lead"};
  f->advice.cures = {one};
  const std::string summary = "|Put a level buffer into the data line, then plug in.\n#Add first\n";
  CHECK(panel_of(*f) == summary +
                            "–|A voltage divider in the BK lead: 6.8 kohm and 910 ohm.\n"
                            "|power off\n"
                            "|cut the BK lead\n");
  Cure two;
  two.what = "A pull-up of 10 kohm.";
  two.steps = {"solder it on"};
  f->advice.cures.push_back(two);
  f->advice.uncured = {"a regulator"};
  CHECK(panel_of(*f) == summary +
                            "1|A voltage divider in the BK lead: 6.8 kohm and 910 ohm.\n"
                            "|power off\n"
                            "|cut the BK lead\n"
                            "2|A pull-up of 10 kohm.\n"
                            "|solder it on\n"
                            "|a regulator\n");
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
