// SPDX-License-Identifier: MIT
#include "judge/follow_lead.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string followed(const std::string& devices, const std::string& colours) {
  const Bench bench(board_of(header_of_pins("spare", 4, "<pin n='1' function='ground'/>")),
                    harness_of(devices + plug_of_leads(colours)));
  const auto m = follow_lead(bench.fitting({{"p", "J1"}}), 0, 0);
  return m ? format("{} => {} ({}, {})", m->action, m->expect, m->settles, m->cost) : "nothing";
}

}  // namespace

TEST_CASE("each common device tells its leads in a way of its own") {
  CHECK(followed("<motor id='d'/>", "? ? ? ?") ==
        "plug off the board: ohms between every two leads of 'p' => a few ohms: both ends of one winding, A1 "
        "and B1 or "
        "A2 and B2 (which winding is the first, and which end is A, only sets the direction); open: two "
        "windings (where "
        "the leads of 'p' go, 1)");
  CHECK(followed("<led-string id='d'/>", "? ? ?").starts_with("plug off the board: continuity from the"));
  CHECK(followed("<fan id='d'/>", "? ?").starts_with("look under the label on the hub of 'd'"));
  CHECK(followed("<proximity id='d'/>", "? ? ?").starts_with("look at the drawing on the label of 'd'"));
  CHECK(followed("<optical-switch id='d'/>", "? ? ?").starts_with("look at the print where the"));
  CHECK(followed("<servo-probe id='d'/>", "? ? ?")
            .starts_with("plug off the board: continuity between every two"));
  CHECK(followed("<rgb-strip id='d'/>", "? ? ? ?").starts_with("plug off the board: continuity from the"));
  CHECK(followed("<thermistor id='d'/>", "? ?")
            .starts_with("plug off the board: ohms between the leads of 'p'"));
  CHECK(followed("<dry-switch id='d' use='limit'/>", "? ?")
            .starts_with("plug off the board: continuity between"));
}

TEST_CASE("two open devices, or one of no common kind: the general way") {
  CHECK(followed("<motor id='d'/><fan id='e'/>", "? ?") == "nothing");
  CHECK(followed("<device id='d' use='fan'><terminal id='V'/></device>", "?") == "nothing");
  CHECK(followed("<cable id='d' cores='2'/>", "? ?") == "nothing");
}
