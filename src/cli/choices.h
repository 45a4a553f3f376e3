// SPDX-License-Identifier: MIT
// Options that take one of a few words: which words, for the check, the help of shells and the manual.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "cli/command.h"

namespace plugward {

/// What 'list' lists.
constexpr auto list_topics =
    std::to_array<std::string_view>({"families", "functions", "colours", "gauges", "rules", "schemas"});

/// The words that `option` ("--format") of a command takes, its default first where it has one; none when it
/// takes anything else.
std::vector<std::string> choices(const Takes&, std::string_view option);

}  // namespace plugward
