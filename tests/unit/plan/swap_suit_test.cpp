// SPDX-License-Identifier: MIT
// What can be told of a swap before anything is bought: one motor, one fan behind a jumper.
#include "plan/swap_suit.h"

#include <doctest/doctest.h>

#include <string>
#include <tuple>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// A supply of `volts` on J1, a motor driver on J2, a fan on J3 behind JP, a second jumper that feeds
/// nothing.
std::string board_with(const std::string& volts, const std::string& limit) {
  std::string coils;
  const char* places[] = {"coil='1' end='A'", "coil='1' end='B'", "coil='2' end='A'", "coil='2' end='B'"};
  for (int n = 1; n <= 4; ++n)
    coils += format("<pin n='{}' function='coil' {} rail='24V'{}/>", n, places[n - 1],
                    limit.empty() ? "" : " limit='" + limit + "'");
  return board_of(
      "<rail id='IN' volts='" + volts +
      "' limit='10 A'/><jumper id='JS' rails='5V 12V'/>"
      "<header id='J0' use='supply' family='screw-5.08' positions='2'><pin n='1' function='supply' "
      "rail='IN'/><pin n='2' function='ground'/></header>"
      "<header id='J2' use='motor' family='xh-2.50' positions='4'>" +
      coils +
      "</header><header id='J3' use='fan' family='xh-2.50' positions='2'><pin n='1' "
      "function='ground'/><pin n='2' function='supply' jumper='JP'/></header>");
}

std::string motor_and_fan(const std::string& amps) {
  return harness_of("<motor id='m' ohms='2 ohm' " + amps +
                    "/><fan id='f' needs='20..28 V' draws='0.1 A' reversed='destroyed'/>"
                    "<plug id='motor' family='xh-2.50' positions='4'>"
                    "<lead cavity='1' colour='BK' gauge='22 AWG' length='300 mm' to='m.A1'/>"
                    "<lead cavity='2' colour='RD' gauge='22 AWG' length='300 mm' to='m.B1'/>"
                    "<lead cavity='3' colour='BU' gauge='22 AWG' length='300 mm' to='m.A2'/>"
                    "<lead cavity='4' colour='GN' gauge='22 AWG' length='300 mm' to='m.B2'/></plug>"
                    "<plug id='fan' family='xh-2.50' positions='2'>"
                    "<lead cavity='1' colour='BK' gauge='22 AWG' length='300 mm' to='f.G'/>"
                    "<lead cavity='2' colour='RD' gauge='22 AWG' length='300 mm' to='f.V'/></plug>");
}

/// A plan whose machine sits on `old` today and on `fresh` when it is done.
struct Swap {
  Bench old, fresh;
  Fitting machine;
  SwapPlan plan;

  Swap(const std::string& old_board, const std::string& new_board, const std::string& amps = "amps='1 A'")
      : old(old_board, motor_and_fan(amps)),
        fresh(new_board, motor_and_fan(amps)),
        machine(old.fitting({{"motor", "J2"}, {"fan", "J3"}}, {{"JP", "24V"}})) {
    plan.machine = &machine;
    plan.board = fresh.board.get();
    plan.after = fresh.fitting({{"motor", "J2"}, {"fan", "J3"}}, {{"JP", "24V"}});
  }
  /// "needs | gives | fine | message"
  std::string suit(const std::string& what) const {
    std::string text;
    for (const Suit& s : suits(plan))
      if (s.what == what)
        text += format("{} | {} | {} | {}", s.needs, s.gives, s.fine ? "fine" : "not", s.message);
    return text;
  }
};

}  // namespace

TEST_CASE("does the driver give what the motor takes") {
  const std::tuple<std::string, std::string, std::string> rows[] = {
      {"2 A", "amps='1.5 A'",
       "1.5 A | 2 A | fine | rated 1.5 A; the driver gives up to 2 A: tell the firmware no more than 1.5 A"},
      {"1 A", "amps='1.5 A'",
       "1.5 A | 1 A | not | rated 1.5 A; the driver gives up to 1 A: it runs, with less force"},
      {"", "amps='1.5 A'",
       "1.5 A |  | fine | rated 1.5 A; the board's file does not say what the driver gives"},
      {"2 A", "",
       " | 2 A | fine | the driver gives up to 2 A; the motor's rated current is not stated: read its plate"},
      {"", "", ""},
  };
  for (const auto& [limit, amps, expected] : rows) {
    CAPTURE(limit);
    CAPTURE(amps);
    CHECK(Swap(board_with("24 V", "2 A"), board_with("24 V", limit), amps).suit("motor 'motor' on J2") ==
          expected);
  }
}

TEST_CASE("does the supply go over") {
  const std::tuple<std::string, std::string, std::string> rows[] = {
      {"24 V", "22..26 V", "22..26 V | 24 V | fine | J0 wants 22..26 V; the supply gave 24 V at J0"},
      {"24 V", "12 V",
       "12 V | 24 V | not | J0 wants 12 V, and the supply gave 24 V at J0: another supply is needed"},
      {"12 V", "24 V",
       "24 V | 12 V | not | J0 wants 24 V, and the supply gave 12 V at J0: another supply is needed"},
  };
  for (const auto& [before, after, expected] : rows)
    CHECK(Swap(board_with(before, "2 A"), board_with(after, "2 A")).suit("supply") == expected);
  // A board whose file shows no supply header leaves the question open.
  const std::string none = board_of(
      "<header id='J2' use='motor' family='xh-2.50' positions='4'/><header id='J3' use='fan' "
      "family='xh-2.50' positions='2'/>");
  CHECK(Swap(none, board_with("24 V", "2 A")).suit("supply").empty());
  CHECK(Swap(board_with("24 V", "2 A"), none).suit("supply").empty());
}

TEST_CASE("a jumper says what it feeds and what another position would do") {
  const Swap swap(board_with("24 V", "2 A"), board_with("24 V", "2 A"));
  const auto why = [&](const std::map<std::string, std::string>& chosen,
                       const std::map<std::string, std::string>& stated) {
    std::string text;
    for (const JumperChoice& c : jumper_choices(swap.plan, chosen, stated))
      text += format("{}={}{}: {}\n", c.jumper, c.rail, c.stated ? " stated" : "", c.why);
    return text;
  };
  const std::string too_many =
      "not chosen: the board has too many jumpers to try them all; state it with --jumper";
  CHECK(why({}, {}) == "JP=: " + too_many + "\nJS=: " + too_many + "\n");
  CHECK(why({{"JP", "24V"}, {"JS", "5V"}}, {}) ==
        "JP=24V: feeds 'fan'; at 5V: the load of 'f' gets 4.999 V at best, and needs 20 V\nJS=: no plug of "
        "the machine depends "
        "on it\n");
  CHECK(why({{"JP", "24V"}, {"JS", "5V"}}, {{"JP", "24V"}, {"JS", "5V"}}) ==
        "JP=24V stated: feeds 'fan'; at 5V: the load of 'f' gets 4.999 V at best, and needs 20 V\nJS=5V "
        "stated: as stated; no "
        "plug of the machine depends on it\n");
}

TEST_CASE("what has to be had before the work begins") {
  Swap swap(board_with("24 V", "2 A"), board_with("24 V", "2 A"));
  const auto of = [&](const PlugTransfer& transfer) {
    swap.plan.plugs = {transfer};
    return missing(swap.plan);
  };
  PlugTransfer t;
  t.plug = 1;
  t.why = "no header is free";
  t.kind = Transfer::NoPlace;
  CHECK(of(t).empty());  // it sits nowhere today either
  t.from = 2;
  CHECK(of(t) == std::vector<std::string>{"a header for 'fan', which sits on J3 today: no header is free"});
  t.kind = Transfer::Off;
  CHECK(of(t) == std::vector<std::string>{"for 'fan': no header is free"});
  t.softer = {"keep the firmware to 50 %"};
  CHECK(of(t).empty());
  t.measurements = {{.action = "measure J3.2", .expect = "24 V", .cost = 1, .settles = "the supply"}};
  CHECK(of(t) == std::vector<std::string>{"knowledge for 'fan': measure J3.2"});
  t.kind = Transfer::Adapt;
  t.parts = {"a divider", "a sleeve"};
  CHECK(of(t) == std::vector<std::string>{"for 'fan': a divider", "for 'fan': a sleeve"});
  t.kind = Transfer::Straight;
  CHECK(of(t).empty());
}
