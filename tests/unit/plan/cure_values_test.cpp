// SPDX-License-Identifier: MIT
// Dividers against every pair of the series by plain formulas; pulls against their formula.
#include "plan/cure_values.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <vector>

using namespace plugward;

namespace {

/// All members from 100 ohm to 1 Mohm.
std::vector<double> all_of(Series series) {
  std::vector<double> out;
  for (double decade = 100; decade < 1e6; decade *= 10) {
    for (const double m : members(series)) out.push_back(m * decade);
  }
  out.push_back(1e6);
  return out;
}

/// The input's level with the source at `volts` (not connected when `siemens` is 0).
double level(double volts, double siemens, double lower, double to, double pull_siemens, double amps = 0) {
  return (volts * siemens + to * pull_siemens + amps) / (siemens + 1 / lower + pull_siemens);
}

/// Every corner, written out.
bool works(const DividerNeeds& n, double upper, double lower) {
  const double gp = n.pull ? 1 / n.pull->ohms.value : 0;
  for (const double u : {upper * (1 - n.tolerance), upper * (1 + n.tolerance)}) {
    for (const double l : {lower * (1 - n.tolerance), lower * (1 + n.tolerance)}) {
      for (const double to : n.pull ? std::vector<double>{n.pull->to.min.value, n.pull->to.max.value}
                                    : std::vector<double>{0.0}) {
        for (const double high : {n.high.min.value, n.high.max.value}) {
          const double v = level(high, 1 / u, l, to, gp);
          if (v > n.most.value + 1e-9 || v < n.high_above.value - 1e-9) return false;
        }
        if (!n.low_below) continue;
        const double low =
            n.low ? level(n.low->max.value, 1 / u, l, to, gp) : level(0, 0, l, to, gp, n.leak.value);
        if (low > n.low_below->value + 1e-9) return false;
      }
    }
  }
  return true;
}

DividerNeeds random_needs(std::mt19937& random) {
  const auto between = [&](double a, double b) {
    return a + (b - a) * static_cast<double>(random() % 1000001) / 1e6;
  };
  DividerNeeds n;
  const double top = between(3, 30);
  n.high = {Volts(top * between(0.6, 1)), Volts(top)};
  if (random() % 2 == 0) n.low = Range<Volts>{Volts(0), Volts(between(0, 0.6))};
  n.leak = Amps(random() % 2 == 0 ? 0 : between(0, 0.0005));
  if (random() % 3 != 0) {
    const double rail = random() % 2 == 0 ? 3.3 : 5;
    n.pull = PullBehind{{Volts(rail * 0.97), Volts(rail * 1.03)}, Ohms(between(1e3, 50e3))};
  }
  n.most = Volts(between(3, 6));
  n.high_above = Volts(between(1.5, 3));
  if (random() % 4 != 0) n.low_below = Volts(between(0.5, 1.5));
  n.tolerance = random() % 2 == 0 ? 0.01 : 0.05;
  return n;
}

}  // namespace

TEST_CASE("a divider exists exactly when some pair of the series works, and the chosen one works") {
  std::mt19937 random(20261125);
  const std::vector<double> e24 = all_of(Series::E24);
  int found = 0, none = 0;
  for (int i = 0; i < 400; ++i) {
    CAPTURE(i);
    const DividerNeeds n = random_needs(random);
    const bool exists = std::any_of(e24.begin(), e24.end(), [&](double lower) {
      return std::any_of(e24.begin(), e24.end(), [&](double upper) { return works(n, upper, lower); });
    });
    const auto chosen = choose_divider(n, Series::E24);
    CHECK(chosen.has_value() == exists);
    if (chosen) CHECK(works(n, chosen->upper.value, chosen->lower.value));
    ++(chosen ? found : none);
  }
  // Neither side of the comparison is empty.
  CHECK(found > 50);
  CHECK(none > 25);
}

TEST_CASE("E96 is asked only where E24 has nothing") {
  DividerNeeds n;
  n.high = Range<Volts>::at(Volts(10));
  n.low = Range<Volts>{};
  n.most = Volts(3.09);
  n.high_above = Volts(3.055);
  n.tolerance = 0.001;
  CHECK_FALSE(choose_divider(n, Series::E24).has_value() == false);
  n.most = Volts(3.073);
  n.high_above = Volts(3.063);
  CHECK_FALSE(choose_divider(n, Series::E24).has_value());
  const auto fine = choose_divider(n);
  REQUIRE(fine.has_value());
  CHECK(works(n, fine->upper.value, fine->lower.value));
}

TEST_CASE("what a divider does is told with its figures") {
  DividerNeeds n;
  n.high = {Volts(20), Volts(25)};
  n.most = Volts(5.5);
  n.high_above = Volts(2);
  n.low_below = Volts(0.8);
  n.tolerance = 0;
  const Divider d = divider(n, Ohms(9e3), Ohms(1e3));
  CHECK(d.high.min.value == doctest::Approx(2.0));
  CHECK(d.high.max.value == doctest::Approx(2.5));
  CHECK(d.low.value == doctest::Approx(0.0));
  CHECK(d.amps.value == doctest::Approx(0.0025));
  CHECK(d.upper_watts.value == doctest::Approx(0.05625));
  CHECK(d.lower_watts.value == doctest::Approx(0.00625));
  CHECK(meets(n, d));
  n.most = Volts(2.4);
  CHECK_FALSE(meets(n, d));
}

TEST_CASE("pulls") {
  struct Row {
    std::string name;
    PullNeeds needs;
    double ohms, level;  ///< 0: none
  };
  const Range<Volts> v33 = Range<Volts>::at(Volts(3.3));
  const std::vector<Row> rows = {
      {"nothing leaks: the largest", {v33, {}, {}, Volts(2), {}, 0.05}, 10e3, 3.3},
      // 3.3 V - 0.5 mA x R x 1.05 >= 2.1 V: R <= 2286 ohm
      {"0.5 mA leaks", {v33, Amps(0.0005), {}, Volts(2), {}, 0.05}, 2.2e3, 3.3 - 0.0005 * 2310},
      // 3.3 V - 5 mA x R x 1.05 >= 2.1 V: R <= 228 ohm; with more than 5 mA only because nothing less does
      {"5 mA leaks", {v33, Amps(0.005), {}, Volts(2), {}, 0.05}, 220, 3.3 - 0.005 * 231},
      {"5 mA leaks, and the output stands no more than 10 mA",
       {v33, Amps(0.005), {}, Volts(2), {}, 0.05, {}, Amps(0.01)},
       0,
       0},
      // 5 V x 40 / (40 + R x 0.95) <= 3.6 V: 16.4 kohm or more
      {"to 5 V on 3.6 V, against a pull-down of 40 kohm",
       {Range<Volts>::at(Volts(5)), {}, PullBehind{{}, Ohms(40e3)}, Volts(2), {}, 0.05, Volts(3.6)},
       18e3,
       5 * 40 / (40 + 18.9)},
      {"against a pull-down of 10 kohm",
       {v33, {}, PullBehind{{}, Ohms(10e3)}, Volts(2), {}, 0},
       5.6e3,
       3.3 * 10 / 15.6},
      {"to ground, against 10 kohm to 3.3 V",
       {{}, {}, PullBehind{v33, Ohms(10e3)}, Volts(0.8), Volts(5), 0},
       2.4e3,
       3.3 * 2.4 / 12.4},
      {"to ground, 0.1 mA leaks", {{}, Amps(0.0001), {}, Volts(0.8), Volts(5), 0}, 6.8e3, 0.68},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const auto choice = choose_pull(row.needs);
    REQUIRE(choice.has_value() == (row.ohms > 0));
    if (!choice) continue;
    CHECK(choice->ohms.value == doctest::Approx(row.ohms));
    CHECK(choice->level.value == doctest::Approx(row.level));
  }
}

TEST_CASE("usual sizes") {
  const std::vector<double> sizes = {3.3, 5, 9, 12, 24};
  const auto volts = [&](double a, double b) {
    const auto v = usual_volts({Volts(a), Volts(b)}, sizes);
    return v ? to_text(*v) : "none";
  };
  CHECK(volts(10.2, 13.8) == "11.4..12.6 V");
  CHECK(volts(3.5, 5.3) == "4.75..5.25 V");
  CHECK(volts(10, 30) == "22.8..25.2 V");
  CHECK(volts(11.5, 12.5) == "none");
  CHECK(to_text(*power_rating(Watts(0.0625))) == "0.125 W");
  CHECK(to_text(*power_rating(Watts(0.063))) == "0.25 W");
  CHECK(to_text(*power_rating(Watts(0.337))) == "1 W");
  CHECK_FALSE(power_rating(Watts(0.51)).has_value());
  CHECK(to_text(*usual_limit(Amps(0.15))) == "0.5 A");
  CHECK(to_text(*usual_limit(Amps(0.5))) == "1 A");
  CHECK_FALSE(usual_limit(Amps(7)).has_value());
}
