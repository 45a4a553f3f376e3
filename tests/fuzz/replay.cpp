// SPDX-License-Identifier: MIT
// Runs a fuzz target over kept inputs without libFuzzer: every file of the folders named on the command line.
#include <cstdio>
#include <filesystem>
#include <string>

#include "base/file.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size);

int main(int argc, char** argv) {
  int count = 0;
  for (int i = 1; i < argc; ++i) {
    for (const auto& entry : std::filesystem::directory_iterator(argv[i])) {
      if (!entry.is_regular_file()) continue;
      const std::string bytes = plugward::read_file(entry.path().string());
      // Every beginning of it too, in steps: half a file is the commonest broken file.
      for (std::size_t size = bytes.size() % 97; size <= bytes.size(); size += 97) {
        LLVMFuzzerTestOneInput(reinterpret_cast<const unsigned char*>(bytes.data()), size);
      }
      ++count;
    }
  }
  std::printf("%d files replayed\n", count);
  return count > 0 ? 0 : 1;
}
