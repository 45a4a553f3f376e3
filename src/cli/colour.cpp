// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/colour_test.cpp.
#include "cli/colour.h"

#include <cstdlib>

namespace plugward {
namespace {

std::optional<std::string> variable(const char* name) {
  const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): one thread
  return value == nullptr ? std::nullopt : std::optional<std::string>(value);
}

bool filled(const std::optional<std::string>& value) {
  return value && !value->empty();
}
bool forces(const std::optional<std::string>& value) {
  return filled(value) && *value != "0";
}

}  // namespace

ColourEnvironment read_colour_environment() {
  return {variable("NO_COLOR"), variable("CLICOLOR_FORCE"), variable("FORCE_COLOR"), variable("TERM")};
}

bool use_colour(ColourChoice choice, bool terminal, const ColourEnvironment& environment) {
  if (choice != ColourChoice::Auto) return choice == ColourChoice::Always;
  if (filled(environment.no_color)) return false;
  if (forces(environment.clicolor_force) || forces(environment.force_color)) return true;
  return terminal && filled(environment.term) && *environment.term != "dumb";
}

}  // namespace plugward
