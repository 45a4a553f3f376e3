// SPDX-License-Identifier: MIT
// Common devices in one line. Each row says which attributes the line takes; its function adds the terminals
// and parts that the line stands for. Every place of what it adds is the one line. Tested in
// tests/unit/reader/shorthand_test.cpp.
#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include "base/format.h"
#include "reader/harness_reader.h"

namespace plugward {
namespace {

constexpr std::array<Word<bool>, 2> rests_words{{{"closed", true}, {"open", false}}};
constexpr std::array<Word<OutputKind>, 2> sensor_kinds{
    {{"sinking", OutputKind::Sinking}, {"sourcing", OutputKind::Sourcing}}};
constexpr int most_cores = 200;  // as many as a plug may have positions
constexpr Amps one_led{0.06};  ///< full white, highest of three power guides for addressable LED strips

TerminalIndex add_terminal(const Attributes& a, Device& device, std::string_view id,
                           TerminalFunction function, std::string_view signal = "", bool optional = false) {
  Terminal terminal;
  terminal.id = id;
  terminal.function = function;
  terminal.signal = signal;
  terminal.optional = optional;
  terminal.span = a.element_span();
  device.terminals.push_back(std::move(terminal));
  return static_cast<TerminalIndex>(device.terminals.size()) - 1;
}

/// The word of an attribute, or `otherwise` when it is absent.
std::string word_or(const Attributes& a, Key key, std::string_view otherwise) {
  return std::string(a.has(key) ? a.word(key) : otherwise);
}

void add_switch(const Attributes& a, Device& device, TerminalIndex one, TerminalIndex other) {
  Switch part;
  part.a = one;
  part.b = other;
  part.rests_closed = a.one_of(Key::Rests, rests_words).value_or(false);
  part.rests_stated = a.written(Key::Rests);
  part.span = a.element_span();
  device.parts.emplace_back(part);
}

void expand_dry_switch(const Attributes& a, Device& device) {
  device.use = a.word(Key::Use);
  const std::string signal = word_or(a, Key::Signal, device.use);
  const TerminalIndex one = add_terminal(a, device, "A", TerminalFunction::Passive, signal);
  add_switch(a, device, one, add_terminal(a, device, "B", TerminalFunction::Passive, signal));
}

/// What the device needs and draws; of what is not known at all, nothing is said.
void add_load(const Attributes& a, Device& device, TerminalIndex plus, TerminalIndex minus) {
  const Load load = read_load(a, plus, minus);  // for its faults, too
  if (a.written(Key::Needs)) device.parts.emplace_back(load);
}

/// Speed sense: open collector, and control: pulled up inside the fan to at most 5.25 V, at most 5 mA when
/// shorted
/// ("4-Wire PWM Controlled Fans Specification", pages 9 and 10). Both may stay open: the fan then runs at
/// full speed.
void expand_fan(const Attributes& a, Device& device) {
  device.use = "fan";
  const TerminalIndex plus = add_terminal(a, device, "V", TerminalFunction::Supply);
  const TerminalIndex minus = add_terminal(a, device, "G", TerminalFunction::Return);
  add_load(a, device, plus, minus);
  if (a.yes_no(Key::Sense).value_or(false)) {
    Driver sense;
    sense.terminal = add_terminal(a, device, "S", TerminalFunction::Output, "tach", true);
    sense.plus = plus;
    sense.minus = minus;
    sense.kind = OutputKind::Sinking;
    sense.pull_stated = true;  // the board has to pull it up
    sense.span = a.element_span();
    device.parts.emplace_back(sense);
  }
  if (a.yes_no(Key::Control).value_or(false)) {
    Receiver control;
    control.terminal = add_terminal(a, device, "C", TerminalFunction::Input, "pwm", true);
    control.plus = plus;
    control.minus = minus;
    control.low_below = Volts(0.8);
    control.open_circuit = Volts(5.25);
    control.pull = Volts(5.25) / Amps(0.005);
    control.span = a.element_span();
    device.parts.emplace_back(control);
  }
}

void expand_heater_element(const Attributes& a, Device& device) {
  device.use = word_or(a, Key::Use, "heater");
  Heater heater;
  heater.a = add_terminal(a, device, "A", TerminalFunction::Passive);
  heater.b = add_terminal(a, device, "B", TerminalFunction::Passive);
  heater.volts = a.quantity<Volts>(Key::Volt, Sign::Positive).value_or(Volts{});
  heater.watts = a.quantity<Watts>(Key::Watt, Sign::Positive).value_or(Watts{});
  heater.span = a.element_span();
  device.parts.emplace_back(heater);
}

void expand_thermistor(const Attributes& a, Device& device) {
  device.use = "thermistor";
  TemperatureSensor sensor;
  sensor.a = add_terminal(a, device, "A", TerminalFunction::Passive, "temperature");
  sensor.b = add_terminal(a, device, "B", TerminalFunction::Passive, "temperature");
  sensor.nominal = a.quantity<Ohms>(Key::Ohm, Sign::Positive).value_or(Ohms{});
  sensor.beta = a.quantity<Kelvins>(Key::Beta, Sign::Positive);
  sensor.span = a.element_span();
  device.parts.emplace_back(sensor);
}

void expand_motor(const Attributes& a, Device& device) {
  device.use = "motor";
  Coil winding;
  winding.ohms = a.quantity<Ohms>(Key::Ohm, Sign::Positive).value_or(Ohms{});
  winding.amps = a.quantity<Amps>(Key::Ampere, Sign::Positive);
  winding.span = a.element_span();
  using Ends = std::array<std::string_view, 2>;
  for (const Ends& ends : {Ends{"A1", "B1"}, Ends{"A2", "B2"}}) {
    winding.a = add_terminal(a, device, ends[0], TerminalFunction::Passive);
    winding.b = add_terminal(a, device, ends[1], TerminalFunction::Passive);
    device.parts.emplace_back(winding);
  }
}

/// Thresholds 0.3 and 0.7 of the supply, input up to 0.5 V above it, supply 3.5..5.3 V (WS2812B data sheet).
/// That it stands a reversed supply is a claim of that sheet nobody should rely on.
void expand_led_string(const Attributes& a, Device& device) {
  device.use = "led";
  const TerminalIndex plus = add_terminal(a, device, "V", TerminalFunction::Supply);
  const TerminalIndex data = add_terminal(a, device, "D", TerminalFunction::Input, "led-data");
  const TerminalIndex minus = add_terminal(a, device, "G", TerminalFunction::Ground);
  if (a.yes_no(Key::Out).value_or(false)) {
    add_terminal(a, device, "Q", TerminalFunction::Spare, "led-data", true);
  }
  Load load;
  load.plus = plus;
  load.minus = minus;
  load.needs = a.range<Volts>(Key::Needs, Sign::Positive).value_or(Range<Volts>{Volts(3.5), Volts(5.3)});
  const Amps each = a.quantity<Amps>(Key::Each, Sign::Positive).value_or(one_led);
  LedString leds;
  leds.count = a.number(Key::Count, 1, 10000).value_or(0);
  leds.each = each;
  leds.brightness = a.part_of_whole(Key::Brightness);
  leds.loop = a.quantity<Ohms>(Key::Loop, Sign::Positive);
  load.draws = each * (static_cast<double>(leds.count) * leds.brightness.value_or(1.0));
  load.draws_stated = a.written(Key::Count);
  if (load.draws_stated) device.leds = leds;
  load.reversed = Reversal::Destroyed;
  load.span = a.element_span();
  device.parts.emplace_back(load);
  Receiver receiver;
  receiver.terminal = data;
  receiver.plus = plus;
  receiver.minus = minus;
  receiver.low_below_share = 0.3;
  receiver.high_above_share = 0.7;
  receiver.above_supply = Volts(0.5);
  receiver.span = a.element_span();
  device.parts.emplace_back(receiver);
}

/// Common plus, one minus a colour. LEDs block a reversed supply (common practice, no source).
void expand_rgb_strip(const Attributes& a, Device& device) {
  device.use = "led";
  struct Channel {
    std::string_view id;
    std::string_view signal;
  };
  Load load;
  load.plus = add_terminal(a, device, "V", TerminalFunction::Supply);
  load.needs = a.range<Volts>(Key::Volt, Sign::Positive).value_or(Range<Volts>{});
  load.draws = a.quantity<Amps>(Key::Draws, Sign::Positive).value_or(Amps{});
  load.draws_stated = a.written(Key::Draws);
  load.reversed = Reversal::Blocked;
  load.span = a.element_span();
  for (const Channel& channel : {Channel{"R", "red"}, Channel{"G", "green"}, Channel{"B", "blue"}}) {
    load.minus = add_terminal(a, device, channel.id, TerminalFunction::Return, channel.signal);
    if (a.written(Key::Volt)) device.parts.emplace_back(load);
  }
}

/// A servo on V, G and P, and a dry contact between T and H; the two grounds are one inside the probe.
void expand_servo_probe(const Attributes& a, Device& device) {
  device.use = "probe";
  const TerminalIndex plus = add_terminal(a, device, "V", TerminalFunction::Supply);
  const TerminalIndex minus = add_terminal(a, device, "G", TerminalFunction::Ground);
  const TerminalIndex pulse = add_terminal(a, device, "P", TerminalFunction::Input, "servo");
  device.terminals.back().withstands =
      a.range<Volts>(Key::Withstands).value_or(Range<Volts>{Volts(-0.3), Volts(5.5)});
  const TerminalIndex trigger = add_terminal(a, device, "T", TerminalFunction::Output, "probe");
  const TerminalIndex other = add_terminal(a, device, "H", TerminalFunction::Ground);
  add_load(a, device, plus, minus);
  Receiver receiver;
  receiver.terminal = pulse;
  receiver.plus = plus;
  receiver.minus = minus;
  receiver.low_below = Volts(0.8);
  receiver.high_above = Volts(2.0);
  receiver.span = a.element_span();
  device.parts.emplace_back(receiver);
  add_switch(a, device, trigger, other);
  std::get<Switch>(device.parts.back()).rests_stated = true;  // open, where nothing is said
  device.parts.emplace_back(Join{minus, other, a.element_span()});
}

/// Electronics between V and G and an output Q, of which nothing is said when its kind is not known.
void expand_sensor(const Attributes& a, Device& device, std::string_view use, std::string_view output,
                   std::optional<OutputKind> kind) {
  device.use = word_or(a, Key::Use, use);
  const std::string signal = word_or(a, Key::Signal, device.use);
  const TerminalIndex plus = add_terminal(a, device, "V", TerminalFunction::Supply);
  const TerminalIndex minus = add_terminal(a, device, "G", TerminalFunction::Ground);
  const TerminalIndex out = add_terminal(a, device, output, TerminalFunction::Output, signal);
  add_load(a, device, plus, minus);
  if (!kind) return;
  Driver driver = read_driver(a, out, plus, minus);
  driver.kind = *kind;
  device.parts.emplace_back(driver);
}

void expand_proximity(const Attributes& a, Device& device) {
  std::optional<OutputKind> kind = a.one_of(Key::Kind, sensor_kinds);
  if (!kind && a.written(Key::Kind)) kind = OutputKind::Sinking;
  expand_sensor(a, device, "sensor", "Q", kind);
}

/// Drives its output up to its own supply (older boards read high when the beam is cut: "OptoEndstop 2.0",
/// RepRap wiki).
void expand_optical_switch(const Attributes& a, Device& device) {
  expand_sensor(a, device, "limit", "S", OutputKind::PushPull);
}

/// The core whose number begins `text`, which then begins behind it; 0: none of the cable's.
int take_core(std::string_view& text, int cores) {
  int core = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), core);
  if (error != std::errc() || core < 1 || core > cores || text.starts_with('0')) return 0;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return core;
}

/// "1-2 3-6": two cores with a '-' between them, each core in one pair at most.
std::vector<CorePair> read_core_pairs(const Attributes& a, int cores) {
  std::vector<CorePair> pairs;
  std::vector<bool> taken(static_cast<std::size_t>(cores) + 1, false);
  const std::string_view text = a.text(Key::Pairs);
  if (cores == 0 || text.empty()) return pairs;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::string_view word = text.substr(begin, text.find(' ', begin) - begin);
    std::string_view left = word;
    const int one = take_core(left, cores);
    const bool dash = left.starts_with('-');
    if (dash) left.remove_prefix(1);
    const int other = dash ? take_core(left, cores) : 0;
    if (one == 0 || other == 0 || one == other || !left.empty()) {
      a.conflict(Key::Pairs, format("'{}' is not a pair of two cores from 1 to {}", word, cores))
          .help("write pairs as \"1-2 3-6\"");
      return {};
    }
    for (const int core : {one, other}) {
      if (taken[static_cast<std::size_t>(core)]) {
        a.conflict(Key::Pairs, format("core {} stands in two pairs", core))
            .help("name each core once");
        return {};
      }
      taken[static_cast<std::size_t>(core)] = true;
    }
    pairs.push_back({std::min(one, other) - 1, std::max(one, other) - 1});
    begin += word.size() + 1;
  }
  return pairs;
}

/// Cores by number. What each is for depends on what the other end is plugged on: not known.
void expand_cable(const Attributes& a, Device& device) {
  const int cores = a.number(Key::Cores, 1, most_cores).value_or(0);
  for (int core = 1; core <= cores; ++core) {
    add_terminal(a, device, format("{}", core), TerminalFunction::Unknown);
  }
  if (a.has(Key::Pairs)) device.pairs = read_core_pairs(a, cores);
}

constexpr std::array<Shorthand, shorthand_count> shorthands{{
    {"cable", {Key::Cores}, {Key::Pairs}, expand_cable},
    {"dry-switch", {Key::Use}, {Key::Signal, Key::Rests}, expand_dry_switch},
    {"fan",
     {},
     {Key::Needs, Key::Draws, Key::Survives, Key::Reversed, Key::Sense, Key::Control},
     expand_fan},
    {"heater-element", {}, {Key::Volt, Key::Watt, Key::Use}, expand_heater_element},
    {"thermistor", {}, {Key::Ohm, Key::Beta}, expand_thermistor},
    {"motor", {}, {Key::Ohm, Key::Ampere}, expand_motor},
    {"led-string",
     {},
     {Key::Count, Key::Each, Key::Needs, Key::Out, Key::Brightness, Key::Loop},
     expand_led_string},
    {"rgb-strip", {}, {Key::Volt, Key::Draws}, expand_rgb_strip},
    {"servo-probe",
     {},
     {Key::Needs, Key::Draws, Key::Withstands, Key::Reversed, Key::Rests},
     expand_servo_probe},
    {"proximity",
     {},
     {Key::Kind, Key::Needs, Key::Draws, Key::Use, Key::Signal, Key::Drop, Key::Leak, Key::Pull, Key::Limit, Key::Rests},
     expand_proximity},
    {"optical-switch", {}, {Key::Needs, Key::Draws, Key::Use, Key::Signal, Key::Rests}, expand_optical_switch},
}};

}  // namespace

const Shorthand* find_shorthand(std::string_view element) {
  const auto row = std::find_if(shorthands.begin(), shorthands.end(),
                                [&](const Shorthand& candidate) { return candidate.element == element; });
  return row == shorthands.end() ? nullptr : &*row;
}

std::span<const Shorthand, shorthand_count> all_shorthands() {
  return shorthands;
}

}  // namespace plugward
