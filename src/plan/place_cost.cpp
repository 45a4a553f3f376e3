// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/place_test.cpp.
#include <array>
#include <string_view>

#include "base/format.h"
#include "plan/place.h"

namespace plugward {
namespace {

std::array<int, 8> levels(const PlaceCost& c) {
  return {c.unplaced, c.unknown, c.parts, c.housings, c.renamed, c.moves, c.settings, c.distance};
}

}  // namespace

PlaceCost operator+(const PlaceCost& a, const PlaceCost& b) {
  return {a.unplaced + b.unplaced, a.unknown + b.unknown, a.parts + b.parts,       a.housings + b.housings,
          a.renamed + b.renamed,   a.moves + b.moves,     a.settings + b.settings, a.distance + b.distance};
}

std::string why_better(const PlaceCost& better, const PlaceCost& worse) {
  const auto a = levels(better);
  const auto b = levels(worse);
  const std::array<std::string_view, 8> words{later("leaves {} plugs without a header instead of {}"),
                                              later("needs {} measurements first instead of {}"),
                                              later("needs {} added parts instead of {}"),
                                              later("needs {} new housings instead of {}"),
                                              later("keeps nearer to the names of the old headers"),
                                              later("moves {} contacts instead of {}"),
                                              later("needs {} settings instead of {}"),
                                              ""};
  for (std::size_t i = 0; i + 1 < a.size(); ++i) {
    if (a[i] != b[i]) return format_later(words[i], a[i], b[i]);
  }
  if (better.distance == worse.distance) return "";
  return format("its headers are {} apart instead of {}", to_text(Millimetres(better.distance / 10.0)),
                to_text(Millimetres(worse.distance / 10.0)));
}

}  // namespace plugward
