// SPDX-License-Identifier: MIT
// Do the contacts of another family take the leads that a plug has? One place says so, for every plan that
// puts another housing on them.
//
//   misfit_words(vh, plug)
//     "they take 22 to 16 AWG, not the 26 AWG of its leads: those leads need other wire, or take an adapter
//      lead between ('plugward repin --adapter')"
#pragma once

#include <string>
#include <vector>

#include "catalogue/family.h"
#include "model/harness.h"

namespace plugward {

/// Can the lead be crimped into a contact of the family? True when its gauge or the family's range is not
/// known, and for families that are not crimped.
bool can_crimp(const Family&, const Lead&);

/// "22 to 16 AWG"; "" when not known.
std::string wire_range_words(const Family&);

/// The size nearest to `gauge` that the contacts take. REQUIRES: the family's range is known.
Gauge nearest_taken(const Family&, const Gauge&);

/// What speaks against the family's contacts on the plug's seated leads; "" when nothing does.
std::string misfit_words(const Family&, const Plug&);

}  // namespace plugward
