// SPDX-License-Identifier: MIT
// The same leads in a housing that the header takes.
//
//   if (auto harness = with_new_housing(fitting, 0)) ...    // plug 0 of the fitting, on its header
#pragma once

#include <optional>
#include <string>

#include "model/fitting.h"

namespace plugward {

struct NewHousing {
  Harness harness;    ///< the leads in the cavities of the same numbers
  std::string words;  ///< "another housing for plug 'filament': family 'xh-2.50', 3 positions, ..."
};

/// Nothing when no family of the catalogue mates with the header, takes the gauges of the leads and lets them
/// be moved one by one. REQUIRES: the plug is placed.
std::optional<NewHousing> with_new_housing(const Fitting&, int plug);

}  // namespace plugward
