// SPDX-License-Identifier: MIT
#include "base/edit_distance.h"

#include <algorithm>
#include <vector>

namespace plugward {

int edit_distance(std::string_view a, std::string_view b, int limit) {
  const int rows = static_cast<int>(a.size());
  const int columns = static_cast<int>(b.size());
  if (std::abs(rows - columns) > limit) return limit + 1;
  const auto width = static_cast<std::size_t>(columns) + 1;
  std::vector<int> before(width), above(width), row(width);
  for (std::size_t j = 0; j < width; ++j) above[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    int least = row[0];
    for (std::size_t j = 1; j < width; ++j) {
      const int replaced = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replaced});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
      least = std::min(least, row[j]);
    }
    if (least > limit) return limit + 1;
    std::swap(before, above);
    std::swap(above, row);
  }
  return std::min(above[width - 1], limit + 1);
}

std::string nearest(std::string_view name, std::span<const std::string_view> candidates) {
  const int letters = static_cast<int>(name.size());
  int best = std::clamp((letters - 1) / 2, 1, 3) + 1;
  std::string_view found;
  for (std::string_view candidate : candidates) {
    const int distance = edit_distance(name, candidate, best - 1);
    if (distance < best) {
      best = distance;
      found = candidate;
    }
  }
  return std::string(found);
}

std::string nearest(std::string_view name, const std::vector<std::string>& candidates) {
  std::vector<std::string_view> views(candidates.begin(), candidates.end());
  return nearest(name, std::span<const std::string_view>(views));
}

std::vector<std::string> containing(std::string_view name, std::span<const std::string_view> candidates) {
  if (name.size() < 2) return {};
  const auto small = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
  std::vector<std::string> starts, inside;
  for (const std::string_view candidate : candidates) {
    const auto at = std::search(candidate.begin(), candidate.end(), name.begin(), name.end(),
                                [&](char a, char b) { return small(a) == small(b); });
    if (at == candidate.end()) continue;
    (at == candidate.begin() ? starts : inside).emplace_back(candidate);
  }
  return starts.empty() ? inside : starts;
}

}  // namespace plugward
