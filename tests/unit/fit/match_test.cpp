// SPDX-License-Identifier: MIT
#include "fit/match.h"

#include <doctest/doctest.h>

#include <set>
#include <string>
#include <vector>

#include "base/format.h"
#include "reader/descriptions.h"
#include "support/bench.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

const std::string board =
    "<board id='b' title='B' width='9 mm' height='9 mm' evidence='e'><evidence id='e' kind='measurement'/>"
    "<rail id='24V' volts='22..26 V'/><rail id='5V' volts='4.8..5.2 V'/><jumper id='JP' rails='5V 24V'/>"
    "<header id='J' use='spare' family='xh-2.50' positions='10'>"
    "<pin n='1' function='supply' rail='5V'/><pin n='2' function='supply' jumper='JP'/><pin n='3' "
    "function='ground'/>"
    "<pin n='4' function='output' signal='servo'/><pin n='5' function='input' signal='limit'/>"
    "<pin n='6' function='switched'/><pin n='7' function='switched' signal='fan'/>"
    "<pin n='8' function='coil' coil='2' end='A'/><pin n='9' function='unused'/></header></board>";

Bench bench_of(const std::string& devices) {
  return Bench(board, "<harness id='h' title='H' evidence='e'><evidence id='e' kind='measurement'/>" +
                          devices + "<plug id='p' family='xh-2.50' positions='1'/></harness>");
}

/// "A wants an input for 'limit', B wants ground; ..." : alternatives one a line, groups parted by "--".
std::string told(const Bench& bench) {
  std::string text;
  for (const WishGroup& group : groups(*bench.harness)) {
    if (!text.empty()) text += "--\n";
    for (const Alternative& alternative : group.alternatives) {
      std::vector<std::string> ends;
      for (const End& end : alternative.ends) {
        ends.push_back(format("{}: {}", bench.harness->terminal_name(end.terminal), to_words(end)));
      }
      text += format("{}{}\n", join(ends, ", "), alternative.motor_turned ? " (turned)" : "");
    }
  }
  return text;
}

End wish(Wish w, std::string signal = "") {
  return {{0, 0}, w, std::move(signal), std::nullopt, 1, 'A'};
}

}  // namespace

TEST_CASE("what the ends of each kind of device wish") {
  struct Row {
    std::string name;
    std::string device;
    std::string expected;
  };
  const std::vector<Row> rows{
      {"dry switch: either end, to ground or to the supply", "<dry-switch id='d' use='limit' rests='open'/>",
       "A: an input for 'limit', B: ground\nB: an input for 'limit', A: ground\n"
       "A: an input for 'limit', B: a supply\nB: an input for 'limit', A: a supply\n"},
      {"heater: no polarity, a low-side switch only", "<heater-element id='d' volts='24 V' watts='40 W'/>",
       "A: a supply, B: a switched output\nB: a supply, A: a switched output\n"},
      {"thermistor", "<thermistor id='d' ohms='100 kohm'/>",
       "A: an input for 'temperature', B: ground\nB: an input for 'temperature', A: ground\n"},
      {"fan", "<fan id='d' needs='10..14 V' draws='0.1 A' survives='15 V' sense='yes' control='yes'/>",
       "V: a supply of 10..15 V\n--\nG: ground or a switched output\n--\nS: an input for 'tach'\n--\n"
       "C: an output for 'pwm'\n"},
      {"string: its far end must meet nothing", "<led-string id='d' count='3' out='yes'/>",
       "V: a supply of 3.5..5.3 V\n--\nD: an output for 'led-data'\n--\nG: ground\n--\nQ: nothing\n"},
      {"two loads on one supply need what both stand",
       "<device id='d' use='x'><terminal id='V' function='supply'/><terminal id='G' function='ground'/>"
       "<load plus='V' minus='G' needs='4..6 V' draws='1 A'/><load plus='V' minus='G' needs='5..9 V' "
       "draws='1 A'/>"
       "</device>",
       "V: a supply of 5..6 V\n--\nG: ground\n"},
      {"a lone winding is a switched load without polarity",
       "<device id='d' use='x'><terminal id='A'/><terminal id='B'/><coil a='A' b='B' ohms='9 ohm'/></device>",
       "A: a supply, B: ground or a switched output\nB: a supply, A: ground or a switched output\n"},
      {"passive terminals of no part, and unknown ones",
       "<device id='d' use='x'><terminal id='A'/><terminal id='B' function='unknown'/></device>",
       "A: what is not known\n--\nB: what is not known\n"},
      {"the second switch of a changeover finds its common end taken",
       "<device id='d' use='limit'><terminal id='C'/><terminal id='NC'/><terminal id='NO' function='spare'/>"
       "<switch a='C' b='NC' rests='closed'/><switch a='C' b='NO' rests='open'/></device>",
       "C: an input for 'limit', NC: ground\nNC: an input for 'limit', C: ground\n"
       "C: an input for 'limit', NC: a supply\nNC: an input for 'limit', C: a supply\n--\nNO: nothing\n"},
      // The signed 2 x 2 permutations: forward those of determinant +1 ("Stepper wiring question").
      {"motor: eight orders, four of them turned", "<motor id='d' ohms='2 ohm'/>",
       "A1: end A of bridge 1, B1: end B of bridge 1, A2: end A of bridge 2, B2: end B of bridge 2\n"
       "A1: end B of bridge 1, B1: end A of bridge 1, A2: end B of bridge 2, B2: end A of bridge 2\n"
       "A1: end A of bridge 2, B1: end B of bridge 2, A2: end B of bridge 1, B2: end A of bridge 1\n"
       "A1: end B of bridge 2, B1: end A of bridge 2, A2: end A of bridge 1, B2: end B of bridge 1\n"
       "A1: end A of bridge 1, B1: end B of bridge 1, A2: end B of bridge 2, B2: end A of bridge 2 (turned)\n"
       "A1: end B of bridge 1, B1: end A of bridge 1, A2: end A of bridge 2, B2: end B of bridge 2 (turned)\n"
       "A1: end A of bridge 2, B1: end B of bridge 2, A2: end A of bridge 1, B2: end B of bridge 1 (turned)\n"
       "A1: end B of bridge 2, B1: end A of bridge 2, A2: end B of bridge 1, B2: end A of bridge 1 "
       "(turned)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(told(bench_of(row.device)) == row.expected);
  }
}

TEST_CASE("every terminal of every device is in exactly one group, in every alternative of it") {
  const Bench bench = bench_of(
      "<motor id='m' ohms='2 ohm'/><servo-probe id='s' needs='4..6 V' draws='1 A'/><rgb-strip id='r' "
      "volts='12 V' "
      "draws='1 A'/><dry-switch id='k' use='limit' rests='open'/>");
  std::multiset<TerminalRef> seen;
  for (const WishGroup& group : groups(*bench.harness)) {
    REQUIRE(!group.alternatives.empty());
    std::set<TerminalRef> first;
    for (const End& end : group.alternatives[0].ends) first.insert(end.terminal);
    for (const Alternative& alternative : group.alternatives) {
      std::set<TerminalRef> here;
      for (const End& end : alternative.ends) here.insert(end.terminal);
      CHECK((here == first));
      CHECK(alternative.ends.size() == first.size());
    }
    seen.insert(first.begin(), first.end());
  }
  std::size_t terminals = 0;
  for (const Device& device : bench.harness->devices) terminals += device.terminals.size();
  CHECK(seen.size() == terminals);
  CHECK(std::set<TerminalRef>(seen.begin(), seen.end()).size() == terminals);
}

TEST_CASE("which pins grant which wish") {
  const Bench bench = bench_of("<dry-switch id='d' use='limit' rests='open'/>");
  const Header& header = bench.board->headers[0];
  End coil = wish(Wish::CoilEnd);
  coil.coil = 2;
  struct Row {
    std::string name;
    End end;
    std::set<int> pins;  ///< 10 is not described
  };
  const std::vector<Row> rows{
      {"supply", wish(Wish::Supply), {1, 2}},
      {"ground", wish(Wish::Ground), {3}},
      {"return", wish(Wish::Return), {3, 6, 7}},
      {"low side", wish(Wish::LowSide), {6, 7}},
      {"output for servo", wish(Wish::BoardOutput, "servo"), {4}},
      {"output for something else", wish(Wish::BoardOutput, "led-data"), {}},
      {"output for something not named", wish(Wish::BoardOutput), {4}},
      {"input for limit", wish(Wish::BoardInput, "limit"), {5}},
      {"input for probe", wish(Wish::BoardInput, "probe"), {}},
      {"end A of bridge 2", coil, {8}},
      {"end A of bridge 1", wish(Wish::CoilEnd), {}},
      {"nothing", wish(Wish::Nothing), {9}},
      {"not known", wish(Wish::Any), {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    std::set<int> granted;
    for (const Pin& pin : header.pins) {
      if (grants(pin, row.end)) granted.insert(pin.number);
    }
    CHECK((granted == row.pins));
  }
  coil.coil_end = 'B';
  CHECK_FALSE(grants(header.pin(8), coil));
}

TEST_CASE("rails, jumpers and the volts that a supply end needs") {
  const Bench bench = bench_of("<dry-switch id='d' use='limit' rests='open'/>");
  const Board& b = *bench.board;
  const Pin& fixed = b.headers[0].pin(1);
  const Pin& chosen = b.headers[0].pin(2);
  CHECK(rail_of(fixed, b, {})->id == "5V");
  CHECK(rail_of(chosen, b, {}) == nullptr);
  CHECK(rail_of(chosen, b, {{"JP", "24V"}})->id == "24V");
  CHECK(rail_of(b.headers[0].pin(3), b, {}) == nullptr);
  struct Row {
    Range<Volts> needs;
    bool on_5v, on_24v;
  };
  // A range suits when it and the rail's (4.8..5.2 V, 22..26 V) have a voltage in common.
  const std::vector<Row> rows{
      {{Volts(4.5), Volts(5.5)}, true, false}, {{Volts(5.2), Volts(9)}, true, false},
      {{Volts(5.3), Volts(9)}, false, false},  {{Volts(10), Volts(30)}, false, true},
      {{Volts(1), Volts(4.8)}, true, false},   {{Volts(1), Volts(4.7)}, false, false},
  };
  for (const Row& row : rows) {
    CAPTURE(to_text(row.needs));
    End end = wish(Wish::Supply);
    end.volts = row.needs;
    CHECK(volts_suit(fixed, b, {}, end) == row.on_5v);
    CHECK(volts_suit(chosen, b, {{"JP", "24V"}}, end) == row.on_24v);
    CHECK(volts_suit(chosen, b, {}, end));  // not known
  }
  CHECK(volts_suit(fixed, b, {}, wish(Wish::Supply)));  // nothing stated
  CHECK(volts_suit(fixed, b, {}, wish(Wish::Ground)));
}

TEST_CASE("signals are the same when equal or when one is not stated") {
  CHECK(same_signal("limit", "limit"));
  CHECK(same_signal("", "limit"));
  CHECK(same_signal("limit", ""));
  CHECK(same_signal("", ""));
  CHECK_FALSE(same_signal("limit", "probe"));
}

TEST_CASE("pins in words") {
  const Bench bench = bench_of("<dry-switch id='d' use='limit' rests='open'/>");
  const std::vector<std::string> expected{
      "supply 5V",       "supply by JP",          "ground",         "output 'servo'",       "input 'limit'",
      "switched output", "switched output 'fan'", "bridge 2 end A", "connected to nothing", "not known"};
  std::vector<std::string> got;
  for (const Pin& pin : bench.board->headers[0].pins) got.push_back(to_words(pin));
  CHECK((got == expected));
}
