// SPDX-License-Identifier: MIT
// Do signals reach the thresholds of those who read them? Every contact is 0.07 ohm.
#include <doctest/doctest.h>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

namespace {

/// An output pin on a receiver that is fed by the 5V rail; its 10 mA lift its minus by 0.7 mV.
struct Sending : Wiring {
  int out;
  Receiver receiver;
  Sending() {
    rail("5V", 4.75, 5.25);
    rail("3V3", 3.2, 3.4);
    out = pin(PinFunction::Output, "3V3");
    const int supply = pin(PinFunction::Supply, "5V"), ground = pin(PinFunction::Ground);
    const auto d = terminal("D", TerminalFunction::Input), v = terminal("V", TerminalFunction::Supply),
               g = terminal("G", TerminalFunction::Ground);
    terminal_at(d).withstands = {Volts(-0.5), Volts(5.5)};
    Load load;
    load.plus = v, load.minus = g;
    load.needs = {Volts(4.0), Volts(5.5)};
    load.draws = Amps(0.01);
    part(load);
    receiver.terminal = d, receiver.plus = v, receiver.minus = g;
    wire(out, d, "GN");
    wire(supply, v, "RD");
    wire(ground, g, "BK");
  }
  Lines judge_with() {
    part(receiver);
    return judge();
  }
};

/// A switch between an input pin and ground.
struct Switching : Wiring {
  int input;
  Switching() {
    rail("3V3", 3.3, 3.3);
    input = pin(PinFunction::Input, "3V3");
    const int ground = pin(PinFunction::Ground);
    const auto a = terminal("A"), b = terminal("B");
    part(Switch{a, b, false, {}});
    wire(input, a, "WH");
    wire(ground, b, "BK");
    at(input).low_below = Volts(0.8);
    at(input).high_above = Volts(2.0);
  }
};

/// A sinking sensor on an input with a pull-up of 10 kohm to 3.3 V; its supply is 24 V.
struct Sensing : Wiring {
  int input;
  Driver driver;
  Sensing() {
    rail("24V", 24, 24);
    rail("3V3", 3.3, 3.3);
    input = pin(PinFunction::Input, "3V3");
    const int supply = pin(PinFunction::Supply, "24V"), ground = pin(PinFunction::Ground);
    at(input).low_below = Volts(0.8);
    at(input).high_above = Volts(2.0);
    at(input).withstands = {Volts(-0.3), Volts(3.6)};
    at(input).pull = Pull{true, Ohms(10000), {}};
    const auto q = terminal("Q", TerminalFunction::Output), v = terminal("V", TerminalFunction::Supply),
               g = terminal("G", TerminalFunction::Ground);
    driver.terminal = q, driver.plus = v, driver.minus = g;
    driver.kind = OutputKind::Sinking;
    wire(input, q, "BK");
    wire(supply, v, "BN");
    wire(ground, g, "BU");
  }
  Lines judge_with() {
    part(driver);
    return judge();
  }
};

}  // namespace

TEST_CASE("from the board to a device") {
  Sending w;
  SUBCASE("2 V are reached") {
    w.receiver.low_below = Volts(0.8);
    w.receiver.high_above = Volts(2.0);
    CHECK(w.judge_with() == Lines{});
  }
  SUBCASE("a share of its supply is not: 0.7 x 5.249 V against 3.2 V") {
    // The load takes 10 mA: 5.25 V x 475 / 475.14 = 5.2485 V; x 0.7 = 3.674 V. At 4.75 V and 3.4 V: 3.324 V,
    // reached.
    w.receiver.high_above_share = 0.7;
    w.receiver.low_below_share = 0.3;
    CHECK(w.judge_with() == Lines{"level-high 3.199 limit 3.674 sometimes at D receiver from J1.1 | J1.1 "
                                  "high, 5V at 5.25 V, 3V3 at 3.2 V | 3V3 - J1.1 - GN - D"});
  }
  SUBCASE("in no corner") {
    w.receiver.high_above = Volts(3.5);
    CHECK(w.judge_with() ==
          Lines{"level-high 3.199 limit 3.5 at D receiver from J1.1 |  | 3V3 - J1.1 - GN - D"});
  }
  SUBCASE("the guaranteed high level counts, not the rail") {
    // LVTTL: 2.4 V at least ("Logic levels").
    w.at(w.out).high = {Volts(2.4), Volts(3.4)};
    w.receiver.high_above = Volts(3.0);
    CHECK(w.judge_with() ==
          Lines{"level-high 2.399 limit 3 sometimes at D receiver from J1.1 | J1.1 high | J1.1 - GN - D"});
  }
  SUBCASE("a low level that is not low enough") {
    w.at(w.out).low = Volts(0.9);
    w.receiver.low_below = Volts(0.8);
    CHECK(w.judge_with() ==
          Lines{"level-low 0.8993 limit 0.8 sometimes at D receiver from J1.1 | J1.1 low | J1.1 - GN - D"});
  }
  SUBCASE("neither its high level nor its rail is stated") {
    w.at(w.out).rail.clear();
    w.receiver.high_above = Volts(2.0);
    CHECK(w.judge_with() == Lines{"unknown-limit 0 limit 0 at J1.1 from receiver |  | "});
  }
  SUBCASE("an open drain without any pull never gets high") {
    w.at(w.out).drive = DriveKind::OpenDrain;
    w.receiver.high_above = Volts(2.0);
    CHECK(w.judge_with() == Lines{"level-high -0.0007735 limit 2 at D receiver from J1.1 |  | "});
  }
  SUBCASE("an open drain on the device's own pull-up") {
    // 4-Wire PWM Controlled Fans Specification: 5.25 V at most, inside the fan.
    w.at(w.out).drive = DriveKind::OpenDrain;
    w.at(w.out).withstands = {Volts(-0.3), Volts(5.5)};
    w.receiver.open_circuit = Volts(5.25);
    w.receiver.high_above = Volts(2.0);
    w.receiver.low_below = Volts(0.8);
    CHECK(w.judge_with() == Lines{});
  }
}

TEST_CASE("a dry switch on an input") {
  Switching w;
  SUBCASE("with a pull-up") {
    w.at(w.input).pull = Pull{true, Ohms(10000), {}};
    CHECK(w.judge() == Lines{});
  }
  SUBCASE("with a pull whose resistance is not stated") {
    w.at(w.input).pull = Pull{true, Ohms(), {}};
    CHECK(w.judge() == Lines{});
  }
  SUBCASE("with a pull-down it is low whatever the switch does") {
    w.at(w.input).pull = Pull{false, Ohms(10000), {}};
    CHECK(w.judge() ==
          Lines{"stuck 0 limit 2 at J1.1 from switch |  | ground - J1.2 - BK - B - A - WH - J1.1"});
  }
  SUBCASE("without a pull nothing drives it while the switch is open") {
    CHECK(w.judge() == Lines{"floating 0 limit 0 sometimes at J1.1 from switch | switch open | "});
  }
  SUBCASE("thresholds not stated") {
    w.at(w.input).pull = Pull{true, Ohms(10000), {}};
    w.at(w.input).high_above.reset();
    CHECK(w.judge() == Lines{"unknown-limit 0 limit 0 at J1.1 from switch |  | "});
  }
  SUBCASE("an analogue input has no thresholds") {
    w.at(w.input).analogue = true;
    w.at(w.input).high_above.reset();
    CHECK(w.judge() == Lines{});
  }
}

TEST_CASE("a sinking sensor on an input with a pull-up") {
  Sensing w;
  SUBCASE("a clean open collector") {
    CHECK(w.judge_with() == Lines{});
  }
  SUBCASE("with a drop of 1.5 V it conducts but is not low") {
    // 1.5 V + 1.14 ohm x 1.8 V / 10 kohm = 1.5002 V
    w.driver.drop = Volts(1.5);
    CHECK(w.judge_with() == Lines{"level-low 1.5 limit 0.8 sometimes at J1.1 from driver | output 'Q' on | "
                                  "ground - J1.3 - BU - G - Q - BK - J1.1"});
  }
  SUBCASE("a leak of 10 uA: 3.3 V - 0.1 V") {
    w.driver.leak = Amps(10e-6);
    CHECK(w.judge_with() == Lines{});
  }
  SUBCASE("a leak of 0.5 mA: 3.3 V - 5 V would be below ground, it ends there") {
    w.driver.leak = Amps(0.0005);
    // The pull gives 0.33 mA, 0.17 mA come back through 10 ohm: -1.7 mV.
    CHECK(w.judge_with() == Lines{"level-high -0.001652 limit 2 sometimes at J1.1 from driver | output 'Q' "
                                  "off | ground - J1.3 - BU - G - Q - BK - J1.1"});
  }
  SUBCASE("a leak of 0.2 mA: 3.3 V - 2 V") {
    w.driver.leak = Amps(0.0002);
    CHECK(w.judge_with() ==
          Lines{"level-high 1.3 limit 2 sometimes at J1.1 from driver | output 'Q' off | 3V3 - J1.1"});
  }
  SUBCASE("a pull-up of its own to 24 V") {
    // (24 V / 10 kohm + 3.3 V / 10 kohm) / (2 / 10 kohm) = 13.65 V
    w.driver.pull = Ohms(10000);
    CHECK(w.judge_with() == Lines{"overvoltage 13.65 limit 3.6 sometimes at J1.1 from 24V | output 'Q' off | "
                                  "24V - J1.2 - BN - V - Q - BK - J1.1"});
  }
}
