// SPDX-License-Identifier: MIT
// A choice is named when the figure would keep its limit with another choice in its place, all else as it is.
// Where two choices together are to blame no single one is found: then everything that is not at rest is
// named.
#include <algorithm>
#include <cstddef>

#include "base/format.h"
#include "circuit/probe.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

std::string rail_words(const Solved& s, int rail, bool high) {
  const auto& volts = s.circuit.rail(rail).volts;
  return format("{} at {}", s.circuit.rail(rail).id, to_text(high ? volts.max : volts.min));
}

std::ptrdiff_t switches(const Device& device) {
  return std::count_if(device.parts.begin(), device.parts.end(),
                       [](const Part& part) { return std::holds_alternative<Switch>(part); });
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
      name = std::string(tr(part_word(part)));
      if (const auto* sw = std::get_if<Switch>(&part); sw != nullptr && switches(device) > 1) {
        name += format(" {}-{}", device.terminals[at(sw->a)].id, device.terminals[at(sw->b)].id);
      }
      if (harness.devices.size() > 1) name = format("{} of {}", name, device.id);
    }
  }
  switch (choice.position) {
    case Position::Off:
      return format("{} off", name);
    case Position::Low:
      return format("{} low", name);
    case Position::High:
      return format("{} high", name);
    case Position::On:
      return format("{} on", name);
    case Position::Open:
      return format("{} open", name);
    case Position::Closed:
      return format("{} closed", name);
    case Position::Level:
      return format("{} at {}", name, to_text(Volts(choice.figure)));
  }
  return name;
}

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
  std::string words;
  const bool without_power =
      !extreme_found.where.empty() && !s.islands[at(extreme_found.where.front().island)]
                                           .states[at(extreme_found.where.front().state)]
                                           .powered;
  if (without_power) words = tr("board without power");

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

std::string choice_words(const Solved& s, int knob, int choice) {
  const Knob& k = s.circuit.knobs[at(knob)];
  return knob_words(s, k, k.choices[at(choice)]);
}

std::string words_of(const Solved& s, const std::vector<Where>& where) {
  std::string words;
  for (const Where& w : where) {
    const Island& island = s.islands[at(w.island)];
    if (!island.states[at(w.state)].powered && words.empty()) words = tr("board without power");
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
