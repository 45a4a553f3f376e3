// SPDX-License-Identifier: MIT
// "did you mean": the known name nearest to a mistyped one.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plugward {

/// Fewest insertions, deletions, replacements and swaps of neighbours that turn `a` into `b`
/// (optimal string alignment distance). Stops counting at `limit + 1`.
int edit_distance(std::string_view a, std::string_view b, int limit = 3);

/// The candidate nearest to `name`, or "" when none is near: at most 3 edits and fewer than half of the
/// letters of `name` (at least 1). The first of equally near candidates wins.
std::string nearest(std::string_view name, std::span<const std::string_view> candidates);
std::string nearest(std::string_view name, const std::vector<std::string>& candidates);

/// The candidates with `name` in them, in their order; small and capital letters count as the same. Those
/// that begin with it when there are any. None for fewer than 2 letters.
std::vector<std::string> containing(std::string_view name, std::span<const std::string_view> candidates);

}  // namespace plugward
