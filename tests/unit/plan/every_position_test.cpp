// SPDX-License-Identifier: MIT
#include "plan/every_position.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

TEST_CASE("a jumper of which nobody says where it sits decides, or nothing does") {
  struct Row {
    std::string needs;
    std::string second_pin;
    std::string told;
  };
  const std::vector<Row> rows{
      {"20..28 V", "function='ground'",
       "MEASURE 1: 'p' on 'J1': something must be known first; one measurement settles it"},
      {"4.5..28 V", "function='ground'", "MATE 0: 'p' on 'J1': plug it in as it is"},
      {"4.5..28 V", "function='unused'",
       "APART 0: 'p' on 'J1': do not join these; it will not work, and no move of contacts or added part "
       "cures "
       "it"},
      {"20..28 V", "function='unused'",
       "APART 0: 'p' on 'J1': do not join these; it will not work, and no move of contacts or added part "
       "cures "
       "it"},
      {"20..28 V", "function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V'",
       "APART 0: 'p' on 'J1': do not join these; it can damage or hurt, wherever JP (V) sits, and no move of "
       "contacts or added part cures it"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.needs);
    CAPTURE(row.second_pin);
    const Bench bench(
        board_of(header_of_pins(
            "fan", 2,
            "<pin n='1' function='supply' jumper='JP' limit='1 A'/><pin n='2' " + row.second_pin + "/>")),
        harness_of(format("<fan id='f' needs='{}' draws='0.1 A' reversed='blocked'/>", row.needs) +
                   plug_of_leads("V G")));
    const Advice advice = advise(bench.fitting({{"p", "J1"}}));
    CHECK(format("{} {}: {}", to_word(advice.verdict), advice.measurements.size(), advice.summary) ==
          row.told);
  }
}

TEST_CASE("nothing is said when every jumper is stated, or when another doubt is left") {
  const std::string header = header_of_pins(
      "fan", 2, "<pin n='1' function='supply' jumper='JP' limit='1 A'/><pin n='2' function='unknown'/>");
  const Bench bench(
      board_of(header),
      harness_of("<fan id='f' needs='20..28 V' draws='2 A' reversed='blocked'/>" + plug_of_leads("V G")));
  CHECK(apart_in_every_position(bench.fitting({{"p", "J1"}}, {{"JP", "24V"}}), "p") == std::nullopt);
  CHECK(apart_in_every_position(bench.fitting({{"p", "J1"}}), "p") == std::nullopt);
  CHECK(to_word(advise(bench.fitting({{"p", "J1"}})).verdict) == "MEASURE");
}
