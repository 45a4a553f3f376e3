// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/find_text_test.cpp.
#include "report/find_summary.h"

#include <algorithm>

#include "base/format.h"
#include "report/words.h"

namespace plugward {

std::string where_words(const Board& board, const Harness& harness,
                        const std::vector<Placement>& placements) {
  std::vector<std::string> words;
  for (std::size_t plug = 0; plug < harness.plugs.size(); ++plug) {
    const auto on = std::find_if(placements.begin(), placements.end(),
                                 [&](const Placement& p) { return p.plug == static_cast<int>(plug); });
    const Header* header =
        on == placements.end() ? nullptr : &board.headers[static_cast<std::size_t>(on->header)];
    if (harness.plugs.size() == 1 && header != nullptr) return header_title(*header);
    words.push_back(format("{} on {}", harness.plugs[plug].id, header == nullptr ? "no header" : header->id));
  }
  return format("{}", join(words, ", "));
}

void FindSummary::add(const std::string& file, const Board& board, const Harness& harness,
                      const BoardFit& fit) {
  if (!fit.best) {
    if (empty.size() < most_named) empty.push_back(file);
    ++empty_boards;
    return;
  }
  FindSummary one;
  one.found.push_back(
      {file, fit.best->verdict, fit.best->cost, where_words(board, harness, fit.best->placements)});
  one.best_cost_ = fit.best->cost;
  for (const Placement& p : fit.best->placements) {
    one.best_at.emplace_back(harness.plugs[static_cast<std::size_t>(p.plug)].id,
                             board.headers[static_cast<std::size_t>(p.header)].id);
  }
  add(std::move(one));
}

void FindSummary::add(FindSummary next) {
  if (!next.found.empty() && (found.empty() || next.best_cost_ < best_cost_)) {
    best_cost_ = next.best_cost_;
    best_at = std::move(next.best_at);
  }
  for (FoundBoard& board : next.found) found.push_back(std::move(board));
  for (std::string& file : next.empty) {
    if (empty.size() < most_named) empty.push_back(std::move(file));
  }
  for (LeftOut& left : next.left_out) left_out.push_back(std::move(left));
  empty_boards += next.empty_boards;
}

void FindSummary::rank() {
  std::stable_sort(found.begin(), found.end(),
                   [](const FoundBoard& a, const FoundBoard& b) { return a.cost < b.cost; });
}

}  // namespace plugward
