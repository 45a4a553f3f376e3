// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/find_files_test.cpp.
#include "cli/find_files.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "base/file.h"
#include "base/format.h"

namespace plugward {

std::vector<std::string> description_files(const std::vector<std::string>& folders) {
  namespace fs = std::filesystem;
  std::vector<std::string> files;
  for (const std::string& folder : folders) {
    std::error_code error;
    if (fs::is_regular_file(folder, error)) {
      files.push_back(folder);
      continue;
    }
    fs::recursive_directory_iterator at(folder, error);
    const auto fail = [&] {
      return WorldError(format("cannot read folder '{}': {}", folder, error.message()));
    };
    if (error) throw fail();
    while (at != fs::recursive_directory_iterator()) {
      std::error_code
          unreadable;  // a link to nothing is a file that cannot be read: it is named when it is read
      if (at->path().extension() == ".xml" && !at->is_directory(unreadable))
        files.push_back(at->path().string());
      at.increment(error);
      if (error) throw fail();
    }
  }
  std::sort(files.begin(), files.end());
  files.erase(std::unique(files.begin(), files.end()), files.end());
  return files;
}

}  // namespace plugward
