// SPDX-License-Identifier: MIT
#include "cli/colour.h"

#include <doctest/doctest.h>

#include "base/format.h"

namespace plugward {

TEST_CASE("colour: the command line, then the environment, then the terminal") {
  struct Row {
    const char* name;
    ColourChoice choice;
    bool terminal;
    ColourEnvironment environment;
    bool expected;
  };
  constexpr auto automatic = ColourChoice::Auto;
  const std::optional<std::string> unset;
  const Row rows[] = {
      {"a terminal", automatic, true, {unset, unset, unset, "xterm"}, true},
      {"a pipe", automatic, false, {unset, unset, unset, "xterm"}, false},
      {"a dumb terminal", automatic, true, {unset, unset, unset, "dumb"}, false},
      {"a terminal of no known kind", automatic, true, {unset, unset, unset, unset}, false},
      {"NO_COLOR", automatic, true, {"1", unset, unset, "xterm"}, false},
      {"NO_COLOR with any value", automatic, true, {"0", unset, unset, "xterm"}, false},
      {"NO_COLOR empty", automatic, true, {"", unset, unset, "xterm"}, true},
      {"CLICOLOR_FORCE", automatic, false, {unset, "1", unset, unset}, true},
      {"CLICOLOR_FORCE=0", automatic, false, {unset, "0", unset, unset}, false},
      {"FORCE_COLOR", automatic, false, {unset, unset, "1", unset}, true},
      {"FORCE_COLOR empty", automatic, false, {unset, unset, "", unset}, false},
      {"NO_COLOR beats FORCE_COLOR", automatic, true, {"1", unset, "1", "xterm"}, false},
      {"--color=always beats NO_COLOR", ColourChoice::Always, false, {"1", unset, unset, "dumb"}, true},
      {"--color=never beats FORCE_COLOR", ColourChoice::Never, true, {unset, "1", "1", "xterm"}, false},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(use_colour(row.choice, row.terminal, row.environment) == row.expected);
  }
}

}  // namespace plugward
