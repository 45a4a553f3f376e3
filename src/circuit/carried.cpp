// SPDX-License-Identifier: MIT
// Tested in tests/unit/circuit/current_test.cpp and tests/unit/judge/budget_test.cpp.
#include "circuit/carried.h"

#include <algorithm>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Coil of a motor at a terminal, nullptr when there is none.
const Coil* coil_at(const Circuit& c, TerminalRef t) {
  for (const Part& part : c.device(t.device).parts) {
    const auto* coil = std::get_if<Coil>(&part);
    if (coil != nullptr && (coil->a == t.terminal || coil->b == t.terminal)) return coil;
  }
  return nullptr;
}

}  // namespace

Largest largest(const Solved& s, const Probe& amps, const Filter& filter) {
  Probe back = amps;
  for (Term& t : back) t.weight = -t.weight;
  const Extreme out = extreme(s, amps, Side::Highest, filter);
  const Extreme in = extreme(s, back, Side::Highest, filter);
  return !in.found || out.value >= in.value ? Largest{amps, out} : Largest{back, in};
}

Largest contact_current(const Solved& s, int contact, const Filter& filter) {
  const Circuit& c = s.circuit;
  const ContactBranch& b = c.contacts[at(contact)];
  Largest current = largest(s, current_of(c, b), filter);
  const TouchedPin& pin = c.pins[at(b.pin)];
  const Coil* coil = coil_at(c, b.terminal);
  constexpr double no_amps = 1e-6;  // what leaks alone bring about: the winding is open
  if (pin.pin->function != PinFunction::Coil || coil == nullptr || !(current.most.value > no_amps))
    return current;
  const double limit = pin.pin->limit.value_or(c.defaults.coil_limit).value;
  const double set = coil->amps ? std::min(coil->amps->value, limit) : limit;
  const double scale = set / current.most.value;
  for (Term& t : current.probe) t.weight *= scale;
  current.most.value = set;
  return current;
}

PinCurrent pin_current(const Solved& s, int pin, const Filter& filter) {
  const Circuit& c = s.circuit;
  PinCurrent current;
  Probe amps;
  for (std::size_t i = 0; i < c.contacts.size(); ++i) {
    const ContactBranch& b = c.contacts[i];
    if (b.pin != pin || b.resistor < 0) continue;
    const Probe part = current_of(c, b);
    amps.insert(amps.end(), part.begin(), part.end());
    current.contact = static_cast<int>(i);
  }
  if (current.contact >= 0) current.largest = largest(s, amps, filter);
  return current;
}

RailCurrent rail_current(const Solved& s, int rail) {
  RailCurrent current;
  for (std::size_t i = 0; i < s.islands.size(); ++i) {
    const Island& island = s.islands[i];
    const auto r = std::find(island.rails.begin(), island.rails.end(), rail);
    if (r == island.rails.end()) continue;
    const std::size_t column = static_cast<std::size_t>(r - island.rails.begin());
    double most = 0;
    int best = -1;
    for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
      if (!unshorted(0, island, state)) continue;
      const double amps = island.rail_amps[at(state) * island.rails.size() + column];
      if (amps <= most) continue;
      most = amps;
      best = state;
    }
    if (best < 0) continue;
    current.amps += most;
    current.where.push_back({static_cast<int>(i), best});
  }
  return current;
}

}  // namespace plugward::circuit
