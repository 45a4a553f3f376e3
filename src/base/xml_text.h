// SPDX-License-Identifier: MIT
// Text as it stands in an XML file.
#pragma once

#include <string>
#include <string_view>

namespace plugward {

/// With entities for & < > and ": fit for content and for attributes in double quotes.
std::string xml_escaped(std::string_view text);

}  // namespace plugward
