// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/contact_wire_test.cpp.
#include "plan/contact_wire.h"

#include <algorithm>

#include "base/format.h"
#include "plan/adapter_wire.h"

namespace plugward {

bool can_crimp(const Family& family, const Lead& lead) {
  return joint_of(family) != Joint::Crimp || !lead.gauge || takes(family, *lead.gauge);
}

std::string wire_range_words(const Family& family) {
  if (!family.wire) return "";
  const int thin = nearest_awg(family.wire->value.min), thick = nearest_awg(family.wire->value.max);
  return thin == thick ? format("{} AWG", thin) : format("{} to {} AWG", thin, thick);
}

Gauge nearest_taken(const Family& family, const Gauge& gauge) {
  if (takes(family, gauge)) return gauge;
  const Range<SquareMillimetres>& range = family.wire->value;
  return awg(nearest_awg(gauge.area < range.min ? range.min : range.max));
}

std::string misfit_words(const Family& family, const Plug& plug) {
  std::vector<int> cavities;
  std::vector<std::string> gauges;
  int seated = 0;
  for (const Lead& lead : plug.leads) {
    if (lead.cavity < 1) continue;
    ++seated;
    if (can_crimp(family, lead)) continue;
    cavities.push_back(lead.cavity);
    const std::string gauge = to_text(*lead.gauge);
    if (std::find(gauges.begin(), gauges.end(), gauge) == gauges.end()) gauges.push_back(gauge);
  }
  if (cavities.empty()) return "";
  std::sort(cavities.begin(), cavities.end());
  const bool all = static_cast<int>(cavities.size()) == seated;
  const std::string whose = all ? std::string(tr("its leads"))
                                : count_of(cavities.size(), "the lead in cavity {}",
                                           "the leads in cavities {}", join(cavities, ", "));
  return format(
      "they take {}, not the {} of {}: those leads need other wire, or take an adapter lead between "
      "('plugward repin --adapter')",
      wire_range_words(family), join(gauges, ", "), whose);
}

}  // namespace plugward
