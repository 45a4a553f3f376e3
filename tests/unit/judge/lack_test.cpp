// SPDX-License-Identifier: MIT
// What follows from a lack is left out, in whatever order the parts of the device stand.
#include "judge/lack.h"

#include <doctest/doctest.h>

#include <string>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

const std::string input =
    "<pin n='1' function='input' signal='limit' rail='3V3' withstands='-0.3..5.5 V' low-below='0.8 V' "
    "high-above='2 V'/>";

std::string changeover(const std::string& parts) {
  return "<device id='k' use='limit'><terminal id='C' signal='limit'/><terminal id='NC' signal='limit'/>"
         "<terminal id='NO' function='spare'/>" +
         parts + "</device>";
}
const std::string throw_1 = "<switch a='C' b='NC' rests='closed'/>";
const std::string throw_2 = "<switch a='C' b='NO' rests='open'/>";

std::string rules_of(const std::string& device, const std::string& terminals) {
  const Bench bench(board_of(header_of_pins(
                        "limit", 3, input + "<pin n='2' function='ground'/><pin n='3' function='unused'/>")),
                    harness_of(device + plug_of_leads(terminals)));
  std::string text;
  for (const Finding& f : assess(bench.fitting({{"p", "J1"}})).findings)
    text += format("{} {}; ", to_word(f.weight), rule_info(f.rule).id);
  return text;
}

}  // namespace

TEST_CASE("a lead that goes nobody knows where may bring what a change-over switch lacks") {
  for (const std::string& parts : {throw_1 + throw_2, throw_2 + throw_1}) {
    CAPTURE(parts);
    // All leads known: an input without a pull floats while both throws are open.
    CHECK(rules_of(changeover(parts), "C NC NO") == "fault floating-input; ");
    // Where the second lead comes from is not known: it may be the throw that is closed at rest.
    CHECK(rules_of(changeover(parts), "C ? NO") == "doubt unknown-lead; ");
  }
}

TEST_CASE("of a change-over switch the throw that is led out is the one that is meant") {
  const std::string device =
      "<device id='k' use='limit'><terminal id='C' signal='limit'/><terminal id='NC'/><terminal id='NO'/>";
  const std::string pulled = input.substr(0, input.size() - 2) + " pull='up' pull-ohms='10 kohm'/>";
  for (const std::string& parts : {throw_1 + throw_2, throw_2 + throw_1}) {
    CAPTURE(parts);
    const Bench bench(board_of(header_of_pins("limit", 2, pulled + "<pin n='2' function='ground'/>")),
                      harness_of(device + parts + "</device>" + plug_of_leads("C NC")));
    CHECK(assess(bench.fitting({{"p", "J1"}})).clean());
  }
}
