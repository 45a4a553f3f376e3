// SPDX-License-Identifier: MIT
#include "judge/sense.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

struct Row {
  std::string name;
  std::string device;
  std::string leads;  ///< on supply, ground, input
  std::string pull;   ///< of the input
  std::vector<Setting> settings;
  std::string notes;
};

std::string input_is(const std::string& rest, const std::string& works) {
  return "input 'limit' on J1.3 (net PA1) is " + rest + " at rest and " + works + " when the device works";
}

std::string note(const std::string& level) {
  return "note inverted-sense: J1.3 is held " + level + " at rest, against its pull: firmware that takes " +
         level + " for triggered must be told\n";
}

std::string sensor(const std::string& kind, const std::string& rests) {
  return "<device id='d' use='limit'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
         "<terminal id='S' function='output' signal='limit'/><load plus='V' minus='G' needs='4..6 V' "
         "draws='1 mA'/>"
         "<driver terminal='S' plus='V' minus='G' kind='" +
         kind + "'" + rests + "/></device>";
}

}  // namespace

TEST_CASE("what an input reads at rest, and against which pull") {
  const std::string open = "<dry-switch id='k' use='limit' rests='open'/>";
  const std::string closed = "<dry-switch id='k' use='limit' rests='closed'/>";
  const std::string up = "pull='up' pull-ohms='10 kohm'";
  const std::string down = "pull='down' pull-ohms='10 kohm'";
  const std::string to_ground_open = "the switch rests open and joins the input to ground";
  const std::string to_ground_closed = "the switch rests closed and joins the input to ground";
  const std::string to_supply_open = "the switch rests open and joins the input to the supply";
  const std::string to_supply_closed = "the switch rests closed and joins the input to the supply";
  // Truth table of switches to ground on a pulled-up input ("Limit switches NC vs NO"); to the supply: its
  // mirror.
  const std::vector<Row> rows{
      {"open, to ground", open, "- A B", up, {{input_is("high", "low"), to_ground_open}}, ""},
      {"closed, to ground", closed, "- A B", up, {{input_is("low", "high"), to_ground_closed}}, note("low")},
      {"the same, the other end",
       closed,
       "- B A",
       up,
       {{input_is("low", "high"), to_ground_closed}},
       note("low")},
      {"open, to supply", open, "A - B", down, {{input_is("low", "high"), to_supply_open}}, ""},
      {"closed, to supply",
       closed,
       "A - B",
       down,
       {{input_is("high", "low"), to_supply_closed}},
       note("high")},
      {"no pull stated: no note", closed, "- A B", "", {{input_is("low", "high"), to_ground_closed}}, ""},
      {"across supply and ground: no input", closed, "A B -", up, {}, ""},
      {"one end on nothing", closed, "- - B", up, {}, ""},
      {"sinking, off at rest",
       sensor("sinking", " rests='off'"),
       "V G S",
       up,
       {{input_is("high", "low"), "the sinking output is off at rest"}},
       ""},
      {"sinking, on at rest",
       sensor("sinking", " rests='on'"),
       "V G S",
       up,
       {{input_is("low", "high"), "the sinking output is on at rest"}},
       note("low")},
      {"sourcing, off at rest",
       sensor("sourcing", " rests='off'"),
       "V G S",
       down,
       {{input_is("low", "high"), "the sourcing output is off at rest"}},
       ""},
      {"sourcing, on at rest",
       sensor("sourcing", " rests='on'"),
       "V G S",
       down,
       {{input_is("high", "low"), "the sourcing output is on at rest"}},
       note("high")},
      {"push-pull, low at rest",
       sensor("push-pull", " rests='off'"),
       "V G S",
       up,
       {{input_is("low", "high"), "the push-pull output is off at rest"}},
       note("low")},
      {"not stated how it rests", sensor("push-pull", ""), "V G S", up, {}, ""},
      {"the output on ground", sensor("push-pull", " rests='off'"), "V S G", up, {}, ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(
        board_of(header_of_pins("limit", 3,
                                "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/>"
                                "<pin n='3' function='input' signal='limit' net='PA1' rail='3V3' " +
                                    row.pull + "/>")),
        harness_of(row.device + plug_of_leads(row.leads)));
    const Fitting fitting = bench.fitting({{"p", "J1"}});
    std::vector<Contact> contacts;
    const auto& leads = bench.harness->plugs[0].leads;
    for (std::size_t l = 0; l < leads.size(); ++l)
      contacts.push_back({0, static_cast<int>(l), 0, leads[l].cavity});
    CHECK((input_senses(fitting, contacts) == row.settings));
    std::string notes;
    for (const Finding& finding : inverted_senses(fitting, contacts)) notes += told(finding);
    CHECK(notes == row.notes);
  }
}

TEST_CASE("a switch between a signal and a terminal joined to the grounded one") {
  const Bench bench(
      board_of(header_of_pins("probe", 3,
                              "<pin n='1' function='supply' rail='5V'/><pin n='2' function='ground'/>"
                              "<pin n='3' function='input' signal='probe' rail='3V3'/>")),
      harness_of("<servo-probe id='d' needs='4..6 V' draws='0.1 A'/>" + plug_of_leads("V G T")));
  CHECK((input_senses(bench.fitting({{"p", "J1"}}),
                      std::vector<Contact>{{0, 0, 0, 1}, {0, 1, 0, 2}, {0, 2, 0, 3}}) ==
         std::vector<Setting>{{"input 'probe' on J1.3 is high at rest and low when the device works",
                               "the switch rests open and joins the input to ground"}}));
}
