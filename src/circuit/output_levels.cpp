// SPDX-License-Identifier: MIT
// Does what the board sends reach the thresholds of the device that reads it?
#include <algorithm>
#include <cmath>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

constexpr double rounding = 1e-9;  // volts

/// Index of a knob among those of an island, -1 when it is elsewhere.
int knob_in(const Island& island, int knob) {
  const auto found = std::find(island.knobs.begin(), island.knobs.end(), knob);
  return found == island.knobs.end() ? -1 : static_cast<int>(found - island.knobs.begin());
}

/// A threshold between plus and minus of a receiver: volts above minus, or a share of the supply.
struct Threshold {
  double volts = 0, share = 0;
};

std::optional<Threshold> threshold(const std::optional<Volts>& volts, const std::optional<double>& share) {
  if (volts) return Threshold{volts->value, 0};
  if (share) return Threshold{0, *share};
  return std::nullopt;
}

/// One output pin against one receiver.
struct OutputLevel {
  const Solved& s;
  Excesses& found;
  const TouchedPin& pin;
  const PartBranch& branch;
  const Receiver& receiver;

  void judge(Position level, ExcessKind kind, const Threshold& limit) const {
    const Circuit& c = s.circuit;
    const Node t = c.terminal(branch.device, receiver.terminal);
    const Node plus = c.terminal(branch.device, receiver.plus);
    const Node minus = c.terminal(branch.device, receiver.minus);
    const Probe volts = {{t, 1.0}, {minus, -1.0}};
    const Probe supply = {{plus, limit.share}, {minus, -limit.share}};
    Probe over = volts;  // volts above the threshold
    for (const Term& term : supply) {
      if (term.weight != 0.0) over.push_back({term.node, -term.weight});
    }
    const int own = s.island_of[at(pin.node)];
    const Filter filter = [&](int index, const Island& island, int state) {
      if (!unshorted(index, island, state)) return false;
      if (index != own) return true;
      const int k = knob_in(island, pin.knob);
      return k >= 0 && c.knobs[at(pin.knob)].choices[at(island.choice(state, k))].position == level;
    };
    const bool high = kind == ExcessKind::LevelHigh;
    const auto bad = [&](double v) { return high ? v < limit.volts - rounding : v > limit.volts + rounding; };
    const Extreme worst = extreme(s, over, high ? Side::Lowest : Side::Highest, filter);
    if (!worst.found || !bad(worst.value)) return;
    Excess e;
    e.kind = kind;
    e.value = value_in(s, volts, worst.where);
    e.limit = value_in(s, supply, worst.where) + limit.volts;
    e.always = bad(extreme(s, over, high ? Side::Highest : Side::Lowest, filter).value);
    e.at = part_locus(branch);
    e.at.terminal = receiver.terminal;
    e.from = pin_locus(pin);
    e.state = words_of(s, over, worst, bad, filter);
    for (const Where& w : worst.where) {
      if (w.island == own) e.path = path_to(s, w, t, high ? Side::Highest : Side::Lowest).words;
    }
    found.add(e);
  }
};

}  // namespace

void judge_output_levels(const Solved& s, Excesses& found) {
  const Circuit& c = s.circuit;
  for (std::size_t i = 0; i < c.pins.size(); ++i) {
    const TouchedPin& pin = c.pins[i];
    if (pin.pin->function != PinFunction::Output || pin.knob < 0) continue;
    for (const TerminalRef t : wired_to(c, static_cast<int>(i))) {
      const int index = receiver_at(c, t.device, t.terminal);
      if (index < 0) continue;
      const PartBranch& branch = c.parts[at(index)];
      const auto& receiver = std::get<Receiver>(part_of(c, branch));
      const OutputLevel level{s, found, pin, branch, receiver};
      const auto& choices = c.knobs[at(pin.knob)].choices;
      if (std::none_of(choices.begin(), choices.end(),
                       [](const Choice& k) { return k.position == Position::High; })) {
        Excess e;  // neither its high level nor its rail is stated
        e.kind = ExcessKind::UnknownLimit;
        e.at = pin_locus(pin);
        e.from = part_locus(branch);
        found.add(e);
      }
      if (const auto high = threshold(receiver.high_above, receiver.high_above_share)) {
        level.judge(Position::High, ExcessKind::LevelHigh, *high);
      }
      if (const auto low = threshold(receiver.low_below, receiver.low_below_share)) {
        level.judge(Position::Low, ExcessKind::LevelLow, *low);
      }
    }
  }
}

}  // namespace plugward::circuit
