// SPDX-License-Identifier: MIT
// A device written out: terminals first, then the parts between them. One table row a kind of part.
// Nodes inside the device, feeds, regulators and what is known of an LED string are there so that a harness
// with parts built in can be written as a file (model/harness_text.h).
// Tested in tests/unit/reader/harness_reader_test.cpp.
#include <algorithm>
#include <array>

#include "base/format.h"
#include "reader/harness_reader.h"

namespace plugward {
namespace {

constexpr std::array<Word<TerminalFunction>, 8> terminal_functions{{{"supply", TerminalFunction::Supply},
                                                                    {"ground", TerminalFunction::Ground},
                                                                    {"return", TerminalFunction::Return},
                                                                    {"input", TerminalFunction::Input},
                                                                    {"output", TerminalFunction::Output},
                                                                    {"passive", TerminalFunction::Passive},
                                                                    {"spare", TerminalFunction::Spare},
                                                                    {"unknown", TerminalFunction::Unknown}}};
constexpr std::array<Word<Reversal>, 3> reversals{
    {{"destroyed", Reversal::Destroyed}, {"blocked", Reversal::Blocked}, {"harmless", Reversal::Harmless}}};
constexpr std::array<Word<OutputKind>, 3> output_kinds{{{"push-pull", OutputKind::PushPull},
                                                        {"sinking", OutputKind::Sinking},
                                                        {"sourcing", OutputKind::Sourcing}}};
constexpr std::array<Word<bool>, 2> rests_words{{{"closed", true}, {"open", false}}};
constexpr std::array<Word<bool>, 2> on_off{{{"on", true}, {"off", false}}};
constexpr std::array<Word<bool>, 2> pull_words{{{"plus", true}, {"minus", false}}};

/// What a part is read from: its attributes, and the terminals of its device.
class PartSource {
 public:
  PartSource(const Reading& reading, const Attributes& attributes, const Ids& terminals)
      : reading_(reading), attributes_(attributes), terminals_(terminals) {}

  const Attributes& attributes() const { return attributes_; }

  /// A terminal of the device; reported when it is not declared or the part already has it.
  TerminalIndex terminal(Key key) {
    const auto index = terminals_.resolve(reading_, attributes_, key);
    if (!index) return 0;
    for (const auto& [other, taken] : taken_) {
      if (taken != *index) continue;
      attributes_
          .conflict(key, format("'{}' and '{}' of one '{}' are the same terminal", key_name(other),
                                key_name(key), attributes_.element()))
          .note(attributes_.span(other), "first here");
      return *index;
    }
    taken_.emplace_back(key, *index);
    return *index;
  }

 private:
  const Reading& reading_;
  const Attributes& attributes_;
  const Ids& terminals_;
  std::vector<std::pair<Key, TerminalIndex>> taken_;
};

Part make_load(PartSource& source) {
  const TerminalIndex plus = source.terminal(Key::Plus);
  return read_load(source.attributes(), plus, source.terminal(Key::Minus));
}

Part make_heater(PartSource& source) {
  const Attributes& a = source.attributes();
  Heater heater;
  heater.a = source.terminal(Key::A);
  heater.b = source.terminal(Key::B);
  heater.volts = a.quantity<Volts>(Key::Volt, Sign::Positive).value_or(Volts{});
  heater.watts = a.quantity<Watts>(Key::Watt, Sign::Positive).value_or(Watts{});
  heater.span = a.element_span();
  return heater;
}

Part make_resistor(PartSource& source) {
  const Attributes& a = source.attributes();
  Resistor resistor;
  resistor.a = source.terminal(Key::A);
  resistor.b = source.terminal(Key::B);
  resistor.ohms = a.quantity<Ohms>(Key::Ohm, Sign::Positive).value_or(Ohms{});
  resistor.limit = a.quantity<Watts>(Key::Limit, Sign::Positive);
  resistor.span = a.element_span();
  return resistor;
}

Part make_switch(PartSource& source) {
  const Attributes& a = source.attributes();
  Switch made;
  made.a = source.terminal(Key::A);
  made.b = source.terminal(Key::B);
  made.rests_closed = a.one_of(Key::Rests, rests_words).value_or(false);
  made.rests_stated = a.written(Key::Rests);
  made.span = a.element_span();
  return made;
}

Part make_coil(PartSource& source) {
  const Attributes& a = source.attributes();
  Coil coil;
  coil.a = source.terminal(Key::A);
  coil.b = source.terminal(Key::B);
  coil.ohms = a.quantity<Ohms>(Key::Ohm, Sign::Positive).value_or(Ohms{});
  coil.amps = a.quantity<Amps>(Key::Ampere, Sign::Positive);
  coil.span = a.element_span();
  return coil;
}

Part make_temperature_sensor(PartSource& source) {
  const Attributes& a = source.attributes();
  TemperatureSensor sensor;
  sensor.a = source.terminal(Key::A);
  sensor.b = source.terminal(Key::B);
  sensor.nominal = a.quantity<Ohms>(Key::Ohm, Sign::Positive).value_or(Ohms{});
  sensor.beta = a.quantity<Kelvins>(Key::Beta, Sign::Positive);
  sensor.span = a.element_span();
  return sensor;
}

Part make_driver(PartSource& source) {
  const TerminalIndex terminal = source.terminal(Key::Terminal);
  const TerminalIndex plus = source.terminal(Key::Plus);
  return read_driver(source.attributes(), terminal, plus, source.terminal(Key::Minus));
}

Part make_receiver(PartSource& source) {
  const Attributes& a = source.attributes();
  Receiver receiver;
  receiver.terminal = source.terminal(Key::Terminal);
  receiver.plus = source.terminal(Key::Plus);
  receiver.minus = source.terminal(Key::Minus);
  receiver.low_below = a.quantity<Volts>(Key::LowBelow);
  receiver.high_above = a.quantity<Volts>(Key::HighAbove);
  receiver.low_below_share = a.share(Key::LowBelowShare);
  receiver.high_above_share = a.share(Key::HighAboveShare);
  receiver.open_circuit = a.quantity<Volts>(Key::OpenCircuit);
  receiver.pull = a.quantity<Ohms>(Key::Pull, Sign::Positive);
  receiver.pull_up = a.one_of(Key::PullTo, pull_words);
  receiver.above_supply = a.quantity<Volts>(Key::AboveSupply, Sign::NotNegative);
  receiver.span = a.element_span();
  const auto reversed = [&](Key low, Key high) {
    a.conflict(low, format("'{}' is not below '{}'", key_name(low), key_name(high)))
        .note(a.span(high), format("'{}' is stated here", key_name(high)));
  };
  if (receiver.low_below && receiver.high_above && *receiver.low_below > *receiver.high_above) {
    reversed(Key::LowBelow, Key::HighAbove);
  }
  if (receiver.low_below_share && receiver.high_above_share &&
      *receiver.low_below_share > *receiver.high_above_share) {
    reversed(Key::LowBelowShare, Key::HighAboveShare);
  }
  if (a.has(Key::PullTo) && a.has(Key::OpenCircuit)) {
    a.conflict(Key::PullTo, "'pull-to' and 'open-circuit' both say what the pull resistor goes to")
        .note(a.span(Key::OpenCircuit), "'open-circuit' is stated here")
        .help("keep 'open-circuit' when the level was measured, else 'pull-to'");
  }
  return receiver;
}

Part make_diode(PartSource& source) {
  const Attributes& a = source.attributes();
  Diode diode;
  diode.anode = source.terminal(Key::Anode);
  diode.cathode = source.terminal(Key::Cathode);
  diode.drop = a.quantity<Volts>(Key::Drop, Sign::Positive).value_or(diode.drop);
  diode.span = a.element_span();
  return diode;
}

Part make_join(PartSource& source) {
  Join made;
  made.a = source.terminal(Key::A);
  made.b = source.terminal(Key::B);
  made.span = source.attributes().element_span();
  return made;
}

Part make_source(PartSource& source) {
  const Attributes& a = source.attributes();
  Source made;
  made.plus = source.terminal(Key::Plus);
  made.minus = source.terminal(Key::Minus);
  made.volts = a.range<Volts>(Key::Volt, Sign::Positive).value_or(Range<Volts>{});
  made.span = a.element_span();
  return made;
}

/// What a terminal must be fed with that only added parts draw from.
Part make_feed(PartSource& source) {
  const Attributes& a = source.attributes();
  Load feed;
  feed.plus = source.terminal(Key::Terminal);
  feed.minus = feed.plus;
  feed.needs = a.range<Volts>(Key::Volt, Sign::NotNegative).value_or(Range<Volts>{});
  feed.reversed = Reversal::Harmless;
  feed.span = a.element_span();
  return feed;
}

Part make_regulator(PartSource& source) {
  const Attributes& a = source.attributes();
  Regulator made;
  made.in = source.terminal(Key::In);
  made.out = source.terminal(Key::Out);
  made.minus = source.terminal(Key::Minus);
  made.volts = a.range<Volts>(Key::Volt, Sign::Positive).value_or(Range<Volts>{});
  made.needs = a.range<Volts>(Key::Needs, Sign::Positive).value_or(Range<Volts>{});
  made.limit = a.quantity<Amps>(Key::Limit, Sign::Positive);
  made.span = a.element_span();
  return made;
}

struct PartRow {
  std::string_view element;
  KeySet required;
  KeySet optional;
  Part (*make)(PartSource&);
};

constexpr std::array<PartRow, 13> part_rows{{
    {"load", {Key::Plus, Key::Minus, Key::Needs}, {Key::Draws, Key::Survives, Key::Reversed}, make_load},
    {"heater", {Key::A, Key::B}, {Key::Volt, Key::Watt}, make_heater},
    {"resistor", {Key::A, Key::B, Key::Ohm}, {Key::Limit}, make_resistor},
    {"switch", {Key::A, Key::B}, {Key::Rests}, make_switch},
    {"coil", {Key::A, Key::B}, {Key::Ohm, Key::Ampere}, make_coil},
    {"temperature-sensor", {Key::A, Key::B}, {Key::Ohm, Key::Beta}, make_temperature_sensor},
    {"driver",
     {Key::Terminal, Key::Plus, Key::Minus, Key::Kind},
     {Key::Drop, Key::Leak, Key::Pull, Key::Limit, Key::Rests},
     make_driver},
    {"receiver",
     {Key::Terminal, Key::Plus, Key::Minus},
     {Key::LowBelow, Key::HighAbove, Key::LowBelowShare, Key::HighAboveShare, Key::OpenCircuit, Key::Pull,
      Key::PullTo, Key::AboveSupply},
     make_receiver},
    {"diode", {Key::Anode, Key::Cathode}, {Key::Drop}, make_diode},
    {"join", {Key::A, Key::B}, {}, make_join},
    {"source", {Key::Plus, Key::Minus, Key::Volt}, {}, make_source},
    {"regulator", {Key::In, Key::Out, Key::Minus, Key::Volt, Key::Needs}, {Key::Limit}, make_regulator},
    {"feed", {Key::Terminal, Key::Volt}, {}, make_feed},
}};

void read_terminal(const Reading& reading, XmlTree::Index index, Device& device, Ids& ids) {
  const Attributes a(reading, reading.tree.node(index), {Key::Id},
                     {Key::Function, Key::Signal, Key::Optional, Key::Inner, Key::Withstands});
  refuse_children(reading, index);
  const bool fresh = ids.declare(reading, a, static_cast<int>(device.terminals.size()));
  Terminal terminal;
  terminal.function = a.one_of(Key::Function, terminal_functions).value_or(TerminalFunction::Passive);
  terminal.signal = a.word(Key::Signal);
  terminal.optional = a.yes_no(Key::Optional).value_or(false);
  terminal.inner = a.yes_no(Key::Inner).value_or(false);
  terminal.withstands = a.range<Volts>(Key::Withstands);
  terminal.span = a.element_span();
  if (!fresh) return;
  terminal.id = a.id(Key::Id);
  device.terminals.push_back(std::move(terminal));
}

void read_leds(const Reading& reading, XmlTree::Index index, Device& device) {
  const Attributes a(reading, reading.tree.node(index), {Key::Count, Key::Each},
                     {Key::Brightness, Key::Loop});
  refuse_children(reading, index);
  if (device.leds) {
    reading.fault(Rule::Conflict, a.name_span(), "'leds' stands twice in one 'device'")
        .help("describe each string as a device of its own");
    return;
  }
  LedString leds;
  leds.count = a.number(Key::Count, 1, 10000).value_or(0);
  leds.each = a.quantity<Amps>(Key::Each, Sign::Positive).value_or(Amps{});
  leds.brightness = a.part_of_whole(Key::Brightness);
  leds.loop = a.quantity<Ohms>(Key::Loop, Sign::Positive);
  device.leds = leds;
}

/// Which of the common devices it is, but for a cable, whose cores are all there is to it; "" when it is none.
std::string read_kind(const Attributes& a) {
  std::array<Word<std::string_view>, shorthand_count - 1> kinds;
  std::size_t i = 0;
  for (const Shorthand& shorthand : all_shorthands()) {
    if (shorthand.element != "cable") kinds[i++] = {shorthand.element, shorthand.element};
  }
  return std::string(a.one_of(Key::Kind, kinds).value_or(""));
}

void refuse_device_child(const Reading& reading, const XmlNode& device, const XmlNode& child) {
  std::vector<std::string_view> names{"terminal"};
  for (const PartRow& row : part_rows) names.push_back(row.element);
  names.push_back("leds");
  refuse_child(reading, device, child, names);
}

}  // namespace

Load read_load(const Attributes& a, TerminalIndex plus, TerminalIndex minus) {
  Load load;
  load.plus = plus;
  load.minus = minus;
  const auto needs = a.range<Volts>(Key::Needs, Sign::Positive);
  load.needs = needs.value_or(Range<Volts>{});
  load.survives = a.quantity<Volts>(Key::Survives, Sign::Positive);
  load.draws = a.quantity<Amps>(Key::Draws, Sign::NotNegative).value_or(Amps{});
  load.draws_stated = a.written(Key::Draws);
  load.reversed = a.one_of(Key::Reversed, reversals).value_or(Reversal::Unknown);
  load.span = a.element_span();
  if (needs && load.survives && *load.survives < load.needs.max) {
    a.conflict(Key::Survives, format("it survives {} and yet needs up to {}", to_text(*load.survives),
                                     to_text(load.needs.max)))
        .note(a.span(Key::Needs), "'needs' is stated here")
        .help("'survives' is at least the upper end of 'needs'");
  }
  return load;
}

Driver read_driver(const Attributes& a, TerminalIndex terminal, TerminalIndex plus, TerminalIndex minus) {
  Driver driver;
  driver.terminal = terminal;
  driver.plus = plus;
  driver.minus = minus;
  const auto kind = a.one_of(Key::Kind, output_kinds);
  driver.kind = kind.value_or(OutputKind::PushPull);
  driver.drop = a.quantity<Volts>(Key::Drop, Sign::NotNegative);
  driver.leak = a.quantity<Amps>(Key::Leak, Sign::NotNegative);
  const bool no_pull = a.raw(Key::Pull) == "none";
  if (!no_pull) driver.pull = a.quantity<Ohms>(Key::Pull, Sign::Positive);
  driver.pull_stated = no_pull || driver.pull;
  driver.limit = a.quantity<Amps>(Key::Limit, Sign::Positive);
  driver.rests_on = a.one_of(Key::Rests, on_off);
  driver.span = a.element_span();
  if (kind == OutputKind::PushPull && a.has(Key::Pull)) {
    a.conflict(Key::Pull, "a push-pull output has no 'pull'")
        .note(a.span(Key::Kind), "the kind is stated here")
        .help("delete it, or state kind=\"sinking\" or \"sourcing\"");
  }
  return driver;
}

ReadDevice read_device(const Reading& reading, XmlTree::Index index, const Attributes& a) {
  const XmlNode& node = reading.tree.node(index);
  ReadDevice read;
  read.device.use = a.word(Key::Use);
  read.device.kind = read_kind(a);
  Ids ids("terminal");
  for (const XmlTree::Index child : reading.tree.children(index)) {
    if (reading.tree.node(child).name == "terminal") read_terminal(reading, child, read.device, ids);
  }
  for (const XmlTree::Index child : reading.tree.children(index)) {
    const XmlNode& part = reading.tree.node(child);
    if (part.name == "terminal") continue;
    if (part.name == "leds") {
      read_leds(reading, child, read.device);
      continue;
    }
    const auto row = std::find_if(part_rows.begin(), part_rows.end(),
                                  [&](const PartRow& candidate) { return candidate.element == part.name; });
    if (row == part_rows.end()) {
      refuse_device_child(reading, node, part);
      read.complete = read.complete && part.is_text();
      continue;
    }
    refuse_children(reading, child);
    const Attributes attributes(reading, part, row->required, row->optional);
    PartSource source(reading, attributes, ids);
    read.device.parts.push_back(row->make(source));
  }
  read.complete = read.complete && ids.complete();
  if (read.device.terminals.empty() && read.complete) {
    reading.fault(Rule::MissingElement, a.name_span(), format("device '{}' has no 'terminal'", a.id(Key::Id)))
        .help("declare each point of the device that a lead can go to as a 'terminal'");
    read.complete = false;
  }
  return read;
}

}  // namespace plugward
