// SPDX-License-Identifier: MIT
// Chance with a seed. The same seed gives the same throws on every machine: the distributions of the standard
// library do not promise that.
#pragma once

#include <cstdint>
#include <random>
#include <utility>
#include <vector>

namespace plugward::test {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}

  /// 0 .. n - 1. REQUIRES: n > 0.
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(engine_() % n); }
  bool chance(int percent) { return static_cast<int>(below(100)) < percent; }
  template <class T>
  const T& pick(const std::vector<T>& list) {
    return list[below(list.size())];
  }
  template <class T>
  void shuffle(std::vector<T>& list) {
    for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[below(i)]);
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace plugward::test
