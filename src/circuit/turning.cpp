// SPDX-License-Identifier: MIT
// The field's direction is the angle of (amps in the first winding, amps in the second). Over one cycle of
// four states it must go round once, in steps that stay well below half a turn, and never nearly vanish;
// everything else judders. Tested in tests/unit/plan/causes_test.cpp.
#include "circuit/turning.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "circuit/limits.h"

namespace plugward::circuit {
namespace {

constexpr double still_below = 0.02;  // amps
constexpr double weak_below = 0.2;    // of the strongest state
constexpr double longest_step = 0.75 * std::numbers::pi;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

struct Winding {
  Node a = 0, b = 0;
  double ohms = 0;
};

std::vector<Winding> windings(const Circuit& c, int device) {
  std::vector<Winding> list;
  for (const Part& part : c.device(device).parts) {
    const auto* coil = std::get_if<Coil>(&part);
    if (coil == nullptr || !(coil->ohms.value > 0.0)) continue;
    list.push_back({c.terminal(device, coil->a), c.terminal(device, coil->b), coil->ohms.value});
  }
  return list;
}

/// Which way a driver's pin stands in one of the four states.
Position wanted(const Pin& pin, int step) {
  constexpr std::array<std::array<bool, 2>, 4> cycle{
      {{true, true}, {false, true}, {false, false}, {true, false}}};
  const bool forward = cycle[at(step)][pin.coil == 2 ? 1 : 0];
  return forward == (pin.coil_end == 'A') ? Position::High : Position::Low;
}

/// Amps from a to b while every driver pin of the winding's island stands as the state wants it.
std::optional<double> amps_in(const Solved& s, const Winding& w, int step) {
  const int where = s.island_of[at(w.a)];
  if (where < 0) return std::nullopt;
  const Island& island = s.islands[at(where)];
  std::optional<double> most;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    if (!unshorted(where, island, state)) continue;
    bool suits = true;
    for (std::size_t k = 0; suits && k < island.knobs.size(); ++k) {
      const Knob& knob = s.circuit.knobs[at(island.knobs[k])];
      if (!knob.on_board || knob.at.header < 0) continue;
      const Pin& pin = s.circuit.fitting->board->headers[at(knob.at.header)].pin(knob.at.pin);
      if (pin.function != PinFunction::Coil) continue;
      suits = knob.choices[at(island.choice(state, static_cast<int>(k)))].position == wanted(pin, step);
    }
    if (!suits) continue;
    const double amps = (island.volts_at(state, w.a) - island.volts_at(state, w.b)) / w.ohms;
    if (!most || std::abs(amps) > std::abs(*most)) most = amps;
  }
  return most;
}

/// Headers whose driver is joined to one of the windings.
std::vector<int> drivers(const Solved& s, const std::vector<Winding>& pair) {
  std::vector<int> headers;
  for (const TouchedPin& pin : s.circuit.pins) {
    if (pin.pin->function != PinFunction::Coil) continue;
    const int where = s.island_of[at(pin.node)];
    const bool joined =
        where >= 0 && (where == s.island_of[at(pair[0].a)] || where == s.island_of[at(pair[1].a)]);
    if (joined && std::find(headers.begin(), headers.end(), pin.header) == headers.end())
      headers.push_back(pin.header);
  }
  return headers;
}

Turning turning_of(const std::array<std::array<double, 2>, 4>& field) {
  double strongest = 0, weakest = 1e9;
  for (const auto& f : field) {
    const double strength = std::hypot(f[0], f[1]);
    strongest = std::max(strongest, strength);
    weakest = std::min(weakest, strength);
  }
  if (strongest < still_below) return Turning::Still;
  if (weakest < weak_below * strongest) return Turning::Judders;
  double turned = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const auto& from = field[i];
    const auto& to = field[(i + 1) % 4];
    const double step = std::atan2(from[0] * to[1] - from[1] * to[0], from[0] * to[0] + from[1] * to[1]);
    if (std::abs(step) > longest_step) return Turning::Judders;
    turned += step;
  }
  if (std::abs(turned) < std::numbers::pi) return Turning::Judders;
  return turned > 0 ? Turning::Forwards : Turning::Backwards;
}

}  // namespace

std::vector<MotorSight> turnings(const Solved& s) {
  std::vector<MotorSight> list;
  const int devices = static_cast<int>(s.circuit.fitting->harness->devices.size());
  for (int device = 0; device < devices; ++device) {
    const std::vector<Winding> pair = windings(s.circuit, device);
    if (pair.size() < 2) continue;
    MotorSight sight;
    sight.device = device;
    const std::vector<int> headers = drivers(s, pair);
    if (headers.size() == 1) sight.header = headers.front();
    // Two bridges that meet in one winding, or two drivers, work against each other.
    const bool apart = s.island_of[at(pair[0].a)] != s.island_of[at(pair[1].a)];
    if (headers.size() > 1 || (headers.size() == 1 && !apart)) sight.turning = Turning::Judders;
    if (headers.size() == 1 && apart) {
      std::array<std::array<double, 2>, 4> field{};
      for (int step = 0; step < 4; ++step) {
        for (std::size_t w = 0; w < 2; ++w) field[at(step)][w] = amps_in(s, pair[w], step).value_or(0.0);
      }
      sight.turning = turning_of(field);
    }
    list.push_back(sight);
  }
  return list;
}

}  // namespace plugward::circuit
