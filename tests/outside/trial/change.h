// SPDX-License-Identifier: MIT
// Changes to a random pair that must leave its verdict as it is, or that may only make it worse; and the
// search for a smaller pair that still shows a fault.
#pragma once

#include <functional>

#include "support/random_world.h"

namespace plugward::test {

/// Every id that a file may choose gets another name, in another alphabetical order, and every pin a net's
/// name.
RandomWorld renamed(const RandomWorld&);
/// The same elements in the opposite order.
RandomWorld reordered(const RandomWorld&);
/// The pins of each header where a plug sits are counted from the other end, and the cavities with them.
RandomWorld renumbered(const RandomWorld&);
/// A device with a plug that is not placed, and a header that no plug is on.
RandomWorld with_bystanders(const RandomWorld&);
/// One fact less, chosen by the seed: where a lead goes, what a pin is, its evidence, where a jumper sits.
RandomWorld with_a_fact_less(const RandomWorld&, std::uint64_t seed);

/// Drops elements, attributes, placements and jumpers as long as `fails` still holds.
RandomWorld shrunk(RandomWorld, const std::function<bool(const RandomWorld&)>& fails);

}  // namespace plugward::test
