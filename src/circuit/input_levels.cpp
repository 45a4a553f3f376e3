// SPDX-License-Identifier: MIT
// Can the board read what the device says?
//
// The states of the circuit are grouped by the positions of what is wired to the input: its givers, that is
// switches and outputs. Every group must be clearly low or clearly high in all its corners; which of the two
// it is meant to be follows from the levels without drop and leak, relative to one another: the upper half
// high, the lower half low.
#include <algorithm>
#include <cmath>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

constexpr double rounding = 1e-9;   // volts
constexpr double same_level = 0.1;  // volts

/// Index of a knob among those of an island, -1 when it is elsewhere.
int knob_in(const Island& island, int knob) {
  const auto found = std::find(island.knobs.begin(), island.knobs.end(), knob);
  return found == island.knobs.end() ? -1 : static_cast<int>(found - island.knobs.begin());
}

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
  std::string positions;  ///< one letter a giver
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
      // The way to what should pull it low, or high.
      const bool low = kind == ExcessKind::LevelLow || (kind == ExcessKind::Stuck && value < limit);
      e.path = path_to(s, {index, state}, pin.node, low ? Side::Lowest : Side::Highest).words;
    }
    return e;
  }

  std::string giver_positions(int state) const {
    std::string words;
    for (const PartBranch* giver : from) {
      const int k = knob_in(island(), giver->knob);
      if (k < 0) continue;
      words += (words.empty() ? "" : ", ") + choice_words(s, giver->knob, island().choice(state, k));
    }
    return words;
  }

  /// The choices and rails without which the level would be another.
  std::string giver_words(int state) const;

  bool counts(int state) const {
    return unshorted(index, island(), state) && island().states[at(state)].rest;
  }

  /// The positions of the givers in a state, one letter each: there may be any number of givers.
  std::string positions(int state) const {
    std::string letters;
    for (const PartBranch* giver : from) {
      const int k = knob_in(island(), giver->knob);
      if (k < 0) continue;
      const Choice& choice = s.circuit.knobs[at(giver->knob)].choices[at(island().choice(state, k))];
      letters += static_cast<char>('a' + static_cast<int>(choice.position));
    }
    return letters;
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
        e.state = giver_positions(state);
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
    if (last < 0) return;
    const bool all_low = highest <= low_below + rounding, all_high = lowest >= high_above - rounding;
    if (all_low || all_high) {
      Excess e =
          excess(ExcessKind::Stuck, last, all_low ? highest : lowest, all_low ? high_above : low_below);
      e.state.clear();
      found.add(e);
      return;
    }
    const double middle = middle_of(groups).value_or((low_below + high_above) / 2);
    for (const Seen& seen : groups) {
      const bool low = seen.nominal.value_or(seen.lowest) < middle;
      if (low ? seen.highest <= low_below + rounding : seen.lowest >= high_above - rounding) continue;
      Excess e = low ? excess(ExcessKind::LevelLow, seen.highest_state, seen.highest, low_below)
                     : excess(ExcessKind::LevelHigh, seen.lowest_state, seen.lowest, high_above);
      e.always = low ? !seen.low : !seen.high;
      found.add(e);
    }
  }

  /// Positions above it are meant to be high, those below low; nothing when they all give the same.
  static std::optional<double> middle_of(const std::vector<Seen>& groups) {
    double least = groups.front().nominal.value_or(0.0), most = least;
    for (const Seen& seen : groups) {
      least = std::min(least, seen.nominal.value_or(least));
      most = std::max(most, seen.nominal.value_or(most));
    }
    if (most - least < same_level) return std::nullopt;
    return (most + least) / 2;
  }

  static Seen& group(std::vector<Seen>& groups, const std::string& positions) {
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
