// SPDX-License-Identifier: MIT
// Published currents, losses and powers through a whole fitting: board and harness as the source describes
// them, then what the budget says and what the judge says. "Derived" is arithmetic on published figures.
// Figures that are known to be printed wrongly are kept as negative cases.
#include "judge/budget.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "judge/carrying.h"
#include "judge/judgement.h"
#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

constexpr double foot = 304.8;  // mm

/// A supply pin and ground, one rail without tolerance, one device on two leads.
struct Feed {
  double volts = 0;
  std::string device;   ///< one line with id 'd' and terminals V G or A B
  std::string gauge;    ///< of both leads
  double length = 1.0;  ///< mm, one way
  std::string terminals = "V G";
  std::string pin_limit = "";  ///< "1 A"
  std::string rail_limit = "1000 A";

  Bench bench() const {
    const std::string limit = pin_limit.empty() ? "" : format(" limit='{}'", pin_limit);
    const std::string to = terminals.substr(0, 1), back = terminals.substr(2, 1);
    return Bench(format("<board id='b' title='B' width='100 mm' height='80 mm' evidence='e'><evidence id='e' "
                        "kind='measurement'/><rail id='R' volts='{} V' limit='{}'/><header id='J1' use='led' "
                        "family='minifit-4.20' positions='2'><pin n='1' function='supply' rail='R'{}/>"
                        "<pin n='2' function='ground'/></header></board>",
                        volts, rail_limit, limit),
                 harness_of(format("{}<plug id='p' family='minifit-4.20' positions='2'>"
                                   "<lead cavity='1' colour='RD' gauge='{}' length='{} mm' to='{}'/>"
                                   "<lead cavity='2' colour='BK' gauge='{}' length='{} mm' to='{}'/></plug>",
                                   device, gauge, length, to, gauge, length, back)));
  }
  Budget budget_at(double celsius = 20.0) const {
    const Bench b = bench();
    return budget(b.fitting({{"p", "J1"}}), {.warm = Celsius(celsius)});
  }
};

std::string heater(double volts, double watts) {
  return format("<heater-element id='d' use='led' volts='{} V' watts='{} W'/>", volts, watts);
}

/// LEDs that are counted at exactly 5 V.
std::string leds(int count, std::string_view more = "") {
  return format("<led-string id='d' count='{}' needs='4.5..5.5 V' {}/>", count, more);
}

const BudgetRow& row(const Budget& b, BudgetKind kind) {
  for (const BudgetRow& r : b.rows) {
    if (r.kind == kind) return r;
  }
  throw std::runtime_error("no such row");
}

double share(const Budget& b, BudgetKind kind) {
  return row(b, kind).share().value();
}

bool has(const Bench& bench, Rule rule) {
  const Assessment a = assess(bench.fitting({{"p", "J1"}}));
  return std::any_of(a.findings.begin(), a.findings.end(), [&](const Finding& f) { return f.rule == rule; });
}

/// There and back, at the current that the source states.
double lost(const Feed& feed, double amps, double celsius) {
  const Budget b = feed.budget_at(celsius);
  REQUIRE(b.losses.size() == 2);
  return 2.0 * b.losses[0].warm.value / b.losses[0].amps * amps;
}

}  // namespace

TEST_CASE(
    "AMP-1: 24 V 40 W heater on 24 AWG: alone 3.5 A, bundled 2 A, 700 circular mils an ampere 0.577 A") {
  // "AWG Current Capacity"; archived "wire table" page; the currents derived.
  const Budget b = Feed{24, heater(24, 40), "24 AWG", 1, "A B"}.budget_at();
  CHECK(row(b, BudgetKind::Wire).amps == doctest::Approx(1.667).epsilon(0.005));
  CHECK(*row(b, BudgetKind::Wire).limit == 3.5);
  CHECK(*row(b, BudgetKind::Bundle).limit == 2.0);
  CHECK(share(b, BudgetKind::Wire) < 1.0);
  CHECK(share(b, BudgetKind::Bundle) < 1.0);
  CHECK(row(b, BudgetKind::Wire).amps > 2.8 * conservative_current(awg(24)).value);
}

TEST_CASE("AMP-2: 12 V 120 W bed on 18 AWG: alone 16 A, in a bundle 5 A") {
  // 10 A: "Heatbeds, a beginner's guide", RepRap wiki.
  const Budget b = Feed{12, heater(12, 120), "18 AWG", 1, "A B"}.budget_at();
  CHECK(row(b, BudgetKind::Wire).amps == doctest::Approx(10.0).epsilon(0.04));
  CHECK(*row(b, BudgetKind::Wire).limit == 16.0);
  CHECK(*row(b, BudgetKind::Bundle).limit == 5.0);
  CHECK(share(b, BudgetKind::Bundle) > 1.9);
  // A page of wire sizes prints 7 A alone and 10 A as transmission for 18 AWG: columns exchanged or invented.
  CHECK(*row(b, BudgetKind::Wire).limit > 2 * 7.0);
  CHECK(general_bundled_current(awg(18)) == Amps(10.0));  // the laxer column: no margin left
}

TEST_CASE("AMP-3, AMP-4: 60 and 30 addressable LEDs on 26 AWG (60 mA each: three LED-strip power guides)") {
  const Feed sixty{5, leds(60), "26 AWG"}, thirty{5, leds(30), "26 AWG"};
  CHECK(row(sixty.budget_at(), BudgetKind::Wire).amps == doctest::Approx(3.6).epsilon(0.04));
  CHECK(share(sixty.budget_at(), BudgetKind::Wire) > 1.5);
  CHECK(has(sixty.bench(), Rule::WireOvercurrent));
  CHECK(row(thirty.budget_at(), BudgetKind::Wire).amps == doctest::Approx(1.8).epsilon(0.02));
  CHECK(1.0 - share(thirty.budget_at(), BudgetKind::Wire) == doctest::Approx(0.18).epsilon(0.1));
  CHECK(!has(thirty.bench(), Rule::WireOvercurrent));
}

TEST_CASE("MIL-W-5088B, as used in a DC-load manual p. 67: single wires and factors for a bundle") {
  struct Row {
    int awg;
    double amps;
  };
  for (const Row& r :
       {Row{22, 5.0}, Row{20, 8.33}, Row{18, 15.4}, Row{14, 31.2}, Row{12, 40}, Row{10, 55}, Row{8, 75}})
    CHECK(military_current(awg(r.awg)) == Amps(r.amps));
  CHECK(!military_current(awg(24)));
  CHECK(bundle_factor(1) == 1.0);
  CHECK(bundle_factor(2) == 0.94);
  CHECK(bundle_factor(3) == 0.89);
  CHECK(bundle_factor(4) == 0.83);
  CHECK(bundle_factor(5) == 0.76);
  CHECK(!bundle_factor(6));
  // Derived: four wires of 22 AWG, 5.0 x 0.83 = 4.15 A each.
  CHECK(military_current(awg(22))->value * *bundle_factor(4) == doctest::Approx(4.15));
}

TEST_CASE("VD-1 to VD-5: published losses, there and back") {
  const auto fan = [](double volts, double amps) {
    return format("<fan id='d' needs='{} V' draws='{} A'/>", volts, amps);
  };
  SUBCASE("VD-1, electricians' training page: 100 ft of 16 AWG at 4 A and 24 V: 4.0 V") {
    const Feed feed{24, fan(24, 4), "16 AWG", 100 * foot};
    // The trap: 4.99 ohm for 1000 ft is stranded wire (2 %) at 75 C (from memory); cold and solid it
    // is 4.0155.
    CHECK(lost(feed, 4, 75) * 1.02 == doctest::Approx(4.0).epsilon(0.006));
    CHECK(lost(feed, 4, 75) * 1.02 / 24 == doctest::Approx(0.1663).epsilon(0.003));
    CHECK(lost(feed, 4, 20) == doctest::Approx(3.212).epsilon(0.001));
    CHECK(lost(feed, 4, 20) < 0.81 * 4.0);
  }
  SUBCASE("VD-2, 'Calculating voltage drop on 12 volt': 20 m of 1.3 mm2 at 1 A, rho 0.01785: 0.549 V") {
    CHECK(lost({12, fan(12, 1), "1.3 mm2", 20000}, 1, 20) * 0.01785 / 0.017241 ==
          doctest::Approx(0.549).epsilon(0.001));
  }
  SUBCASE("VD-3, 'Voltage drop, low voltage': 14 AWG, 50 ft, 5 A: 1.26 V") {
    CHECK(lost({12, fan(12, 5), "14 AWG", 50 * foot}, 5, 20) == doctest::Approx(1.2625).epsilon(0.001));
  }
  SUBCASE("VD-4, voltage-loss worked example: 18 AWG, 100 ft, 1 A: 1.277 V") {
    const Feed feed{24, fan(24, 1), "18 AWG", 100 * foot};
    CHECK(lost(feed, 1, 20) == doctest::Approx(1.277).epsilon(0.0005));
    // An LED project page prints 0.00639 ohm for a metre of 18 AWG; that is a foot: 3.28 times too little.
    CHECK(lost(feed, 1, 20) == doctest::Approx(2 * 100 * 0.00639).epsilon(0.002));
    CHECK(lost(feed, 1, 20) > 3.2 * (2 * 100 * foot / 1000) * 0.00639);
    // "Pure copper" of 1.68e-8 ohm m ("Voltage drop in DC circuits" page) is 2.6 % below 100 % IACS.
    CHECK(lost(feed, 1, 20) * 1.68e-8 / 1.7241e-8 < 1.277 * 0.98);
  }
  SUBCASE("VD-5, 'Voltage drop in DC circuits': 15 ft of 4 AWG at 100 A: 0.75 V (two figures)") {
    CHECK(lost({12, fan(12, 100), "4 AWG", 15 * foot}, 100, 20) == doctest::Approx(0.75).epsilon(0.01));
  }
}

TEST_CASE("addressable LEDs: worked examples of two LED-strip power guides") {
  struct Row {
    const char* name;
    std::string line;
    double amps;
  };
  const std::vector<Row> rows{
      {"60 LEDs, worst case", leds(60), 3.6},
      {"60 LEDs, rule of thumb of 20 mA", leds(60, "each='20 mA'"), 1.2},
      {"60 LEDs at a third of their brightness", leds(60, "brightness='33.3333 %'"), 1.2},
      {"100 LEDs", leds(100), 6.0}};
  for (const Row& r : rows) {
    CAPTURE(r.name);
    const Budget b = Feed{5, r.line, "16 AWG"}.budget_at();
    REQUIRE(b.strings.size() == 1);
    CHECK(b.strings[0].draws.value == doctest::Approx(r.amps).epsilon(1e-5));
    CHECK(row(b, BudgetKind::Rail).amps == doctest::Approx(r.amps).epsilon(0.06));
  }
}

TEST_CASE("LED-7: 30 LEDs on a header for 1 A: 1.8 A at worst, 0.6 A by the rule of thumb") {
  const Feed worst{5, leds(30), "22 AWG", 1, "V G", "1 A"},
      usual{5, leds(30, "each='20 mA'"), "22 AWG", 1, "V G", "1 A"};
  CHECK(share(worst.budget_at(), BudgetKind::Pin) == doctest::Approx(1.8).epsilon(0.03));
  CHECK(has(worst.bench(), Rule::PinOvercurrent));
  CHECK(share(usual.budget_at(), BudgetKind::Pin) == doctest::Approx(0.6).epsilon(0.02));
  CHECK(!has(usual.bench(), Rule::PinOvercurrent));
}

TEST_CASE("RGB strip: 5 m of 60 a metre take 6 A at 12 V, 72 W (RGB strip guide; derived)") {
  // Three colours of 2 A each; STRIP-2: on 24 V it gets twice its voltage.
  const std::string strip = "<rgb-strip id='d' volts='12 V' draws='2 A'/>";
  const auto bench = [&](const std::string& rail) {
    return Bench(board_of("<header id='J1' use='led' family='minifit-4.20' positions='4'>"
                          "<pin n='1' function='supply' rail='" +
                          rail +
                          "'/>"
                          "<pin n='2' function='switched' limit='3 A' ohms='0.001 ohm'/>"
                          "<pin n='3' function='switched' limit='3 A' ohms='0.001 ohm'/>"
                          "<pin n='4' function='switched' limit='3 A' ohms='0.001 ohm'/></header>"),
                 harness_of(strip + plug_of_leads("V R G B", "minifit-4.20")));
  };
  const Bench twelve = bench("12V");
  const Budget b = budget(twelve.fitting({{"p", "J1"}}));
  for (const BudgetRow& r : b.rows) {
    if (r.kind == BudgetKind::Rail && r.what == "rail '12V'") {
      CHECK(r.amps == doctest::Approx(6.0).epsilon(0.04));
      CHECK(r.amps * 12.0 == doctest::Approx(72.0).epsilon(0.04));
    }
  }
  CHECK(!has(twelve, Rule::SupplyTooHigh));
  CHECK(has(bench("24V"), Rule::SupplyTooHigh));
}

TEST_CASE("heaters: current at the rated voltage, and the power on the wrong supply (R = V^2 / P, derived)") {
  struct Row {
    const char* name;
    double rated_at, rated, supply, amps, watts;
    bool too_strong, too_weak;
  };
  const std::vector<Row> rows{
      {"24 V 40 W", 24, 40, 24, 1.667, 40, false, false},
      {"24 V 50 W", 24, 50, 24, 2.083, 50, false, false},
      {"24 V 60 W", 24, 60, 24, 2.5, 60, false, false},
      {"24 V 30 W", 24, 30, 24, 1.25, 30, false, false},
      {"12 V 40 W", 12, 40, 12, 3.333, 40, false, false},
      {"12 V 30 W", 12, 30, 12, 2.5, 30, false, false},
      {"bed 12 V 120 W (\"Heatbeds, a beginner's guide\", RepRap wiki)", 12, 120, 12, 10, 120, false, false},
      {"bed 24 V 200 W (same guide)", 24, 200, 24, 8.33, 200, false, false},
      {"bed 24 V 220 W", 24, 220, 24, 9.17, 220, false, false},
      {"12 V 40 W on 24 V: 160 W", 12, 40, 24, 6.667, 160, true, false},
      {"24 V 40 W on 12 V: 10 W", 24, 40, 12, 0.833, 10, false, true},
  };
  for (const Row& r : rows) {
    CAPTURE(r.name);
    const Feed feed{r.supply, heater(r.rated_at, r.rated), "10 AWG", 1, "A B"};
    const Budget b = feed.budget_at();
    REQUIRE(b.heaters.size() == 1);
    // 0.04 ohm of contacts is up to 4 % of 1.2 ohm, and twice that in power.
    CHECK(row(b, BudgetKind::Wire).amps == doctest::Approx(r.amps).epsilon(0.04));
    CHECK(b.heaters[0].most.value == doctest::Approx(r.watts).epsilon(0.08));
    CHECK(b.heaters[0].rated == Watts(r.rated));
    const Assessment a = assess(feed.bench().fitting({{"p", "J1"}}));
    CHECK(std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& f) {
            return f.rule == Rule::HeaterPower && f.weight == Weight::Harm;
          }) == r.too_strong);
    CHECK(std::any_of(a.findings.begin(), a.findings.end(), [](const Finding& f) {
            return f.rule == Rule::HeaterPower && f.weight == Weight::Fault;
          }) == r.too_weak);
  }
}
