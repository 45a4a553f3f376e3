// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/options_test.cpp.
#include "cli/choices.h"

#include "sheet/languages.h"

namespace plugward {

std::vector<std::string> choices(const Takes& takes, std::string_view option) {
  if (option == "--format") {
    std::vector<std::string> formats{"text", "json"};
    if (takes.csv) formats.emplace_back("csv");
    if (takes.sarif) formats.emplace_back("sarif");
    if (takes.papers) formats.insert(formats.end(), {"markdown", "spice"});
    return formats;
  }
  if (option == "--color") return {"auto", "always", "never"};
  if (option == "--view") {
    if (takes.start) return {"wire", "mating", "unknown"};
    return {"wire", "mating"};
  }
  if (option == "--picture") return {"svg", "pdf", "png"};
  if (option == "--language") {
    const std::vector<std::string_view> codes = languages();
    return {codes.begin(), codes.end()};
  }
  if (option == "--as") return {"pdf", "html", "text", "markdown"};
  if (option == "--paper") {
    if (takes.flags) return {"a4", "letter", "tape"};
    return {"a4", "letter"};
  }
  return {};
}

}  // namespace plugward
