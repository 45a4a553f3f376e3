// SPDX-License-Identifier: MIT
// What SARIF says of this program and of the folder that it runs in.
#pragma once

#include <filesystem>
#include <system_error>

#include "report/sarif.h"

namespace plugward {

inline SarifOptions sarif_options() {
  std::error_code ignored;
  return {PLUGWARD_VERSION, std::filesystem::current_path(ignored).string()};
}

}  // namespace plugward
