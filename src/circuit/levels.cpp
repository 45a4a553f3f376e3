// SPDX-License-Identifier: MIT
// Do signals reach the thresholds of those who read them?
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

/// The parts that give a signal to an input: switches and outputs wired to its pin.
std::vector<const PartBranch*> givers(const Circuit& c, int pin) {
  std::vector<const PartBranch*> list;
  const std::vector<TerminalRef> wired = wired_to(c, pin);
  for (const PartBranch& branch : c.parts) {
    if (branch.knob < 0) continue;
    const auto at_terminal = [&](TerminalIndex t) {
      return std::find(wired.begin(), wired.end(), TerminalRef{branch.device, t}) != wired.end();
    };
    const Part& part = part_of(c, branch);
    const auto* sw = std::get_if<Switch>(&part);
    const auto* driver = std::get_if<Driver>(&part);
    if ((sw != nullptr && (at_terminal(sw->a) || at_terminal(sw->b))) ||
        (driver != nullptr && at_terminal(driver->terminal))) {
      list.push_back(&branch);
    }
  }
  return list;
}

/// What an input sees in one set of positions of its givers, over all corners.
struct Seen {
  int positions = 0;
  std::optional<double> nominal;   ///< volts with the givers at their first choice: no drop, no leak
  bool low = false, high = false;  ///< a clean level in some corner
  int lowest_state = -1, highest_state = -1;
  double lowest = 0, highest = 0;
};

struct InputLevel {
  const Solved& s;
  Excesses& found;
  const TouchedPin& pin;
  const std::vector<const PartBranch*>& from;
  int index = 0;  ///< the pin's island

  const Island& island() const { return s.islands[at(index)]; }

  Excess excess(ExcessKind kind, int state, double value, double limit) const {
    Excess e;
    e.kind = kind;
    e.value = value;
    e.limit = limit;
    e.at = pin_locus(pin);
    e.from = part_locus(*from.front());
    if (state >= 0) {
      e.state = giver_words(state);
      e.path = path_to(s, {index, state}, pin.node, Side::Highest).words;
      if (e.path.empty()) e.path = path_to(s, {index, state}, pin.node, Side::Lowest).words;
    }
    return e;
  }

  /// Positions of the givers and, when they decide, the rails.
  std::string giver_words(int state) const;

  bool counts(int state) const {
    return unshorted(index, island(), state) && island().states[at(state)].rest;
  }

  /// The positions of the givers in a state, as a number.
  int positions(int state) const {
    int number = 0;
    for (const PartBranch* giver : from) {
      const int k = knob_in(island(), giver->knob);
      if (k < 0) continue;
      const Choice& choice = s.circuit.knobs[at(giver->knob)].choices[at(island().choice(state, k))];
      number = number * 8 + static_cast<int>(choice.position);
    }
    return number;
  }

  /// Neither drop nor leak: every giver is at the first choice of its position.
  bool nominal(int state) const {
    return std::all_of(from.begin(), from.end(), [&](const PartBranch* giver) {
      const int k = knob_in(island(), giver->knob);
      if (k < 0) return true;
      const auto& choices = s.circuit.knobs[at(giver->knob)].choices;
      const int choice = island().choice(state, k);
      return choice == 0 || choices[at(choice)].position != choices[at(choice - 1)].position;
    });
  }

  void judge(double low_below, double high_above) const {
    const bool pulled = pin.pin->pull && (!pin.pin->pull->up || pin.rail >= 0);
    std::vector<Seen> groups;
    int last = -1;
    double lowest = 0, highest = 0;
    for (int state = 0; state < static_cast<int>(island().states.size()); ++state) {
      if (!counts(state)) continue;
      if (!pulled && !driven(s, {index, state}, pin.node)) {
        Excess e = excess(ExcessKind::Floating, state, 0.0, 0.0);
        e.path.clear();
        e.always = false;
        found.add(e);
        return;  // what it reads in other states does not cure this one
      }
      const double v = island().volts_at(state, pin.node);
      lowest = last < 0 ? v : std::min(lowest, v);
      highest = last < 0 ? v : std::max(highest, v);
      last = state;
      Seen& seen = group(groups, positions(state));
      if (!seen.nominal && nominal(state)) seen.nominal = v;
      seen.low |= v <= low_below + rounding;
      seen.high |= v >= high_above - rounding;
      if (seen.lowest_state < 0 || v < seen.lowest) seen.lowest_state = state, seen.lowest = v;
      if (seen.highest_state < 0 || v > seen.highest) seen.highest_state = state, seen.highest = v;
    }
    bool unclear = false, sees_low = false, sees_high = false;
    for (const Seen& seen : groups) {
      sees_low |= seen.low;
      sees_high |= seen.high;
      // Meant to be low where it is nearer to low without drop and leak.
      const double meant = seen.nominal.value_or(seen.lowest);
      const bool low = meant - low_below < high_above - meant;
      if (low ? seen.highest <= low_below + rounding : seen.lowest >= high_above - rounding) continue;
      unclear = true;
      Excess e = low ? excess(ExcessKind::LevelLow, seen.highest_state, seen.highest, low_below)
                     : excess(ExcessKind::LevelHigh, seen.lowest_state, seen.lowest, high_above);
      e.always = low ? !seen.low : !seen.high;
      found.add(e);
    }
    if (last >= 0 && !unclear && !(sees_low && sees_high)) {
      Excess e =
          excess(ExcessKind::Stuck, last, sees_low ? highest : lowest, sees_low ? high_above : low_below);
      e.state.clear();
      found.add(e);
    }
  }

  static Seen& group(std::vector<Seen>& groups, int positions) {
    for (Seen& seen : groups) {
      if (seen.positions == positions) return seen;
    }
    groups.emplace_back().positions = positions;
    return groups.back();
  }
};

std::string InputLevel::giver_words(int state) const {
  const double v = island().volts_at(state, pin.node);
  const double low = pin.pin->low_below->value, high = pin.pin->high_above->value;
  const Filter filter = [this](int, const Island&, int other) { return counts(other); };
  // Named is what keeps it from the level on its other side.
  const auto bad = [&](double other) {
    return v <= low + rounding    ? other <= low + rounding
           : v >= high - rounding ? other >= high - rounding
                                  : other > low + rounding && other < high - rounding;
  };
  return words_of(s, {{pin.node, 1.0}}, {true, v, {{index, state}}}, bad, filter);
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
      const OutputLevel level{s, found, pin, branch, receiver};
      if (const auto high = threshold(receiver.high_above, receiver.high_above_share)) {
        level.judge(Position::High, ExcessKind::LevelHigh, *high);
      }
      if (const auto low = threshold(receiver.low_below, receiver.low_below_share)) {
        level.judge(Position::Low, ExcessKind::LevelLow, *low);
      }
    }
  }
}

void judge_input_levels(const Solved& s, Excesses& found) {
  const Circuit& c = s.circuit;
  for (std::size_t i = 0; i < c.pins.size(); ++i) {
    const TouchedPin& pin = c.pins[i];
    const int island = s.island_of[at(pin.node)];
    if (pin.pin->function != PinFunction::Input || pin.pin->analogue || island < 0) continue;
    const auto from = givers(c, static_cast<int>(i));
    if (from.empty()) continue;
    const InputLevel level{s, found, pin, from, island};
    if (!pin.pin->low_below || !pin.pin->high_above) {
      Excess e;
      e.kind = ExcessKind::UnknownLimit;
      e.at = pin_locus(pin);
      e.from = part_locus(*from.front());
      found.add(e);
      continue;
    }
    level.judge(pin.pin->low_below->value, pin.pin->high_above->value);
  }
}

}  // namespace plugward::circuit
