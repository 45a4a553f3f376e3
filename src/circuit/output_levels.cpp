// SPDX-License-Identifier: MIT
// Does what the board sends reach the thresholds of the device that reads it? And what a part of the device
// sends to another part of it, where no pin of the board has a say: a level buffer before an input.
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

/// One output against one receiver.
struct OutputLevel {
  const Solved& s;
  Excesses& found;
  int knob = -1;  ///< of the output
  int own = -1;   ///< island of the output
  Locus from{};   ///< the output
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
    const Filter filter = [&](int index, const Island& island, int state) {
      if (!unshorted(index, island, state)) return false;
      if (index != own) return true;
      const int k = knob_in(island, knob);
      return k >= 0 && c.knobs[at(knob)].choices[at(island.choice(state, k))].position == level;
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
    e.from = from;
    e.state = words_of(s, over, worst, bad, filter);
    for (const Where& w : worst.where) {
      if (w.island == own) e.path = path_to(s, w, t, high ? Side::Highest : Side::Lowest).words;
    }
    found.add(e);
  }

  /// Against both thresholds, as far as they are stated.
  void judge_both() const {
    if (const auto high = threshold(receiver.high_above, receiver.high_above_share)) {
      judge(Position::High, ExcessKind::LevelHigh, *high);
    }
    if (const auto low = threshold(receiver.low_below, receiver.low_below_share)) {
      judge(Position::Low, ExcessKind::LevelLow, *low);
    }
  }
};

/// Does any pin of the board reach the terminal?
bool reached_by_a_pin(const Circuit& c, TerminalRef terminal) {
  for (std::size_t i = 0; i < c.pins.size(); ++i) {
    const PinFunction function = c.pins[i].pin->function;
    if (function == PinFunction::Ground || function == PinFunction::Supply) continue;
    const auto reached = wired_to(c, static_cast<int>(i));
    if (std::find(reached.begin(), reached.end(), terminal) != reached.end()) return true;
  }
  return false;
}

/// What a push-pull output of a device gives to the inputs on its own net.
void judge_own_levels(const Solved& s, Excesses& found, const PartBranch& output, const Driver& driver) {
  const Circuit& c = s.circuit;
  const TerminalRef terminal{output.device, driver.terminal};
  const int island = s.island_of[at(c.terminal(output.device, driver.terminal))];
  if (driver.kind != OutputKind::PushPull || output.knob < 0 || island < 0) return;
  for (const TerminalRef t : wired_to(c, terminal)) {
    const int index = receiver_at(c, t.device, t.terminal);
    if (index < 0 || reached_by_a_pin(c, t)) continue;
    const PartBranch& branch = c.parts[at(index)];
    OutputLevel{
        s, found, output.knob, island, part_locus(output), branch, std::get<Receiver>(part_of(c, branch))}
        .judge_both();
  }
}

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
      const auto& choices = c.knobs[at(pin.knob)].choices;
      if (std::none_of(choices.begin(), choices.end(),
                       [](const Choice& k) { return k.position == Position::High; })) {
        Excess e;  // neither its high level nor its rail is stated
        e.kind = ExcessKind::UnknownLimit;
        e.at = pin_locus(pin);
        e.from = part_locus(branch);
        found.add(e);
      }
      OutputLevel{s, found, pin.knob, s.island_of[at(pin.node)], pin_locus(pin), branch, receiver}
          .judge_both();
    }
  }
  for (const PartBranch& branch : c.parts) {
    const auto* driver = std::get_if<Driver>(&part_of(c, branch));
    if (driver != nullptr) judge_own_levels(s, found, branch, *driver);
  }
}

}  // namespace plugward::circuit
