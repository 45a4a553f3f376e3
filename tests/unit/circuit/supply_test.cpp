// SPDX-License-Identifier: MIT
// What loads and heaters get. Every contact is 0.07 ohm (0.02 contact, 0.05 lead).
#include <doctest/doctest.h>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

namespace {

/// A load of 10 ohm (5 V, 0.5 A) on two pins.
struct Loaded : Wiring {
  TerminalIndex v, g;
  Load load;

  Loaded() : v(terminal("V", TerminalFunction::Supply)), g(terminal("G", TerminalFunction::Ground)) {
    load.plus = v, load.minus = g;
    load.needs = {Volts(4.6), Volts(5.4)};
    load.draws = Amps(0.5);
    load.reversed = Reversal::Destroyed;
  }
  Lines judge_with(int plus_pin, int minus_pin) {
    part(load);
    wire(plus_pin, v, "RD");
    wire(minus_pin, g, "BK");
    return judge();
  }
};

struct Heated : Wiring {
  TerminalIndex a, b;
  Heated(double volts, double watts) : a(terminal("A")), b(terminal("B")) {
    Heater h;
    h.a = a, h.b = b;
    h.volts = Volts(volts);
    h.watts = Watts(watts);
    part(h);
  }
};

}  // namespace

TEST_CASE("a load on its rail") {
  Loaded w;
  w.rail("5V", 4.75, 5.25);
  const int supply = w.pin(PinFunction::Supply, "5V"), ground = w.pin(PinFunction::Ground);
  CHECK(w.judge_with(supply, ground) == Lines{});
}

TEST_CASE("a load on another rail, the wrong way round, or not at all") {
  Loaded w;
  w.rail("12V", 11.4, 12.6);
  w.rail("5V", 4.75, 5.25);
  w.rail("3V3", 3.3, 3.3);
  const int supply = w.pin(PinFunction::Supply, "12V"), ground = w.pin(PinFunction::Ground),
            five = w.pin(PinFunction::Supply, "5V"), three = w.pin(PinFunction::Supply, "3V3"),
            unused = w.pin(PinFunction::Unused);
  SUBCASE("too high") {
    // 12.6 V x 10 / 10.14 = 12.43 V
    CHECK(w.judge_with(supply, ground) ==
          Lines{"supply-too-high 12.43 limit 5.4 at load from 12V |  | 12V - J1.1 - RD - V"});
  }
  SUBCASE("too high, but it survives") {
    w.load.survives = Volts(15.0);
    CHECK(w.judge_with(supply, ground) == Lines{});
  }
  SUBCASE("too low") {
    // 3.3 V x 10 / 10.14 = 3.254 V
    CHECK(w.judge_with(three, ground) ==
          Lines{"supply-too-low 3.254 limit 4.6 at load from 3V3 |  | 3V3 - J1.4 - RD - V"});
  }
  SUBCASE("too low at one end of the rail's tolerance") {
    w.load.needs = {Volts(4.9), Volts(5.5)};
    // R = 5.2 / 0.5 = 10.4 ohm; 4.75 x 10.4 / 10.54 = 4.687 V, 5.25: 5.180 V
    CHECK(
        w.judge_with(five, ground) ==
        Lines{
            "supply-too-low 4.687 limit 4.9 sometimes at load from 5V | 5V at 4.75 V | 5V - J1.3 - RD - V"});
  }
  SUBCASE("nothing at its minus") {
    CHECK(w.judge_with(five, unused) ==
          Lines{"supply-too-low 0 limit 4.6 at load from 5V |  | 5V - J1.3 - RD - V"});
  }
  SUBCASE("reversed: the substrate conducts through 10 ohm from 0.7 V on, beside the load's own 10 ohm") {
    // v / 10 + (v - 0.7) / 10 = (5.25 - v) / 0.14, v = 37.57 / 7.3429 = 5.117 V
    CHECK(w.judge_with(ground, five) ==
          Lines{"reversed-supply -5.117 limit 0 at load from 5V |  | 5V - J1.3 - BK - G"});
  }
  SUBCASE("reversed, blocked by a diode of its own") {
    w.load.reversed = Reversal::Blocked;
    CHECK(w.judge_with(ground, five) ==
          Lines{"reversed-supply -5.25 limit 0 at load from 5V |  | 5V - J1.3 - BK - G",
                "supply-too-low -5.25 limit 4.6 at load from nothing |  | ground - J1.2 - RD - V"});
  }
  SUBCASE("between two rails") {
    // 12.6 - 4.75 = 7.85 V at worst, x 10 / 10.14 = 7.742 V; its current flows into the 5 V rail: 0.7742 A.
    CHECK(
        w.judge_with(supply, five) ==
        Lines{
            "supply-too-high 7.742 limit 5.4 at load from 12V |  | 12V - J1.1 - RD - V",
            "back-feed 0.7742 limit 0 at J1.3 BK 5V from 12V |  | 12V - J1.1 - RD - V - G - BK - J1.3 - 5V"});
  }
}

TEST_CASE("a fan on a low-side switch gets its supply while that is on") {
  Loaded w;
  w.rail("5V", 5, 5);
  const int supply = w.pin(PinFunction::Supply, "5V"), sw = w.pin(PinFunction::Switched);
  CHECK(w.judge_with(supply, sw) == Lines{});
}

TEST_CASE("heaters") {
  SUBCASE("a 12 V 40 W heater on 24 V: R = 3.6 ohm, 24^2 / 3.6 = 160 W without the leads") {
    Heated w(12, 40);
    w.rail("24V", 24, 24);
    const int supply = w.pin(PinFunction::Supply, "24V"), sw = w.pin(PinFunction::Switched);
    w.at(sw).on_at_reset = false;
    w.at(sw).limit = Amps(10.0);
    w.wire(supply, w.a, "RD");
    w.wire(sw, w.b, "RD");
    // 24 x 3.6 / (3.6 + 0.14 + 0.1) = 22.5 V, 140.6 W
    CHECK(
        w.judge() ==
        Lines{
            "heater-too-strong 140.6 limit 48 sometimes at heater from 24V | J1.2 on | 24V - J1.1 - RD - A"});
    w.at(sw).on_at_reset.reset();
    CHECK(
        w.judge() ==
        Lines{"heater-too-strong 140.6 limit 48 sometimes at heater from 24V | J1.2 on | 24V - J1.1 - RD - A",
              "reset-unknown 0 limit 0 at heater from J1.2 |  | "});
  }
  SUBCASE("a 24 V 40 W heater on 12 V: 10 W at most") {
    Heated w(24, 40);
    w.rail("12V", 12, 12);
    const int supply = w.pin(PinFunction::Supply, "12V"), sw = w.pin(PinFunction::Switched);
    w.at(sw).on_at_reset = false;
    w.at(sw).limit = Amps(10.0);
    w.wire(supply, w.a, "RD");
    w.wire(sw, w.b, "RD");
    // 12 x 14.4 / 14.64 = 11.80 V, 9.675 W
    CHECK(w.judge() == Lines{"heater-too-weak 9.675 limit 24 at heater from 12V |  | 12V - J1.1 - RD - A"});
  }
  SUBCASE("between supply and ground it cannot be switched off") {
    Heated w(24, 40);
    w.rail("24V", 21.6, 26.4);
    const int supply = w.pin(PinFunction::Supply, "24V"), ground = w.pin(PinFunction::Ground);
    w.wire(supply, w.a, "RD");
    w.wire(ground, w.b, "RD");
    // 26.4 x 14.4 / 14.54 = 26.15 V, 47.47 W, less than 1.2 x 40 W
    CHECK(w.judge() == Lines{"always-on 47.47 limit 2 at heater from 24V |  | 24V - J1.1 - RD - A"});
  }
  SUBCASE("on at reset") {
    Heated w(24, 40);
    w.rail("24V", 24, 24);
    const int supply = w.pin(PinFunction::Supply, "24V"), sw = w.pin(PinFunction::Switched);
    w.at(sw).on_at_reset = true;
    w.at(sw).limit = Amps(10.0);
    w.wire(supply, w.a, "RD");
    w.wire(sw, w.b, "RD");
    // 24 x 14.4 / 14.64 = 23.61 V, 38.70 W
    CHECK(w.judge() == Lines{"always-on 38.7 limit 2 at heater from 24V |  | 24V - J1.1 - RD - A"});
  }
}

TEST_CASE("a relay before a heater, on an output whose state at reset is not stated") {
  Loaded w;
  w.device().use = "heater";
  w.rail("5V", 4.75, 5.25);
  const int supply = w.pin(PinFunction::Supply, "5V"), sw = w.pin(PinFunction::Switched);
  w.at(sw).limit = Amps(1.0);
  SUBCASE("not stated") {
    CHECK(w.judge_with(supply, sw) == Lines{"reset-unknown 0 limit 0 at load from J1.2 |  | "});
  }
  SUBCASE("off") {
    w.at(sw).on_at_reset = false;
    CHECK(w.judge_with(supply, sw) == Lines{});
  }
}

TEST_CASE("a relay before a heater between two rails") {
  Loaded w;
  w.device().use = "heater";
  w.rail("12V", 12, 12);
  w.rail("5V", 5, 5);
  w.load.survives = Volts(30.0);
  const int twelve = w.pin(PinFunction::Supply, "12V"), five = w.pin(PinFunction::Supply, "5V");
  // 7 x 10 / 10.14 = 6.903 V; 0.69 A flows backwards into 5V
  CHECK(
      w.judge_with(twelve, five) ==
      Lines{"always-on 6.903 limit 4.6 at load from 12V |  | 12V - J1.1 - RD - V",
            "back-feed 0.6903 limit 0 at J1.2 BK 5V from 12V |  | 12V - J1.1 - RD - V - G - BK - J1.2 - 5V"});
}
