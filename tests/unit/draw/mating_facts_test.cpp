// SPDX-License-Identifier: MIT
#include "draw/mating_facts.h"

#include <doctest/doctest.h>

#include "unit/draw/fixtures.h"

namespace plugward {

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

TEST_CASE("findings are flagged at their leads and pins, worst first") {
  const test::FixturePtr f = test::limit_apart();
  std::swap(f->advice.now.findings[0], f->advice.now.findings[1]);
  const MatingFacts facts = gather(f->fitting, f->advice, 0);
  REQUIRE(facts.flagged.size() == 2);
  CHECK(facts.flagged[0].finding->weight == Weight::Harm);
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
  std::string text;
  for (const Paragraph& p : panel_text(gather(f->fitting, f->advice, 0)))
    text += p.sign + "|" + p.text + "\n";
  CHECK(text ==
        "|The plug may be mated as it is.\n"
        "|Nothing to move; lead by lead\n"
        "✓|1 BK (A1) meets 1 motor 1A\n"
        "✓|2 GN (B1) meets 2 motor 1B\n"
        "✓|3 BU (A2) meets 3 motor 2A\n"
        "✓|4 RD (B2) meets 4 motor 2B\n"
        "|Tell the firmware\n"
        "|turn the direction of the motor on 'J1' round\n"
        "|Find cavity 1\n"
        "|a notch at one end of the housing; copies may lack the mark\n");
}

}  // namespace plugward
