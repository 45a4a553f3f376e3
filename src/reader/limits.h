// SPDX-License-Identifier: MIT
// Limits that keep a hostile file from costing more than it is worth.
#pragma once

#include <cstddef>

namespace plugward {

struct ReaderLimits {
  std::size_t bytes = std::size_t{8} << 20;
  int depth = 32;                                  ///< elements inside one another
  int positions = 200;                             ///< of one header or plug
  int entries = 20000;                             ///< elements in one file
  int harnesses = 200;                             ///< of one loom
  std::size_t loom_bytes = std::size_t{32} << 20;  ///< of all files that a loom names
};

}  // namespace plugward
