// SPDX-License-Identifier: MIT
// What parts between a device and its plug bear: resistors of a stated limit, regulators.
//
// A regulator's input is judged as a load that needs its input volts; its output current is what flows in
// its branch of the network beyond the part that only stands for its voltage.
// Tested in tests/unit/circuit/added_parts_test.cpp.
#include <algorithm>
#include <cmath>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

void judge_resistor(const Solved& s, Excesses& found, const PartBranch& branch, const Resistor& resistor) {
  if (!resistor.limit || branch.resistor < 0) return;
  const Circuit& c = s.circuit;
  const Node a = c.terminal(branch.device, resistor.a), b = c.terminal(branch.device, resistor.b);
  const double ohms = resistor.ohms.value, limit = resistor.limit->value;
  const auto watts = [&](double v) { return v > 0.0 ? v * v / ohms : 0.0; };
  const auto bad = [&](double v) { return watts(v) > limit * (1 + c.defaults.share_margin); };
  for (const double sign : {1.0, -1.0}) {
    const Probe probe = {{a, sign}, {b, -sign}};
    const Extreme worst = extreme(s, probe, Side::Highest);
    if (!worst.found || !bad(worst.value)) continue;
    Excess e;
    e.kind = ExcessKind::ResistorPower;
    e.value = watts(worst.value);
    e.limit = limit;
    e.at = part_locus(branch);
    e.always = bad(extreme(s, probe, Side::Lowest).value);
    e.state = words_of(s, probe, worst, bad);
    const Node hot = sign > 0.0 ? a : b;
    for (const Where& w : worst.where) {
      if (w.island != s.island_of[at(hot)]) continue;
      const Path path = path_to(s, w, hot, Side::Highest);
      e.path = path.words;
      e.from = path.source;
    }
    found.add(e);
  }
}

/// Amperes that flow out of a regulator in a state; 0 when it is off.
double given(const Solved& s, const Island& island, int state, const PartBranch& branch,
             const Regulator& regulator) {
  const Circuit& c = s.circuit;
  const auto k = std::find(island.knobs.begin(), island.knobs.end(), branch.knob) - island.knobs.begin();
  const Choice& choice = c.knobs[at(branch.knob)].choices[at(island.choice(state, static_cast<int>(k)))];
  if (choice.position == Position::Off) return 0.0;
  const double out = island.volts_at(state, c.terminal(branch.device, regulator.out)) -
                     island.volts_at(state, c.terminal(branch.device, regulator.minus));
  return (choice.figure - out) / c.defaults.source.value;
}

void judge_regulator(const Solved& s, Excesses& found, const PartBranch& branch, const Regulator& regulator) {
  judge_load(s, found, branch,
             {regulator.in, regulator.minus, regulator.needs, std::nullopt, Amps{}, Reversal::Destroyed, {}});
  const int index = s.island_of[at(s.circuit.terminal(branch.device, regulator.out))];
  if (!regulator.limit || index < 0) return;
  const Island& island = s.islands[at(index)];
  double most = 0;
  int worst = -1;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!unshorted(index, island, state)) continue;
    const double amps = given(s, island, state, branch, regulator);
    if (worst >= 0 && amps <= most) continue;
    most = amps;
    worst = state;
  }
  const double limit = regulator.limit->value;
  if (worst < 0 || most <= limit * (1 + s.circuit.defaults.share_margin)) return;
  Excess e;
  e.kind = ExcessKind::PinOvercurrent;
  e.value = most;
  e.limit = limit;
  e.always = false;
  e.at = part_locus(branch);
  e.state = words_of(s, {{index, worst}});
  found.add(e);
}

}  // namespace

void judge_added_parts(const Solved& s, Excesses& found) {
  for (const PartBranch& branch : s.circuit.parts) {
    const Part& part = part_of(s.circuit, branch);
    if (const auto* resistor = std::get_if<Resistor>(&part)) judge_resistor(s, found, branch, *resistor);
    if (const auto* regulator = std::get_if<Regulator>(&part)) judge_regulator(s, found, branch, *regulator);
  }
}

}  // namespace plugward::circuit
