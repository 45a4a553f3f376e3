// SPDX-License-Identifier: MIT
// Resistors of a stated limit, regulators, level buffers before an input of the same device.
#include <doctest/doctest.h>

#include "support/wiring.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// 24 V and ground on terminals V and G, W behind the regulator.
struct Regulated : Wiring {
  TerminalIndex v, g, w;
  explicit Regulated(Volts needs_least, double draws, double limit) {
    rail("24V", 22, 26);
    const int plus = pin(PinFunction::Supply, "24V"), minus = pin(PinFunction::Ground);
    v = terminal("V", TerminalFunction::Supply);
    g = terminal("G", TerminalFunction::Ground);
    w = terminal("W");
    terminal_at(w).inner = true;
    wire(plus, v, "RD");
    wire(minus, g);
    part(Regulator{v, w, g, {Volts(11.4), Volts(12.6)}, Amps(limit), {needs_least, Volts(30)}, {}});
    part(Load{w, g, {Volts(11), Volts(13)}, std::nullopt, Amps(draws), Reversal::Destroyed, {}});
  }
};

}  // namespace

TEST_CASE("a resistor gets more than its power") {
  struct Row {
    std::string name;
    double watts;
    Lines expected;
  };
  const std::vector<Row> rows = {
      {"enough", 0.6, {}},
      {"just enough, with the margin of 1 %", 0.5715, {}},
      // 24 V squared through 1 kohm
      {"too little",
       0.25,
       {"resistor-power 0.5758 limit 0.25 at resistor from 24V |  | 24V - J1.1 - RD - V"}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Wiring w;
    w.rail("24V", 24, 24);
    const int plus = w.pin(PinFunction::Supply, "24V"), minus = w.pin(PinFunction::Ground);
    const int v = w.terminal("V"), g = w.terminal("G");
    w.wire(plus, v, "RD");
    w.wire(minus, g);
    w.part(Resistor{g, v, Ohms(1000), Watts(row.watts), {}});
    CHECK(w.judge() == row.expected);
  }
}

TEST_CASE("a regulator feeds its load within its own limits") {
  CHECK(Regulated(Volts(15), 0.5, 1).judge() == Lines{});
  // (12 V / 0.5 A = 24 ohm) at 12.6 V behind 0.1 ohm: 12.6 / 24.17 A
  CHECK(Regulated(Volts(15), 0.5, 0.4).judge() ==
        Lines{"pin-overcurrent 0.5228 limit 0.4 sometimes at regulator from nothing |  | "});
  CHECK(
      Regulated(Volts(24), 0.5, 1).judge() ==
      Lines{"supply-too-low 21.94 limit 24 sometimes at regulator from 24V | 24V at 22 V | 24V - J1.1 - RD - "
            "V"});
}

TEST_CASE("without power a regulator gives nothing, and its load's current comes out of the rail") {
  Regulated w(Volts(15), 0.5, 1);
  // Another device's supply, so that the board is looked at without power too.
  w.harness.devices.emplace_back();
  w.harness.devices[1].terminals.resize(2);
  w.harness.devices[1].parts.push_back(Source{0, 1, Range<Volts>::at(Volts(5)), {}});
  double on = 0, off = 1;
  const Fitting fitting = w.fitting();
  for_each_snapshot(fitting, w.contacts, w.defaults, [&](const Snapshot& s) {
    for (std::size_t i = 0; i < s.nodes.size(); ++i) {
      if (s.nodes[i].name != "device.W") continue;
      if (s.state.starts_with("board without power")) off = s.solution.volts[i];
      if (!s.state.starts_with("board without power")) on = std::max(on, s.solution.volts[i]);
    }
  });
  CHECK(on == doctest::Approx(12.6).epsilon(0.01));
  CHECK(off == doctest::Approx(0.0));
  w.board.rails[0].limit = Amps(0.4);
  // 0.5 A counted at 22.5 V, the middle of its input: at 26 V 0.577 A
  CHECK(w.judge() == Lines{"rail-overload 0.576 limit 0.4 at 24V from nothing |  | "});
}

TEST_CASE("a level buffer before an input of the same device") {
  struct Row {
    std::string name;
    double drop;
    double board_high;
    Lines expected;
  };
  // The input takes 0.7 of 5 V as high (WS2812B data, seller's copy); 74HCT reads high from 2.0 V
  // (SN74HCT00 data sheet).
  const std::vector<Row> rows = {
      {"reaches it", 0.1, 3.1, {}},
      {"does not", 2.0, 3.1, {"level-high 3 limit 3.5 sometimes at D behind the level buffer receiver"}},
      {"and is not reached itself", 0.1, 1.9, {"level-high"}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Wiring w;
    w.rail("5V", 5, 5);
    const int plus = w.pin(PinFunction::Supply, "5V"), minus = w.pin(PinFunction::Ground);
    const int out = w.pin(PinFunction::Output, "5V");
    w.at(out).high = Range<Volts>::at(Volts(row.board_high));
    const int v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground);
    const int d = w.terminal("D", TerminalFunction::Input), inner = w.terminal("D behind the level buffer");
    w.terminal_at(inner).inner = true;
    w.wire(plus, v, "RD");
    w.wire(minus, g);
    w.wire(out, d, "GN");
    Receiver led;
    led.terminal = inner, led.plus = v, led.minus = g;
    led.high_above_share = 0.7, led.low_below_share = 0.3, led.above_supply = Volts(0.5);
    w.part(led);
    Receiver in;
    in.terminal = d, in.plus = v, in.minus = g;
    in.low_below = Volts(0.8), in.high_above = Volts(2.0), in.above_supply = Volts(0.5);
    w.part(in);
    Driver buffer;
    buffer.terminal = inner, buffer.plus = v, buffer.minus = g;
    buffer.kind = OutputKind::PushPull;
    buffer.drop = Volts(row.drop);
    w.part(buffer);
    const Lines got = w.judge();
    REQUIRE(got.all.size() >= row.expected.all.size());
    if (row.expected.all.empty()) CHECK(got == Lines{});
    for (std::size_t i = 0; i < row.expected.all.size(); ++i)
      CHECK(got.all[i].substr(0, row.expected.all[i].size()) == row.expected.all[i]);
  }
}
