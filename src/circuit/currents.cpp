// SPDX-License-Identifier: MIT
// What contacts, leads, pins and rails carry.
//
// A short circuit is named once, where it leaves its rail; the states in which it exists are marked and no
// other current is judged in them. Without power the board's rails are held at 0 V, which is right for
// voltages and far too much for currents: only back-feeding is judged then.
#include <algorithm>
#include <cmath>

#include "circuit/carried.h"
#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Above this the current through a contact is a short circuit. What comes through any other pin than a
/// supply's may come from any rail of its island.
double short_current(const Solved& s, const ContactBranch& b) {
  const Circuit& c = s.circuit;
  const TouchedPin& pin = c.pins[at(b.pin)];
  const auto of_rail = [&](int rail) {
    const auto limit = c.rail(rail).limit;
    return limit ? limit->value * c.defaults.short_multiple : c.defaults.short_without_limit.value;
  };
  if (pin.pin->function == PinFunction::Supply && pin.rail >= 0) return of_rail(pin.rail);
  double most = c.defaults.short_without_limit.value;
  const Node end = c.terminal(b.terminal.device, b.terminal.terminal);
  for (const int rail : s.islands[at(s.island_of[at(end)])].rails) most = std::max(most, of_rail(rail));
  return most;
}

/// States in which at least `limit` flows out of the contact's pin (or either way, when it is no supply pin).
bool mark_shorted(Solved& s, const ContactBranch& b, double limit, bool supply) {
  const Circuit& c = s.circuit;
  const Node pin = c.pins[at(b.pin)].node;
  const Node end = c.terminal(b.terminal.device, b.terminal.terminal);
  Island& island = s.islands[at(s.island_of[at(end)])];
  bool any = false;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!island.states[at(state)].powered) continue;
    if (!supply && island.states[at(state)].shorted) continue;
    const double amps = (island.volts_at(state, pin) - island.volts_at(state, end)) / b.ohms;
    if ((supply ? amps : std::abs(amps)) <= limit) continue;
    island.states[at(state)].shorted = true;
    any = true;
  }
  return any;
}

/// Reports a current, with its state and the way it takes.
struct CurrentCheck {
  const Solved& s;
  Excesses& found;
  const Filter& filter;

  void report(ExcessKind kind, const Locus& place, const Largest& current, double limit, double beyond,
              int contact) const {
    const auto bad = [&](double v) { return v > beyond; };
    if (!current.most.found || !bad(current.most.value)) return;
    Excess e;
    e.kind = kind;
    e.at = place;
    e.value = current.most.value;
    e.limit = limit;
    e.always = bad(extreme(s, current.probe, Side::Lowest, filter).value);
    e.state = words_of(s, current.probe, current.most, bad, filter);
    const ContactBranch& b = s.circuit.contacts[at(contact)];
    const int island = s.island_of[at(s.circuit.terminal(b.terminal.device, b.terminal.terminal))];
    for (const Where& w : current.most.where) {
      if (w.island != island) continue;
      const Path path = path_through(s, w, contact);
      e.path = path.words;
      e.from = path.source;
    }
    found.add(e);
  }
};

void judge_family(const CurrentCheck& check, const Family& family, const Largest& current, int contact) {
  const Circuit& c = check.s.circuit;
  const ContactBranch& b = c.contacts[at(contact)];
  const double share = 1 + c.defaults.share_margin;
  const auto report = [&](ExcessKind kind, double limit) {
    check.report(kind, contact_locus(b), current, limit, limit * share, contact);
  };
  const int positions = c.fitting->harness->plugs[at(b.contact.plug)].positions;
  if (const auto* rating = b.lead->gauge ? family.rating_at(*b.lead->gauge, positions) : nullptr) {
    report(ExcessKind::ContactOvercurrent, rating->value.amps.value);
  } else if (const auto* smallest = family.smallest_rating()) {
    const double amps = smallest->value.amps.value;
    if (current.most.value > amps * share) {
      report(ExcessKind::ContactOvercurrent, amps);
    } else {
      report(ExcessKind::UnknownRating, amps / 3);
    }
  } else {
    report(ExcessKind::UnknownRating, c.defaults.switched_limit.value);
  }
}

void judge_contact(const CurrentCheck& check, int contact) {
  const Circuit& c = check.s.circuit;
  const ContactBranch& b = c.contacts[at(contact)];
  const Largest current = contact_current(check.s, contact, check.filter);
  if (!current.most.found) return;
  const std::string& header = c.fitting->board->headers[at(b.contact.header)].family;
  const std::string& plug = c.fitting->harness->plugs[at(b.contact.plug)].family;
  if (const Family* family = c.fitting->catalogue->find(header))
    judge_family(check, *family, current, contact);
  if (plug != header) {
    if (const Family* family = c.fitting->catalogue->find(plug))
      judge_family(check, *family, current, contact);
  }
  if (b.lead->gauge) {
    if (const auto limit = chassis_current(*b.lead->gauge)) {
      check.report(ExcessKind::WireOvercurrent, contact_locus(b), current, limit->value,
                   limit->value * (1 + c.defaults.share_margin), contact);
    }
  }
}

void judge_pin(const CurrentCheck& check, int pin) {
  const Circuit& c = check.s.circuit;
  const TouchedPin& p = c.pins[at(pin)];
  const auto [current, contact] = pin_current(check.s, pin, check.filter);
  if (contact < 0) return;
  const PinFunction function = p.pin->function;
  std::optional<Amps> limit = p.pin->limit;
  if (!limit && function == PinFunction::Output) limit = c.defaults.output_limit;
  if (!limit && function == PinFunction::Coil) limit = c.defaults.coil_limit;
  if (limit) {
    check.report(ExcessKind::PinOvercurrent, pin_locus(p), current, limit->value,
                 limit->value * (1 + c.defaults.share_margin), contact);
  } else if (function == PinFunction::Switched) {
    check.report(ExcessKind::UnknownRating, pin_locus(p), current, c.defaults.switched_limit.value,
                 c.defaults.switched_limit.value, contact);
  }
}

void judge_rail(const Solved& s, Excesses& found, int rail) {
  if (!s.circuit.rail(rail).limit) return;
  const double limit = s.circuit.rail(rail).limit->value;
  const auto [sum, where] = rail_current(s, rail);
  if (sum <= limit * (1 + s.circuit.defaults.share_margin)) return;
  Excess e;
  e.kind = ExcessKind::RailOverload;
  e.value = sum;
  e.limit = limit;
  e.at.rail = rail;
  e.state = words_of(s, where);
  e.always = e.state.empty();
  found.add(e);
}

/// Through a supply pin. What flows into a rail through a pull or a clamp is judged as that pin's voltage and
/// clamp current.
/// `all_pins`: through all pins of its rail together.
void judge_back_feed(const Solved& s, Excesses& found, int contact, bool all_pins) {
  const Circuit& c = s.circuit;
  const ContactBranch& b = c.contacts[at(contact)];
  const TouchedPin& pin = c.pins[at(b.pin)];
  if (pin.pin->function != PinFunction::Supply || pin.rail < 0) return;
  Probe into = current_of(c, b);
  if (all_pins) {
    for (std::size_t i = 0; i < c.contacts.size(); ++i) {
      const ContactBranch& other = c.contacts[i];
      const TouchedPin& o = c.pins[at(other.pin)];
      if (other.resistor < 0 || o.pin->function != PinFunction::Supply || o.rail != pin.rail) continue;
      if (static_cast<int>(i) == contact) continue;
      const Probe more = current_of(c, other);
      into.insert(into.end(), more.begin(), more.end());
    }
  }
  for (Term& t : into) t.weight = -t.weight;
  Locus place = contact_locus(b);
  place.rail = pin.rail;
  // What flows into a board without power is not known (its rail is taken to be 0 V): said only when nothing
  // flows with power.
  for (const Filter& filter : {Filter(unshorted), Filter(unpowered)}) {
    const Largest current{into, extreme(s, into, Side::Highest, filter)};
    const double beyond = c.defaults.back_feed.value;
    CurrentCheck{s, found, filter}.report(ExcessKind::BackFeed, place, current, 0.0, beyond, contact);
    if (current.most.found && current.most.value > beyond) return;
  }
}

/// A device's output against its own stated limit.
void judge_driver(const Solved& s, Excesses& found, const PartBranch& branch, const Driver& driver) {
  if (!driver.limit) return;
  const Circuit& c = s.circuit;
  const double limit = driver.limit->value;
  const Node t = c.terminal(branch.device, driver.terminal);
  const int index = s.island_of[at(t)];
  const Island& island = s.islands[at(index)];
  double most = 0;
  int worst = -1;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!unshorted(index, island, state)) continue;
    const auto k = std::find(island.knobs.begin(), island.knobs.end(), branch.knob) - island.knobs.begin();
    const Choice& choice = c.knobs[at(branch.knob)].choices[at(island.choice(state, static_cast<int>(k)))];
    for (const Change& change : choice.changes) {
      if (change.what != Change::What::DiodeDrop) continue;
      const auto& d = c.network.diodes[at(change.index)];
      const double beyond =
          island.volts_at(state, d.anode) - island.volts_at(state, d.cathode) - change.value;
      if (beyond / c.defaults.driver.value <= most) continue;
      most = beyond / c.defaults.driver.value;
      worst = state;
    }
  }
  if (worst < 0 || most <= limit * (1 + c.defaults.share_margin)) return;
  Excess e;
  e.kind = ExcessKind::PinOvercurrent;
  e.value = most;
  e.limit = limit;
  e.always = false;
  e.at = part_locus(branch);
  e.at.terminal = driver.terminal;
  e.state = words_of(s, {{index, worst}});
  found.add(e);
}

}  // namespace

void judge_shorts(Solved& s, Excesses& found) {
  for (const bool supply : {true, false}) {
    std::vector<int> shorted;
    for (std::size_t i = 0; i < s.circuit.contacts.size(); ++i) {
      const ContactBranch& b = s.circuit.contacts[i];
      if (b.resistor < 0) continue;
      const TouchedPin& pin = s.circuit.pins[at(b.pin)];
      if ((pin.pin->function == PinFunction::Supply && pin.rail >= 0) != supply) continue;
      if (mark_shorted(s, b, short_current(s, b), supply)) shorted.push_back(static_cast<int>(i));
    }
    for (const int contact : shorted) {
      const ContactBranch& b = s.circuit.contacts[at(contact)];
      const double limit = short_current(s, b);
      const Probe amps = current_of(s.circuit, b);
      const Largest current =
          supply ? Largest{amps, extreme(s, amps, Side::Highest, powered)} : largest(s, amps, powered);
      CurrentCheck{s, found, powered}.report(ExcessKind::ShortCircuit, contact_locus(b), current, limit,
                                             limit, contact);
    }
  }
}

void judge_currents(const Solved& s, Excesses& found) {
  const Circuit& c = s.circuit;
  const Filter filter = unshorted;
  const CurrentCheck check{s, found, filter};
  for (std::size_t i = 0; i < c.contacts.size(); ++i) {
    if (c.contacts[i].resistor < 0) continue;
    judge_contact(check, static_cast<int>(i));
    judge_back_feed(s, found, static_cast<int>(i), false);
  }
  // What is too little through any pin alone may be too much for the rail.
  for (std::size_t i = 0; i < c.contacts.size(); ++i) {
    const int rail = c.contacts[i].resistor < 0 ? -1 : c.pins[at(c.contacts[i].pin)].rail;
    const bool named = std::any_of(found.list.begin(), found.list.end(), [&](const Excess& e) {
      return e.kind == ExcessKind::BackFeed && e.at.rail == rail;
    });
    if (rail >= 0 && !named) judge_back_feed(s, found, static_cast<int>(i), true);
  }
  for (std::size_t i = 0; i < c.pins.size(); ++i) judge_pin(check, static_cast<int>(i));
  for (std::size_t r = 0; r < c.rails.size(); ++r) judge_rail(s, found, static_cast<int>(r));
  for (const PartBranch& branch : c.parts) {
    const auto* driver = std::get_if<Driver>(&part_of(c, branch));
    if (driver != nullptr && branch.knob >= 0) judge_driver(s, found, branch, *driver);
  }
}

}  // namespace plugward::circuit
