// SPDX-License-Identifier: MIT
// Reads the description files named on standard input, one a line, and says of each whether it was taken:
//   taken boards/heron-m7.xml
//   refused broken.xml
#include <cstdio>
#include <iostream>
#include <string>

#include "base/file.h"
#include "reader/descriptions.h"

int main() {
  plugward::Catalogue catalogue;
  plugward::add_builtin_families(catalogue);
  std::string path;
  while (std::getline(std::cin, path)) {
    plugward::Sources sources;
    plugward::Diagnostics diagnostics;
    plugward::Catalogue own = catalogue;
    const plugward::FileId file = sources.add(path, plugward::read_file(path));
    const plugward::Description description = plugward::read_description(sources, file, own, diagnostics);
    const bool taken = description.taken();
    if (taken == diagnostics.has_errors()) {
      std::printf("taken and refused at once: %s\n", path.c_str());
      return 1;
    }
    std::printf("%s %s\n", taken ? "taken" : "refused", path.c_str());
  }
  return 0;
}
