// SPDX-License-Identifier: MIT
#include "report/advice_text.h"

#include <doctest/doctest.h>

#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("advice as text: REPIN, whole") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.repin, {{}, "plugward repin b.xml h.xml"}) ==
        R"(REPIN: Two contacts of plug 'fan' change places; after that it may go on J1.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

As it is wired now

harm: can damage or hurt
  1. the fan gets its 24 V the wrong way round, which destroys it
     [reversed-supply]
     when   J1.3 on
     path   24V - J1.1 - BK - G
     see    harnesses/breeze.xml:2:3
     and    boards/wren-1.xml:2:3, J1.1 is declared here

note: worth knowing
  2. no rating is published for a contact of 'pin-2.54' with a wire of unknown
     size; 0.1 A flows through it [unknown-rating]

Steps
  plug 'fan', by its cavity numbers
  1. park cavity 1 -> 3 for the time being: lead BK to 'G'
  2. move cavity 2 -> 1: lead RD marked '+' to 'V'
     why: terminal 'V' must meet J1.1 (24V)
  3. move cavity 3 -> 2: lead BK to 'G'
     why: terminal 'G' must meet J1.2, which joins it to ground
  The whole procedure, with tools, technique and tests:
    plugward repin b.xml h.xml

Settings for the firmware
  - switch the fan output on at start
    why: its state at reset is off

If it then goes on wrong
  harm  plug 'fan' turned by 180 degrees: the fan gets its 24 V the wrong way
        round, which destroys it [reversed-supply]
  note  no harm that the files tell of: 'fan' shifted by 1 towards pin 3

Power off, USB cable out and all lamps dark before anything is plugged or
unplugged.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

TEST_CASE("advice as text: MEASURE names what settles the doubt") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.measure) ==
        R"(MEASURE: Which rail JP1 chooses decides.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

As it is wired now

doubt: cannot be decided from what is known
  1. the position of jumper JP1 is not stated [unstated-jumper]

Measure, the cheapest first
  1. look where JP1 is fitted
     reads    at 24V: the fan may go on
     settles  the supply of J1.1

Power off, USB cable out and all lamps dark before anything is plugged or
unplugged.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

TEST_CASE("advice as text: softer cures come before the steps, faults of wrong seatings share a row") {
  Sample sample;
  sample.repin.softer = {"turn it"};
  SeatingJudgement fault = sample.repin.wrong.front();
  fault.worst = Weight::Fault;
  fault.seating.words = "shifted by 1 towards pin 1";
  sample.repin.wrong.push_back(fault);
  fault.seating.words = "shifted by 2 towards pin 1";
  sample.repin.wrong.push_back(fault);
  const std::string text = advice_text(sample.sources, sample.fitting, sample.repin);
  const std::size_t softer = text.find("First see whether this will do\n  - turn it\n");
  REQUIRE(softer != std::string::npos);
  CHECK(softer < text.find("\nSteps\n"));
  CHECK(text.find("  fault  does not work: 'fan' shifted by 1 towards pin 1; 'fan' shifted by 2\n"
                  "         towards pin 1\n") != std::string::npos);
}

TEST_CASE("advice as text: MATE is short") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.mate) == R"(MATE: Plug 'fan' may go on J1.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

As it is wired now
  nothing speaks against it

Power off, USB cable out and all lamps dark before anything is plugged or
unplugged.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

TEST_CASE("advice as text: colour changes no word") {
  const Sample sample;
  const std::string plain = advice_text(sample.sources, sample.fitting, sample.repin);
  std::string coloured = advice_text(sample.sources, sample.fitting, sample.repin, {{.colour = true}, ""});
  CHECK(coloured.find('\x1b') != std::string::npos);
  for (std::size_t at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b')) {
    coloured.erase(at, coloured.find('m', at) + 1 - at);
  }
  CHECK(coloured == plain);
}

}  // namespace plugward
