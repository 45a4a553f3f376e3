// SPDX-License-Identifier: MIT
// Every file in broken/ has one kind of fault, and beside it the whole text that a person is shown. After a
// change that is meant, PLUGWARD_REWRITE=1 writes the texts anew; then read the difference line by line.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "base/file.h"
#include "reader/descriptions.h"
#include "report/diagnostic_text.h"

namespace plugward {
namespace {

std::vector<std::filesystem::path> broken_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(PLUGWARD_SOURCE_DIR "/tests/unit/reader/broken")) {
    if (entry.path().extension() == ".xml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

TEST_CASE("every broken file is refused, or warned about, with exactly its text") {
  const bool rewrite = std::getenv("PLUGWARD_REWRITE") != nullptr;
  const auto files = broken_files();
  CHECK(files.size() >= 60);
  Catalogue builtin;
  add_builtin_families(builtin);
  for (const std::filesystem::path& path : files) {
    CAPTURE(path.filename().string());
    Catalogue catalogue = builtin;
    Sources sources;
    Diagnostics diagnostics;
    const FileId file = sources.add(path.filename().string(), read_file(path.string()));
    const Description description = read_description(sources, file, catalogue, diagnostics);
    const bool taken = description.taken();
    CHECK(taken != diagnostics.has_errors());
    const std::string text = diagnostics_text(sources, diagnostics);
    std::filesystem::path expected = path;
    expected.replace_extension(".expected");
    if (rewrite) write_file(expected.string(), text);
    CHECK(text == read_file(expected.string()));
  }
}

}  // namespace
}  // namespace plugward
