// SPDX-License-Identifier: MIT
// What stands behind pins and parts: voltages of single states, worked by hand. Every contact is 0.07 ohm.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

namespace {

/// "state: name volts, name volts ..." of the island that holds a node of this name; fixed nodes are left
/// out.
Lines states_of(const Wiring& w, const std::string& node) {
  Lines lines;
  const Fitting fitting = w.fitting();
  for_each_snapshot(fitting, w.contacts, w.defaults, [&](const Snapshot& s) {
    const auto named = [&](const NodeInfo& info) { return info.name == node; };
    if (std::none_of(s.nodes.begin(), s.nodes.end(), named)) return;
    std::map<std::string, double> volts;
    for (std::size_t i = 1; i < s.nodes.size(); ++i) {
      const bool fixed = std::any_of(s.network.fixed.begin(), s.network.fixed.end(),
                                     [&](const Network::Fixed& f) { return f.node == static_cast<int>(i); });
      const double v = s.solution.volts[i];
      if (!fixed) volts[s.nodes[i].name] = std::abs(v) < 0.0005 ? 0.0 : v;
    }
    std::string line = s.state + ":";
    for (const auto& [name, v] : volts) line += format(" {} {:.3f}", name, v);
    lines.all.push_back(line);
  });
  return lines;
}

/// A resistance from a new terminal "A" to a new terminal "B" on ground.
void load_to_ground(Wiring& w, int pin, double ohms) {
  const int ground = w.pin(PinFunction::Ground);
  const auto a = w.terminal("A"), b = w.terminal("B");
  w.part(Resistor{a, b, Ohms(ohms), {}, {}});
  w.wire(pin, a);
  w.wire(ground, b);
}

}  // namespace

TEST_CASE("outputs") {
  Wiring w;
  w.rail("5V", 5, 5);
  const int out = w.pin(PinFunction::Output, "5V");
  SUBCASE("push-pull from its rail: 5 V x 200 / 250.14, 0.4 V x 200 / 250.14") {
    load_to_ground(w, out, 200);
    CHECK(states_of(w, "J1.1") ==
          Lines{": A 0.000 B 0.000 J1.1 0.000", "J1.1 low: A 0.000 B 0.000 J1.1 0.000",
                "J1.1 low: A 0.320 B 0.000 J1.1 0.320", "J1.1 high: A 3.999 B 0.001 J1.1 4.001"});
  }
  SUBCASE("stated levels and resistance: 2.4 and 3 V x 100 / 200.14") {
    w.at(out).high = {Volts(2.4), Volts(3.0)};
    w.at(out).low = Volts(0.0);
    w.at(out).ohms = Ohms(100);
    load_to_ground(w, out, 100);
    CHECK(states_of(w, "J1.1") ==
          Lines{": A 0.000 B 0.000 J1.1 0.000", "J1.1 low: A 0.000 B 0.000 J1.1 0.000",
                "J1.1 high: A 1.200 B 0.001 J1.1 1.201", "J1.1 high: A 1.500 B 0.001 J1.1 1.501"});
  }
  SUBCASE("open drain with a pull-up of 300 ohm: 5 V x 200 / 500.14") {
    w.at(out).drive = DriveKind::OpenDrain;
    w.at(out).low = Volts(0.0);
    w.at(out).pull = Pull{true, Ohms(300), {}};
    load_to_ground(w, out, 200);
    // Low: 50 ohm beside 200.14 ohm, 40.005 ohm; 5 V x 40.005 / 340.005.
    CHECK(states_of(w, "J1.1") ==
          Lines{": A 2.000 B 0.001 J1.1 2.001", "J1.1 low: A 0.588 B 0.000 J1.1 0.588"});
  }
}

TEST_CASE("switched outputs conduct from ground while off") {
  // 5 V in series with 100 ohm pulls the pin below ground: the body diode holds it at -0.7 V - 1 ohm x 42.1
  // mA.
  Wiring w;
  const int sw = w.pin(PinFunction::Switched), ground = w.pin(PinFunction::Ground);
  const auto plus = w.terminal("P"), minus = w.terminal("M"), end = w.terminal("E");
  w.part(Source{plus, minus, {Volts(5), Volts(5)}, {}});
  w.part(Resistor{minus, end, Ohms(100), {}, {}});
  w.wire(ground, plus);
  w.wire(sw, end);
  const Lines lines = states_of(w, "E");
  REQUIRE(lines.all.size() == 3);  // off, on, and the board without power
  CHECK(lines.all[0] == ": E -0.745 J1.1 -0.742 M -4.993 P 0.003");
  CHECK(lines.all[1] == "J1.1 on: E -0.008 J1.1 -0.005 M -4.992 P 0.003");
  CHECK(lines.all[2] == "board without power: E -0.745 J1.1 -0.742 M -4.993 P 0.003");
}

TEST_CASE("half bridges: the rail's highest voltage over the limit") {
  // 20 V / 2 A = 10 ohm each; 20 V x (0.07 + 10) / (20 + 0.14 + 30) at the lower end of 30 ohm.
  Wiring w;
  w.rail("20V", 20, 20);
  const int up = w.pin(PinFunction::Coil, "20V"), down = w.pin(PinFunction::Coil, "20V");
  const auto a = w.terminal("A"), b = w.terminal("B");
  w.part(Coil{a, b, Ohms(30), {}, {}});
  w.wire(up, a);
  w.wire(down, b);
  const Lines lines = states_of(w, "A");
  CHECK(lines.all.size() == 9);
  CHECK(std::count(lines.all.begin(), lines.all.end(),
                   "J1.1 high, J1.2 low: A 15.983 B 4.017 J1.1 16.011 J1.2 3.989") == 1);
}

TEST_CASE("drivers") {
  Wiring w;
  w.rail("10V", 10, 10);
  const int supply = w.pin(PinFunction::Supply, "10V"), ground = w.pin(PinFunction::Ground);
  const auto v = w.terminal("V"), g = w.terminal("G"), q = w.terminal("Q");
  Driver driver;
  driver.terminal = q, driver.plus = v, driver.minus = g;
  driver.drop = Volts(1.0);
  const auto states = [&] {
    w.part(driver);
    w.wire(supply, v);
    w.wire(ground, g);
    return states_of(w, "Q");
  };
  SUBCASE("push-pull into 99 ohm to ground: low, then high without and with its drop") {
    driver.kind = OutputKind::PushPull;
    w.part(Resistor{q, g, Ohms(99), {}, {}});
    // 10 V / (99 + 1 + 0.14) = 99.86 mA; 9 V: 89.87 mA
    CHECK(states() == Lines{": G 0.000 Q 0.000 V 10.000", ": G 0.000 Q 0.000 V 10.000",
                            "output 'Q' high: G 0.007 Q 9.893 V 9.993",
                            "output 'Q' high: G 0.006 Q 8.904 V 9.994"});
  }
  SUBCASE("sinking with a pull-up of its own of 99 ohm and a leak of 20 mA") {
    driver.kind = OutputKind::Sinking;
    driver.pull = Ohms(99);
    driver.leak = Amps(0.02);
    // Leak: 10 V - 20 mA x 99.07 ohm; on: as above, mirrored.
    CHECK(states() == Lines{": G 0.000 Q 10.000 V 10.000", ": G 0.001 Q 8.019 V 9.999",
                            "output 'Q' on: G 0.007 Q 0.107 V 9.993",
                            "output 'Q' on: G 0.006 Q 1.096 V 9.994"});
  }
  SUBCASE("a leak with nothing to pull at ends at the supply, not at kilovolts") {
    driver.kind = OutputKind::Sourcing;
    driver.leak = Amps(0.0005);
    const Lines lines = states();
    REQUIRE(lines.all.size() == 4);
    CHECK(lines.all[1] == ": Q 10.005 V 10.000");
  }
  SUBCASE("without a supply nothing is driven") {
    driver.kind = OutputKind::Sourcing;
    w.part(driver);
    w.part(Resistor{q, g, Ohms(1000), {}, {}});
    w.wire(ground, g);
    CHECK(states_of(w, "Q") == Lines{": G 0.000 Q 0.000 V 0.000", "output 'Q' on: G 0.000 Q 0.000 V 0.000",
                                     "output 'Q' on: G 0.000 Q 0.000 V 0.000"});
  }
}

TEST_CASE("a receiver's own level") {
  // 5.25 V behind 1050 ohm into 1050 ohm.
  Wiring w;
  const int in = w.pin(PinFunction::Unknown), ground = w.pin(PinFunction::Ground);
  const auto c = w.terminal("C"), g = w.terminal("G");
  Receiver receiver;
  receiver.terminal = c, receiver.plus = c, receiver.minus = g;
  receiver.open_circuit = Volts(5.25);
  receiver.pull = Ohms(1050);
  w.part(receiver);
  w.part(Resistor{c, g, Ohms(1050), {}, {}});
  w.wire(in, c);
  w.wire(ground, g);
  CHECK(states_of(w, "C") == Lines{": C 2.625 G 0.000 J1.1 2.625"});
}

TEST_CASE("rails keep islands apart, and only those that touch an island are varied in it") {
  Wiring w;
  w.rail("5V", 4.75, 5.25);
  w.rail("3V3", 3.2, 3.4);
  const int five = w.pin(PinFunction::Supply, "5V"), other = w.pin(PinFunction::Supply, "5V"),
            three = w.pin(PinFunction::Supply, "3V3"), ground = w.pin(PinFunction::Ground);
  const auto a = w.terminal("A"), b = w.terminal("B"), c = w.terminal("C");
  w.wire(five, a);
  w.wire(three, b);
  w.wire(other, c);
  w.wire(ground, c);
  CHECK(states_of(w, "A") == Lines{": A 4.750", ": A 5.250"});
  CHECK(states_of(w, "B") == Lines{": B 3.200", ": B 3.400"});
  CHECK(states_of(w, "C") == Lines{": C 2.375", ": C 2.625"});
}
