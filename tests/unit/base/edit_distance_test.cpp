// SPDX-License-Identifier: MIT
#include "base/edit_distance.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

using plugward::containing;
using plugward::edit_distance;
using plugward::nearest;

namespace {

/// Optimal string alignment by its definition, without a table: slow and obviously right.
int plain_distance(std::string_view a, std::string_view b) {
  if (a.empty()) return static_cast<int>(b.size());
  if (b.empty()) return static_cast<int>(a.size());
  const int replaced = plain_distance(a.substr(1), b.substr(1)) + (a[0] == b[0] ? 0 : 1);
  int best = std::min({plain_distance(a.substr(1), b) + 1, plain_distance(a, b.substr(1)) + 1, replaced});
  if (a.size() > 1 && b.size() > 1 && a[0] == b[1] && a[1] == b[0]) {
    best = std::min(best, plain_distance(a.substr(2), b.substr(2)) + 1);
  }
  return best;
}

/// All words of at most `length` letters over "xyz".
std::vector<std::string> words(std::size_t length) {
  std::vector<std::string> all{""};
  for (std::size_t from = 0; from < all.size(); ++from) {
    if (all[from].size() == length) continue;
    for (const char letter : {'x', 'y', 'z'}) all.push_back(all[from] + letter);
  }
  return all;
}

}  // namespace

TEST_CASE("edit distance") {
  struct Row {
    std::string_view a, b;
    int distance;
  };
  constexpr std::array rows{
      Row{"", "", 0},
      Row{"header", "header", 0},
      Row{"hedder", "header", 1},
      Row{"haeder", "header", 1},
      Row{"heade", "header", 1},
      Row{"theader", "header", 1},
      Row{"kitten", "sitting", 3},
      Row{"abcdef", "uvwxyz", 4},
      Row{"", "abc", 3},
      Row{"", "abcdefgh", 4},
  };
  for (const Row& row : rows) {
    CAPTURE(row.a);
    CAPTURE(row.b);
    CHECK(edit_distance(row.a, row.b) == row.distance);
    CHECK(edit_distance(row.b, row.a) == row.distance);
  }
}

TEST_CASE("edit distance equals its definition for all short words and limits") {
  const auto all = words(4);
  int wrong = 0;
  for (const std::string& a : all) {
    for (const std::string& b : all) {
      const int plain = plain_distance(a, b);
      for (int limit = 0; limit <= 4; ++limit)
        wrong += edit_distance(a, b, limit) != std::min(plain, limit + 1);
    }
  }
  CHECK(all.size() == 121);
  CHECK(wrong == 0);
}

TEST_CASE("the nearest name") {
  const std::vector<std::string> names{"rail", "pin", "header", "hole", "jumper"};
  struct Row {
    std::string_view name, expected;
  };
  constexpr std::array rows{
      Row{"hedder", "header"},
      Row{"jumpre", "jumper"},
      Row{"pni", "pin"},
      Row{"rial", "rail"},
      Row{"wire", ""},  // three edits away from everything
      Row{"xyz", ""},   // nothing like it
      Row{"", ""},      // nothing is near to nothing
      Row{"connector", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(nearest(row.name, names) == row.expected);
  }
}

TEST_CASE("the first of equally near names wins") {
  CHECK(nearest("J8", std::vector<std::string>{"J7", "J9"}) == "J7");
  CHECK(nearest("J8", std::vector<std::string>{"J9", "J7"}) == "J9");
  CHECK(nearest("J8", std::vector<std::string>{}) == "");
}

TEST_CASE("names with a part in them") {
  constexpr std::array<std::string_view, 4> names{"short-circuit", "level-high", "unknown-level",
                                                  "over-short"};
  using Names = std::vector<std::string>;
  CHECK(containing("short", names) == Names{"short-circuit"});  // beginnings come before the rest
  CHECK(containing("Circuit", names) == Names{"short-circuit"});
  CHECK(containing("e", names) == Names{});
  CHECK(containing("er", names) == Names{"over-short"});
  CHECK(containing("high", names) == Names{"level-high"});
  CHECK(containing("le", names) == Names{"level-high"});
  CHECK(containing("-le", names) == Names{"unknown-level"});
  CHECK(containing("vel", names) == Names{"level-high", "unknown-level"});
  CHECK(containing("", names) == Names{});
}
