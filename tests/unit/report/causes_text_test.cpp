// SPDX-License-Identifier: MIT
#include "report/causes_text.h"

#include <doctest/doctest.h>

#include "support/bench.h"

namespace plugward {

TEST_CASE("one cause, what proves it, and what a reading means") {
  const auto bench = test::Bench::shipped("heron-a4", "nozzle-heater");
  const Fitting fitting = bench.fitting({{"heater", "J14"}});
  const CauseFinder finder(fitting);
  const auto text = causes_text(fitting, Symptom::HeatsByItself, finder.causes(Symptom::HeatsByItself),
                                finder.errors(), {});
  CHECK(text ==
        R"(heats-by-itself: heats without having been told to

Before you begin
  [ ] pull the mains plug at once, and leave it out until the cause is found and
      cured
  [ ] power off, mains plug out, USB out; wait until all lamps are out and some
      minutes for stored charge
  [ ] touch earthed metal before the board; hold boards by their edges
  [ ] let heaters cool and motion stop; unplug by the housing, never by the
      leads
  [ ] never plug or unplug anything under power; power on only where a step says
      so

Plug 'heater' on J14 (HEAT 1)
  1. the switched output J14.2 on J14 (HEAT 1) conducts all the time
     harm: it heats without having been told to: fire
     harm: the heater of 'heater' heats with 43.63 W while nothing is switched
       on
     comes about: its transistor was destroyed, mostly by a short at the plug or
       by too large a load
     cure: use another header of the same kind, or have the board repaired; find
       what destroyed it first

  What proves it:
  1. power off: take 'heater' off; ohms from J14.2 to the supply's minus, red
     meter lead at the first
     - below 100 ohm: cause 1
     - more than 100 ohm, as it should be: none of these causes

10 single errors tried on the model, each by itself. Two at once are not found,
nor what no file tells of. Likely kinds stand first by common experience; the
order proves nothing.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

TEST_CASE("what no error makes is said to be so") {
  const auto bench = test::Bench::shipped("heron-a4", "nozzle-heater");
  const Fitting fitting = bench.fitting({{"heater", "J14"}});
  CHECK(causes_text(fitting, Symptom::Judders, {}, 1, {}) ==
        R"(judders: the motor judders or whines and does not turn

No single error of the wiring makes this symptom here.

1 single error tried on the model, each by itself. Two at once are not found,
nor what no file tells of. Likely kinds stand first by common experience; the
order proves nothing.
plugward compares what the files say; it cannot see a bad crimp, a mislabelled
board or a dead part. Mains wiring is for a qualified person.
)");
}

}  // namespace plugward
