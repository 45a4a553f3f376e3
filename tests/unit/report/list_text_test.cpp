// SPDX-License-Identifier: MIT
#include "report/list_text.h"

#include <doctest/doctest.h>

namespace plugward {

TEST_CASE("one family at length: every figure with its source, what is not known said so") {
  Family family;
  family.id = "x-2.5";
  family.title = "invented housings";
  family.pitch = Millimetres(2.5);
  family.most_positions = 16;
  family.profile = Profile::OpenWafer;
  family.ratings = {{{Amps(3), awg(22), "shrouded header only", 0}, Certainty::Quoted, "a data sheet"},
                    {{Amps(2), Gauge{}, "", 4}, Certainty::Memory, ""}};
  family.lance = {Lance::Contact, Certainty::Maker, "another sheet"};
  family.latch = {false, Certainty::Secondary, "a seller"};
  family.mates = {"y-2.5", "z-2.5"};
  family.cautions = {{"looks like y", Certainty::Derived, "the drawings"}};
  CHECK(family_text(family) == R"(x-2.5: invented housings

  pitch         2.5 mm
  rows          1
  positions     1 to 16
  profile       open-wafer
  rating        3 A at 22 AWG (shrouded header only) [quoted: a data sheet]
  rating        2 A, up to 4 positions [memory]
  voltage       not known
  wire          not known
  latch         no [secondary: a seller]
  lance         on the contact [maker: another sheet]
  first cavity  not known
  release       not known
  moving again  not known
  mates with    y-2.5, z-2.5
  caution       looks like y [derived: the drawings]
)");
  Catalogue catalogue;
  catalogue.add(family);
  CHECK(families_text(catalogue) == R"(  family  pitch   rows  smallest rating  housings
  x-2.5   2.5 mm  1     2 A              invented housings

At length, with sources: plugward list families FAMILY
)");
}

TEST_CASE("a rule at length") {
  RuleInfo rule;
  rule.id = "back-feed";
  rule.summary = "current flows into a rail";
  rule.why = "The regulator behind the rail is pushed backwards.";
  rule.cure = "Add a diode.";
  CHECK(rule_text(rule) == R"(back-feed: current flows into a rail

Why
  The regulator behind the rail is pushed backwards.

Cure
  Add a diode.
)");
}

TEST_CASE("lists stay inside 80 columns and name everything once") {
  for (const std::string& text : {functions_text(), colours_text(), gauges_text(), rules_text()}) {
    std::size_t begin = 0;
    while (begin < text.size()) {
      const std::size_t end = text.find('\n', begin);
      CAPTURE(text.substr(begin, end - begin));
      CHECK(columns_of(text.substr(begin, end - begin)) <= 80);
      begin = end + 1;
    }
  }
  const std::string rules = rules_text();
  for (const RuleInfo& rule : all_rules()) {
    CAPTURE(rule.id);
    const std::string row = "\n  " + std::string(rule.id) + " ";
    CHECK(rules.find(row) != std::string::npos);
    CHECK(rules.find(row) == rules.rfind(row));
  }
}

}  // namespace plugward
