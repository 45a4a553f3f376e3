// SPDX-License-Identifier: MIT
#include "quantity/preferred.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <random>
#include <vector>

using namespace plugward;

TEST_CASE("the tables and the formula of the geometric series") {
  const auto e96 = members(Series::E96);
  REQUIRE(e96.size() == 96);
  for (std::size_t i = 0; i < 96; ++i) {
    CAPTURE(i);
    CHECK(std::lround(e96[i] * 100.0) == std::lround(100.0 * std::pow(10.0, static_cast<double>(i) / 96.0)));
  }

  const auto e24 = members(Series::E24);
  REQUIRE(e24.size() == 24);
  std::vector<double> departing;
  for (std::size_t i = 0; i < 24; ++i) {
    const double formula = std::round(10.0 * std::pow(10.0, static_cast<double>(i) / 24.0)) / 10.0;
    if (std::abs(formula - e24[i]) > 0.01) departing.push_back(e24[i]);
  }
  CHECK(departing == std::vector<double>{2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 8.2});

  const auto e12 = members(Series::E12);
  REQUIRE(e12.size() == 12);
  for (std::size_t i = 0; i < 12; ++i) CHECK(e12[i] == e24[2 * i]);
}

TEST_CASE("neighbours in the series") {
  struct Row {
    double value;
    Series series;
    double at_most, nearest, at_least;
  };
  constexpr std::array rows{
      Row{4700.0, Series::E12, 4700.0, 4700.0, 4700.0},
      Row{4700.0000001, Series::E24, 4700.0, 4700.0, 4700.0},
      Row{4699.9999999, Series::E24, 4700.0, 4700.0, 4700.0},
      Row{5000.0, Series::E12, 4700.0, 4700.0, 5600.0},
      Row{5200.0, Series::E12, 4700.0, 5600.0, 5600.0},
      Row{9.5, Series::E24, 9.1, 9.1, 10.0},
      Row{9.9, Series::E12, 8.2, 10.0, 10.0},
      Row{0.985, Series::E96, 0.976, 0.976, 1.0},
      Row{1e-3, Series::E24, 1e-3, 1e-3, 1e-3},
      Row{2280.0, Series::E12, 2200.0, 2200.0, 2700.0},
      Row{1520.0, Series::E24, 1500.0, 1500.0, 1600.0},
      Row{1e9, Series::E12, 1e9, 1e9, 1e9},
  };
  for (const Row& row : rows) {
    CAPTURE(row.value);
    CHECK(preferred_at_most(Ohms(row.value), row.series).value == row.at_most);
    CHECK(nearest_preferred(Ohms(row.value), row.series).value == row.nearest);
    CHECK(preferred_at_least(Ohms(row.value), row.series).value == row.at_least);
  }
}

TEST_CASE("every member of every decade is its own neighbour") {
  for (const Series series : {Series::E12, Series::E24, Series::E96}) {
    for (int decade = -3; decade <= 8; ++decade) {
      for (const double member : members(series)) {
        const Ohms value(member * std::pow(10.0, decade));
        CAPTURE(value.value);
        CHECK(preferred_at_most(value, series) == preferred_at_least(value, series));
        CHECK(nearest_preferred(value, series).value == doctest::Approx(value.value).epsilon(1e-9));
      }
    }
  }
}

TEST_CASE("the neighbours enclose the value and the nearest is one of them") {
  std::mt19937 random(63);
  std::uniform_real_distribution<double> exponent(-2.0, 7.0);
  for (int i = 0; i < 5000; ++i) {
    const Ohms value(std::pow(10.0, exponent(random)));
    for (const Series series : {Series::E12, Series::E24, Series::E96}) {
      const Ohms below = preferred_at_most(value, series);
      const Ohms above = preferred_at_least(value, series);
      const Ohms nearest = nearest_preferred(value, series);
      CAPTURE(value.value);
      REQUIRE(below <= value);
      REQUIRE(value <= above);
      REQUIRE((nearest == (value / below <= above / value ? below : above)));
    }
  }
}
