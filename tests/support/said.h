// SPDX-License-Identifier: MIT
// All that a harness or a loom says, field by field: how the tests tell that what was written reads back
// equal, without asking the writer.
//
//   same(*read.description.harness, harness)
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <tuple>
#include <type_traits>
#include <variant>
#include <vector>

#include "base/format.h"
#include "model/harness.h"
#include "model/harness_text.h"
#include "model/loom.h"

namespace plugward::test {

/// All that a value says, numbers apart: a computed one may need a digit more than a file holds.
struct Said {
  std::vector<std::string> words;
  std::vector<double> numbers;

  void add(const std::string& word) { words.push_back(word); }
  void add(int n) { words.push_back(format("{}", n)); }
  void add(double value) { numbers.push_back(value); }
  template <class Unit>
  void add(Quantity<Unit> value) {
    numbers.push_back(value.value);
  }
  template <class Q>
  void add(Range<Q> range) {
    add(range.min);
    add(range.max);
  }
  template <class T>
  void add(const std::optional<T>& value) {
    add(value ? 1 : 0);
    if (value) add(*value);
  }
  template <class E>
  requires std::is_enum_v<E>
  void add(E value) { add(static_cast<int>(value)); }
  template <class... All>
  void all(const All&... values) {
    (add(values), ...);
  }

  friend bool operator==(const Said& a, const Said& b) {
    return a.words == b.words && a.numbers.size() == b.numbers.size() &&
           std::equal(a.numbers.begin(), a.numbers.end(), b.numbers.begin(), [](double x, double y) {
             return std::abs(x - y) <= 1e-11 * std::max(std::abs(x), std::abs(y));
           });
  }
};

struct SayPart {
  Said& s;
  void operator()(const Load& p) const { s.all(p.plus, p.minus, p.needs, p.survives, p.draws, p.reversed, int{p.draws_stated}); }
  void operator()(const Heater& p) const { s.all(p.a, p.b, p.volts, p.watts); }
  void operator()(const Resistor& p) const { s.all(p.a, p.b, p.ohms, p.limit); }
  void operator()(const Switch& p) const { s.all(p.a, p.b, int{p.rests_closed}, int{p.rests_stated}); }
  void operator()(const Coil& p) const { s.all(p.a, p.b, p.ohms, p.amps); }
  void operator()(const TemperatureSensor& p) const { s.all(p.a, p.b, p.nominal, p.beta); }
  void operator()(const Driver& p) const {
    s.all(p.terminal, p.plus, p.minus, p.kind, p.drop, p.leak, p.pull, int{p.pull_stated}, p.limit,
          p.rests_on ? int{*p.rests_on} : 2);
  }
  void operator()(const Receiver& p) const {
    s.all(p.terminal, p.plus, p.minus, p.low_below, p.high_above, p.low_below_share, p.high_above_share,
          p.open_circuit, p.pull, p.pull_up ? int{*p.pull_up} : 2, p.above_supply);
  }
  void operator()(const Diode& p) const { s.all(p.anode, p.cathode, p.drop); }
  void operator()(const Join& p) const { s.all(p.a, p.b); }
  void operator()(const Source& p) const { s.all(p.plus, p.minus, p.volts); }
  void operator()(const Regulator& p) const { s.all(p.in, p.out, p.minus, p.volts, p.limit, p.needs); }
};

inline Said said(const Device& device) {
  Said s;
  s.all(device.id, device.title, device.use, device.kind, device.evidence);
  const std::vector<std::string> ids = terminal_ids(device);
  for (std::size_t t = 0; t < ids.size(); ++t) {
    const Terminal& terminal = device.terminals[t];
    s.all(ids[t], terminal.function, terminal.signal, int{terminal.optional}, int{terminal.inner},
          terminal.withstands);
  }
  for (const Part& part : device.parts) {
    s.add(std::string(part_word(part)));
    std::visit(SayPart{s}, part);
  }
  for (const CorePair& pair : device.pairs) s.all(pair.a, pair.b);
  if (device.leds) s.all(device.leds->count, device.leds->each, device.leds->brightness, device.leds->loop);
  return s;
}

inline Said said(const Plug& plug) {
  Said s;
  s.all(plug.id, plug.label, plug.family, plug.positions, plug.rows, plug.numbering, plug.key, plug.evidence);
  std::vector<Lead> leads = plug.leads;
  std::erase_if(leads, [](const Lead& lead) { return lead.cavity == 0; });
  std::sort(leads.begin(), leads.end(), [](const Lead& a, const Lead& b) { return a.cavity < b.cavity; });
  for (const Lead& lead : leads) {
    s.all(lead.cavity, to_code(lead.colour), lead.length, lead.mark);
    s.add(lead.gauge ? to_text(*lead.gauge) : std::string());
    s.add(lead.to ? format("{}.{}", lead.to->device, lead.to->terminal) : std::string("?"));
  }
  return s;
}

inline bool same(const Harness& a, const Harness& b) {
  const auto evidence = [](const Evidence& x, const Evidence& y) {
    return x.id == y.id && x.kind == y.kind && x.revision == y.revision && x.date == y.date &&
           x.note == y.note;
  };
  const auto equal = [](const auto& x, const auto& y) { return said(x) == said(y); };
  return a.id == b.id && a.title == b.title && a.evidence == b.evidence &&
         std::equal(a.evidences.begin(), a.evidences.end(), b.evidences.begin(), b.evidences.end(),
                    evidence) &&
         std::equal(a.devices.begin(), a.devices.end(), b.devices.begin(), b.devices.end(), equal) &&
         std::equal(a.plugs.begin(), a.plugs.end(), b.plugs.begin(), b.plugs.end(), equal);
}

// What a loom says, without where it says it.
inline auto said(const Evidence& e) {
  return std::tuple(e.id, e.kind, e.revision, e.date, e.note);
}
inline auto said(const FittedJumper& j) {
  return std::tuple(j.jumper, j.rail, j.evidence, j.note);
}
inline auto said(const LoomHarness& h) {
  return std::tuple(h.id, h.file, h.note);
}
inline auto said(const Seat& s) {
  return std::tuple(s.harness, s.plug, s.state, s.header, s.leads, s.evidence, s.note);
}
inline auto said(const LoomHeader& h) {
  return std::tuple(h.header, h.taken, h.evidence, h.note);
}

template <class T>
auto said(const std::vector<T>& list) {
  std::vector<decltype(said(list.front()))> all;
  for (const T& one : list) all.push_back(said(one));
  return all;
}

inline auto said(const Loom& l) {
  return std::tuple(l.id, l.title, l.board, l.evidence, l.note, said(l.evidences), said(l.jumpers),
                    said(l.harnesses), said(l.seats), said(l.headers));
}

inline bool same(const Loom& a, const Loom& b) {
  return said(a) == said(b);
}

}  // namespace plugward::test
