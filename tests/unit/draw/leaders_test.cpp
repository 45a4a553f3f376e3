// SPDX-License-Identifier: MIT
#include "draw/leaders.h"

#include <doctest/doctest.h>

#include <random>
#include <string>

#include "base/format.h"

namespace plugward {
namespace {

std::string words(const std::vector<Point>& route) {
  std::string text;
  for (const Point& p : route) text += format("{}{:g},{:g}", text.empty() ? "" : " ", p.x, p.y);
  return text;
}

int crossed(const std::vector<Point>& route, const std::vector<Box>& headers, int own) {
  int count = 0;
  for (int h = 0; h < static_cast<int>(headers.size()); ++h) {
    bool hit = false;
    for (std::size_t i = 1; i < route.size(); ++i)
      hit = hit || crosses(headers[static_cast<std::size_t>(h)], route[i - 1], route[i]);
    count += hit && h != own ? 1 : 0;
  }
  return count;
}

}  // namespace

TEST_CASE("a straight leader ends at the edge of its header") {
  struct Row {
    Point from, end;
  };
  const Row rows[] = {{{0, 25}, {40, 25}},
                      {{100, 25}, {60, 25}},
                      {{50, 0}, {50, 20}},
                      {{0, 0}, {40, 20}},
                      {{50, 28}, {50, 28}}};
  for (const Row& row : rows) {
    const Point end = edge_towards({40, 20, 60, 30}, row.from);
    CHECK(end.x == doctest::Approx(row.end.x));
    CHECK(end.y == doctest::Approx(row.end.y));
  }
}

TEST_CASE("a leader goes straight, or with one bend around what is in its way") {
  const Box board{100, 50, 200, 150};
  // A row along the upper edge, one header below it, and one in the middle of the board.
  const std::vector<Box> headers{
      {110, 52, 120, 60}, {130, 52, 140, 60}, {150, 52, 160, 60}, {110, 75, 120, 83}, {145, 95, 155, 105}};
  struct Row {
    std::string name;
    Leader leader;
    std::string route;
  };
  const Row rows[] = {
      {"nothing in the way", {{90, 56}, 0}, "90,56 110,56"},
      {"along its own row: around below it", {{210, 56}, 0}, "210,56 115,64 115,60"},
      {"between the row and what lies below", {{210, 70}, 0}, "210,70 115,61.5 115,60"},
      {"along its own row, from above", {{210, 42}, 0}, "210,42 115,50.5 115,52"},
      {"the last of the row", {{210, 56}, 2}, "210,56 160,56"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const auto routes = leader_routes(board, headers, {row.leader});
    REQUIRE(routes.size() == 1);
    CHECK(words(routes[0]) == row.route);
    CHECK(crossed(routes[0], headers, row.leader.header) == 0);
  }
}

TEST_CASE("no route crosses more headers than the straight line, and none leaves the room of the board") {
  std::mt19937 random(11);
  const auto pick = [&](int most) { return static_cast<double>(random() % static_cast<unsigned>(most)); };
  const Box board{100, 50, 200, 150};
  int before = 0, after = 0;
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    std::vector<Box> headers;
    for (int h = 0; h < 14; ++h) {
      const double x = 100 + pick(90), y = 50 + pick(92);
      headers.push_back({x, y, x + 3 + pick(7), y + 3 + pick(5)});
    }
    std::vector<Leader> leaders;
    for (int h = 0; h < 6; ++h) leaders.push_back({{h % 2 == 0 ? 93.0 : 207.0, 40 + 40.0 * (h / 2)}, h});
    const auto routes = leader_routes(board, headers, leaders);
    for (std::size_t i = 0; i < leaders.size(); ++i) {
      const Box& own = headers[i];
      const int straight =
          crossed({leaders[i].from, edge_towards(own, leaders[i].from)}, headers, leaders[i].header);
      const int taken = crossed(routes[i], headers, leaders[i].header);
      CHECK(taken <= straight);
      before += straight;
      after += taken;
      CHECK(routes[i].front().x == leaders[i].from.x);
      CHECK(routes[i].front().y == leaders[i].from.y);
      const Point end = routes[i].back();
      CHECK((end.x > own.left - 0.01 && end.x < own.right + 0.01));
      CHECK((end.y > own.top - 0.01 && end.y < own.bottom + 0.01));
      if (routes[i].size() == 2) continue;
      CHECK(routes[i].size() == 3);
      CHECK((routes[i][1].x >= board.left && routes[i][1].x <= board.right));
      CHECK((routes[i][1].y >= board.top - 2 && routes[i][1].y <= board.bottom + 9));
    }
  }
  CHECK(after < before / 2);
}

}  // namespace plugward
