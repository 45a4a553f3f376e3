// SPDX-License-Identifier: MIT
// The answer of `check` as Markdown, for a ticket or a wiki: the sheet's findings, work, seatings and
// currents, without its pictures, test card and shopping list (`plugward sheet --as markdown` has them all).
#pragma once

#include <string>

#include "diag/source.h"
#include "plan/repin.h"

namespace plugward {

/// `standing`: the plugs sit on their headers already, as in a loom.
std::string check_markdown(const Sources&, const Fitting&, const Advice&, bool standing);

}  // namespace plugward
