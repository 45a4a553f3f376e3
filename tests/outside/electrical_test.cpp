// SPDX-License-Identifier: MIT
// Published electrical limits, and what follows from them, through a whole fitting: each row joins a board
// and a device as the source describes them and states everything that the circuit must say, and nothing
// else. Leads and contacts are taken as ideal, as the sources do.
#include <doctest/doctest.h>

#include <functional>

#include "support/wiring.h"

using namespace plugward;
using test::Lines;
using test::Wiring;

namespace {

struct Row {
  std::string name;
  std::string source;
  std::function<Lines()> judge;
  Lines expected;
};

void check(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CAPTURE(row.source);
    CHECK(row.judge() == row.expected);
  }
}

Wiring ideal() {
  Wiring w;
  w.defaults.contact = w.defaults.lead = Ohms(0.0);
  return w;
}

Range<Volts> range(double low, double high) {
  return {Volts(low), Volts(high)};
}

/// A board's output (guaranteed..highest high level) on a device's input that is fed with `vdd`.
struct Send {
  double high_min = 0, high_max = 0;
  double vdd = 5.0;
  Receiver receiver{};
  double low = 0.4;

  Lines operator()() const {
    Wiring w = ideal();
    w.rail("VDD", vdd, vdd);
    const int out = w.pin(PinFunction::Output), supply = w.pin(PinFunction::Supply, "VDD"),
              ground = w.pin(PinFunction::Ground);
    w.at(out).high = range(high_min, high_max);
    w.at(out).low = Volts(low);
    const auto d = w.terminal("D", TerminalFunction::Input), v = w.terminal("V", TerminalFunction::Supply),
               g = w.terminal("G", TerminalFunction::Ground);
    Receiver r = receiver;
    r.terminal = d, r.plus = v, r.minus = g;
    r.above_supply = Volts(0.5);
    w.part(r);
    w.wire(out, d, "GN");
    w.wire(supply, v, "RD");
    w.wire(ground, g, "BK");
    return w.judge();
  }
};

Receiver volts_levels(double low_below, double high_above) {
  Receiver r;
  r.low_below = Volts(low_below);
  r.high_above = Volts(high_above);
  return r;
}

Receiver share_levels(double low_below, double high_above) {
  Receiver r;
  r.low_below_share = low_below;
  r.high_above_share = high_above;
  return r;
}

/// A device's output on a board's input of the 3.3 V kind (LVTTL levels 0.8 and 2.0 V).
struct Answer {
  double supply = 24;
  Driver driver{};
  double withstands = 3.6;
  double high_above = 2.0;
  std::optional<Pull> pull = std::nullopt;
  std::optional<double> withstands_pulled = std::nullopt;
  double series = 0;     ///< ohms between output and input
  double to_ground = 0;  ///< ohms from input to ground, at the device

  Lines operator()() const {
    Wiring w = ideal();
    w.rail("VS", supply, supply);
    w.rail("3V3", 3.3, 3.3);
    const int in = w.pin(PinFunction::Input, "3V3"), feed = w.pin(PinFunction::Supply, "VS"),
              ground = w.pin(PinFunction::Ground);
    w.at(in).withstands = range(-0.3, withstands);
    w.at(in).low_below = Volts(0.8);
    w.at(in).high_above = Volts(high_above);
    w.at(in).pull = pull;
    if (withstands_pulled) w.at(in).withstands_pulled = Volts(*withstands_pulled);
    const auto q = w.terminal("Q", TerminalFunction::Output), v = w.terminal("V", TerminalFunction::Supply),
               g = w.terminal("G", TerminalFunction::Ground), s = w.terminal("S");
    Driver d = driver;
    d.terminal = q, d.plus = v, d.minus = g;
    w.part(d);
    if (series > 0) w.part(Resistor{q, s, Ohms(series), {}, {}});
    if (to_ground > 0) w.part(Resistor{s, g, Ohms(to_ground), {}, {}});
    w.wire(in, series > 0 ? s : q, "BK");
    w.wire(feed, v, "BN");
    w.wire(ground, g, "BU");
    return w.judge();
  }
};

Driver driver(OutputKind kind, double drop, double leak = 0, double pull = 0) {
  Driver d;
  d.kind = kind;
  d.drop = Volts(drop);
  if (leak > 0) d.leak = Amps(leak);
  if (pull > 0) d.pull = Ohms(pull);
  return d;
}

Pull pull_up(double ohms) {
  return {true, Ohms(ohms), {}};
}

/// A load on a supply pin.
Lines feed(double rail, Range<Volts> needs, double draws, std::optional<double> pin_limit = {}) {
  Wiring w = ideal();
  w.rail("VS", rail, rail);
  const int supply = w.pin(PinFunction::Supply, "VS"), ground = w.pin(PinFunction::Ground);
  if (pin_limit) w.at(supply).limit = Amps(*pin_limit);
  const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground);
  Load load;
  load.plus = v, load.minus = g;
  load.needs = needs;
  load.draws = Amps(draws);
  w.part(load);
  w.wire(supply, v, "RD");
  w.wire(ground, g, "BK");
  return w.judge();
}

}  // namespace

TEST_CASE("logic levels from driver to input") {
  const std::string levels = "\"Logic levels\"; distributor FAQ citing TI SN74ALS1004 and JEITA ED-5007";
  check({
      {"LOG-1 3.3 V LVTTL (2.4 V) to TTL (2.0 V)", levels, Send{2.4, 3.3, 5.0, volts_levels(0.8, 2.0)}, {}},
      {"LOG-1 has a margin of 0.4 V", levels, Send{2.4, 3.3, 5.0, volts_levels(0.8, 2.4)}, {}},
      {"LOG-2 3.3 V to 5 V CMOS (3.5 V)",
       levels,
       Send{3.3, 3.3, 5.0, share_levels(0.3, 0.7)},
       {"level-high 3.3 limit 3.5 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"LOG-3 5 V TTL (2.4 V) to 5 V CMOS",
       levels,
       Send{2.4, 2.4, 5.0, share_levels(0.3, 0.7)},
       {"level-high 2.4 limit 3.5 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"LOG-4 5 V CMOS to 3.3 V not tolerant (VDD + 0.3 V)",
       "STM32F103x6 data sheet",
       Answer{5.0, driver(OutputKind::PushPull, 0)},
       {"overvoltage 5 limit 3.6 sometimes at J1.1 from VS | output 'Q' high | VS - J1.2 - BN - V - Q - BK - "
        "J1.1"}},
      {"LOG-5 5 V CMOS to 3.3 V five-volt-tolerant",
       "STM32F103x6 data sheet",
       Answer{5.0, driver(OutputKind::PushPull, 0), 5.5},
       {}},
      {"LOG-6 3.3 V to AVR at 5 V (0.6 VCC)",
       "ATmega640/1280/2560 data sheet p. 370",
       Send{3.3, 3.3, 5.0, share_levels(0.3, 0.6)},
       {}},
      {"LOG-7 74HCT output (4.4 V) to an addressable LED at 5 V",
       "WS2812B data, seller's copy",
       Send{4.4, 5.0, 5.0, share_levels(0.3, 0.7)},
       {}},
      {"HC at 4.5 V: 3.15 V",
       "CD74HC4024 data sheet",
       Send{3.1, 3.1, 4.5, volts_levels(1.35, 3.15)},
       {"level-high 3.1 limit 3.15 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"AVR output at 20 mA: 0.9 V is no TTL low",
       "ATmega640/1280/2560 data sheet p. 370",
       Send{4.2, 4.2, 5.0, volts_levels(0.8, 2.0), 0.9},
       {"level-low 0.9 limit 0.8 sometimes at D receiver from J1.1 | J1.1 low | J1.1 - GN - D"}},
  });
}

TEST_CASE("input limits of microcontrollers") {
  const Driver five = driver(OutputKind::PushPull, 0);
  const auto unpowered = [](double limit) {
    return [limit] {
      Wiring w = ideal();
      w.rail("3V3", 3.3, 3.3);
      const int in = w.pin(PinFunction::Input, "3V3"), ground = w.pin(PinFunction::Ground);
      w.at(in).analogue = true;
      w.at(in).withstands = range(-0.3, 5.5);
      w.at(in).withstands_unpowered = Volts(limit);
      const auto q = w.terminal("Q", TerminalFunction::Passive),
                 g = w.terminal("G", TerminalFunction::Ground);
      w.part(Source{q, g, range(5.0, 5.0), {}});
      w.wire(in, q, "BK");
      w.wire(ground, g, "BU");
      return w.judge();
    };
  };
  check({
      {"TOL-1 VDD + 0.3 V", "STM32F103x6 data sheet", Answer{3.6, five, 3.6}, {}},
      {"TOL-1 more than VDD + 0.3 V",
       "STM32F103x6 data sheet",
       Answer{3.7, five, 3.6},
       {"overvoltage 3.7 limit 3.6 sometimes at J1.1 from VS | output 'Q' high | VS - J1.2 - BN - V - Q - BK "
        "- J1.1"}},
      {"TOL-2 five-volt-tolerant: 5.5 V", "STM32F103x6, STM32F407 data sheets", Answer{5.5, five, 5.5}, {}},
      {"TOL-2 five-volt-tolerant: more",
       "STM32F103x6, STM32F407 data sheets",
       Answer{5.6, five, 5.5},
       {"overvoltage 5.6 limit 5.5 sometimes at J1.1 from VS | output 'Q' high | VS - J1.2 - BN - V - Q - BK "
        "- J1.1"}},
      {"TOL-3, TOL-9 a 5 V sensor with its own supply, board unpowered: 3.6 V",
       "application note AN4899 p. 17",
       unpowered(3.6),
       {"overvoltage 5 limit 3.6 at J1.1 from Q | board without power | Q - BK - J1.1"}},
      {"TOL-4, TOL-10 pull-up on: VDD + 0.3 V",
       "STM32F101 data sheet p. 52 note 1",
       Answer{5.0, five, 5.5, 2.0, pull_up(40e3), 3.6},
       {"overvoltage 5 limit 3.6 sometimes at J1.1 from VS | output 'Q' high | VS - J1.2 - BN - V - Q - BK - "
        "J1.1"}},
      {"TOL-4 pull-up off", "STM32F101 data sheet p. 52 note 1", Answer{5.0, five, 5.5, 2.0, {}, 3.6}, {}},
      {"TOL-7 5 V AVR: VCC + 0.5 V", "ATmega640/1280/2560 data sheet p. 370", Answer{5.5, five, 5.5}, {}},
  });
}

TEST_CASE("addressable LEDs") {
  const std::string sheet = "WS2812B data sheet p. 2; WS2812B data, seller's copy";
  const Receiver data = share_levels(0.3, 0.7);
  check({
      {"LED-1 VDD 5.0 V, data 3.3 V: short by 0.20 V",
       sheet,
       Send{3.3, 3.3, 5.0, data},
       {"level-high 3.3 limit 3.5 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"LED-2 VDD 4.5 V, data 3.3 V", sheet, Send{3.3, 3.3, 4.5, data}, {}},
      {"LED-3 the highest VDD for 3.3 V is 4.714 V", sheet, Send{3.3, 3.3, 4.714, data}, {}},
      {"LED-3 a little more",
       sheet,
       Send{3.3, 3.3, 4.72, data},
       {"level-high 3.3 limit 3.304 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"LED-3b guaranteed 3.1 V: 4.428 V", sheet, Send{3.1, 3.3, 4.428, data}, {}},
      {"LED-3b guaranteed 3.1 V at 4.5 V: nominally right, not guaranteed",
       sheet,
       Send{3.1, 3.3, 4.5, data},
       {"level-high 3.1 limit 3.15 sometimes at D receiver from J1.1 | J1.1 high | J1.1 - GN - D"}},
      {"LED-4 VDD 5.25 V: 3.675 V",
       sheet,
       Send{3.3, 3.3, 5.25, data},
       {"level-high 3.3 limit 3.675 at D receiver from J1.1 |  | J1.1 - GN - D"}},
      {"LED-5 through 74HCT", sheet, Send{4.4, 5.0, 5.0, data}, {}},
      {"input VDD + 0.5 V",
       sheet,
       Send{5.0, 5.0, 4.0, data},
       {"overvoltage 5 limit 4.5 sometimes at D from J1.1 | J1.1 high | J1.1 - GN - D"}},
      {"LED-6 on 12 V",
       sheet,
       [] { return feed(12, range(3.5, 5.3), 0.06); },
       {"supply-too-high 12 limit 5.3 at load from VS |  | VS - J1.1 - RD - V"}},
      {"LED-6 on 24 V",
       sheet,
       [] { return feed(24, range(3.5, 5.3), 0.06); },
       {"supply-too-high 24 limit 5.3 at load from VS |  | VS - J1.1 - RD - V"}},
      {"LED-7 30 LEDs of 60 mA at 4.4 V, pin for 1 A",
       "three LED-strip power guides",
       [] { return feed(4.4, range(3.5, 5.3), 1.8, 1.0); },
       {"pin-overcurrent 1.8 limit 1 at J1.1 from VS |  | VS - J1.1 - RD - V - G - BK - J1.2 - ground"}},
  });
}

TEST_CASE("proximity switches") {
  const std::string sheets = "sensor data sheets 911276_eng, NBB5-18GK50-E2-5M";
  const Driver pnp = driver(OutputKind::Sourcing, 3.0);
  const std::string from_supply =
      " sometimes at J1.1 from VS | output 'Q' on | VS - J1.2 - BN - V - Q - BK - J1.1";
  check({
      {"PRX-1 10-30 V sensor on 5 V",
       sheets,
       [] { return feed(5, range(10, 30), 0.015); },
       {"supply-too-low 5 limit 10 at load from VS |  | VS - J1.1 - RD - V"}},
      {"PRX-2 PNP at 24 V straight on an input",
       sheets,
       Answer{24, pnp, 3.6, 2.0, Pull{false, Ohms(100e3), {}}},
       {"overvoltage 24 limit 3.6" + from_supply}},
      {"PRX-3 divider 287k/31.6k: 24 V gives 2.38 V",
       "\"24V to 3.3V level conversion circuit\"",
       Answer{24, driver(OutputKind::Sourcing, 0), 3.6, 2.4, {}, {}, 287e3, 31.6e3},
       {"level-high 2.38 limit 2.4 at J1.1 from driver | output 'Q' on | VS - J1.2 - BN - V - Q - S - BK - "
        "J1.1"}},
      {"PRX-3 30 V gives 2.98 V",
       "\"24V to 3.3V level conversion circuit\"",
       Answer{30, driver(OutputKind::Sourcing, 0), 3.6, 3.0, {}, {}, 287e3, 31.6e3},
       {"level-high 2.976 limit 3 at J1.1 from driver | output 'Q' on | VS - J1.2 - BN - V - Q - S - BK - "
        "J1.1"}},
      {"PRX-4 divider 6.8k/1k at 24 V",
       "\"Sinking output switch\" thread",
       Answer{24, driver(OutputKind::Sourcing, 0), 3.6, 2.0, {}, {}, 6800, 1000},
       {}},
      {"PRX-4 at 30 V: 3.846 V",
       "\"Sinking output switch\" thread",
       Answer{30, driver(OutputKind::Sourcing, 0), 3.6, 2.0, {}, {}, 6800, 1000},
       {"overvoltage 3.846 limit 3.6 sometimes at J1.1 from VS | output 'Q' on | VS - J1.2 - BN - V - Q - S "
        "- BK - J1.1"}},
      {"PRX-5 divider for 24 V at 10 V, 3 V drop: 0.694 V",
       sheets,
       Answer{10, pnp, 3.6, 2.0, {}, {}, 287e3, 31.6e3},
       {"level-high 0.6943 limit 2 at J1.1 from driver | output 'Q' on | VS - J1.2 - BN - V - Q - S - BK - "
        "J1.1"}},
      {"PRX-6 NPN, 10 kohm to 3.3 V, leak 10 uA",
       sheets,
       Answer{24, driver(OutputKind::Sinking, 0.4, 10e-6), 3.6, 3.19, pull_up(10e3)},
       {}},
      {"PRX-6 leak 10 uA leaves 3.20 V",
       sheets,
       Answer{24, driver(OutputKind::Sinking, 0.4, 10e-6), 3.6, 3.21, pull_up(10e3)},
       {"level-high 3.2 limit 3.21 sometimes at J1.1 from driver | output 'Q' off | 3V3 - J1.1"}},
      {"PRX-6 leak 0.1 mA leaves 2.30 V",
       sheets,
       Answer{24, driver(OutputKind::Sinking, 0.4, 100e-6), 3.6, 2.31, pull_up(10e3)},
       {"level-high 2.3 limit 2.31 sometimes at J1.1 from driver | output 'Q' off | 3V3 - J1.1"}},
      {"PRX-6 leak 0.5 mA is not high",
       sheets,
       Answer{24, driver(OutputKind::Sinking, 0.4, 500e-6), 3.6, 2.0, pull_up(10e3)},
       {"level-high -0.001698 limit 2 sometimes at J1.1 from driver | output 'Q' off | ground - J1.3 - BU - "
        "G - Q - BK - J1.1"}},
      {"PRX-7 NPN with up to 2 V drop: low is not guaranteed",
       sheets,
       Answer{24, driver(OutputKind::Sinking, 1.9), 3.6, 2.0, pull_up(10e3)},
       {"level-low 1.9 limit 0.8 sometimes at J1.1 from driver | output 'Q' on | ground - J1.3 - BU - G - Q "
        "- BK - J1.1"}},
      {"PRX-8 NPN with its own 10 kohm to 24 V",
       "issue thread on inductive limit switches",
       Answer{24, driver(OutputKind::Sinking, 0.4, 0, 10e3), 3.6, 2.0, {}},
       {"overvoltage 24 limit 3.6 sometimes at J1.1 from VS | output 'Q' off | VS - J1.2 - BN - V - Q - BK - "
        "J1.1"}},
  });
}

TEST_CASE("four-wire fans") {
  const std::string spec = "4-Wire PWM Controlled Fans Specification pp. 9-10";
  const auto control = [](double withstands) {
    return [withstands] {
      Wiring w = ideal();
      w.rail("3V3", 3.3, 3.3);
      const int out = w.pin(PinFunction::Output, "3V3"), ground = w.pin(PinFunction::Ground);
      w.at(out).drive = DriveKind::OpenDrain;
      w.at(out).withstands = range(-0.3, withstands);
      w.at(out).low = Volts(0.0);
      const auto c = w.terminal("C", TerminalFunction::Input), v = w.terminal("V", TerminalFunction::Supply),
                 g = w.terminal("G", TerminalFunction::Ground);
      w.terminal_at(c).withstands = range(-0.3, 5.5);
      Receiver r = volts_levels(0.8, 2.0);
      r.terminal = c, r.plus = v, r.minus = g;
      r.open_circuit = Volts(5.25);
      r.pull = Ohms(1050);  // 5 mA when shorted
      w.part(r);
      w.wire(out, c, "BU");
      w.wire(ground, g, "BK");
      return w.judge();
    };
  };
  check({
      {"FAN-1 on 24 V",
       spec,
       [] { return feed(24, range(11.4, 12.6), 1.5); },
       {"supply-too-high 24 limit 12.6 at load from VS |  | VS - J1.1 - RD - V"}},
      {"12 V -5 %", spec, [] { return feed(11.4, range(11.4, 12.6), 1.5); }, {}},
      {"FAN-2 PWM lead on a pin for 3.6 V",
       spec,
       control(3.6),
       {"overvoltage 5.25 limit 3.6 sometimes at J1.1 from C | J1.1 high | C - BU - J1.1"}},
      {"PWM lead on an open drain that stands 5.25 V", spec, control(5.25), {}},
      {"FAN-3 tach with a pull-up of its own to 12 V",
       spec,
       Answer{12, driver(OutputKind::Sinking, 0.4, 0, 10e3), 3.6},
       {"overvoltage 12 limit 3.6 sometimes at J1.1 from VS | output 'Q' off | VS - J1.2 - BN - V - Q - BK - "
        "J1.1"}},
      {"FAN-3 cured: pulled up to 3.3 V on the board",
       spec,
       Answer{12, driver(OutputKind::Sinking, 0.4), 3.6, 2.0, pull_up(10e3)},
       {}},
  });
}

TEST_CASE("injected currents") {
  const std::string sheet = "STM32F107 data sheet p. 55";
  // VDD 3.3 V, the clamp conducts from VDD + 0.3 V on; 5 mA. R >= (Vin - 3.6 V) / 5 mA.
  const auto inject = [](double volts, double ohms) {
    return [volts, ohms] {
      Wiring w = ideal();
      w.defaults.diode = Ohms(1e-3);
      w.rail("VS", volts, volts);
      w.rail("3V3", 3.3, 3.3);
      const int supply = w.pin(PinFunction::Supply, "VS"), in = w.pin(PinFunction::Input, "3V3");
      w.at(in).analogue = true;
      w.at(in).clamp = Clamp{"3V3", Volts(0.3), Amps(0.005), {}};
      const auto a = w.terminal("A"), b = w.terminal("B");
      w.part(Resistor{a, b, Ohms(ohms), {}, {}});
      w.wire(supply, a, "RD");
      w.wire(in, b, "WH");
      return w.judge();
    };
  };
  const std::string way = " at J1.2 from VS |  | VS - J1.1 - RD - A - B - WH - J1.2";
  check({
      {"INJ-1 24 V through 4.08 kohm", sheet, inject(24, 4080), {}},
      {"INJ-1 24 V through 3.9 kohm", sheet, inject(24, 3900), {"clamp-current 0.005231 limit 0.005" + way}},
      {"INJ-2 5 V through 280 ohm", sheet, inject(5, 280), {}},
      {"INJ-2 5 V through 270 ohm", sheet, inject(5, 270), {"clamp-current 0.005185 limit 0.005" + way}},
      {"INJ-5 an output that feeds a 60 mA LED",
       "STM32F103x6 data sheet: 25 mA a pin",
       [] {
         Wiring w = ideal();
         const int out = w.pin(PinFunction::Output), ground = w.pin(PinFunction::Ground);
         w.at(out).high = range(3.3, 3.3);
         w.at(out).ohms = Ohms(5);
         w.at(out).limit = Amps(0.025);
         const auto a = w.terminal("A"), k = w.terminal("K");
         w.part(Resistor{a, k, Ohms(50), {}, {}});
         w.wire(out, a, "RD");
         w.wire(ground, k, "BK");
         return w.judge();
       },
       {"pin-overcurrent 0.06 limit 0.025 sometimes at J1.1 from J1.1 | J1.1 high | J1.1 - RD - A - K - BK - "
        "J1.2 - ground"}},
  });
}

TEST_CASE("limit switches") {
  // A change-over switch C, NO, NC on a header +5 V, G, S with a pull-up.
  const auto lever = [](int c_pin, int no_pin, int nc_pin) {
    return [=] {
      Wiring w;
      w.rail("5V", 5, 5).limit = Amps(1.0);
      const int v = w.pin(PinFunction::Supply, "5V"), g = w.pin(PinFunction::Ground),
                s = w.pin(PinFunction::Input, "5V");
      REQUIRE(v + g + s == 6);
      w.at(s).low_below = Volts(1.5);
      w.at(s).high_above = Volts(3.5);
      w.at(s).withstands = range(-0.5, 5.5);
      w.at(s).pull = pull_up(10e3);
      const auto c = w.terminal("C"), no = w.terminal("NO"), nc = w.terminal("NC");
      w.part(Switch{c, no, false, {}});
      w.part(Switch{c, nc, true, {}});
      if (c_pin > 0) w.wire(c_pin, c, "BK");
      if (no_pin > 0) w.wire(no_pin, no, "RD");
      if (nc_pin > 0) w.wire(nc_pin, nc, "WH");
      return w.judge();
    };
  };
  /// An optical switch V, G, S on the same header; `turned` puts S on +5 V and V on the input.
  const auto optical = [](bool turned, double withstands) {
    return [=] {
      Wiring w;
      w.rail("5V", 5, 5).limit = Amps(1.0);
      const int v_pin = w.pin(PinFunction::Supply, "5V"), g_pin = w.pin(PinFunction::Ground),
                s_pin = w.pin(PinFunction::Input, "5V");
      w.at(s_pin).low_below = Volts(0.8);
      w.at(s_pin).high_above = Volts(2.0);
      w.at(s_pin).withstands = range(-0.3, withstands);
      const auto v = w.terminal("V", TerminalFunction::Supply), g = w.terminal("G", TerminalFunction::Ground),
                 s = w.terminal("S", TerminalFunction::Output);
      Load load;
      load.plus = v, load.minus = g;
      load.needs = range(4.5, 5.5);
      load.draws = Amps(0.02);
      w.part(load);
      Driver d = driver(OutputKind::PushPull, 0.4);
      d.terminal = s, d.plus = v, d.minus = g;
      w.part(d);
      w.wire(turned ? s_pin : v_pin, v, "RD");
      w.wire(g_pin, g, "BK");
      w.wire(turned ? v_pin : s_pin, s, "GN");
      return w.judge();
    };
  };
  check({
      {"END-1 three wires straight: C on +5 V, NO on ground",
       "an assembly guide, pin order only",
       lever(1, 2, 3),
       {"short-circuit 26.32 limit 3 sometimes at J1.1 BK from 5V | switch C-NO closed | 5V - J1.1 - BK - C "
        "- NO "
        "- RD - J1.2 - ground",
        "stuck 5 limit 1.5 at J1.3 from switch |  | 5V - J1.1 - BK - C - NC - WH - J1.3"}},
      {"END-2 C on the signal, NC on ground, +5 V open", "an assembly guide", lever(3, 0, 2), {}},
      {"END-3 optical switch as it should be", "\"OptoEndstop 2.0\", RepRap wiki", optical(false, 5.5), {}},
      {"END-3 turned round",
       "\"OptoEndstop 2.0\", RepRap wiki",
       optical(true, 5.5),
       {"unknown-limit 5 limit 0.3 at S from 5V |  | 5V - J1.1 - GN - S",
        "supply-too-low 0 limit 4.5 at load from nothing |  | ground - J1.2 - BK - G - V",
        "short-circuit 4.386 limit 3 sometimes at J1.1 GN from 5V | output 'S' low | 5V - J1.1 - GN - S - G "
        "- BK - J1.2 - ground"}},
      {"END-4 5 V output on a 3.3 V input",
       "STM32F103x6 data sheet",
       optical(false, 3.6),
       {"overvoltage 4.999 limit 3.6 sometimes at J1.3 from 5V | output 'S' high | 5V - J1.1 - RD - V - S - "
        "GN - J1.3"}},
  });
}
