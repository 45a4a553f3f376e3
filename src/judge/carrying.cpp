// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/carrying_test.cpp and, with published figures, in tests/outside/budget_test.cpp.
#include "judge/carrying.h"

#include <array>

#include "base/format.h"

namespace plugward {

CarryingLimit contact_limit(const Family& family, const std::optional<Gauge>& gauge, int positions) {
  if (!gauge) return {std::nullopt, tr("contact rating not known: the lead's gauge is not stated"), ""};
  const Cited<Rating>* rating = family.rating_at(*gauge, positions);
  const auto told = [](const Cited<Rating>& cited, std::string basis) {
    return CarryingLimit{cited.value.amps, std::move(basis),
                         format("{} ({})", cited.source, tr(to_word(cited.certainty)))};
  };
  if (rating != nullptr) return told(*rating, format("contact rating at {}", to_text(*gauge)));
  const Cited<Rating>* general = nullptr;
  for (const Cited<Rating>& other : family.ratings) {
    const bool here = other.value.circuits == 0 || positions <= other.value.circuits;
    if (other.value.gauge.area.value > 0.0 || !here) continue;
    if (general == nullptr || other.value.amps < general->value.amps) general = &other;
  }
  if (general != nullptr) return told(*general, tr("contact rating, published without a gauge"));
  return {std::nullopt, format("no contact rating of '{}' at {} is published", family.id, to_text(*gauge)),
          ""};
}

CarryingLimit wire_limit(const Gauge& gauge) {
  const auto amps = chassis_current(gauge);
  if (!amps) return {std::nullopt, format("no chassis figure for {} is published", to_text(gauge)), ""};
  return {amps, format("{} alone in free air", to_text(gauge)),
          tr("chassis wiring: Handbook of Electronic Tables and Formulas, as copied in \"AWG Current "
             "Capacity\"")};
}

CarryingLimit bundle_limit(const Gauge& gauge, int wires) {
  if (const auto amps = bundled_current(gauge))
    return {amps, format("{} in a bundle", to_text(gauge)),
            tr("TFE wire, bundled: archived \"wire table\" page")};
  const auto amps = chassis_current(gauge);
  const auto factor = bundle_factor(wires);
  if (!amps || !factor)
    return {std::nullopt,
            format("no figure for {} wires of {} in a bundle is published", wires, to_text(gauge)), ""};
  return {*amps * *factor, format("{} in a bundle of {}", to_text(gauge), wires),
          format("chassis wiring x {} (MIL-W-5088B, as used in a DC-load manual)", *factor)};
}

CarryingLimit fused_wire_limit(const Gauge& gauge, int wires) {
  if (wires < 2) return wire_limit(gauge);
  const auto amps = general_bundled_current(gauge);
  if (!amps) return bundle_limit(gauge, wires);
  return {amps, format("{} in a bundle", to_text(gauge)),
          tr("general table, bundled: archived \"wire table\" page")};
}

std::optional<Amps> blade_fuse(Amps load) {
  constexpr double margin = 1.25;
  constexpr auto ratings =
      std::to_array<double>({1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0});
  for (const double rating : ratings) {
    if (rating >= margin * load.value) return Amps(rating);
  }
  return std::nullopt;
}

std::optional<Gauge> thinnest_for(Amps amps) {
  for (int n = 32; n >= 10; n -= 2) {
    const auto limit = fused_wire_limit(awg(n), 2).amps;
    if (limit && *limit >= amps) return awg(n);
  }
  return std::nullopt;
}

}  // namespace plugward
