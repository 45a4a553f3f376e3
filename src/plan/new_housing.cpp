// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/swap_test.cpp.
#include "plan/new_housing.h"

#include <algorithm>

#include "base/format.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "plan/contact_wire.h"
#include "plan/technique.h"

namespace plugward {
namespace {

/// As `plug`, with the header's count in the given family.
Plug in_family(const Plug& plug, const Family& family, const Header& header) {
  Plug other = plug;
  other.family = family.id;
  other.positions = header.positions;
  other.rows = header.rows;
  other.numbering = header.numbering;
  other.key = KeyState::Intact;
  return other;
}

bool suits(const Plug& plug, const Family& family, const Header& header, const Catalogue& catalogue) {
  if (!movable(family) || header.rows > family.rows) return false;
  const bool room = std::all_of(plug.leads.begin(), plug.leads.end(), [&](const Lead& lead) {
    return lead.cavity <= header.positions && can_crimp(family, lead);
  });
  return room && mate(in_family(plug, family, header), header, catalogue).kind == MateKind::Fits;
}

}  // namespace

std::optional<NewHousing> with_new_housing(const Fitting& fitting, int plug) {
  const Plug& old = plug_of(fitting, plug);
  const auto placed = std::find_if(fitting.placements.begin(), fitting.placements.end(),
                                   [&](const Placement& p) { return p.plug == plug; });
  const Header& header = header_of(fitting, placed->header);
  const Family* chosen = fitting.catalogue->find(header.family);
  if (chosen == nullptr || !suits(old, *chosen, header, *fitting.catalogue)) {
    chosen = nullptr;
    for (const Family& family : fitting.catalogue->all()) {
      if (chosen == nullptr && suits(old, family, header, *fitting.catalogue)) chosen = &family;
    }
  }
  if (chosen == nullptr) return std::nullopt;
  NewHousing result{*fitting.harness,
                    format("another housing for plug '{}': family '{}', {} positions, with its own contacts, "
                           "crimped anew",
                           old.id, chosen->id, header.positions)};
  result.harness.plugs[static_cast<std::size_t>(plug)] = in_family(old, *chosen, header);
  return result;
}

}  // namespace plugward
