// SPDX-License-Identifier: MIT
// Tested in tests/cases/place-*.
#include "sheet/place_words.h"

#include "base/format.h"
#include "sheet/words.h"

namespace plugward {

const PlaceOption* chosen_option(const PlacementPlan& plan, int plug) {
  const int header = chosen_header(plan, plug);
  for (const PlaceOption& option : plan.options) {
    if (option.plug == plug && option.header == header) return &option;
  }
  return nullptr;
}

int chosen_header(const PlacementPlan& plan, int plug) {
  if (!plan.best) return -1;
  for (const Placement& p : plan.best->placements) {
    if (p.plug == plug) return p.header;
  }
  return -1;
}

std::vector<std::string> parts_of(const Advice& advice) {
  if (advice.cures.empty()) return advice.parts;
  std::vector<std::string> parts;
  for (const Cure& cure : advice.cures) parts.push_back(cure.what);
  parts.insert(parts.end(), advice.uncured.begin(), advice.uncured.end());
  return parts;
}

std::vector<std::string> runner_up_words(const Fitting& fitting, const PlacementPlan& plan) {
  std::vector<std::string> differs;
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    const auto header_in = [&](const PlacedHarness& placed) {
      for (const Placement& p : placed.placements) {
        if (p.plug == plug) return header_at(fitting, p.header).id;
      }
      return std::string(tr("no header"));
    };
    const std::string other = header_in(*plan.runner_up);
    if (other != header_in(*plan.best))
      differs.push_back(format("'{}' on {}", plug_at(fitting, plug).id, other));
  }
  return {format("{}: {}", join(differs, ", "), to_word(plan.runner_up->advice.verdict)),
          plan.runner_up_equal ? format("it is {}", plan.why_it_lost)
                               : format("it lost because the best one {}", plan.why_it_lost)};
}

std::string equals_words(const Fitting& fitting, const PlacementPlan& plan, const std::vector<int>& group) {
  std::vector<std::string> plugs;
  std::vector<std::string> headers;
  for (const int plug : group) {
    plugs.push_back(format("'{}'", plug_at(fitting, plug).id));
    headers.push_back(header_at(fitting, chosen_header(plan, plug)).id);
  }
  return format(
      "{} are as good in each other's place: which of them goes on which of {} is for you to choose, and for "
      "the firmware to know",
      join(plugs, ", "), join(headers, ", "));
}

std::string_view unproven_sentence() {
  return tr(
      "The search was ended before it was proved that nothing is better; state a header or two with --at.");
}

}  // namespace plugward
