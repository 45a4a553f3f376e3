// SPDX-License-Identifier: MIT
// What a device's parts are in the network. The table is in assembly.h.
#include <algorithm>

#include "circuit/assembly.h"

namespace plugward::circuit {
namespace {

using What = Change::What;

/// What a regulator that is off has at its output: the divider that senses it (common practice, no source).
constexpr double regulator_off_ohms = 10e3;

/// Adds one part; `branch` says afterwards where it is found again.
struct PartAdder {
  Circuit& c;
  PartBranch& branch;

  Node node(TerminalIndex t) const { return c.terminal(branch.device, t); }

  Knob knob() const {
    Knob k;
    k.at.device = branch.device;
    k.at.part = branch.part;
    return k;
  }

  void resistance(TerminalIndex a, TerminalIndex b, double ohms) {
    if (node(a) != node(b) && ohms > 0.0) branch.resistor = add_resistor(c, node(a), node(b), ohms);
  }

  void operator()(const Load& load) {
    const double ohms = load.draws.value > 0.0 ? load.needs.middle().value / load.draws.value : open_circuit;
    if (!(ohms > 0.0)) return;
    const CircuitDefaults& d = c.defaults;
    if (load.reversed == Reversal::Blocked) {
      branch.diode = add_diode(c, node(load.plus), node(load.minus), 0.0, ohms);
      return;
    }
    branch.resistor = add_resistor(c, node(load.plus), node(load.minus), ohms);
    if (load.reversed == Reversal::Harmless) return;
    branch.diode =
        add_diode(c, node(load.minus), node(load.plus), d.reverse_diode.value, d.reverse_ohms.value);
  }

  void operator()(const Heater& h) {
    if (h.watts.value > 0.0) resistance(h.a, h.b, h.volts.value * h.volts.value / h.watts.value);
  }
  void operator()(const Resistor& r) { resistance(r.a, r.b, r.ohms.value); }
  void operator()(const Coil& coil) { resistance(coil.a, coil.b, coil.ohms.value); }
  void operator()(const TemperatureSensor& s) { resistance(s.a, s.b, s.nominal.value); }
  void operator()(const Join& j) { resistance(j.a, j.b, c.defaults.join.value); }

  void operator()(const Switch& s) {
    resistance(s.a, s.b, open_circuit);
    if (branch.resistor < 0) return;
    Knob k = knob();
    k.base = s.rests_closed ? 1 : 0;
    k.choices = {
        {Position::Open, true, 0, {{What::ResistorOhms, branch.resistor, open_circuit}}},
        {Position::Closed, true, 0, {{What::ResistorOhms, branch.resistor, c.defaults.closed_switch.value}}}};
    branch.knob = add_knob(c, std::move(k));
  }

  void operator()(const Diode& d) {
    branch.diode = add_diode(c, node(d.anode), node(d.cathode), d.drop.value, c.defaults.diode.value);
  }

  void operator()(const Source& s) {
    const double ohms = c.defaults.source.value;
    branch.resistor = add_resistor(c, node(s.plus), node(s.minus), ohms);
    const int current = add_current(c, node(s.minus), node(s.plus), s.volts.max.value / ohms);
    Knob k = knob();
    k.choices.push_back(
        {Position::Level, true, s.volts.max.value, {{What::CurrentAmps, current, s.volts.max.value / ohms}}});
    if (s.volts.min != s.volts.max) {
      k.choices.push_back({Position::Level,
                           true,
                           s.volts.min.value,
                           {{What::CurrentAmps, current, s.volts.min.value / ohms}}});
    }
    branch.knob = add_knob(c, std::move(k));
    c.has_source = true;
  }

  /// Does a lead tie the terminal to ground itself?
  bool grounded(TerminalIndex t) const {
    return std::any_of(c.contacts.begin(), c.contacts.end(), [&](const ContactBranch& b) {
      return b.resistor >= 0 && b.terminal == TerminalRef{branch.device, t} &&
             c.pins[static_cast<std::size_t>(b.pin)].pin->function == PinFunction::Ground;
    });
  }

  /// What the loads fed by `plus` draw together.
  double drawn_from(TerminalIndex plus) const {
    double amps = 0;
    for (const Part& part : c.device(branch.device).parts) {
      const auto* load = std::get_if<Load>(&part);
      if (load != nullptr && load->plus == plus) amps += load->draws.value;
    }
    return amps;
  }

  void operator()(const Regulator& r) {
    const double ohms = c.defaults.source.value;
    branch.resistor = add_resistor(c, node(r.out), node(r.minus), open_circuit);
    const int current = add_current(c, node(r.minus), node(r.out), 0.0);
    Knob k = knob();
    k.on_board = true;
    k.choices.push_back(
        {Position::Off,
         true,
         0,
         {{What::ResistorOhms, branch.resistor, regulator_off_ohms}, {What::CurrentAmps, current, 0.0}}});
    k.choices.back().with_power = !grounded(r.minus);
    const auto give = [&](Volts volts) {
      k.choices.push_back(
          {Position::Level,
           true,
           volts.value,
           {{What::ResistorOhms, branch.resistor, ohms}, {What::CurrentAmps, current, volts.value / ohms}}});
    };
    give(r.volts.max);
    if (r.volts.min != r.volts.max) give(r.volts.min);
    k.base = 1;
    branch.knob = add_knob(c, std::move(k));
    const double amps = drawn_from(r.out);
    if (amps > 0.0) add_resistor(c, node(r.in), node(r.minus), r.needs.middle().value / amps);
  }

  /// A stage that conducts from `from` to `to`; its choices are put into `k` with `on` as their position.
  int stage(Knob& k, Node from, Node to, const Driver& d, Position on) {
    const int diode = add_diode(c, from, to, 0.0, open_circuit);
    const double ohms = c.defaults.driver.value;
    const double drop = d.drop.value_or(c.defaults.driver_drop).value;
    k.choices.push_back({on, true, 0, {{What::DiodeOhms, diode, ohms}, {What::DiodeDrop, diode, 0.0}}});
    if (drop > 0.0) {
      k.choices.push_back({on, true, 0, {{What::DiodeOhms, diode, ohms}, {What::DiodeDrop, diode, drop}}});
    }
    return diode;
  }

  void operator()(const Driver& d) {
    const Node t = node(d.terminal), plus = node(d.plus), minus = node(d.minus);
    Knob k = knob();
    if (d.kind == OutputKind::PushPull) {
      branch.diode = stage(k, t, minus, d, Position::Low);
      const std::size_t lows = k.choices.size();
      branch.high_diode = stage(k, plus, t, d, Position::High);
      for (std::size_t i = 0; i < k.choices.size(); ++i) {
        const int other = i < lows ? branch.high_diode : branch.diode;
        k.choices[i].changes.push_back({What::DiodeOhms, other, open_circuit});
      }
      k.base = d.rests_on.value_or(false) ? static_cast<int>(lows) : 0;
      branch.knob = add_knob(c, std::move(k));
      return;
    }
    const bool sinks = d.kind == OutputKind::Sinking;
    const Node from = sinks ? t : plus, to = sinks ? minus : t;
    k.choices.push_back({Position::Off, true, 0, {}});
    const double leak = d.leak.value_or(Amps{}).value;
    const bool leaks = leak > 0.0;
    if (leaks) k.choices.push_back(k.choices.front());
    branch.diode = stage(k, from, to, d, Position::On);
    const int current = leaks ? add_current(c, from, to, 0.0) : -1;
    const int body = leaks ? add_diode(c, to, from, 0.0, open_circuit) : -1;
    for (std::size_t i = 0; i < k.choices.size(); ++i) {
      Choice& choice = k.choices[i];
      if (choice.position == Position::Off) {
        choice.changes.push_back({What::DiodeOhms, branch.diode, open_circuit});
      }
      if (!leaks) continue;
      const bool leaking = i == 1;
      choice.changes.push_back({What::CurrentAmps, current, leaking ? leak : 0.0});
      choice.changes.push_back(
          {What::DiodeOhms, body, leaking ? c.defaults.driver_body.value : open_circuit});
    }
    if (d.rests_on.value_or(false)) k.base = static_cast<int>(k.choices.size()) - 1;
    branch.knob = add_knob(c, std::move(k));
    if (d.pull && d.pull->value > 0.0) add_resistor(c, t, sinks ? plus : minus, d.pull->value);
  }

  void operator()(const Receiver& r) {
    const Node t = node(r.terminal), minus = node(r.minus);
    if (r.open_circuit) {
      const double ohms = r.pull.value_or(c.defaults.receiver_pull).value;
      if (!(ohms > 0.0)) return;
      add_resistor(c, t, minus, ohms);
      add_current(c, minus, t, r.open_circuit->value / ohms);
    } else if (r.pull || r.pull_up) {
      const double ohms = r.pull.value_or(c.defaults.pull).value;
      if (ohms > 0.0) add_resistor(c, t, r.pull_up.value_or(false) ? node(r.plus) : minus, ohms);
    }
  }
};

}  // namespace

void add_device(Circuit& c, int device) {
  const auto& parts = c.device(device).parts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    PartBranch branch;
    branch.device = device;
    branch.part = static_cast<int>(i);
    std::visit(PartAdder{c, branch}, parts[i]);
    c.parts.push_back(branch);
  }
}

}  // namespace plugward::circuit
