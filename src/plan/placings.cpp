// SPDX-License-Identifier: MIT
// Idea: a best-first search (P. E. Hart, N. J. Nilsson, B. Raphael, IEEE Trans. SSC 4 (1968) 100, from
// memory): plugs take headers one after the other, a part's bound is what its pairs cost by themselves and
// the cheapest of the rest; whole placements come out in the order of that sum.
//
//   two plugs, each with two headers: 3 x 3 placements, of which as a rule one is asked for
//
// Complexity: exponential in the plugs at worst, hence `tries`; plugs x headers as a rule. Not taken: an
// assignment, which cannot weigh the distance to the first plug, nor tell the second best.
// Tested in tests/unit/plan/find_test.cpp, against place().
#include "plan/placings.h"

#include <algorithm>
#include <cmath>

namespace plugward {
namespace {

/// Distance between the pins 1 of two headers, in 0.1 mm.
int distance(const Board& board, int a, int b) {
  const Header& one = board.headers[static_cast<std::size_t>(a)];
  const Header& two = board.headers[static_cast<std::size_t>(b)];
  return static_cast<int>(std::lround(10.0 * std::hypot((one.x - two.x).value, (one.y - two.y).value)));
}

/// What two parts of a placement cost at least: one jumper may feed both.
PlaceCost together(const PlaceCost& a, const PlaceCost& b) {
  PlaceCost sum = a + b;
  sum.unknown = std::max(a.unknown, b.unknown);
  return sum;
}

}  // namespace

bool PartialPlacing::later_than(const PartialPlacing& other) const {
  if (bound != other.bound) return bound > other.bound;
  if (headers.size() != other.headers.size()) return headers.size() < other.headers.size();
  return headers > other.headers;
}

Placings::Placings(const Board& board, const std::vector<std::vector<PlaceOption>>& options)
    : board_(board), options_(options), rest_(options.size() + 1) {
  for (std::size_t i = options.size(); i-- > 0;) {
    PlaceCost least{.unplaced = 1};
    for (const PlaceOption& option : options[i]) least = std::min(least, option.cost);
    rest_[i] = together(rest_[i + 1], least);
  }
  open_.push({rest_[0], {}, {}});
}

std::optional<PartialPlacing> Placings::next(int& tries) {
  while (!open_.empty() && tries-- > 0) {
    PartialPlacing partial = open_.top();
    open_.pop();
    if (partial.headers.size() == options_.size()) return partial;
    extend(partial);
  }
  return std::nullopt;
}

void Placings::extend(const PartialPlacing& partial) {
  const std::size_t plug = partial.headers.size();
  for (const PlaceOption& option : options_[plug]) {
    const auto& taken = partial.headers;
    if (std::find(taken.begin(), taken.end(), option.header) != taken.end()) continue;
    PlaceCost cost = option.cost;
    if (plug > 0 && taken.front() != PartialPlacing::none)
      cost.distance = distance(board_, taken.front(), option.header);
    add(partial, option.header, cost);
  }
  add(partial, PartialPlacing::none, {.unplaced = 1});
}

void Placings::add(const PartialPlacing& partial, int header, const PlaceCost& cost) {
  PartialPlacing longer{{}, together(partial.cost, cost), partial.headers};
  longer.headers.push_back(header);
  longer.bound = together(longer.cost, rest_[longer.headers.size()]);
  open_.push(std::move(longer));
}

}  // namespace plugward
