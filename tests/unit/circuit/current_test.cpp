// SPDX-License-Identifier: MIT
// What contacts, leads, pins and rails carry. Every contact is 0.07 ohm (0.02 contact, 0.05 lead).
#include <doctest/doctest.h>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

namespace {

/// A resistance between a supply pin and ground.
struct Resistive : Wiring {
  int supply, ground;
  explicit Resistive(double volts, double ohms) {
    rail("V", volts, volts);
    supply = pin(PinFunction::Supply, "V");
    ground = pin(PinFunction::Ground);
    const auto a = terminal("A"), b = terminal("B");
    part(Resistor{a, b, Ohms(ohms), {}, {}});
    wire(supply, a, "RD");
    wire(ground, b, "BK");
  }
  /// Puts plug and header into a family of these ratings.
  void rate(std::vector<Cited<Rating>> ratings) {
    Family f;
    f.id = "small";
    f.ratings = std::move(ratings);
    board.headers[0].family = harness.plugs[0].family = "small";
    catalogue.add(f);
  }
};

Cited<Rating> rating(double amps, int gauge, int circuits = 0) {
  return {{Amps(amps), awg(gauge), "", circuits}, Certainty::User, "the test"};
}

}  // namespace

TEST_CASE("contacts against their family's rating at the lead's gauge") {
  // 10 V / (4.86 + 0.14 ohm) = 2 A through both contacts.
  const std::string red = " at J1.1 RD from V |  | V - J1.1 - RD - A - B - BK - J1.2 - ground";
  const std::string black = " at J1.2 BK from V |  | V - J1.1 - RD - A - B - BK - J1.2 - ground";
  struct Row {
    std::string name;
    std::vector<Cited<Rating>> ratings;
    std::optional<int> gauge;
    Lines expected;
  };
  const Row rows[] = {
      {"rated for it", {rating(2, 22)}, 22, {}},
      {"rated for less",
       {rating(1.5, 22)},
       22,
       {"contact-overcurrent 2 limit 1.5" + red, "contact-overcurrent 2 limit 1.5" + black}},
      {"rated for it in a housing of two", {rating(2, 22, 2), rating(1.5, 22, 24)}, 22, {}},
      {"above the smallest rating of other gauges",
       {rating(1.5, 22), rating(3, 18)},
       20,
       {"contact-overcurrent 2 limit 1.5" + red, "contact-overcurrent 2 limit 1.5" + black}},
      {"above a third of the smallest rating",
       {rating(3, 18)},
       22,
       {"unknown-rating 2 limit 1" + red, "unknown-rating 2 limit 1" + black}},
      {"below a third of the smallest rating", {rating(6.1, 18)}, 22, {}},
      {"gauge not stated",
       {rating(3, 18)},
       {},
       {"unknown-rating 2 limit 1" + red, "unknown-rating 2 limit 1" + black}},
      {"no rating published",
       {},
       22,
       {"unknown-rating 2 limit 0.5" + red, "unknown-rating 2 limit 0.5" + black}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Resistive fresh(10, 4.86);
    fresh.rate(row.ratings);
    if (row.gauge) {
      for (Lead& lead : fresh.harness.plugs[0].leads) lead.gauge = awg(*row.gauge);
    }
    CHECK(fresh.judge() == row.expected);
  }
}

TEST_CASE("leads against the chassis table") {
  // 10 V / (4.86 + 0.14 ohm) = 2 A; 26 AWG 2.2 A, 28 AWG 1.4 A ("AWG Current Capacity").
  Resistive w(10, 4.86);
  w.harness.plugs[0].leads[0].gauge = awg(26);
  w.harness.plugs[0].leads[1].gauge = awg(28);
  CHECK(
      w.judge() ==
      Lines{
          "wire-overcurrent 2 limit 1.4 at J1.2 BK from V |  | V - J1.1 - RD - A - B - BK - J1.2 - ground"});
}

TEST_CASE("a lead's resistance comes from its gauge and length when both are stated") {
  // 24 AWG 84.22 ohm/km ("AWG Current Capacity"): 10 m 0.842 ohm; 10 V / (9 + 0.862 + 0.07 ohm) = 1.007 A.
  Resistive w(10, 9);
  w.harness.plugs[0].leads[0].gauge = awg(24);
  w.harness.plugs[0].leads[0].length = Millimetres(10000);
  w.board.rails[0].limit = Amps(0.9);
  CHECK(w.judge() == Lines{"rail-overload 1.007 limit 0.9 at V from nothing |  | "});
}

TEST_CASE("pins") {
  SUBCASE("an output that feeds a load directly: 60 mA from a pin for 25 mA") {
    // STM32F103x6 data sheet: 25 mA. 3.3 V / (50 + 5 + 0.14 ohm) = 59.85 mA.
    Wiring w;
    w.rail("3V3", 3.3, 3.3);
    const int out = w.pin(PinFunction::Output, "3V3"), ground = w.pin(PinFunction::Ground);
    w.at(out).limit = Amps(0.025);
    const auto a = w.terminal("A"), b = w.terminal("B");
    w.part(Resistor{a, b, Ohms(5), {}, {}});
    w.wire(out, a, "WH");
    w.wire(ground, b, "BK");
    CHECK(w.judge() == Lines{"pin-overcurrent 0.05985 limit 0.025 sometimes at J1.1 from 3V3 | J1.1 high | "
                             "3V3 - J1.1 - WH - A - B - BK - J1.2 - ground"});
    w.at(out).limit.reset();
    CHECK(w.judge() == Lines{"pin-overcurrent 0.05985 limit 0.02 sometimes at J1.1 from 3V3 | J1.1 high | "
                             "3V3 - J1.1 - WH - A - B - BK - J1.2 - ground"});
  }
  SUBCASE("a switched output without a stated limit is a doubt above 0.5 A") {
    // 10 V / (9.76 + 0.14 + 0.1 ohm) = 1 A
    Wiring w;
    w.rail("V", 10, 10);
    const int supply = w.pin(PinFunction::Supply, "V"), sw = w.pin(PinFunction::Switched);
    const auto a = w.terminal("A"), b = w.terminal("B");
    w.part(Resistor{a, b, Ohms(9.76), {}, {}});
    w.wire(supply, a, "RD");
    w.wire(sw, b, "BK");
    CHECK(w.judge() == Lines{"unknown-rating 1 limit 0.5 sometimes at J1.2 from V | J1.2 on | V - J1.1 - RD "
                             "- A - B - BK - J1.2 - ground"});
    w.at(sw).limit = Amps(0.8);
    CHECK(w.judge() == Lines{"pin-overcurrent 1 limit 0.8 sometimes at J1.2 from V | J1.2 on | V - J1.1 - RD "
                             "- A - B - BK - J1.2 - ground"});
  }
  SUBCASE("a motor's coil takes what its driver is set to") {
    Wiring w;
    w.rail("24V", 24, 24);
    const int a_pin = w.pin(PinFunction::Coil, "24V"), b_pin = w.pin(PinFunction::Coil, "24V");
    w.at(a_pin).limit = w.at(b_pin).limit = Amps(1.8);
    const auto a = w.terminal("A"), b = w.terminal("B");
    w.part(Coil{a, b, Ohms(1.5), Amps(1.2), {}});
    w.wire(a_pin, a, "BK").gauge = awg(28);  // 1.4 A
    w.wire(b_pin, b, "GN").gauge = awg(30);  // 0.86 A
    CHECK(w.judge() == Lines{"wire-overcurrent 1.2 limit 0.86 sometimes at J1.2 GN from 24V | J1.1 low, J1.2 "
                             "high | 24V - J1.2 - GN - B - A - BK - J1.1 - ground"});
  }
}

TEST_CASE("an open winding carries nothing, whatever its driver is set to") {
  Wiring w;
  w.rail("24V", 22.8, 25.2);
  const int pin = w.pin(PinFunction::Coil, "24V");
  const auto a = w.terminal("A"), b = w.terminal("B");
  w.part(Coil{a, b, Ohms(1.4), {}, {}});
  w.wire(pin, a, "BK").gauge = awg(30);  // 0.86 A; the driver's limit is 2 A
  CHECK(w.judge() == Lines{});
}

TEST_CASE("a rail carries the sum of what hangs on it") {
  Wiring w;
  w.rail("5V", 5, 5).limit = Amps(1.0);
  const int supply = w.pin(PinFunction::Supply, "5V"), other = w.pin(PinFunction::Supply, "5V"),
            sw = w.pin(PinFunction::Switched), ground = w.pin(PinFunction::Ground);
  w.at(sw).limit = Amps(2.0);
  const auto a = w.terminal("A"), b = w.terminal("B"), c = w.terminal("C"), d = w.terminal("D");
  // 5 V / (6.11 + 0.14) = 0.8 A always; 5 V / (12.26 + 0.24) = 0.4 A when switched on. Two islands.
  w.part(Resistor{a, b, Ohms(6.11), {}, {}});
  w.part(Resistor{c, d, Ohms(12.26), {}, {}});
  w.wire(supply, a);
  w.wire(ground, b);
  w.wire(other, c);
  w.wire(sw, d);
  CHECK(w.judge() == Lines{"rail-overload 1.2 limit 1 sometimes at 5V from nothing | J1.3 on | "});
}

TEST_CASE("a switch that joins supply to ground is a short circuit, and only that") {
  Wiring w;
  w.rail("5V", 4.75, 5.25).limit = Amps(1.5);
  const int supply = w.pin(PinFunction::Supply, "5V"), ground = w.pin(PinFunction::Ground);
  const auto a = w.terminal("C"), b = w.terminal("NO");
  w.part(Switch{a, b, false, {}});
  w.wire(supply, a, "RD").gauge = awg(26);
  w.wire(ground, b, "BK").gauge = awg(26);
  // 5.25 V / (0.14 + 0.05 ohm) = 27.63 A
  CHECK(w.judge() == Lines{"short-circuit 27.63 limit 4.5 sometimes at J1.1 RD from 5V | switch closed | 5V "
                           "- J1.1 - RD - C - NO - BK - J1.2 - ground"});
  w.board.rails[0].limit.reset();
  CHECK(w.judge() == Lines{"short-circuit 27.63 limit 20 sometimes at J1.1 RD from 5V | switch closed | 5V - "
                           "J1.1 - RD - C - NO - BK - J1.2 - ground"});
}

TEST_CASE("a strong rail's current is no short circuit where it leaves either") {
  // 5 V / (0.14 + 0.06 ohm) = 25 A: more than 20 A, less than three times what the rail can give.
  Wiring w;
  w.rail("5V", 5, 5).limit = Amps(10);
  const int supply = w.pin(PinFunction::Supply, "5V"), ground = w.pin(PinFunction::Ground);
  const auto a = w.terminal("A"), b = w.terminal("B");
  w.part(Resistor{a, b, Ohms(0.06), {}, {}});
  w.wire(supply, a, "RD");
  w.wire(ground, b, "BK");
  w.at(supply).limit = Amps(12);
  CHECK(w.judge() == Lines{"pin-overcurrent 25 limit 12 at J1.1 from 5V |  | 5V - J1.1 - RD - A - B - BK - "
                           "J1.2 - ground",
                           "rail-overload 25 limit 10 at 5V from nothing |  | "});
}

TEST_CASE("two rails joined inside a device") {
  Wiring w;
  w.rail("24V", 24, 24);
  w.rail("5V", 5, 5);
  const int high = w.pin(PinFunction::Supply, "24V"), low = w.pin(PinFunction::Supply, "5V");
  const auto a = w.terminal("A"), b = w.terminal("B");
  w.wire(high, a, "RD");
  w.wire(low, b, "OG");
  SUBCASE("directly: 19 V / 0.15 ohm") {
    w.part(Join{a, b, {}});
    CHECK(w.judge() == Lines{"short-circuit 126.7 limit 20 at J1.1 RD from 24V |  | 24V - J1.1 - RD - A - B "
                             "- OG - J1.2 - 5V"});
  }
  SUBCASE("through 1 kohm: 19 V / 1000.14 ohm flow back into the lower rail") {
    w.part(Resistor{a, b, Ohms(1000), {}, {}});
    CHECK(
        w.judge() ==
        Lines{
            "back-feed 0.019 limit 0 at J1.2 OG 5V from 24V |  | 24V - J1.1 - RD - A - B - OG - J1.2 - 5V"});
  }
}

TEST_CASE("a device's own supply feeds the board") {
  Wiring w;
  w.rail("5V", 5, 5);
  const int supply = w.pin(PinFunction::Supply, "5V"), ground = w.pin(PinFunction::Ground);
  const auto plus = w.terminal("P"), minus = w.terminal("M");
  w.part(Source{plus, minus, {Volts(5.0), Volts(5.24)}, {}});
  w.wire(supply, plus, "RD");
  w.wire(ground, minus, "BK");
  // (5.24 - 5 V) / (0.1 + 0.14 ohm) = 1 A with power.
  CHECK(w.judge() ==
        Lines{"back-feed 1 limit 0 sometimes at J1.1 RD 5V from P | source at 5.24 V | P - RD - J1.1 - 5V"});
  // 4.8 V / 0.24 ohm = 20 A into a rail that is held at 0 V.
  w.device().parts[0] = Source{plus, minus, {Volts(4.8), Volts(4.8)}, {}};
  CHECK(w.judge() ==
        Lines{"back-feed 20 limit 0 at J1.1 RD 5V from P | board without power | P - RD - J1.1 - 5V"});
}

TEST_CASE("a device's output against its own limit") {
  Wiring w;
  w.rail("24V", 24, 24);
  const int supply = w.pin(PinFunction::Supply, "24V"), ground = w.pin(PinFunction::Ground),
            other = w.pin(PinFunction::Supply, "24V");
  const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground),
             q = w.terminal("Q", TerminalFunction::Output), r = w.terminal("R");
  Driver driver;
  driver.terminal = q, driver.plus = v, driver.minus = g;
  driver.kind = OutputKind::Sinking;
  driver.drop = Volts(0.0);
  driver.limit = Amps(0.2);
  w.part(driver);
  w.part(Resistor{q, r, Ohms(78.86), {}, {}});
  w.wire(supply, v);
  w.wire(ground, g);
  w.wire(other, r);
  // 24 V / (78.86 + 1 + 0.14 ohm) = 0.3 A
  CHECK(w.judge() ==
        Lines{"pin-overcurrent 0.3 limit 0.2 sometimes at Q driver from nothing | output 'Q' on | "});
}

TEST_CASE("more states than are looked at") {
  Wiring w;
  w.rail("5V", 5, 5);
  w.defaults.most_states = 100;
  const int ground = w.pin(PinFunction::Ground);
  const auto g = w.terminal("G");
  w.wire(ground, g);
  // Four outputs of four choices each on one node: 256 states.
  for (int i = 0; i < 4; ++i) {
    const int out = w.pin(PinFunction::Output, "5V");
    w.at(out).limit = Amps(1.0);
    w.wire(out, g, "WH");
  }
  CHECK(w.judge() == Lines{"too-many-states 256 limit 100 at J1.2 from nothing |  | "});
}

TEST_CASE("two pins of a rail feed it backwards by little each") {
  Wiring w;
  w.rail("12V", 12, 12);
  w.rail("5V", 5, 5);
  const int supply = w.pin(PinFunction::Supply, "12V"), one = w.pin(PinFunction::Supply, "5V"),
            other = w.pin(PinFunction::Supply, "5V");
  const auto a = w.terminal("A"), b = w.terminal("B"), c = w.terminal("C");
  w.part(Resistor{a, b, Ohms(10e3), {}, {}});
  w.part(Resistor{a, c, Ohms(10e3), {}, {}});
  w.wire(supply, a);
  w.wire(one, b);
  w.wire(other, c);
  // 7 V / 10 kohm = 0.7 mA each
  const Lines lines = w.judge();
  REQUIRE(lines.all.size() == 1);
  CHECK(lines.all[0].find("back-feed 0.0014 limit 0 ") == 0);
}
