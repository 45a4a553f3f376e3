// SPDX-License-Identifier: MIT
// The schemas of everything that --format json prints, as in the folder schemas/. A document names its own by
// the members "format" ("plugward-advice") and "version".
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "report/layout.h"

namespace plugward {

struct Schema {
  std::string_view name;  ///< "advice": of the format "plugward-advice"
  std::string_view text;
};

std::span<const Schema> all_schemas();  ///< by name

/// One line a schema: its name, the commands that print it.
std::string schemas_text(const TextOptions& = {});

}  // namespace plugward
