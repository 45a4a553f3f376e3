// SPDX-License-Identifier: MIT
// Idea: a header's edge of the board is the nearest one that still has room for a tag. Along an edge the tags
// keep the order of their headers; where they would overlap, neighbours become one block whose members share
// the deviation evenly (pool adjacent violators, the solution of isotonic regression: Barlow, Bartholomew,
// Bremner, Brunk, "Statistical Inference under Order Restrictions", 1972, from memory).
//
//   wanted 10 12 30, each 6 long:  block {10, 12} becomes 8, 14; 30 stays
//
// Complexity: n log n for n tags. Not taken: callouts in two columns (callouts.h), whose leaders cross the
// board when most headers lie along its upper and lower edge. Tested in tests/unit/draw/border_tags_test.cpp.
#include "draw/border_tags.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace plugward {
namespace {

constexpr double gap = 0.7;        ///< between tags of one edge
constexpr double off_board = 4.5;  ///< from the board to its tags: room for the leaders

enum Edge { Top, Bottom, Left, Right };
constexpr std::array<Edge, 4> edges = {Top, Bottom, Left, Right};

double middle(double a, double b) {
  return (a + b) / 2;
}

class Planner {
 public:
  explicit Planner(const BorderTagProblem& problem) : problem_(problem), tags_(problem.headers.size()) {}

  std::vector<BorderTag> run() {
    assign();
    for (const Edge edge : edges) lay(edge);
    return std::move(tags_);
  }

 private:
  static bool level(Edge edge) { return edge == Top || edge == Bottom; }

  double length(std::size_t tag, Edge edge) const {
    return (level(edge) ? problem_.widths[tag] : problem_.height) + gap;
  }

  double low(Edge edge) const { return level(edge) ? problem_.room.left : problem_.board.top - gap; }
  double high(Edge edge) const { return level(edge) ? problem_.room.right : problem_.board.bottom + gap; }

  double distance(std::size_t tag, Edge edge) const {
    const Box &h = problem_.headers[tag], &b = problem_.board;
    switch (edge) {
      case Top:
        return h.top - b.top;
      case Bottom:
        return b.bottom - h.bottom;
      case Left:
        return h.left - b.left;
      case Right:
        break;
    }
    return b.right - h.right;
  }

  /// Headers closest to an edge choose first.
  void assign() {
    struct Wish {
      double distance;
      std::size_t tag;
      Edge edge;
    };
    std::vector<Wish> wishes;
    for (std::size_t tag = 0; tag < tags_.size(); ++tag) {
      for (const Edge edge : edges) wishes.push_back({distance(tag, edge), tag, edge});
    }
    std::stable_sort(wishes.begin(), wishes.end(),
                     [](const Wish& a, const Wish& b) { return a.distance < b.distance; });
    std::array<double, 4> taken{};
    for (const Wish& wish : wishes) {
      if (tags_[wish.tag].placed) continue;
      const double more = taken[wish.edge] + length(wish.tag, wish.edge);
      if (more > high(wish.edge) - low(wish.edge)) continue;
      taken[wish.edge] = more;
      tags_[wish.tag].placed = true;
      at_[wish.edge].push_back(wish.tag);
    }
  }

  void lay(Edge edge) {
    std::vector<std::size_t>& here = at_[edge];
    const auto along = [&](std::size_t tag) {
      const Box& h = problem_.headers[tag];
      return level(edge) ? middle(h.left, h.right) : middle(h.top, h.bottom);
    };
    std::sort(here.begin(), here.end(), [&](std::size_t a, std::size_t b) { return along(a) < along(b); });
    std::vector<double> wanted, lengths;
    for (const std::size_t tag : here) {
      wanted.push_back(along(tag));
      lengths.push_back(length(tag, edge));
    }
    const std::vector<double> at = spread_out(wanted, lengths, low(edge), high(edge));
    for (std::size_t i = 0; i < here.size(); ++i) set(here[i], edge, at[i]);
  }

  void set(std::size_t index, Edge edge, double at) {
    BorderTag& tag = tags_[index];
    const double width = problem_.widths[index], height = problem_.height;
    const Box& b = problem_.board;
    Point corner{at - width / 2, at - height / 2};
    if (edge == Top) corner.y = b.top - off_board - height;
    if (edge == Bottom) corner.y = b.bottom + off_board;
    if (edge == Left) corner.x = b.left - off_board - width;
    if (edge == Right) corner.x = b.right + off_board;
    tag.box = {corner.x, corner.y, corner.x + width, corner.y + height};
    tag.port = {at, at};
    if (edge == Top) tag.port.y = tag.box.bottom;
    if (edge == Bottom) tag.port.y = tag.box.top;
    if (edge == Left) tag.port.x = tag.box.right;
    if (edge == Right) tag.port.x = tag.box.left;
  }

  const BorderTagProblem& problem_;
  std::vector<BorderTag> tags_;
  std::array<std::vector<std::size_t>, 4> at_;
};

}  // namespace

std::vector<BorderTag> plan_border_tags(const BorderTagProblem& problem) {
  return Planner(problem).run();
}

std::vector<double> spread_out(const std::vector<double>& wanted, const std::vector<double>& lengths,
                               double low, double high) {
  // Less the lengths before it, every middle may be any value that is not below its predecessor's.
  struct Block {
    double sum = 0;
    std::size_t count = 0;
    double value() const { return sum / static_cast<double>(count); }
  };
  std::vector<Block> blocks;
  std::vector<double> before;
  double total = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    before.push_back(total + lengths[i] / 2);
    total += lengths[i];
    blocks.push_back({wanted[i] - before.back(), 1});
    while (blocks.size() > 1 && blocks[blocks.size() - 2].value() > blocks.back().value()) {
      const Block last = blocks.back();
      blocks.pop_back();
      blocks.back().sum += last.sum;
      blocks.back().count += last.count;
    }
  }
  std::vector<double> middles;
  for (const Block& block : blocks) {
    const double value = std::clamp(block.value(), low, std::max(low, high - total));
    for (std::size_t i = 0; i < block.count; ++i) middles.push_back(value + before[middles.size()]);
  }
  return middles;
}

}  // namespace plugward
