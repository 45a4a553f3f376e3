// SPDX-License-Identifier: MIT
// Idea: a leader may leave its header upright or level, and bend once: close to the header, or just off the
// board. Of these few routes and the straight one it takes the one that crosses fewest other headers, then
// fewest other leaders, then a straight one, then the shortest. A second round sees the routes of the first.
//
//   a header in the row along the top edge: up, over the edge, then straight to its callout
//
// Complexity: leaders x some 20 routes x (headers + leaders). Not taken: shortest ways around all obstacles;
// more than one bend is harder to follow than a crossing. Tested in tests/unit/draw/leaders_test.cpp.
#include "draw/leaders.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace plugward {
namespace {

using Route = std::vector<Point>;

constexpr double off_board = 1.2;                         ///< mm, of a bend beyond the edge
constexpr double off_header[] = {1.5, 2.5, 4, 6, 8, 11};  ///< likewise, beyond the header

Point middle(const Box& b) {
  return {(b.left + b.right) / 2, (b.top + b.bottom) / 2};
}

/// Do the lines a-b and c-d cross?
bool cross(Point a, Point b, Point c, Point d) {
  const auto side = [](Point p, Point q, Point r) {
    return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

int headers_on(const Route& route, const std::vector<Box>& headers, int own) {
  int count = 0;
  for (std::size_t h = 0; h < headers.size(); ++h) {
    if (static_cast<int>(h) == own) continue;
    for (std::size_t i = 1; i < route.size(); ++i) {
      if (!crosses(headers[h], route[i - 1], route[i])) continue;
      ++count;
      break;
    }
  }
  return count;
}

int crossings(const Route& one, const Route& other) {
  int count = 0;
  for (std::size_t i = 1; i < one.size(); ++i) {
    for (std::size_t k = 1; k < other.size(); ++k)
      count += cross(one[i - 1], one[i], other[k - 1], other[k]) ? 1 : 0;
  }
  return count;
}

double length(const Route& route) {
  double sum = 0;
  for (std::size_t i = 1; i < route.size(); ++i)
    sum += std::hypot(route[i].x - route[i - 1].x, route[i].y - route[i - 1].y);
  return sum;
}

/// The straight one first.
std::vector<Route> routes_to(const Box& board, const Box& header, Point from) {
  std::vector<Route> routes{{from, edge_towards(header, from)}};
  const Point c = middle(header);
  const auto upright = [&](double y) {
    if (y < std::min(board.top, header.top) - off_board ||
        y > std::max(board.bottom, header.bottom) + off_board)
      return;
    routes.push_back({from, {c.x, y}, {c.x, y < c.y ? header.top : header.bottom}});
  };
  const auto level = [&](double x) {
    if (x < board.left || x > board.right) return;
    routes.push_back({from, {x, c.y}, {x < c.x ? header.left : header.right, c.y}});
  };
  for (const double off : off_header) {
    upright(header.top - off);
    upright(header.bottom + off);
    level(header.left - off);
    level(header.right + off);
  }
  upright(std::min(board.top, header.top) - off_board);
  upright(std::max(board.bottom, header.bottom) + off_board);
  return routes;
}

}  // namespace

Point edge_towards(const Box& b, Point from) {
  const Point c = middle(b);
  const double dx = from.x - c.x, dy = from.y - c.y;
  double t = 1;
  if (dx != 0) t = std::min(t, (b.right - b.left) / 2 / std::abs(dx));
  if (dy != 0) t = std::min(t, (b.bottom - b.top) / 2 / std::abs(dy));
  return {c.x + dx * t, c.y + dy * t};
}

bool crosses(const Box& box, Point a, Point b) {
  // Liang-Barsky clipping: what of the line lies within the box.
  double from = 0, to = 1;
  const auto clip = [&](double d, double near, double far) {
    if (std::abs(d) < 1e-9) return near <= 0 && far >= 0;
    const double t1 = near / d, t2 = far / d;
    from = std::max(from, std::min(t1, t2));
    to = std::min(to, std::max(t1, t2));
    return from <= to;
  };
  return clip(b.x - a.x, box.left - a.x, box.right - a.x) && clip(b.y - a.y, box.top - a.y, box.bottom - a.y);
}

std::vector<std::vector<Point>> leader_routes(const Box& board, const std::vector<Box>& headers,
                                              const std::vector<Leader>& leaders) {
  std::vector<Route> chosen;
  for (const Leader& leader : leaders) {
    chosen.push_back(
        {leader.from, edge_towards(headers[static_cast<std::size_t>(leader.header)], leader.from)});
  }
  for (int round = 0; round < 2; ++round) {
    for (std::size_t i = 0; i < leaders.size(); ++i) {
      const auto cost = [&](const Route& route) {
        int others = 0;
        for (std::size_t k = 0; k < chosen.size(); ++k) others += k == i ? 0 : crossings(route, chosen[k]);
        return std::tuple(headers_on(route, headers, leaders[i].header), others, route.size(), length(route));
      };
      const std::vector<Route> routes =
          routes_to(board, headers[static_cast<std::size_t>(leaders[i].header)], leaders[i].from);
      auto best = cost(routes.front());
      chosen[i] = routes.front();
      for (const Route& route : routes) {
        const auto its = cost(route);
        if (!(its < best)) continue;
        best = its;
        chosen[i] = route;
      }
    }
  }
  return chosen;
}

}  // namespace plugward
