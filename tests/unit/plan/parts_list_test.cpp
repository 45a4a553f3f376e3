// SPDX-License-Identifier: MIT
#include "plan/parts_list.h"

#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

using Texts = std::vector<std::string>;

/// "2+1 housing ... | value | purpose"
Texts lines(const PartsList& list) {
  Texts all;
  for (const PartItem& item : list.items) {
    const std::string value = item.value.empty() ? "" : " " + item.value;
    all.push_back(format("{}+{} {}{} | {}", item.needed, item.spares, item.what, value, item.purpose));
  }
  return all;
}

Advice advice_for(const Fitting& fitting) {
  return advise(fitting, {.wrong_seatings = false, .softer = false});
}

}  // namespace

TEST_CASE("a fifth more contacts, at least two") {
  // Common practice, no source.
  const std::map<int, int> rows{{0, 2}, {1, 2}, {10, 2}, {11, 3}, {15, 3}, {16, 4}, {20, 4}, {100, 20}};
  for (const auto& [needed, spares] : rows) {
    CAPTURE(needed);
    CHECK(spare_contacts(needed) == spares);
  }
}

TEST_CASE("what each verdict needs") {
  struct Row {
    std::string harness;
    std::map<std::string, std::string> at, jumpers;
    bool planned;
    std::string summary;
    Texts items;
  };
  const std::vector<Row> rows{
      {"kite-probe", {{"trigger", "J10"}}, {}, true, "'trigger' on 'J10': plug it in as it is", {}},
      {"kite-probe",
       {{"control", "J9"}},
       {{"JP2", "5V"}},
       true,
       "'control' on 'J9': move 2 contacts first",
       {"0+1 housing of family 'pin-2.54', 3 positions | should a flap break: it cannot be mended",
        "0+2 contact for a housing of family 'pin-2.54', 26 AWG | should one be damaged on its way",
        "1+0 needle | ", "1+0 tape flags and a pen | ", "1+0 meter with continuity beeper | "}},
      {"fan-24v",
       {{"fan", "J17"}},
       {},
       true,
       "'fan' on 'J17': not as it is; it needs a part",
       {"1+0 housing of family 'vh-3.96', 2 positions | for plug 'fan' on 'J17'",
        "2+2 contact for a housing of family 'vh-3.96', 22 AWG | for plug 'fan' on 'J17'; not made for its "
        "26 AWG leads: replace them by the wire listed here, or take an adapter lead ('--adapter')",
        "1+0 stranded wire | instead of the 26 AWG lead in cavity 1 of 'fan'",
        "1+0 stranded wire | instead of the 26 AWG lead in cavity 2 of 'fan'",
        "1+0 crimp tool for contacts of family 'vh-3.96' | ", "1+0 wire cutter and stripper | "}},
      {"firefly-led-bar",
       {{"light", "J21"}},
       {},
       false,
       "'light' on 'J21': do not join these; it can damage or hurt, and no move of contacts or added part "
       "cures it",
       {}},
      {"fan-24v",
       {{"fan", "J11"}},
       {},
       false,
       "'fan' on 'J11': something must be known first; one measurement settles it",
       {}},
  };
  for (const Row& row : rows) {
    const Bench bench = Bench::shipped("heron-m7", row.harness);
    const Fitting fitting = bench.fitting(row.at, row.jumpers);
    const PartsList list = parts_list(fitting, advice_for(fitting));
    CHECK(list.planned == row.planned);
    CHECK(list.summary == row.summary);
    CHECK(lines(list) == row.items);
  }
}

TEST_CASE("components of the cures, equal ones added up") {
  const Bench bench = Bench::shipped("heron-m7", "fan-24v");
  const Fitting fitting = bench.fitting({{"fan", "J11"}}, {{"JP4", "12V"}});
  Advice advice;
  advice.verdict = Verdict::Adapt;
  advice.summary = "needs parts";
  advice.parts = {"in words"};
  Cure one;
  one.components = {{"resistor", "10 kohm", "1 %, 0.125 W or more", "from cavity 1 to ground"},
                    {"resistor", "4.7 kohm", "1 %, 0.125 W or more", "in the lead from terminal 'S'"}};
  Cure two;
  two.components = {{"resistor", "10 kohm", "1 %, 0.125 W or more", "from cavity 2 to ground"}};
  advice.cures = {one, two};
  CHECK(lines(parts_list(fitting, advice)) ==
        Texts{"2+0 resistor 10 kohm | from cavity 1 to ground; from cavity 2 to ground",
              "1+0 resistor 4.7 kohm | in the lead from terminal 'S'",
              "1+0 heat-shrink tube, one piece over each joint of an added part | ",
              "1+0 soldering iron and heat source for the shrink tube | "});
  advice.cures.clear();
  CHECK(lines(parts_list(fitting, advice)) == Texts{"1+0 in words | "});
}

TEST_CASE("a family whose maker says so takes a new contact for every move") {
  // Molex 55560002-AS as quoted: a contact of Mini-Fit Jr that was taken out is not used again.
  const Bench bench(
      board_of(header_of_pins("fan", 4,
                              "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>"
                              "<pin n='3' function='unused'/><pin n='4' function='unused'/>",
                              "minifit-4.20' rows='2")),
      harness_of("<fan id='f' needs='20..28 V' draws='0.1 A' reversed='blocked'/>"
                 "<plug id='p' family='minifit-4.20' positions='4' rows='2'>"
                 "<lead cavity='1' colour='BK' gauge='18 AWG' to='G'/>"
                 "<lead cavity='2' colour='RD' gauge='18 AWG' to='V'/></plug>"));
  const Fitting fitting = bench.fitting({{"p", "J1"}});
  const Advice advice = advice_for(fitting);
  REQUIRE(advice.verdict == Verdict::Repin);
  CHECK(lines(parts_list(fitting, advice)).front() ==
        "2+2 contact for a housing of family 'minifit-4.20', 18 AWG | a contact that was taken out is not "
        "used again");
}

TEST_CASE("leads of several plugs share their lines") {
  const Bench bench = Bench::shipped("heron-a4", "kite-probe");
  const Fitting fitting = bench.fitting({{"control", "J9"}, {"trigger", "J10"}});
  const AdapterAdvice adapter = advise_adapter(fitting, advice_for(fitting));
  CHECK(
      lines(parts_list(adapter)) ==
      Texts{"1+0 housing of family 'pin-2.54', 3 positions | adapter-J9, end B",
            "1+0 housing of family 'pin-2.54', 2 positions | adapter-J10, end B",
            "1+0 header or cable-side counterpart of family 'pin-2.54', 3 positions | adapter-J9, end A",
            "1+0 header or cable-side counterpart of family 'pin-2.54', 2 positions | adapter-J10, end A",
            "5+2 contact for a counterpart of family 'pin-2.54', 26 AWG | adapter-J9, end A; none where a "
            "header is "
            "soldered on; adapter-J10, end A; none where a header is soldered on",
            "5+2 contact for a housing of family 'pin-2.54', 26 AWG | adapter-J9, end B; adapter-J10, end B",
            "1+0 stranded wire | adapter-J9", "1+0 stranded wire | adapter-J9",
            "1+0 stranded wire | adapter-J9", "1+0 stranded wire | adapter-J10",
            "1+0 stranded wire | adapter-J10",
            "5+0 heat-shrink tube, one piece over each lead | adapter-J9, end A, where a header is soldered "
            "on; "
            "adapter-J10, end A, where a header is soldered on",
            "1+0 wire cutter and stripper | ", "1+0 crimp tool for contacts of family 'pin-2.54' | ",
            "1+0 soldering iron and heat source for the shrink tube | ", "1+0 tape flags and a pen | ",
            "1+0 meter with continuity beeper | "});
}
