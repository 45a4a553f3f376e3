// SPDX-License-Identifier: MIT
#include "report/repin_text.h"

#include <doctest/doctest.h>

#include "report/step_text.h"
#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("the procedure, whole") {
  const Sample sample;
  CHECK(repin_text(sample.fitting, sample.repin) ==
        R"(REPIN: Two contacts of plug 'fan' change places; after that it may go on J1.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

Before the first contact
  [ ] power off, mains plug out

Tools
  - fine flat blade

How to free and seat a contact
  - press the lance flush
  - draw the lead back

Plug 'fan'
  Housing: 2.54 mm square pins, crimp housing, 3 positions; it goes on header J1
  (FAN0).
  Look at the wire side, where the leads go in. Seen from the mating face the
  order is mirrored: go by the cavity numbers, not by left and right.
  Cavity 1: a small triangle moulded beside the cavity

  cavity  now                 then                         meets
     1    BK to G             RD marked '+' to V  changed  J1.1 supply 24V (by
                                                           JP1)
     2    RD marked '+' to V  BK to G             changed  J1.2 switched
     3    empty               empty               stays    J1.3 input tach

  3 contacts come out of their cavities
  1. park cavity 1 -> 3 for the time being: lead BK to 'G'
  2. move cavity 2 -> 1: lead RD marked '+' to 'V'
     why: terminal 'V' must meet J1.1 (24V)
  3. move cavity 3 -> 2: lead BK to 'G'
     why: terminal 'G' must meet J1.2, which joins it to ground

Before power comes back
  [ ] tug each moved lead lightly
  [ ] read the table once more, cavity by cavity, against the housing in the
      hand

Settings for the firmware
  - switch the fan output on at start
    why: its state at reset is off

If it then goes on wrong
  harm  plug 'fan' turned by 180 degrees: the fan gets its 24 V the wrong way
        round, which destroys it [reversed-supply]
  1 more wrong way to sit: 'plugward check' lists it

After these steps
  MATE: plug it in. The steps were carried out on the model and judged again.

Power off, USB cable out and all lamps dark before anything is plugged or
unplugged.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

TEST_CASE("no procedure, and why") {
  const Sample sample;
  CHECK(repin_text(sample.fitting, sample.mate) == R"(MATE: Plug 'fan' may go on J1.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

No contact is to be moved.

Power off, USB cable out and all lamps dark before anything is plugged or
unplugged.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
  CHECK(repin_text(sample.fitting, sample.measure) == R"(MEASURE: Which rail JP1 chooses decides.

board wren-1: Wren one, revision B
harness breeze: Breeze fan
plug 'fan' on header J1 (FAN0)
plug 'spare' on no header: not judged
jumper JP1 at 24V, as stated

No moving of contacts alone that ends in MATE is known. 'plugward check' says
why.

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

TEST_CASE("every kind of step has its words") {
  const Sample sample;
  const std::pair<Step, const char*> rows[] = {
      {{StepKind::Move, 0, 0, 1, 2, ""}, "move cavity 1 -> 2: lead BK to 'G'"},
      {{StepKind::Park, 0, 0, 1, 3, ""}, "park cavity 1 -> 3 for the time being: lead BK to 'G'"},
      {{StepKind::Hold, 0, 1, 2, 0, ""},
       "take out of cavity 2, hold beside the housing: lead RD marked '+' to 'V'"},
      {{StepKind::Insert, 0, 1, 0, 1, ""}, "insert the held one into cavity 1: lead RD marked '+' to 'V'"},
      {{StepKind::Insulate, 0, 0, 1, 0, ""},
       "take out of cavity 1 for good, insulate it singly and tag it: lead BK to 'G'"},
  };
  for (const auto& [step, expected] : rows) CHECK(step_words(sample.harness, step) == expected);
}

}  // namespace plugward
