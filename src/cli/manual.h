// SPDX-License-Identifier: MIT
// The manual page, from the one table of commands, so that it never lacks one. The build writes it with the
// hidden 'plugward manual'.
#pragma once

#include <span>
#include <string>

#include "cli/command.h"

namespace plugward {

/// plugward(1) as source for man.
std::string manual_page(std::span<const Command>);

}  // namespace plugward
