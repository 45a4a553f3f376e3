// SPDX-License-Identifier: MIT
// A jumper of which nobody says where it sits is to be looked at, unless that cannot change the verdict.
//
//   3.3 V device on a pin that JP feeds with 12 V or 24 V, JP not stated: APART, whichever it is
#pragma once

#include <optional>
#include <string>

#include "plan/repin.h"

namespace plugward {

/// The summary of APART, when that is the verdict in every position of the jumpers of the placed headers that
/// are not stated; nothing when some position may do, when all are stated, or when there are too many to try.
/// Of the options, those count that say how each position is judged.
std::optional<std::string> apart_in_every_position(const Fitting&, const std::string& names,
                                                   const AdviseOptions& = {});

}  // namespace plugward
