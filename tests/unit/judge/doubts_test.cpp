// SPDX-License-Identifier: MIT
#include "judge/doubts.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

std::vector<Contact> straight(const Bench& bench) {
  std::vector<Contact> contacts;
  const auto& leads = bench.harness->plugs[0].leads;
  for (std::size_t l = 0; l < leads.size(); ++l)
    contacts.push_back({0, static_cast<int>(l), 0, leads[l].cavity});
  return contacts;
}

std::string told(const std::vector<Finding>& findings) {
  std::string text;
  for (const Finding& finding : findings) text += plugward::test::told(finding);
  return text;
}

struct Row {
  std::string name;
  std::string pins;
  std::string harness;
  std::string expected;
};

}  // namespace

TEST_CASE("what is not known of pins, leads, devices and plugs") {
  const std::string open = "<dry-switch id='k' use='limit' rests='open'/>";
  const std::string g = "<pin n='1' function='ground'/>";
  const std::vector<Row> rows{
      {"all known", g, open + plug_of_leads("A"), ""},
      {"nothing known of the pin", "", open + plug_of_leads("A"),
       "doubt unknown-pin: the BK lead in cavity 1 of 'p' meets J1.1, of which nothing is known\n"
       "  board powered alone, nothing plugged in: volts from J1.1 to ground => 24 V: supply 24V; 12 V: "
       "supply 12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest "
       "(continuity to the supply minus with power off tells ground) (what J1.1 is, cost 2)\n"},
      {"pin by assumption", "<pin n='1' function='ground' evidence='guess'/>", open + plug_of_leads("A"),
       "doubt assumed: that J1.1 is ground is an assumption ('guess')\n"
       "  power off, nothing plugged in: continuity from J1.1 to the supply minus => a beep: ground; no "
       "beep: not ground (what J1.1 is, cost 1)\n"},
      {"unused by assumption", "<pin n='1' function='unused' evidence='guess'/>", open + plug_of_leads("?"),
       "doubt assumed: that J1.1 is connected to nothing is an assumption ('guess')\n"
       "  board powered alone, nothing plugged in: volts from J1.1 to ground => 24 V: supply 24V; 12 V: "
       "supply 12V; 5 V: supply 5V; 3.3 V: supply 3V3; 0 V: ground, or an output or input at rest "
       "(continuity to the supply minus with power off tells ground) (what J1.1 is, cost 2)\n"},
      {"unused, and a lead that goes nobody knows where", "<pin n='1' function='unused'/>",
       open + plug_of_leads("?"), ""},
      {"a lead that goes nobody knows where", g, open + plug_of_leads("?"),
       "doubt unknown-lead: where the BK lead in cavity 1 of 'p' goes is not known, and it meets J1.1, "
       "ground\n"
       "  plug off the board: continuity between the leads of 'p', 'k' worked and not => the two between which "
       "the beep comes and goes are A and B; which is which does not matter (where the leads of 'p' go, cost 1)\n"},
      {"a device by assumption", g,
       "<dry-switch id='k' title='Old switch' use='limit' rests='open' evidence='guess'/>" +
           plug_of_leads("A"),
       "doubt assumed: what is said of the device 'Old switch' is an assumption ('guess')\n"
       "  compare the description of 'Old switch' with its type plate or data sheet => agrees: name that "
       "evidence in the file; differs: correct the file (what the device 'Old switch' is, cost 0)\n"},
      {"a device by assumption that nothing touches", g,
       "<dry-switch id='k' use='limit' rests='open'/><thermistor id='t' ohms='1 kohm' evidence='guess'/>" +
           plug_of_leads("k.A"),
       ""},
      {"a plug by assumption", g, open + plug_of_leads("A", "xh-2.50", " evidence='guess'"),
       "doubt assumed: which lead sits in which cavity of 'p' is an assumption ('guess')\n"
       "  look at the wire side of 'p', cavity by cavity => agrees: name that evidence in the file; differs: "
       "correct the file (what sits in 'p', cost 0)\n"},
      {"a plug without leads", g, open + plug_of_leads("-"),
       "doubt unknown-lead: no lead of plug 'p' is described\n"
       "  look at the wire side of 'p', cavity by cavity => a contact: describe its lead; all cavities "
       "empty: there is nothing to plug in (what sits in 'p', cost 0)\n"},
      {"a measurement outranks the rest",
       "<pin n='1' function='ground' evidence='e'/><pin n='1' function='supply' rail='5V' evidence='print'/>",
       open + plug_of_leads("A"), ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(header_of_pins("limit", 1, row.pins)), harness_of(row.harness));
    const std::string got = told(doubts(bench.fitting({{"p", "J1"}}), straight(bench)));
    CHECK(got == row.expected);
  }
}

TEST_CASE("nothing said about where a statement comes from is as good as a guess") {
  Bench bench(board_of(header_of_pins("limit", 1, "<pin n='1' function='ground'/>")),
              harness_of("<dry-switch id='k' use='limit' rests='open'/>" + plug_of_leads("A")));
  bench.board->evidence.clear();
  bench.harness->evidence.clear();
  const std::string got = told(doubts(bench.fitting({{"p", "J1"}}), straight(bench)));
  CHECK(got ==
        "doubt assumed: that J1.1 is ground is stated without evidence\n"
        "  power off, nothing plugged in: continuity from J1.1 to the supply minus => a beep: ground; no "
        "beep: not ground (what J1.1 is, cost 1)\n"
        "doubt assumed: what is said of the device 'k' is stated without evidence\n"
        "  compare the description of 'k' with its type plate or data sheet => agrees: name that evidence in "
        "the file; differs: correct the file (what the device 'k' is, cost 0)\n"
        "doubt assumed: which lead sits in which cavity of 'p' is stated without evidence\n"
        "  look at the wire side of 'p', cavity by cavity => agrees: name that evidence in the file; "
        "differs: correct the file (what sits in 'p', cost 0)\n");
}

TEST_CASE("no plug on any header: nothing is proven") {
  const Bench bench(board_of(header_of_pins("limit", 1, "<pin n='1' function='ground'/>")),
                    harness_of("<dry-switch id='k' use='limit' rests='open'/>" + plug_of_leads("A")));
  CHECK(told(doubts(bench.fitting({}), {})) ==
        "doubt not-connected: no plug is on a header: nothing was judged\n"
        "  look which header the plug is meant for, then say --at PLUG=HEADER => the header: judge again "
        "with it "
        "(where the plug goes, cost 0)\n");
}

TEST_CASE("open jumpers: each once, with the first pin that it feeds") {
  const Bench bench(
      board_of(header_of_pins("fan", 3,
                              "<pin n='1' function='ground'/><pin n='2' function='supply' jumper='JP'/>"
                              "<pin n='3' function='supply' jumper='JP'/>")),
      harness_of("<fan id='f' needs='4..6 V' draws='0.1 A'/>" + plug_of_leads("G V V")));
  const auto open = open_jumpers(bench.fitting({{"p", "J1"}}), straight(bench));
  REQUIRE(open.size() == 1);
  CHECK(open[0].jumper->id == "JP");
  CHECK(open[0].pin == 2);
  CHECK(open_jumpers(bench.fitting({{"p", "J1"}}, {{"JP", "5V"}}), straight(bench)).empty());
}
