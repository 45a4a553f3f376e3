// SPDX-License-Identifier: MIT
// One row of the table that the benchmarks print: what is compared with what, the ratio and its bar.
//
//   bench_row("reading 2000 boards", "pugixml's load of them", 2.8, "at most 2.5");
#pragma once

#include <cstdio>
#include <string>

namespace plugward::test {

inline void bench_row(const std::string& what, const std::string& against, double ratio, const char* bar) {
  std::printf("%-58s | %-44s | %8.*f | %s\n", what.c_str(), against.c_str(), ratio < 100 ? 2 : 0, ratio, bar);
  std::fflush(stdout);
}

/// A figure behind the row above.
inline void bench_detail(const std::string& text) {
  std::printf("    %s\n", text.c_str());
  std::fflush(stdout);
}

}  // namespace plugward::test
