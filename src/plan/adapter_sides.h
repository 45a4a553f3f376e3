// SPDX-License-Identifier: MIT
// An adapter lead as the judge meets it: from the board a plug whose leads are longer, from the cable a
// header whose pins are in another order.
//
//   assess with with_ends_b(...) on the board; assess with with_ends_a(...) on board_at_a(...)
#pragma once

#include <vector>

#include "plan/adapter_lead.h"

namespace plugward {

/// Makes the plug one of the header's family and size.
void take_housing_of(Plug&, const Header&);

/// From the board: `base` has the order of ends B; plugs that need no lead between are the cable's own, and
/// the wires and contacts of both parts are in series.
Harness with_ends_b(const Fitting&, Harness base, const std::vector<Adapter>&);

/// From the cable: its plugs as they are, the leads as long as both parts together. With `adapter_gauge` the
/// contacts of ends A are what is looked at, else those of the cable.
Harness with_ends_a(const Fitting&, const std::vector<Adapter>&, bool adapter_gauge);

/// The board with ends A instead of their headers; a position without a lead meets nothing.
Board board_at_a(const Fitting&, const std::vector<Adapter>&);

}  // namespace plugward
