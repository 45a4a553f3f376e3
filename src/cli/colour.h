// SPDX-License-Identifier: MIT
// Is a stream painted? Colour never carries a meaning of its own.
#pragma once

#include <optional>
#include <string>

namespace plugward {

enum class ColourChoice { Auto, Always, Never };

/// The variables that programs agree on; empty optional: not set.
struct ColourEnvironment {
  std::optional<std::string> no_color;
  std::optional<std::string> clicolor_force;
  std::optional<std::string> force_color;
  std::optional<std::string> term;
};

ColourEnvironment read_colour_environment();

/// The command line wins; then NO_COLOR, set and not empty, switches off; then CLICOLOR_FORCE or FORCE_COLOR,
/// set and not "0" (nor empty), switches on; else on for a terminal whose TERM is set and not "dumb".
bool use_colour(ColourChoice, bool terminal, const ColourEnvironment&);

}  // namespace plugward
