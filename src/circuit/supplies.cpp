// SPDX-License-Identifier: MIT
// What loads and heaters get.
#include <algorithm>
#include <cmath>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

constexpr double no_volts = 1e-6;  // what leaks alone bring about

Excess excess_at(const Solved& s, ExcessKind kind, const PartBranch& branch, const Extreme& worst,
                 Node victim, Side side) {
  Excess e;
  e.kind = kind;
  e.at = part_locus(branch);
  for (const Where& w : worst.where) {
    if (w.island != s.island_of[at(victim)]) continue;
    const Path path = path_to(s, w, victim, side);
    e.path = path.words;
    e.from = path.source;
  }
  return e;
}

void judge_low_supply(const Solved& s, Excesses& found, const PartBranch& branch, const Load& load,
                      const Probe& probe, Node plus) {
  const double least = load.needs.min.value;
  const auto bad = [&](double v) { return v < least - s.circuit.defaults.margin.value; };
  bool any = false, all = true;
  Extreme worst;
  for (const std::uint64_t corner : corners(s, probe)) {
    const Extreme best = extreme(s, probe, Side::Highest, [&](int, const Island& island, int state) {
      return island.states[at(state)].powered &&
             island.states[at(state)].corner == (corner & island.rail_mask);
    });
    if (!best.found) continue;
    all &= bad(best.value);
    if (!bad(best.value)) continue;
    if (!any || best.value < worst.value) worst = best;
    any = true;
  }
  if (!any) return;
  Excess e = excess_at(s, ExcessKind::SupplyTooLow, branch, worst, plus, Side::Highest);
  e.value = std::abs(worst.value) < no_volts ? 0.0 : worst.value;
  e.limit = least;
  e.always = all;
  // At its best there is nothing to be said about switches, only about the rails.
  if (!all) e.state = words_of(s, probe, worst, bad, powered);
  found.add(e);
}

}  // namespace

void judge_load(const Solved& s, Excesses& found, const PartBranch& branch, const Load& load) {
  const Circuit& c = s.circuit;
  if (!touched(c, branch.device, load.plus) && !touched(c, branch.device, load.minus)) return;
  const Node plus = c.terminal(branch.device, load.plus), minus = c.terminal(branch.device, load.minus);
  const Probe probe = {{plus, 1.0}, {minus, -1.0}};

  const auto reversed = [&](double v) { return v < -c.defaults.reversed_beyond.value; };
  const Extreme lowest = extreme(s, probe, Side::Lowest);
  const Extreme highest = extreme(s, probe, Side::Highest);
  if (!lowest.found) return;
  const bool is_reversed = load.reversed != Reversal::Harmless && reversed(lowest.value);
  if (is_reversed) {
    Excess e = excess_at(s, ExcessKind::ReversedSupply, branch, lowest, minus, Side::Highest);
    e.value = lowest.value;
    e.always = reversed(highest.value);
    e.state = words_of(s, probe, lowest, reversed);
    found.add(e);
  }
  const double most = load.survives.value_or(load.needs.max).value;
  const auto too_high = [&](double v) { return v > most + c.defaults.margin.value; };
  if (too_high(highest.value)) {
    Excess e = excess_at(s, ExcessKind::SupplyTooHigh, branch, highest, plus, Side::Highest);
    e.value = highest.value;
    e.limit = most;
    e.always = too_high(lowest.value);
    e.state = words_of(s, probe, highest, too_high);
    found.add(e);
  }
  // Where the reversal may already have destroyed it there is no use in saying that it does not run.
  if (!is_reversed || load.reversed == Reversal::Blocked)
    judge_low_supply(s, found, branch, load, probe, plus);
}

namespace {

bool at_rest(int, const Island& island, int state) {
  return island.states[at(state)].rest && island.states[at(state)].powered;
}

/// A heater has no polarity: the probe whose extreme is the largest voltage either way.
struct HeaterVolts {
  Probe probe;
  Extreme most;
};

HeaterVolts largest(const Solved& s, Node a, Node b, const Filter& filter) {
  const Probe forward = {{a, 1.0}, {b, -1.0}}, backward = {{a, -1.0}, {b, 1.0}};
  const Extreme f = extreme(s, forward, Side::Highest, filter);
  const Extreme r = extreme(s, backward, Side::Highest, filter);
  return f.value >= r.value ? HeaterVolts{forward, f} : HeaterVolts{backward, r};
}

void judge_heater(const Solved& s, Excesses& found, const PartBranch& branch, const Heater& heater) {
  const Circuit& c = s.circuit;
  if (branch.resistor < 0 || !(heater.volts.value > 0.0) || !(heater.watts.value > 0.0)) return;
  const bool a_touched = touched(c, branch.device, heater.a), b_touched = touched(c, branch.device, heater.b);
  if (!a_touched && !b_touched) return;
  const double ohms = heater.volts.value * heater.volts.value / heater.watts.value;
  const double rated = heater.watts.value;
  const Node a = c.terminal(branch.device, heater.a), b = c.terminal(branch.device, heater.b);
  const auto watts = [&](double v) { return v > 0.0 ? v * v / ohms : 0.0; };

  const HeaterVolts any = largest(s, a, b, {});
  const auto report = [&](ExcessKind kind, const HeaterVolts& at_most, double limit, auto bad,
                          const Filter& filter) {
    const Node hot = at_most.probe.front().weight > 0.0 ? a : b;
    Excess e = excess_at(s, kind, branch, at_most.most, hot, Side::Highest);
    e.value = watts(at_most.most.value);
    e.limit = limit;
    if (kind != ExcessKind::HeaterTooWeak) {
      e.state = words_of(s, at_most.probe, at_most.most, bad, filter);
      e.always = bad(extreme(s, at_most.probe, Side::Lowest, filter).value);
    }
    found.add(e);
  };
  const double strong = c.defaults.heater_over * rated;
  if (any.most.found && watts(any.most.value) > strong) {
    report(ExcessKind::HeaterTooStrong, any, strong, [&](double v) { return watts(v) > strong; }, {});
  }
  const double weak = c.defaults.heater_under * rated;
  if (a_touched && b_touched && watts(any.most.value) < weak) {
    report(ExcessKind::HeaterTooWeak, any, weak, [&](double v) { return watts(v) < weak; }, {});
  }
  const HeaterVolts rest = largest(s, a, b, at_rest);
  const double off = c.defaults.heater_off * rated;
  if (rest.most.found && watts(rest.most.value) > off) {
    report(
        ExcessKind::AlwaysOn, rest, off, [&](double v) { return watts(v) > off; }, at_rest);
  }
}

/// A lead of a heater, or of a relay before one, on a switched output whose state at reset is not stated.
void judge_reset(const Solved& s, Excesses& found, const PartBranch& branch, TerminalIndex a,
                 TerminalIndex b) {
  const Circuit& c = s.circuit;
  for (const ContactBranch& contact : c.contacts) {
    if (contact.resistor < 0 || contact.terminal.device != branch.device) continue;
    if (contact.terminal.terminal != a && contact.terminal.terminal != b) continue;
    const TouchedPin& pin = c.pins[at(contact.pin)];
    if (pin.pin->function != PinFunction::Switched || pin.pin->on_at_reset) continue;
    Excess e;
    e.kind = ExcessKind::ResetUnknown;
    e.at = part_locus(branch);
    e.from = pin_locus(pin);
    found.add(e);
  }
}

/// A relay before a heater that is fed while nothing is switched on. On ground and on a switched output the
/// match of functions speaks of it.
void judge_relay(const Solved& s, Excesses& found, const PartBranch& branch, const Load& load) {
  const Circuit& c = s.circuit;
  for (const ContactBranch& contact : c.contacts) {
    if (contact.resistor < 0 || contact.terminal != TerminalRef{branch.device, load.minus}) continue;
    const PinFunction function = c.pins[at(contact.pin)].pin->function;
    if (function == PinFunction::Ground || function == PinFunction::Switched) return;
  }
  const Node plus = c.terminal(branch.device, load.plus), minus = c.terminal(branch.device, load.minus);
  const Extreme rest = extreme(s, {{plus, 1.0}, {minus, -1.0}}, Side::Highest, at_rest);
  if (!rest.found || rest.value < load.needs.min.value) return;
  Excess e = excess_at(s, ExcessKind::AlwaysOn, branch, rest, plus, Side::Highest);
  e.value = rest.value;
  e.limit = load.needs.min.value;
  found.add(e);
}

}  // namespace

void judge_supplies(const Solved& s, Excesses& found) {
  for (const PartBranch& branch : s.circuit.parts) {
    const Part& part = part_of(s.circuit, branch);
    if (const auto* load = std::get_if<Load>(&part)) {
      judge_load(s, found, branch, *load);
      if (s.circuit.device(branch.device).use == "heater") {
        judge_reset(s, found, branch, load->plus, load->minus);
        judge_relay(s, found, branch, *load);
      }
    }
    if (const auto* heater = std::get_if<Heater>(&part)) {
      judge_heater(s, found, branch, *heater);
      judge_reset(s, found, branch, heater->a, heater->b);
    }
  }
}

}  // namespace plugward::circuit
