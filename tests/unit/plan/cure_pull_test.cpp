// SPDX-License-Identifier: MIT
// The search for a pull-up against every value of the series built in by hand: outputs that sink, on inputs
// that are pulled down inside.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "plan/cure_values.h"
#include "plan/repin.h"
#include "support/bench.h"
#include "support/dice.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

struct World {
  std::string board, harness;
};

double between(Dice& dice, double least, double most) {
  return least + (most - least) * static_cast<double>(dice.below(1000001)) / 1e6;
}

/// Supply, ground and an input that withstands 3.6 V and is pulled down; on it a sensor that sinks.
World random_sensor(Dice& dice) {
  const std::string feed = dice.chance(75) ? "3V3" : "5V";
  const double middle = between(dice, 3.0, 3.5), spread = between(dice, 0, 0.1);
  const double pin_limit = dice.chance(33) ? between(dice, 0.0052, 0.02) : 0.5;
  const std::string ohms =
      dice.chance(25) ? "" : format(" pull-ohms='{:.1f} kohm'", between(dice, 1.0, 60.0));
  std::string board = board_of(header_of_pins(
      "limit", 3,
      format(
          "<pin n='1' function='supply' rail='{}' limit='{:.4f} A'/><pin n='2' function='ground'/>"
          "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' low-below='0.8 V' "
          "high-above='2 V' pull='down'{}/>",
          feed, pin_limit, ohms)));
  const std::string fixed = "volts='3.3 V'";
  board.replace(board.find(fixed), fixed.size(),
                format("volts='{:.3f}..{:.3f} V'", middle - spread, middle + spread));
  const std::string limit = dice.chance(50) ? format(" limit='{:.4f} A'", between(dice, 0.0003, 0.02)) : "";
  const double drop = between(dice, 0, 0.75), leak = dice.chance(33) ? 0.0 : between(dice, 0, 1.5);
  return {board,
          harness_of(format("<proximity id='k' use='limit' kind='sinking' needs='2.5..6 V' draws='5 mA' "
                            "drop='{:.2f} V' leak='{:.4f} mA' pull='none'{}/>",
                            drop, leak, limit) +
                     plug_of_leads("V G Q"))};
}

/// With this resistor from the output to plus, at both ends of 5 %.
bool clean_with(const Fitting& fitting, double ohms) {
  for (const double real : {ohms * 0.95, ohms * 1.05}) {
    Harness harness = *fitting.harness;
    Device& device = harness.devices.front();
    device.parts.push_back(Resistor{*device.terminal("Q"), *device.terminal("V"), Ohms(real), {}, {}});
    Fitting changed = fitting;
    changed.harness = &harness;
    if (!assess(changed).clean()) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("whenever some value of E24 judges clean as a pull-up, the search ends clean") {
  int found = 0, none = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    Dice dice(seed);
    const World world = random_sensor(dice);
    CAPTURE(world.board);
    CAPTURE(world.harness);
    const Bench bench(world.board, world.harness);
    const Fitting fitting = bench.fitting({{"p", "J1"}});
    if (assess(fitting).clean()) continue;
    bool exists = false;
    for (double ohms = 100; ohms <= 1e6 && !exists;
         ohms = preferred_at_least(Ohms(ohms * 1.001), Series::E24).value) {
      exists = clean_with(fitting, ohms);
    }
    const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
    if (exists) CHECK(advice.cured.has_value());
    ++(exists ? found : none);
  }
  // Neither side of the comparison is empty.
  CHECK(found > 30);
  CHECK(none > 10);
}

TEST_CASE("values of a pull: all that meet the needs, and none else") {
  Dice dice(7);
  for (int i = 0; i < 200; ++i) {
    CAPTURE(i);
    PullNeeds n;
    const bool up = dice.chance(67);
    const double rail = between(dice, 2.5, 5.5);
    if (up) n.rail = {Volts(rail * 0.97), Volts(rail)};
    n.leak = Amps(dice.chance(50) ? 0.0 : between(dice, 0, 0.001));
    if (dice.chance(67)) {
      n.other =
          PullBehind{up ? Range<Volts>{} : Range<Volts>::at(Volts(3.3)), Ohms(between(dice, 1e3, 50e3))};
    }
    n.threshold = up ? Volts(2) : Volts(0.8);
    n.against = Volts(5);
    if (up && dice.chance(50)) n.most = Volts(3.6);
    if (dice.chance(50)) n.limit = Amps(between(dice, 0.0005, 0.01));
    const std::vector<PullChoice> all = pulls(n);
    for (double decade = 100; decade < 1e6; decade *= 10) {
      for (const double member : members(Series::E24)) {
        const double ohms = member * decade, g = 1 / ohms, other = n.other ? 1 / n.other->ohms.value : 0;
        const double to = n.other ? n.other->to.max.value : 0;
        // Ohm's law in the worst corner, written out once more.
        const double weak = g / 1.05, strong = g / 0.95;
        bool good = up ? (n.rail.min.value * weak + to * other - n.leak.value) / (weak + other) >= 2 - 1e-9
                       : (to * other + n.leak.value) / (weak + other) <= 0.8 + 1e-9;
        if (n.most) good = good && (n.rail.max.value * strong + to * other) / (strong + other) <= 3.6 + 1e-9;
        if (n.limit) good = good && (up ? n.rail.max.value : 5.0) * strong <= n.limit->value * (1 + 1e-9);
        const bool has = std::any_of(all.begin(), all.end(), [&](const PullChoice& c) {
          return std::abs(c.ohms.value - ohms) < 1e-6 * ohms;
        });
        CHECK(has == good);
      }
    }
  }
}
