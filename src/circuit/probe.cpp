// SPDX-License-Identifier: MIT
#include "circuit/probe.h"

#include <algorithm>

#include "base/format.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// The terms of one island, in its own node numbers.
struct Part {
  int island = 0;
  std::vector<std::pair<int, double>> terms;

  double value(const Island& i, int state) const {
    double sum = 0;
    const std::size_t row = at(state) * i.nodes.size();
    for (const auto& [node, weight] : terms) sum += weight * i.volts[row + at(node)];
    return sum;
  }
};

/// Terms on rails go to the first island that the rail touches and that has another term.
std::vector<Part> parts_of(const Solved& s, const Probe& probe) {
  std::vector<Part> parts;
  const auto part_in = [&](int island) -> Part& {
    for (Part& p : parts) {
      if (p.island == island) return p;
    }
    return parts.emplace_back(Part{island, {}});
  };
  for (const Term& t : probe) {
    const int island = s.island_of[at(t.node)];
    if (island >= 0) part_in(island).terms.push_back({s.islands[at(island)].local[at(t.node)], t.weight});
  }
  for (const Term& t : probe) {
    if (t.node == 0 || s.island_of[at(t.node)] >= 0) continue;
    for (Part& p : parts) {
      const int local = s.islands[at(p.island)].local[at(t.node)];
      if (local < 0) continue;
      p.terms.push_back({local, t.weight});
      break;
    }
  }
  return parts;
}

bool better(Side side, double a, double b) {
  return side == Side::Highest ? a > b : a < b;
}

/// The best state of one island among those with the given power and rail corner.
Where best_in(const Solved& s, const Part& part, Side side, const Filter& filter, bool powered_only,
              std::uint64_t corner, std::uint64_t mask, double& best) {
  const Island& island = s.islands[at(part.island)];
  Where where{part.island, -1};
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    const Island::State& info = island.states[at(state)];
    if (info.powered != powered_only || (info.corner & mask) != (corner & mask)) continue;
    if (filter && !filter(part.island, island, state)) continue;
    const double value = part.value(island, state);
    if (where.state < 0 || better(side, value, best)) {
      where.state = state;
      best = value;
    }
  }
  return where;
}

Extreme extreme_of_one(const Solved& s, const Part& part, Side side, const Filter& filter) {
  Extreme result;
  const Island& island = s.islands[at(part.island)];
  int best = -1;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (filter && !filter(part.island, island, state)) continue;
    const double value = part.value(island, state);
    if (best >= 0 && !better(side, value, result.value)) continue;
    best = state;
    result.value = value;
  }
  result.found = best >= 0;
  if (result.found) result.where = {{part.island, best}};
  return result;
}

std::string rail_words(const Solved& s, int rail, bool high) {
  const auto& volts = s.circuit.rail(rail).volts;
  return format("{} at {}", s.circuit.rail(rail).id, to_text(high ? volts.max : volts.min));
}

std::string knob_words(const Solved& s, const Knob& knob, const Choice& choice) {
  const Harness& harness = *s.circuit.fitting->harness;
  std::string name;
  if (knob.at.pin >= 0) {
    name = format("{}.{}", s.circuit.fitting->board->headers[at(knob.at.header)].id, knob.at.pin);
  } else {
    const Device& device = s.circuit.device(knob.at.device);
    const auto& part = device.parts[at(knob.at.part)];
    if (const auto* driver = std::get_if<Driver>(&part)) {
      name = format("output '{}'", harness.terminal_name({knob.at.device, driver->terminal}));
    } else {
      name = std::string(part_word(part));
      if (harness.devices.size() > 1) name = format("{} of {}", name, device.id);
    }
  }
  switch (choice.position) {
    case Position::Off:
      return name + " off";
    case Position::Low:
      return name + " low";
    case Position::High:
      return name + " high";
    case Position::On:
      return name + " on";
    case Position::Open:
      return name + " open";
    case Position::Closed:
      return name + " closed";
    case Position::Level:
      return format("{} at {}", name, to_text(Volts(choice.figure)));
  }
  return name;
}

}  // namespace

bool powered(int, const Island& island, int state) {
  return island.states[at(state)].powered;
}
bool unpowered(int, const Island& island, int state) {
  return !island.states[at(state)].powered;
}

Extreme extreme(const Solved& s, const Probe& probe, Side side, const Filter& filter) {
  const std::vector<Part> parts = parts_of(s, probe);
  if (parts.empty()) return {};
  if (parts.size() == 1) return extreme_of_one(s, parts.front(), side, filter);

  std::uint64_t mask = 0;
  for (const Part& p : parts) mask |= s.islands[at(p.island)].rail_mask;
  Extreme result;
  // Every corner of the rails that have a part in it, then the board without power.
  const auto consider = [&](bool with_power, std::uint64_t corner) {
    Extreme here;
    here.found = true;
    for (const Part& p : parts) {
      double best = 0;
      const Where where =
          best_in(s, p, side, filter, with_power, corner, s.islands[at(p.island)].rail_mask, best);
      if (where.state < 0) return;
      here.value += best;
      here.where.push_back(where);
    }
    if (!result.found || better(side, here.value, result.value)) result = here;
  };
  std::uint64_t corner = 0;
  do {
    consider(true, corner);
    corner = (corner - mask) & mask;  // the next subset of the mask
  } while (corner != 0);
  consider(false, 0);
  return result;
}

double value_in(const Solved& s, const Probe& probe, const std::vector<Where>& where) {
  double sum = 0;
  for (const Part& p : parts_of(s, probe)) {
    for (const Where& w : where) {
      if (w.island == p.island) sum += p.value(s.islands[at(p.island)], w.state);
    }
  }
  return sum;
}

namespace {

/// The state of an island that differs from `state` only in the choice of knob k (k < 0: in the corner).
int state_with(const Island& island, int state, int k, int choice, std::uint64_t corner) {
  const std::size_t knobs = island.knobs.size();
  const Island::State& here = island.states[at(state)];
  for (int other = 0; other < static_cast<int>(island.states.size()); ++other) {
    const Island::State& there = island.states[at(other)];
    if (there.powered != here.powered || there.corner != corner) continue;
    bool same = true;
    for (std::size_t i = 0; i < knobs && same; ++i) {
      const int wanted = static_cast<int>(i) == k ? choice : island.choice(state, static_cast<int>(i));
      same = island.choice(other, static_cast<int>(i)) == wanted;
    }
    if (same) return other;
  }
  return -1;
}

void append(std::string& list, const std::string& item) {
  if (!list.empty()) list += ", ";
  list += item;
}

}  // namespace

std::string words_of(const Solved& s, const Probe& probe, const Extreme& extreme_found,
                     const std::function<bool(double)>& bad, const Filter& filter) {
  const std::vector<Part> parts = parts_of(s, probe);
  std::string words;
  const bool without_power =
      !extreme_found.where.empty() && !s.islands[at(extreme_found.where.front().island)]
                                           .states[at(extreme_found.where.front().state)]
                                           .powered;
  if (without_power) words = "board without power";

  std::uint64_t mask = 0;
  for (const Where& w : extreme_found.where) {
    const Island& island = s.islands[at(w.island)];
    mask |= island.rail_mask;
    for (std::size_t k = 0; k < island.knobs.size(); ++k) {
      const Knob& knob = s.circuit.knobs[at(island.knobs[k])];
      const int chosen = island.choice(w.state, static_cast<int>(k));
      bool decides = false;
      for (int choice = 0; choice < static_cast<int>(knob.choices.size()) && !decides; ++choice) {
        if (choice == chosen) continue;
        const int other =
            state_with(island, w.state, static_cast<int>(k), choice, island.states[at(w.state)].corner);
        if (other < 0 || (filter && !filter(w.island, island, other))) continue;
        std::vector<Where> turned = extreme_found.where;
        for (Where& t : turned) {
          if (t.island == w.island) t.state = other;
        }
        decides = !bad(value_in(s, probe, turned));
      }
      if (decides) append(words, knob_words(s, knob, knob.choices[at(chosen)]));
    }
  }
  for (std::size_t r = 0; r < s.circuit.rails.size() && !without_power; ++r) {
    const std::uint64_t bit = r < 64 ? std::uint64_t{1} << r : 0;
    if ((mask & bit) == 0) continue;
    bool high = false, possible = true;
    std::vector<Where> turned = extreme_found.where;
    for (Where& t : turned) {
      const Island& island = s.islands[at(t.island)];
      if ((island.rail_mask & bit) == 0) continue;
      const std::uint64_t corner = island.states[at(t.state)].corner;
      high = (corner & bit) != 0;
      t.state = state_with(island, t.state, -1, 0, corner ^ bit);
      possible &= t.state >= 0;
    }
    if (possible && !bad(value_in(s, probe, turned))) append(words, rail_words(s, static_cast<int>(r), high));
  }
  if (!words.empty()) return words;
  for (const Side side : {Side::Lowest, Side::Highest}) {
    const Extreme best = extreme(s, probe, side, filter);
    if (!best.found || bad(best.value)) continue;
    words = words_of(s, extreme_found.where);
    for (std::size_t r = 0; r < s.circuit.rails.size() && r < 64; ++r) {
      const auto touching =
          std::find_if(extreme_found.where.begin(), extreme_found.where.end(),
                       [&](const Where& w) { return (s.islands[at(w.island)].rail_mask >> r & 1) != 0; });
      if (touching == extreme_found.where.end()) continue;
      const std::uint64_t corner = s.islands[at(touching->island)].states[at(touching->state)].corner;
      append(words, rail_words(s, static_cast<int>(r), (corner >> r & 1) != 0));
    }
    return words;
  }
  return "";
}

std::string words_of(const Solved& s, const std::vector<Where>& where) {
  std::string words;
  for (const Where& w : where) {
    const Island& island = s.islands[at(w.island)];
    if (!island.states[at(w.state)].powered && words.empty()) words = "board without power";
    for (std::size_t k = 0; k < island.knobs.size(); ++k) {
      const Knob& knob = s.circuit.knobs[at(island.knobs[k])];
      const Choice& chosen = knob.choices[at(island.choice(w.state, static_cast<int>(k)))];
      if (chosen.position == knob.choices[at(knob.base)].position) continue;
      append(words, knob_words(s, knob, chosen));
    }
  }
  return words;
}

}  // namespace plugward::circuit
