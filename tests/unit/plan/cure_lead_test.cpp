// SPDX-License-Identifier: MIT
// Cures that are copper: thicker leads, a lead that was missing.
#include <doctest/doctest.h>

#include <string>

#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::string led_header(const std::string& rail) {
  return header_of_pins("led", 3,
                        format("<pin n='1' function='supply' rail='{}' limit='2.5 A'/>"
                               "<pin n='2' function='output' signal='led-data' rail='5V' high='4.4..5 V'/>"
                               "<pin n='3' function='ground'/>",
                               rail));
}

Advice advice_of(const Bench& bench) {
  return advise(bench.fitting({{"p", "J1"}}), {.wrong_seatings = false, .softer = false});
}

std::string cures_told(const Advice& advice) {
  std::string text = format("{}: {}\n", to_word(advice.verdict), advice.summary);
  for (const Cure& cure : advice.cures) {
    text += format("{}: {}\n  why: {}\n  next: {}\n", cure.kind, cure.what, cure.why, cure.next_best);
    for (const Component& c : cure.components)
      text += format("  {} {} ({}) {}\n", c.kind, c.value, c.demands, c.between);
  }
  return text;
}

}  // namespace

TEST_CASE("supply leads that lose too much become thicker") {
  std::string leads;
  int cavity = 0;
  for (const char* to : {"V", "D", "G"}) {
    leads += format("<lead cavity='{}' colour='BK' gauge='28 AWG' length='2000 mm' to='{}'/>", ++cavity, to);
  }
  const Bench bench(
      board_of(led_header("5V")),
      harness_of(
          "<led-string id='l' count='10' each='60 mA' needs='4.6..5.3 V'/><plug id='p' family='xh-2.50' "
          "positions='3'>" +
          leads + "</plug>"));
  CHECK(
      cures_told(advice_of(bench)) ==
      "ADAPT: 'p' on 'J1': build in supply leads of 24 AWG first\n"
      "thicker-leads: Leads of 24 AWG instead of the BK lead of terminal 'V' and the BK lead of terminal "
      "'G'.\n"
      "  why: The rail would be enough; the present leads lose too much: the load of 'l' gets 4.512 V at "
      "best, "
      "and needs 4.6 V.\n"
      "  next: a supply of 5 V: it takes a supply of its own\n"
      "  lead 24 AWG, 2000 mm (with a contact of family 'xh-2.50' for that gauge) instead of the BK lead of "
      "terminal 'V'\n"
      "  lead 24 AWG, 2000 mm (with a contact of family 'xh-2.50' for that gauge) instead of the BK lead of "
      "terminal 'G'\n");
}

TEST_CASE("a lead that is missing is added") {
  const Bench bench(
      board_of(led_header("5V")),
      harness_of("<led-string id='l' count='1' each='1 mA' out='yes'/>" + plug_of_leads("V - G")));
  const Advice advice = advice_of(bench);
  CHECK(cures_told(advice) ==
        "ADAPT: 'p' on 'J1': build in a lead from terminal 'D' first\n"
        "lead: A lead (22 AWG, 300 mm) from terminal 'D' to cavity 2 of 'p', which meets J1.2.\n"
        "  why: Terminal 'D' has no lead; it wants an output for 'led-data', and J1.2 is output 'led-data'.\n"
        "  next: \n"
        "  lead 22 AWG, 300 mm (with a contact of family 'xh-2.50') from terminal 'D' to cavity 2 of 'p'\n");
  REQUIRE(advice.cured.has_value());
  CHECK(advice.cured->plugs.front().leads.size() == 3);
}

TEST_CASE("a lead that is missing where another sits: seated once that one is out") {
  const Bench bench(
      board_of(led_header("5V")),
      harness_of("<led-string id='l' count='1' each='1 mA' out='yes'/>" + plug_of_leads("V Q G")));
  const Advice advice = advice_of(bench);
  CHECK(cures_told(advice) ==
        "ADAPT: 'p' on 'J1': build in a lead from terminal 'D' first, and move 1 contact\n"
        "lead: A lead (22 AWG, 300 mm) from terminal 'D' to cavity 2 of 'p', which meets J1.2.\n"
        "  why: Terminal 'D' has no lead; it wants an output for 'led-data', and J1.2 is output 'led-data'.\n"
        "  next: \n"
        "  lead 22 AWG, 300 mm (with a contact of family 'xh-2.50') from terminal 'D' to cavity 2 of 'p'\n");
  REQUIRE(advice.plan.has_value());
  REQUIRE(advice.plan->plugs.size() == 1);
  CHECK(advice.plan->plugs.front().steps.size() == 1);
  CHECK(advice.moved == 1);
}
