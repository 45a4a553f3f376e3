// SPDX-License-Identifier: MIT
// The DC solution against ngspice: random networks, and the networks that whole wirings make.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "support/random_network.h"
#include "support/spice.h"
#include "support/wiring.h"

using namespace plugward;

namespace {

/// Within 1 mV or 0.1 %.
bool agrees(double ours, double theirs) {
  return std::abs(ours - theirs) <= std::max(1e-3, 1e-3 * std::abs(theirs));
}

/// Compares where the program answered; returns how many networks that were.
int compare(const std::vector<std::vector<double>>& ours, const std::vector<std::vector<double>>& theirs) {
  int answered = 0;
  for (std::size_t i = 0; i < ours.size(); ++i) {
    if (theirs[i].empty()) continue;
    ++answered;
    for (std::size_t node = 0; node < ours[i].size(); ++node) {
      CAPTURE(i);
      CAPTURE(node);
      CAPTURE(ours[i][node]);
      CAPTURE(theirs[i][node]);
      CHECK(agrees(ours[i][node], theirs[i][node]));
    }
  }
  return answered;
}

}  // namespace

TEST_CASE("random networks with diodes") {
  constexpr unsigned seed = 20260302;
  MESSAGE("seed " << seed);
  std::mt19937 random(seed);
  std::vector<Network> networks;
  std::vector<std::vector<double>> ours;
  for (int i = 0; i < 360; ++i) {
    networks.push_back(test::random_network(random, 12, 8));
    ours.push_back(solve(networks.back()).volts);
  }
  const int answered = compare(ours, test::solve_with_ngspice(networks, "random"));
  MESSAGE(answered << " of " << networks.size() << " networks compared");
  CHECK(answered >= 300);
}

namespace {

/// Every third state of the wiring's islands.
void collect(const test::Wiring& w, std::vector<Network>& networks, std::vector<std::vector<double>>& ours) {
  const Fitting fitting = w.fitting();
  int count = 0;
  for_each_snapshot(fitting, w.contacts, w.defaults, [&](const Snapshot& snapshot) {
    if (count++ % 3 != 0) return;
    networks.push_back(snapshot.network);
    ours.push_back(snapshot.solution.volts);
  });
}

/// A device with one of every part but a supply of its own, on a header with one of every pin.
test::Wiring one_of_everything() {
  test::Wiring w;
  w.rail("24V", 21.6, 26.4);
  w.rail("5V", 4.75, 5.25);
  w.rail("3V3", 3.2, 3.4);
  const int v = w.pin(PinFunction::Supply, "5V"), g = w.pin(PinFunction::Ground),
            out = w.pin(PinFunction::Output, "3V3"), in = w.pin(PinFunction::Input, "3V3"),
            sw = w.pin(PinFunction::Switched), high = w.pin(PinFunction::Supply, "24V"),
            coil = w.pin(PinFunction::Coil, "24V"), back = w.pin(PinFunction::Coil, "24V");
  w.at(in).pull = Pull{true, Ohms(4700), {}};
  w.at(in).clamp = Clamp{"3V3", Volts(0.3), Amps(0.005), {}};
  w.at(out).high = {Volts(2.9), Volts(3.4)};
  const auto tv = w.terminal("V"), tg = w.terminal("G"), td = w.terminal("D"), tq = w.terminal("Q"),
             th = w.terminal("H"), tm = w.terminal("M"), ta = w.terminal("A"), tb = w.terminal("B");
  Load load;
  load.plus = tv, load.minus = tg, load.needs = {Volts(4.5), Volts(5.5)}, load.draws = Amps(0.1);
  w.part(load);
  Heater heater;
  heater.a = th, heater.b = tm, heater.volts = Volts(24), heater.watts = Watts(40);
  w.part(heater);
  Driver driver;
  driver.terminal = tq, driver.plus = th, driver.minus = tg, driver.kind = OutputKind::Sourcing;
  driver.leak = Amps(0.0005), driver.pull = Ohms(100e3);
  w.part(driver);
  Receiver receiver;
  receiver.terminal = td, receiver.plus = tv, receiver.minus = tg;
  receiver.open_circuit = Volts(3.0), receiver.pull = Ohms(20e3);
  w.part(receiver);
  w.part(Coil{ta, tb, Ohms(1.6), Amps(1.5), {}});
  w.part(Switch{td, tq, false, {}});
  w.part(Diode{tg, td, Volts(0.6), {}});
  w.wire(v, tv);
  w.wire(g, tg);
  w.wire(out, td);
  w.wire(in, tq);
  w.wire(high, th);
  w.wire(sw, tm);
  w.wire(coil, ta);
  w.wire(back, tb);
  return w;
}

/// The same leads, one pin further: rails on signals, signals on rails.
test::Wiring shifted() {
  test::Wiring w = one_of_everything();
  const int pins = w.board.headers[0].positions;
  for (Contact& contact : w.contacts) contact.pin = contact.pin % pins + 1;
  return w;
}

test::Wiring with_own_supply() {
  test::Wiring w = one_of_everything();
  w.part(Source{0, 1, {Volts(4.9), Volts(5.1)}, {}});
  Load blocked;
  blocked.plus = 4, blocked.minus = 0, blocked.needs = {Volts(12), Volts(24)}, blocked.draws = Amps(0.2);
  blocked.reversed = Reversal::Blocked;
  w.part(blocked);
  return w;
}

}  // namespace

TEST_CASE("the states of whole wirings") {
  std::vector<Network> networks;
  std::vector<std::vector<double>> ours;
  for (const test::Wiring& w : {one_of_everything(), shifted(), with_own_supply()})
    collect(w, networks, ours);
  CHECK(networks.size() >= 300);
  const int answered = compare(ours, test::solve_with_ngspice(networks, "wirings"));
  MESSAGE(answered << " of " << networks.size() << " states compared");
  CHECK(answered >= static_cast<int>(networks.size() * 95 / 100));
}
