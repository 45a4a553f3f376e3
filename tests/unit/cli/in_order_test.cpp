// SPDX-License-Identifier: MIT
#include "cli/in_order.h"

#include <doctest/doctest.h>

#include <chrono>
#include <stdexcept>
#include <string>
#include <vector>

using namespace plugward;

TEST_CASE("in order: results come in the order of their numbers, whatever the number of threads") {
  for (const int threads : {1, 2, 7}) {
    for (const std::size_t count : {std::size_t{0}, std::size_t{1}, std::size_t{2000}}) {
      CAPTURE(threads);
      CAPTURE(count);
      std::vector<std::size_t> taken;
      std::vector<std::size_t> expected;
      for (std::size_t i = 0; i < count; ++i) expected.push_back(i * i);
      in_order<std::size_t>(
          count, threads,
          [] {
            return [](std::size_t i) {
              if (i % 97 == 0) std::this_thread::sleep_for(std::chrono::microseconds(300));
              return i * i;
            };
          },
          [&](std::size_t i, std::size_t result) {
            CHECK(i == taken.size());
            taken.push_back(result);
          });
      CHECK(taken == expected);
    }
  }
}

TEST_CASE("in order: nobody runs ahead of a slow one by more than 64 results a thread") {
  std::atomic<std::size_t> most{0};
  std::atomic<bool> slow_done{false};
  in_order<int>(
      1000, 2,
      [&] {
        return [&](std::size_t i) {
          if (i == 0) {
            std::this_thread::sleep_for(std::chrono::milliseconds(60));
            slow_done = true;
          } else if (!slow_done) {
            most = std::max(most.load(), i);
          }
          return 0;
        };
      },
      [](std::size_t, int) {});
  CHECK(most <= 128);
}

TEST_CASE("in order: what a worker or the taker throws ends the work and comes out") {
  const auto what = [](std::size_t worker_fails, std::size_t taker_fails, int threads) -> std::string {
    try {
      in_order<std::size_t>(
          500, threads,
          [&] {
            return [&](std::size_t i) {
              if (i == worker_fails) throw std::runtime_error("worker");
              return i;
            };
          },
          [&](std::size_t i, std::size_t) {
            if (i == taker_fails) throw std::runtime_error("taker");
          });
    } catch (const std::runtime_error& error) {
      return error.what();
    }
    return "";
  };
  for (const int threads : {1, 2, 5}) {
    CAPTURE(threads);
    CHECK(what(300, 1000, threads) == "worker");
    CHECK(what(1000, 200, threads) == "taker");
    CHECK(what(1000, 1000, threads) == "");
  }
}
