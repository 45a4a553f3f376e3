// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/adapter_wire_test.cpp.
#include "plan/adapter_wire.h"

#include <algorithm>
#include <array>

namespace plugward {
namespace {

constexpr double same_area = 0.02;  ///< share by which two areas may differ and still be one size
constexpr int unstated_awg = 26;
constexpr int thinnest_even = 32;
constexpr int thickest_even = 10;

constexpr std::array ordinary{Colour::Brown, Colour::Red,   Colour::Orange, Colour::Yellow,
                              Colour::Green, Colour::Blue,  Colour::Violet, Colour::Grey,
                              Colour::White, Colour::Black, Colour::Pink,   Colour::Turquoise};

/// Every colour that may be proposed, plain ones first.
std::vector<WireColour> proposals() {
  std::vector<WireColour> all;
  for (const Colour colour : ordinary) all.push_back({colour, std::nullopt});
  for (std::size_t base = 0; base < ordinary.size(); ++base) {
    for (std::size_t other = base + 1; other < ordinary.size(); ++other) {
      const WireColour pair{ordinary[base], ordinary[other]};
      if (!is_protective_earth(pair)) all.push_back(pair);
    }
  }
  return all;
}

}  // namespace

Joint joint_of(const Family& family) {
  if (family.profile == Profile::Screw) return Joint::Screw;
  if (enters_one_way(family.profile)) return Joint::Other;
  if (family.lance && family.lance->value == Lance::None) return Joint::Displacement;
  return Joint::Crimp;
}

bool takes(const Family& family, const Gauge& gauge) {
  if (!family.wire) return true;
  const double area = gauge.area.value;
  return area >= family.wire->value.min.value * (1 - same_area) &&
         area <= family.wire->value.max.value * (1 + same_area);
}

std::vector<Gauge> gauge_choices(const std::optional<Gauge>& cable, const Family& a, const Family& b) {
  const Gauge least = cable.value_or(awg(unstated_awg));
  std::vector<Gauge> choices;
  if (takes(a, least) && takes(b, least)) choices.push_back(least);
  std::optional<Gauge> thickest;
  for (int n = thinnest_even; n >= thickest_even; n -= 2) {
    const Gauge gauge = awg(n);
    if (!takes(a, gauge) || !takes(b, gauge)) continue;
    thickest = gauge;
    if (gauge.area.value > least.area.value * (1 + same_area)) choices.push_back(gauge);
  }
  if (choices.empty() && thickest) choices.push_back(*thickest);
  return choices;
}

bool thinner(const Gauge& gauge, const std::optional<Gauge>& cable) {
  return cable && gauge.area.value < cable->area.value * (1 - same_area);
}

std::vector<WireColour> distinct_colours(const std::vector<WireColour>& cable) {
  std::vector<WireColour> chosen(cable.size());
  const auto free = [&](const WireColour& colour) {
    return std::find(chosen.begin(), chosen.end(), colour) == chosen.end();
  };
  for (std::size_t i = 0; i < cable.size(); ++i) {
    if (cable[i].known() && !is_protective_earth(cable[i]) && free(cable[i])) chosen[i] = cable[i];
  }
  const std::vector<WireColour> all = proposals();
  for (WireColour& colour : chosen) {
    if (colour.known()) continue;
    const auto next = std::find_if(all.begin(), all.end(), free);
    if (next != all.end()) colour = *next;
  }
  return chosen;
}

}  // namespace plugward
