// SPDX-License-Identifier: MIT
// The pins of a check as a table for spreadsheets: one record for every cavity of every plug that is placed,
// what sits there now and after the moves, and what it meets. CSV by the rules of parts_text.h.
#pragma once

#include <string>

#include "plan/repin.h"

namespace plugward {

std::string check_csv(const Fitting&, const Advice&);

}  // namespace plugward
