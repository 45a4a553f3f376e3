// SPDX-License-Identifier: MIT
#include "judge/function_check.h"

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
  std::string pins;
  std::string harness;
  std::string expected;
};

const std::string v1 = "<pin n='1' function='supply' rail='5V'/>";
const std::string g2 = "<pin n='2' function='ground'/>";
const std::string s3 = "<pin n='3' function='input' signal='limit' rail='3V3'/>";
const std::string vgs = v1 + g2 + s3;

std::vector<Contact> straight(const Bench& bench) {
  std::vector<Contact> contacts;
  const auto& leads = bench.harness->plugs[0].leads;
  for (std::size_t l = 0; l < leads.size(); ++l)
    contacts.push_back({0, static_cast<int>(l), 0, leads[l].cavity});
  return contacts;
}

std::string told(const FunctionCheck& check) {
  Assessment assessment;
  assessment.findings = check.findings;
  assessment.settings = check.settings;
  return plugward::test::told(assessment);
}

std::string device(const std::string& terminals, const std::string& parts = "") {
  return "<device id='d' use='limit'>" + terminals + parts + "</device>";
}

std::string terminal(const std::string& id, const std::string& more) {
  return "<terminal id='" + id + "' " + more + "/>";
}

}  // namespace

TEST_CASE("each wish against what it may meet") {
  const std::string supply = device(terminal("T", "function='supply'"));
  const std::string ground = device(terminal("T", "function='ground'"));
  const std::string minus = device(terminal("T", "function='return'"));
  const std::string in = device(terminal("T", "function='input' signal='servo'"));
  const std::string out = device(terminal("T", "function='output' signal='limit'"));
  const std::string spare = device(terminal("T", "function='spare'"));
  const std::string optional = device(terminal("T", "function='output' signal='limit' optional='yes'"));
  const std::string probe_in = "<pin n='3' function='input' signal='probe' rail='3V3'/>";
  const std::vector<Row> rows{
      {"supply on supply", vgs, supply + plug_of_leads("T"), ""},
      {"supply on ground", vgs, supply + plug_of_leads("- T"),
       "fault wrong-function: terminal 'T' (BK) wants a supply and meets J1.2, ground\n"},
      {"supply on an input", vgs, supply + plug_of_leads("- - T"),
       "fault wrong-function: terminal 'T' (BK) wants a supply and meets J1.3, input 'limit'\n"},
      {"supply on a pin that is not known: the pin is the doubt", g2 + s3, supply + plug_of_leads("T"), ""},
      {"ground on ground", vgs, ground + plug_of_leads("- T"), ""},
      {"ground on a switched output", "<pin n='1' function='switched' signal='fan'/>",
       ground + plug_of_leads("T"),
       "fault wrong-function: terminal 'T' (BK) wants ground and meets J1.1, switched output 'fan'\n"},
      {"return on a switched output", "<pin n='1' function='switched' signal='fan'/>",
       minus + plug_of_leads("T"), ""},
      {"return on ground runs always", vgs, minus + plug_of_leads("- T"),
       "note always-on: J1.2 is ground, not a switched output: what hangs on 'T' runs whenever the board has "
       "power\n"},
      {"input on its output", "<pin n='1' function='output' signal='servo'/>", in + plug_of_leads("T"), ""},
      {"input on another output", "<pin n='1' function='output' signal='led-data'/>", in + plug_of_leads("T"),
       "fault wrong-function: terminal 'T' (BK) wants an output for 'servo' and meets J1.1, output "
       "'led-data'\n"},
      {"output on its input", vgs, out + plug_of_leads("- - T"), ""},
      {"output on another input", v1 + g2 + probe_in, out + plug_of_leads("- - T"),
       "fault wrong-function: terminal 'T' (BK) wants an input for 'limit' and meets J1.3, input 'probe'\n"},
      {"output on nothing", vgs, out + "<plug id='p' family='xh-2.50' positions='2'/>",
       "fault not-connected: terminal 'T' meets no pin; it wants an input for 'limit'\n"},
      {"optional output on nothing", vgs, optional + "<plug id='p' family='xh-2.50' positions='2'/>", ""},
      {"optional output on a pin that is connected to nothing",
       vgs.substr(0, v1.size()) + "<pin n='2' function='unused'/>" + s3, optional + plug_of_leads("- T"), ""},
      {"optional output on ground", vgs, optional + plug_of_leads("- T"),
       "fault wrong-function: terminal 'T' (BK) wants an input for 'limit' and meets J1.2, ground\n"},
      {"spare on unused", "<pin n='1' function='unused'/>", spare + plug_of_leads("T"), ""},
      {"spare on ground", vgs, spare + plug_of_leads("- T"),
       "fault wrong-function: terminal 'T' (BK) wants nothing and meets J1.2, ground\n"},
      {"an unknown terminal", vgs, device(terminal("T", "function='unknown'")) + plug_of_leads("- T"),
       "doubt unknown-lead: what terminal 'T' (BK) is for is not known, and it meets J1.2, ground\n"
       "  read the device's type plate or data sheet for terminal 'T' => its function; then state it in the "
       "harness file (what terminal 'T' is for, cost 0)\n"},
      {"a lead goes nobody knows where: it may be the missing one", vgs, out + plug_of_leads("?"), ""},
      {"but not when it meets nothing", "<pin n='1' function='unused'/>", out + plug_of_leads("?"),
       "fault not-connected: terminal 'T' meets no pin; it wants an input for 'limit'\n"},
      {"joined inside the device to one that is met", vgs,
       device(terminal("T", "function='ground'") + terminal("H", "function='ground'"),
              "<join a='T' b='H'/>") +
           plug_of_leads("- T"),
       ""},
      {"a second ground on a pin that is connected to nothing: the other has its contact",
       g2 + "<pin n='3' function='unused'/>",
       device(terminal("T", "function='ground'") + terminal("H", "function='ground'"),
              "<join a='T' b='H'/>") +
           plug_of_leads("- T H"),
       ""},
      {"both grounds on pins that are connected to nothing",
       "<pin n='1' function='unused'/><pin n='2' function='unused'/>",
       device(terminal("T", "function='ground'") + terminal("H", "function='ground'"),
              "<join a='T' b='H'/>") +
           plug_of_leads("T H"),
       "fault wrong-function: terminal 'T' (BK) wants ground and meets J1.1, connected to nothing\n"
       "fault wrong-function: terminal 'H' (BK) wants ground and meets J1.2, connected to nothing\n"},
      {"both ends of a switch on ground", g2 + "<pin n='1' function='ground'/>",
       "<dry-switch id='k' use='limit' rests='open'/>" + plug_of_leads("A B"),
       "fault wrong-function: terminal 'A' (BK) wants an input for 'limit' and meets J1.1, ground\n"},
      {"a heater on ground", vgs, "<heater-element id='h' volts='24 V' watts='40 W'/>" + plug_of_leads("A B"),
       "fault wrong-function: terminal 'B' (BK) wants a switched output and meets J1.2, ground\n"},
      {"a heater's relay on an output that is on at reset",
       v1 + "<pin n='2' function='switched' at-reset='on'/>",
       "<device id='d' use='heater'><terminal id='P' function='supply'/><terminal id='T' function='return'/>"
       "<load plus='P' minus='T' needs='4..32 V' draws='15 mA' reversed='blocked'/></device>" +
           plug_of_leads("P T"),
       "harm always-on: J1.2 is on at reset: what hangs on 'T' heats before the firmware runs\n"},
      {"a lone winding is a switched load", v1 + "<pin n='2' function='switched'/>",
       device(terminal("A", "") + terminal("B", ""), "<coil a='A' b='B' ohms='50 ohm'/>") +
           plug_of_leads("B A"),
       ""},
      {"a colour on the switch of another: a setting", "<pin n='1' function='switched' signal='green'/>",
       "<rgb-strip id='s' volts='12 V' draws='0.1 A'/><plug id='p' family='xh-2.50' positions='1'>"
       "<lead cavity='1' colour='RD' to='R'/></plug><plug id='q' family='xh-2.50' positions='3'>"
       "<lead cavity='1' colour='BK' to='V'/><lead cavity='2' colour='GN' to='G'/><lead cavity='3' "
       "colour='BU' to='B'/>"
       "</plug>",
       "note wrong-function: terminal 'R' is for 'red' and meets J1.1, switched output 'green'\n"
       "setting: the output on J1.1 drives 'R' ('red') (its own name is 'green')\n"},
      {"a terminal that a part drives, of no stated function, on nothing", vgs,
       device(terminal("V", "function='supply' optional='yes'") +
                  terminal("G", "function='ground' optional='yes'") + terminal("S", ""),
              "<driver terminal='S' plus='V' minus='G' kind='push-pull'/>") +
           "<plug id='p' family='xh-2.50' positions='2'/>",
       "doubt unknown-lead: what terminal 'S' is for is not known, and it meets no pin\n"
       "  read the device's type plate or data sheet for terminal 'S' => its function; then state it in the "
       "harness "
       "file (what terminal 'S' is for, cost 0)\n"},
      {"two leads of one terminal, one of them wrong", vgs, ground + plug_of_leads("T T"),
       "fault wrong-function: terminal 'T' (BK) wants ground and meets J1.1, supply 5V\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Bench bench(board_of(header_of_pins("limit", 3, row.pins)), harness_of(row.harness));
    const std::string got = told(check_functions(bench.fitting({{"p", "J1"}}), straight(bench)));
    CHECK(got == row.expected);
  }
}

TEST_CASE("leads of other plugs: placed, leaded, and what they may bring") {
  const Bench bench(
      board_of(header_of_pins("limit", 3, vgs)),
      harness_of("<optical-switch id='o' needs='4..6 V' draws='1 mA'/>" + plug_of_leads("V G") +
                 "<plug id='q' family='xh-2.50' positions='1'><lead cavity='1' colour='WH' to='S'/></plug>"));
  const Fitting one = bench.fitting({{"p", "J1"}});
  CHECK(placed(one, {0, 0}));
  CHECK_FALSE(placed(one, {0, 2}));
  CHECK(leaded(*bench.harness, {0, 2}));
  CHECK(told(check_functions(one, straight(bench))) == "");  // S waits for plug q
  CHECK_FALSE(brings_unknown(one, straight(bench)));
  const Bench unknown(board_of(header_of_pins("limit", 3, vgs)), harness_of(plug_of_leads("?")));
  CHECK(brings_unknown(unknown.fitting({{"p", "J1"}}), straight(unknown)));
}
