// SPDX-License-Identifier: MIT
// What pins and terminals withstand. Every contact is 0.07 ohm (0.02 contact, 0.05 lead).
#include <doctest/doctest.h>

#include <algorithm>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

TEST_CASE("a rail on a signal terminal") {
  Wiring w;
  w.rail("24V", 21.6, 26.4);
  const int supply = w.pin(PinFunction::Supply, "24V");
  const auto p = w.terminal("P", TerminalFunction::Input);
  w.terminal_at(p).withstands = {Volts(-0.3), Volts(5.5)};
  w.wire(supply, p, "BN");
  CHECK(w.judge() == Lines{"overvoltage 26.4 limit 5.5 at P from 24V |  | 24V - J1.1 - BN - P"});

  SUBCASE("nothing is said when it withstands that") {
    w.terminal_at(p).withstands = {Volts(0.0), Volts(26.4)};
    CHECK(w.judge() == Lines{});
  }
  SUBCASE("the rail's tolerance decides") {
    w.terminal_at(p).withstands = {Volts(0.0), Volts(25.0)};
    CHECK(w.judge() ==
          Lines{"overvoltage 26.4 limit 25 sometimes at P from 24V | 24V at 26.4 V | 24V - J1.1 - BN - P"});
  }
  SUBCASE("not stated: more than its own supply is not known") {
    w.terminal_at(p).withstands.reset();
    CHECK(w.judge() == Lines{"unknown-limit 26.4 limit 0.3 at P from 24V |  | 24V - J1.1 - BN - P"});
  }
  SUBCASE("a lead whose end is not known makes no element") {
    w.harness.plugs[0].leads[0].to.reset();
    CHECK(w.judge() == Lines{});
  }
}

TEST_CASE("an output whose minus lead meets a higher rail still raises what it feeds to its own plus") {
  Wiring w;
  w.rail("24V", 24, 24);
  w.rail("6V", 6, 6);
  const int high = w.pin(PinFunction::Supply, "24V"), low = w.pin(PinFunction::Supply, "6V"),
            input = w.pin(PinFunction::Input);
  w.at(input).low_below = Volts(0.8);
  w.at(input).high_above = Volts(2.0);
  w.at(input).withstands = {Volts(-0.3), Volts(5.5)};
  const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground),
             s = w.terminal("S", TerminalFunction::Output);
  Driver driver;
  driver.terminal = s, driver.plus = v, driver.minus = g;
  driver.kind = OutputKind::PushPull;
  driver.drop = Volts(0.0);
  w.part(driver);
  w.wire(low, v, "RD");
  w.wire(high, g, "BK");
  w.wire(input, s, "WH");
  // Leaks alone put S somewhere between 6 V and 24 V; less than 6 V it cannot have.
  const std::string harm = "overvoltage 6 limit 5.5 at J1.3 from 6V |  | 6V - J1.2 - RD - V - S - WH - J1.3";
  const auto lines = w.judge().all;
  CHECK(std::count(lines.begin(), lines.end(), harm) == 1);

  SUBCASE("what it surely has is judged, not where leaks put it") {
    w.at(input).withstands = {Volts(-0.3), Volts(6.0)};
    for (const std::string& line : w.judge().all) CHECK_FALSE(line.starts_with("overvoltage"));
  }
}

TEST_CASE("a sensor's output on a board's input") {
  Wiring w;
  w.rail("24V", 24, 24);
  w.rail("3V3", 3.3, 3.3);
  const int supply = w.pin(PinFunction::Supply, "24V"), input = w.pin(PinFunction::Input, "3V3"),
            ground = w.pin(PinFunction::Ground);
  w.at(input).low_below = Volts(0.8);
  w.at(input).high_above = Volts(2.0);
  w.at(input).withstands = {Volts(-0.3), Volts(3.6)};
  w.at(input).pull = Pull{false, Ohms(10000), {}};
  const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground),
             q = w.terminal("Q", TerminalFunction::Output);
  Driver driver;
  driver.terminal = q, driver.plus = v, driver.minus = g;
  driver.kind = OutputKind::Sourcing;
  driver.drop = Volts(3.0);
  w.part(driver);
  w.wire(supply, v, "BN");
  w.wire(ground, g, "BU");
  w.wire(input, q, "BK");
  // 10 kohm against 1.07 + 0.07 ohm: 24 V x 10000 / 10001.14 = 23.997 V, 21 V with the drop.
  CHECK(w.judge() == Lines{"overvoltage 24 limit 3.6 sometimes at J1.2 from 24V | output 'Q' on | 24V - J1.1 "
                           "- BN - V - Q - BK - J1.2"});

  SUBCASE("its pull takes the tolerance away") {
    // STM32F101 data sheet p. 52 note 1: a five-volt-tolerant pin stands VDD + 0.3 V only with its pull on.
    w.board.rails[0].volts = {Volts(5.2), Volts(5.2)};
    w.at(input).withstands = {Volts(-0.3), Volts(5.5)};
    CHECK(w.judge() == Lines{});
    w.at(input).withstands_pulled = Volts(3.6);
    CHECK(w.judge() == Lines{"overvoltage 5.199 limit 3.6 sometimes at J1.2 from 24V | output 'Q' on | 24V - "
                             "J1.1 - BN - V - Q - BK - J1.2"});
  }
  SUBCASE("a clamp is judged by its current") {
    // (24 V - 3.3 V - 0.3 V) / 2.14 ohm = 9.533 A, less what the pull takes.
    w.at(input).withstands.reset();
    w.at(input).clamp = Clamp{"3V3", Volts(0.3), Amps(0.005), {}};
    const Lines lines = w.judge();
    REQUIRE(lines.all.size() >= 1);
    CHECK(lines.all[0] ==
          "clamp-current 9.532 limit 0.005 sometimes at J1.2 from 24V | output 'Q' on | 24V - J1.1 - BN - V "
          "- Q - BK - J1.2");
  }
  SUBCASE("nothing stated: 0.3 V beyond its rail") {
    w.at(input).withstands.reset();
    CHECK(w.judge() == Lines{"unknown-limit 24 limit 3.6 sometimes at J1.2 from 24V | output 'Q' on | 24V - "
                             "J1.1 - BN - V - Q - BK - J1.2"});
  }
  SUBCASE("no rail stated: whatever comes from the device") {
    w.at(input).withstands.reset();
    w.at(input).rail.clear();
    CHECK(w.judge() == Lines{"unknown-limit 24 limit 0.3 sometimes at J1.2 from 24V | output 'Q' on | 24V - "
                             "J1.1 - BN - V - Q - BK - J1.2"});
  }
}

TEST_CASE("what leaks through diodes that block says nothing") {
  Wiring w;
  w.rail("24V", 24, 24);
  w.rail("3V3", 3.4, 3.4);
  const int supply = w.pin(PinFunction::Supply, "24V"), input = w.pin(PinFunction::Input, "3V3");
  w.at(input).withstands = {Volts(-0.3), Volts(3.6)};
  const auto v = w.terminal("V"), g = w.terminal("G");
  const auto only_overvoltages = [&w] {
    Lines lines = w.judge();
    std::erase_if(lines.all, [](const std::string& line) { return line.find("overvoltage") != 0; });
    return lines;
  };
  SUBCASE("to a clamp: nothing holds the pin at 3.7 V") {
    w.at(input).clamp = Clamp{"3V3", Volts(0.3), Amps(0.005), {}};
    Load load;
    load.plus = v, load.minus = g;
    load.needs = {Volts(4.5), Volts(5.5)};
    load.draws = Amps(0.02);
    load.reversed = Reversal::Blocked;
    w.part(load);
    w.wire(supply, g, "BU");
    w.wire(input, v, "BN");
    CHECK(only_overvoltages() == Lines{});
  }
  SUBCASE("the rail itself over a diode that carries nothing does") {
    w.part(Diode{g, v, Volts(0.7), {}});
    w.wire(supply, g, "BU");
    w.wire(input, v, "BN");
    CHECK(only_overvoltages() ==
          Lines{"overvoltage 23.3 limit 3.6 at J1.2 from 24V |  | 24V - J1.1 - BU - G - V - BN - J1.2"});
  }
}

TEST_CASE("below ground: a sensor that is fed the wrong way round pulls its output down") {
  Wiring w;
  w.rail("5V", 5, 5);
  const int output = w.pin(PinFunction::Output, "5V"), ground = w.pin(PinFunction::Ground);
  w.at(output).withstands = {Volts(-0.3), Volts(5.3)};
  w.at(output).drive = DriveKind::OpenDrain;
  const auto a = w.terminal("A"), b = w.terminal("B");
  Source source;
  source.plus = a, source.minus = b;
  source.volts = {Volts(1.5), Volts(1.5)};
  w.part(source);
  w.wire(ground, a, "RD");
  w.wire(output, b, "BK");
  // Driven low at 50 ohm or not at all: -1.5 V. Low: 1.5 V / (50 + 0.1 + 0.14 ohm) = 29.9 mA; low at 0.4 V:
  // 1.9 V / 50.24 ohm = 37.8 mA.
  CHECK(w.judge() ==
        Lines{"overvoltage -1.5 limit -0.3 at J1.1 from B |  | B - BK - J1.1",
              "pin-overcurrent 0.03782 limit 0.02 sometimes at J1.1 from J1.1 | J1.1 low | J1.1 - BK - B"});
}

TEST_CASE("a device with a supply of its own and a board without power") {
  // AN4899 p. 17: a five-volt-tolerant pin stands 3.6 V only while VDD is 0 V.
  Wiring w;
  w.rail("3V3", 3.2, 3.4);
  const int input = w.pin(PinFunction::Input, "3V3"), ground = w.pin(PinFunction::Ground);
  w.at(input).analogue = true;
  w.at(input).withstands = {Volts(-0.3), Volts(5.5)};
  const auto plus = w.terminal("P"), minus = w.terminal("M");
  w.part(Source{plus, minus, {Volts(5.0), Volts(5.0)}, {}});
  w.wire(input, plus, "WH");
  w.wire(ground, minus, "BK");

  w.at(input).withstands_unpowered = Volts(3.6);
  CHECK(w.judge() == Lines{"overvoltage 5 limit 3.6 at J1.1 from P | board without power | P - WH - J1.1"});
  w.at(input).withstands_unpowered = Volts(5.5);
  CHECK(w.judge() == Lines{});
  w.at(input).withstands_unpowered.reset();
  CHECK(w.judge() == Lines{"unknown-limit 5 limit 0.3 at J1.1 from P | board without power | P - WH - J1.1"});
}

TEST_CASE("a data input measured against its own supply") {
  // WS2812B data sheet p. 2: VDD + 0.5 V.
  Wiring w;
  w.rail("5V", 4.75, 5.25);
  w.rail("3V3", 3.3, 3.3);
  const int out = w.pin(PinFunction::Output, "5V"), supply = w.pin(PinFunction::Supply, "3V3"),
            ground = w.pin(PinFunction::Ground);
  const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground),
             d = w.terminal("D", TerminalFunction::Input);
  Receiver receiver;
  receiver.terminal = d, receiver.plus = v, receiver.minus = g;
  receiver.above_supply = Volts(0.5);
  w.part(receiver);
  w.wire(out, d, "GN");
  w.wire(supply, v, "RD");
  w.wire(ground, g, "WH");
  CHECK(w.judge() ==
        Lines{"overvoltage 5.25 limit 3.8 sometimes at D from 5V | J1.1 high | 5V - J1.1 - GN - D"});
}

TEST_CASE("a terminal that nothing holds has no voltage") {
  // The supply is on the ground terminals, and nobody knows what T is at while the switch is open.
  Wiring w;
  w.rail("5V", 5, 5);
  w.rail("3V3", 3.3, 3.3);
  const int supply = w.pin(PinFunction::Supply, "5V");
  const int input = w.pin(PinFunction::Input, "3V3");
  w.at(input).withstands = {Volts(-0.3), Volts(5.5)};
  w.at(input).analogue = true;
  const auto g = w.terminal("G", TerminalFunction::Ground), h = w.terminal("H", TerminalFunction::Ground),
             t = w.terminal("T", TerminalFunction::Output);
  w.terminal_at(t).withstands = {Volts(-0.3), Volts(5.5)};
  w.part(Switch{t, h, false, {}});
  w.part(Join{g, h, {}});
  w.wire(supply, g, "BN");
  SUBCASE("without a contact") {
    CHECK(w.judge() == Lines{});
  }
  SUBCASE("on an input that floats itself") {
    w.wire(input, t, "WH");
    CHECK(w.judge() == Lines{});
  }
  SUBCASE("on an input with a pull") {
    // 3.3 V - 5 V while it is open, 0 V when it is closed.
    w.at(input).pull = Pull{true, Ohms(10000), {}};
    w.wire(input, t, "WH");
    CHECK(w.judge() ==
          Lines{"overvoltage -1.7 limit -0.3 sometimes at T from 3V3 | switch open | 3V3 - J1.2 - WH - T"});
  }
}

TEST_CASE("where a jumper is not stated the pin is unknown") {
  Wiring w;
  w.rail("24V", 24, 24);
  const int supply = w.pin(PinFunction::Supply);
  w.at(supply).jumper = "JP1";
  const auto p = w.terminal("P", TerminalFunction::Input);
  w.wire(supply, p, "BN");
  CHECK(w.judge() == Lines{});
  w.jumpers["JP1"] = "24V";
  CHECK(w.judge() == Lines{"unknown-limit 24 limit 0.3 at P from 24V |  | 24V - J1.1 - BN - P"});
}
