// SPDX-License-Identifier: MIT
// Headings and sentences around the order of work.
#pragma once

#include <string>
#include <string_view>

#include "plan/work.h"

namespace plugward {

/// "Bare board, power on, nothing plugged in", "Plug in, stage 4: heaters": steps under one heading follow
/// each other.
std::string stage_heading(const WorkStep&);
/// How boxes, blanks and colours are meant.
std::string_view work_sentence();
/// "18 min practised, 42 min for the first time".
std::string minutes_words(int practised, int first_time);

}  // namespace plugward
