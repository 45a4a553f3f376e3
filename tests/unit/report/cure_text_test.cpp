// SPDX-License-Identifier: MIT
#include "report/cure_text.h"

#include <doctest/doctest.h>

namespace plugward {
namespace {

Cure divider_cure() {
  Cure cure;
  cure.kind = "divider";
  cure.name = "a voltage divider of 6.8 kohm and 1 kohm";
  cure.what = "A voltage divider in the BK lead of terminal 'Q': 6.8 kohm in the lead, 1 kohm to ground.";
  cure.why = "J1.3 withstands 3.6 V and gets 3.08 V.";
  cure.next_best = "an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor";
  cure.components = {{"resistor", "6.8 kohm", "1 %, 0.25 W or more", "in the BK lead of terminal 'Q'"},
                     {"optocoupler", "", "", ""}};
  cure.steps = {"power off",
                "with power back, measure J1.3 against ground: 2.9..3.1 V when high and 0 V when low"};
  return cure;
}

std::string written(const std::vector<Cure>& cures) {
  Paper paper{TextOptions{}};
  write_cures(paper, cures);
  return paper.text();
}

}  // namespace

TEST_CASE("no cures, no section") {
  CHECK(written({}).empty());
}

TEST_CASE("the section, whole") {
  Cure plain;
  plain.what = "A lead (22 AWG) from terminal 'D' to cavity 2 of 'p', which meets J1.2.";
  plain.why = "Terminal 'D' has no lead.";
  CHECK(written({divider_cure(), plain}) == R"(What to add
  Judged on the model together, with every resistor at both ends of its
  tolerance: nothing is left against it.
  1. A voltage divider in the BK lead of terminal 'Q': 6.8 kohm in the lead, 1
     kohm to ground.
     why: J1.3 withstands 3.6 V and gets 3.08 V.
     not: an optocoupler with 2.2 kohm: it takes an optocoupler and its resistor
     - resistor 6.8 kohm, 1 %, 0.25 W or more; in the BK lead of terminal 'Q'
     - optocoupler
     [ ] power off
     [ ] with power back, measure J1.3 against ground: 2.9..3.1 V when high and
         0 V when low
  2. A lead (22 AWG) from terminal 'D' to cavity 2 of 'p', which meets J1.2.
     why: Terminal 'D' has no lead.
)");
}

}  // namespace plugward
