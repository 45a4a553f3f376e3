// SPDX-License-Identifier: MIT
// What pins and terminals withstand.
//
// A stated limit counts. Without one, a pin may see its own supply and the customary 0.3 V beyond (VIN
// absolute maximum "VDD + 0.3 V", "VSS - 0.3 V": STM32F103x6 data sheet); more is not called damage but a
// limit that is not known. A pin with stated clamps is judged by the current in them. States in which nothing
// holds the node, or what it is measured against, say nothing about it.
#include <algorithm>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Reports when the probe goes beyond `limit` on `side`. `shown` turns the probe's value into the volts to
/// report.
struct VoltageCheck {
  const Solved& s;
  Excesses& found;
  Node victim = 0;
  Locus at{};

  void beyond(ExcessKind kind, const Probe& probe, Side side, double limit, const Filter& filter) const {
    against(kind, probe, probe, {}, side, limit, filter);
  }

  /// `probe` is judged; reported are `value` and `limit_probe` + limit.
  void against(ExcessKind kind, const Probe& probe, const Probe& value, const Probe& limit_probe, Side side,
               double limit, const Filter& filter) const {
    const double margin = s.circuit.defaults.margin.value;
    const auto bad = [&](double v) {
      return side == Side::Highest ? v > limit + margin : v < limit - margin;
    };
    const Extreme any = extreme(s, probe, side, filter);
    if (!any.found || !bad(any.value)) return;
    // What bounds the node is enough: it may well stand further out.
    const bool one_node = probe.size() == 1;
    const auto held = [&](Side by) {
      return [&, by](int island, const Island& i, int state) {
        return (!filter || filter(island, i, state)) && decided(s, {island, state}, probe, by);
      };
    };
    const Extreme worst =
        one_node ? extreme_assured(s, victim, side, filter) : extreme(s, probe, side, held(side));
    if (!worst.found || !bad(worst.value)) return;
    // A state that holds the node on the other side alone brings no harm, and tells that the harm comes and
    // goes.
    const Side other = side == Side::Highest ? Side::Lowest : Side::Highest;
    const Filter told = [&](int island, const Island& i, int state) {
      return held(side)(island, i, state) || held(other)(island, i, state) ||
             (island == worst.where.front().island && state == worst.where.front().state);
    };
    const Extreme best = extreme(s, probe, other, told);
    Excess e;
    e.kind = kind;
    e.value = one_node ? worst.value : value_in(s, value, worst.where);
    e.limit = value_in(s, limit_probe, worst.where) + limit;
    e.always = bad(best.value);
    e.at = at;
    e.state = words_of(s, probe, worst, bad, told);
    for (const Where& w : worst.where) {
      if (w.island != s.island_of[static_cast<std::size_t>(victim)]) continue;
      const Path path = path_to(s, w, victim, side);
      e.path = path.words;
      e.from = path.source;
    }
    found.add(e);
  }
};

/// The most that the pin's own supply can put on it; nothing when that is not stated.
std::optional<double> own_highest(const Circuit& c, const TouchedPin& p) {
  std::optional<double> highest;
  if (p.rail >= 0) highest = c.rail(p.rail).volts.max.value;
  if (p.pin->high) highest = std::max(highest.value_or(0.0), p.pin->high->max.value);
  return highest;
}

/// States in which the board does not drive the pin itself.
Filter not_driven_by_board(const TouchedPin& p) {
  return [&p](int, const Island& island, int state) {
    if (!island.states[at(state)].powered) return false;
    for (std::size_t k = 0; k < island.knobs.size(); ++k) {
      if (island.knobs[k] == p.knob) return island.choice(state, static_cast<int>(k)) == 0;
    }
    return true;
  };
}

void judge_clamp(const Solved& s, Excesses& found, const TouchedPin& p) {
  const Circuit& c = s.circuit;
  const Clamp& clamp = *p.pin->clamp;
  const int rail = rail_index(*c.fitting->board, clamp.rail);
  const double ohms = c.defaults.diode.value, drop = clamp.drop.value;
  const bool stated = clamp.limit.has_value();
  const double most =
      stated ? clamp.limit->value * (1 + c.defaults.share_margin) : c.defaults.back_feed.value / 10;
  for (const Side side : {Side::Highest, Side::Lowest}) {
    // Current into the rail's diode, or out of ground's.
    const Probe probe = side == Side::Highest ? Probe{{p.node, 1 / ohms}, {c.rails[at(rail)], -1 / ohms}}
                                              : Probe{{p.node, -1 / ohms}};
    const Extreme worst = extreme(s, probe, Side::Highest, {});
    const auto amps = [&](double v) { return v - drop / ohms; };
    const auto bad = [&](double v) { return amps(v) > most; };
    if (!worst.found || !bad(worst.value)) continue;
    Excess e;
    e.kind = stated ? ExcessKind::ClampCurrent : ExcessKind::UnknownLimit;
    e.value = stated ? amps(worst.value) : value_in(s, {{p.node, 1.0}}, worst.where);
    e.limit = stated                  ? clamp.limit->value
              : side == Side::Highest ? own_highest(c, p).value_or(0.0) + drop
                                      : -drop;
    e.always = bad(extreme(s, probe, Side::Lowest, {}).value);
    e.at = pin_locus(p);
    e.state = words_of(s, probe, worst, bad);
    const Path path = path_to(s, worst.where.front(), p.node, side);
    e.path = path.words;
    e.from = path.source;
    found.add(e);
  }
}

void judge_pin(const Solved& s, Excesses& found, const TouchedPin& p) {
  const Circuit& c = s.circuit;
  const Pin& pin = *p.pin;
  const double beyond = c.defaults.beyond_supply.value;
  const VoltageCheck check{s, found, p.node, pin_locus(p)};
  const Probe probe = {{p.node, 1.0}};
  const bool logic = pin.function == PinFunction::Output || pin.function == PinFunction::Input;
  const bool clamped = p.clamp_diode >= 0;

  if (pin.withstands || (pin.pull && pin.withstands_pulled)) {
    const bool pulled = pin.pull && pin.withstands_pulled;
    const double highest = pulled ? pin.withstands_pulled->value : pin.withstands->max.value;
    check.beyond(ExcessKind::Overvoltage, probe, Side::Highest, highest, powered);
    if (pin.withstands) {
      check.beyond(ExcessKind::Overvoltage, probe, Side::Lowest, pin.withstands->min.value, {});
    }
  } else if (logic && !clamped) {
    const auto own = own_highest(c, p);
    check.beyond(ExcessKind::UnknownLimit, probe, Side::Highest, own.value_or(0.0) + beyond,
                 own ? Filter(powered) : not_driven_by_board(p));
    check.beyond(ExcessKind::UnknownLimit, probe, Side::Lowest, -beyond, {});
  }
  if (pin.withstands_unpowered) {
    check.beyond(ExcessKind::Overvoltage, probe, Side::Highest, pin.withstands_unpowered->value, unpowered);
  } else if (logic && !clamped) {
    check.beyond(ExcessKind::UnknownLimit, probe, Side::Highest, beyond, unpowered);
  }
  if (clamped) judge_clamp(s, found, p);
}

/// The terminals between which a terminal's own stage is fed.
struct Feed {
  bool known = false;
  TerminalIndex plus = 0, minus = 0;
};

Feed feed_of(const Circuit& c, int device, TerminalIndex terminal) {
  Feed feed;
  const auto take = [&](TerminalIndex plus, TerminalIndex minus) {
    if (!feed.known) feed = {true, plus, minus};
  };
  const auto& parts = c.device(device).parts;
  for (const Part& part : parts) {
    if (const auto* driver = std::get_if<Driver>(&part)) {
      if (driver->terminal == terminal) take(driver->plus, driver->minus);
    } else if (const auto* receiver = std::get_if<Receiver>(&part)) {
      if (receiver->terminal == terminal) take(receiver->plus, receiver->minus);
    }
  }
  for (const Part& part : parts) {
    if (const auto* load = std::get_if<Load>(&part)) take(load->plus, load->minus);
  }
  return feed;
}

void judge_terminal(const Solved& s, Excesses& found, int device, TerminalIndex t) {
  const Circuit& c = s.circuit;
  const Node node = c.terminal(device, t);
  if (s.island_of[at(node)] < 0) return;  // nothing is connected to it
  const Terminal& terminal = c.device(device).terminals[at(t)];
  const VoltageCheck check{s, found, node, terminal_locus(device, t)};
  if (terminal.withstands) {
    Node ground = 0;
    const auto& terminals = c.device(device).terminals;
    for (std::size_t i = terminals.size(); i-- > 0;) {
      const auto index = static_cast<TerminalIndex>(i);
      if (terminals[i].function == TerminalFunction::Ground && touched(c, device, index)) {
        ground = c.terminal(device, index);
      }
    }
    const Probe probe = {{node, 1.0}, {ground, -1.0}};
    check.beyond(ExcessKind::Overvoltage, probe, Side::Highest, terminal.withstands->max.value, {});
    check.beyond(ExcessKind::Overvoltage, probe, Side::Lowest, terminal.withstands->min.value, {});
    return;
  }
  const bool signal =
      terminal.function == TerminalFunction::Input || terminal.function == TerminalFunction::Output;
  const int receiver = receiver_at(c, device, t);
  if (!signal && receiver < 0) return;
  const Feed feed = feed_of(c, device, t);
  const Node plus = feed.known ? c.terminal(device, feed.plus) : 0;
  const Node minus = feed.known ? c.terminal(device, feed.minus) : 0;
  double beyond = c.defaults.beyond_supply.value;
  ExcessKind kind = ExcessKind::UnknownLimit;
  if (receiver >= 0) {
    const auto& stated = std::get<Receiver>(part_of(c, c.parts[at(receiver)])).above_supply;
    if (stated) {
      beyond = stated->value;
      kind = ExcessKind::Overvoltage;
    }
  }
  const Probe volts = {{node, 1.0}, {minus, -1.0}};
  check.against(kind, {{node, 1.0}, {plus, -1.0}}, volts, {{plus, 1.0}, {minus, -1.0}}, Side::Highest, beyond,
                {});
  check.beyond(kind, volts, Side::Lowest, -beyond, {});
}

}  // namespace

void judge_voltages(const Solved& s, Excesses& found) {
  for (const TouchedPin& p : s.circuit.pins) {
    if (s.island_of[at(p.node)] >= 0) judge_pin(s, found, p);
  }
  for (std::size_t d = 0; d < s.circuit.terminals.size(); ++d) {
    for (std::size_t t = 0; t < s.circuit.terminals[d].size(); ++t) {
      judge_terminal(s, found, static_cast<int>(d), static_cast<TerminalIndex>(t));
    }
  }
}

}  // namespace plugward::circuit
