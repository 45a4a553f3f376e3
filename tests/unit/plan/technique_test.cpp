// SPDX-License-Identifier: MIT
#include "plan/technique.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plugward;

namespace {

using Text = std::vector<std::string>;

Family family(std::optional<Lance> lance, Profile profile = Profile::BoxShroud) {
  Family f;
  f.id = "f";
  f.profile = profile;
  if (lance) f.lance = Cited<Lance>{*lance, Certainty::User, "the test"};
  return f;
}

const Text on_contact{
    "push the lead gently into the housing: that takes the load off the lance",
    "press the metal lance flush through its window with a fine flat blade; do not lever",
    "keep it pressed and draw the lead back with two fingers; if it does not follow, push it in and begin "
    "again",
    "bend the lance back to its old height, without a crease; the next time, take a new contact (rule of "
    "thumb)",
    "push the contact straight in, lance towards the windows, until it clicks and the lance shows"};
const Text on_housing{
    "push the lead gently into the housing: that takes the load off the flap",
    "lift the plastic flap with a needle, only as far as needed; a flap that turns white or stays up is "
    "finished: "
    "replace the housing",
    "draw the lead back with two fingers, without force",
    "the contact needs no bending; check that its box is not squeezed",
    "push the contact in, shoulder to the flap side, until the flap snaps level with its neighbours"};

Text operator+(Text a, const Text& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

}  // namespace

TEST_CASE("the way depends on where the lance sits") {
  CHECK((technique(family(Lance::Contact)) == on_contact));
  CHECK((technique(family(Lance::Housing)) == on_housing));
  CHECK((technique(family(Lance::None)) ==
         Text{"the conductors of this family cannot be moved one by one: replace the housing"}));
  CHECK((technique(family(std::nullopt)) == Text{"where this family's lance sits is not known: look for a "
                                                 "metal tang in a window of the housing (first "
                                                 "way) or a plastic flap over the contact (second way)",
                                                 "first way, tang on the contact:"} +
                                                on_contact + Text{"second way, flap on the housing:"} +
                                                on_housing));
  Family told = family(Lance::Contact);
  told.release = Cited<std::string>{"the maker's tool is X", Certainty::User, "the test"};
  told.reuse = Cited<std::string>{"once", Certainty::User, "the test"};
  CHECK((technique(told) == Text{"this family: the maker's tool is X"} + on_contact + Text{"once"}));
}

TEST_CASE("a screw block has no lance, and its leads are moved all the same") {
  const Family screw = family(Lance::None, Profile::Screw);
  CHECK(movable(screw));
  CHECK_FALSE(movable(family(Lance::None)));
  CHECK(movable(family(Lance::Contact)));
  CHECK(movable(family(std::nullopt)));
  CHECK((technique(screw) == Text{"loosen the screw and draw the lead out",
                                  "look at the end of the conductor: cut off crushed or tinned strands and "
                                  "strip it anew (common practice)",
                                  "push it home and tighten the screw; no bare strand may stand out"}));
  CHECK((tools(screw) ==
         Text{"screwdriver that fits the slot", "tape flags and a pen", "meter with continuity beeper"}));
}

TEST_CASE("tools for the lance that is there, or for both") {
  const Text always{"tape flags and a pen", "meter with continuity beeper"};
  CHECK((tools(family(Lance::Contact)) == Text{"fine flat blade or extraction tool"} + always));
  CHECK((tools(family(Lance::Housing)) == Text{"needle"} + always));
  CHECK((tools(family(std::nullopt)) == Text{"fine flat blade or extraction tool", "needle"} + always));
}

TEST_CASE("a tug stays below 80 % of the least crimp strength of the thinnest lead") {
  // NASA-STD-8739.4 p. 70 (80 %) of UL 486A class values: 8.9, 13.4, 22.3, 35.6 N at 28, 26, 24, 22 AWG.
  const auto most = [](std::vector<Gauge> gauges) { return tug_advice(gauges); };
  const auto words = [](int newtons) {
    return "tug each moved lead lightly, about 5 N (a half-litre bottle), never more than " +
           std::to_string(newtons) + " N: it must not slide";
  };
  CHECK(most({awg(28)}) == words(7));
  CHECK(most({awg(26)}) == words(10));
  CHECK(most({awg(24)}) == words(17));
  CHECK(most({awg(22)}) == words(28));
  CHECK(most({awg(22), awg(26), awg(24)}) == words(10));
  CHECK(most({}) == "tug each moved lead lightly, about 5 N (a half-litre bottle): it must not slide");
  CHECK(checks_after({awg(26)}).front() == words(10));
  CHECK(checks_after({}).size() == 4);
  CHECK(
      cautions_before().front() ==
      "power off, mains plug out, USB out; wait until all lamps are out and some minutes for stored charge");
}
