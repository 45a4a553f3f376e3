// SPDX-License-Identifier: MIT
// Steps of work as pieces of a page: cautions first, then a box, the number and the act, what must be seen,
// and blanks for readings. A step stays on one page, if a page holds it.
#pragma once

#include "draw/sheet_flow_text.h"
#include "sheet/document.h"

namespace plugward {

void add_steps(FlowText&, const sheet::Steps&);

}  // namespace plugward
