// SPDX-License-Identifier: MIT
// The command line that asks another command about the same mating.
#pragma once

#include <string>
#include <string_view>

#include "cli/options.h"

namespace plugward {

/// "plugward repin boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9": files, --at, --jumper,
/// --seen and --families as given, quoted for a shell where needed.
std::string retell(std::string_view command, const Options&);

}  // namespace plugward
