// SPDX-License-Identifier: MIT
// What an adapter lead says to the person who builds it.
#pragma once

#include <string>
#include <vector>

#include "plan/adapter_lead.h"

namespace plugward {

/// How position 1 and the key of a family's housings are known, one sentence.
std::string first_position_words(const Family&);
/// "a header or cable-side counterpart of family 'xh-2.50' (JST XH, 2.50 mm), 3 positions"
std::string end_a_words(const AdapterEnd&, const Catalogue&);
/// "a housing of family 'xh-2.50' (JST XH, 2.50 mm), 3 positions"
std::string end_b_words(const AdapterEnd&, const Catalogue&);

std::vector<std::string> adapter_tools(const std::vector<Adapter>&);
std::vector<std::string> adapter_steps(const std::vector<Adapter>&);
std::vector<std::string> adapter_checks(const std::vector<Adapter>&);

/// "crimp tool for contacts of family 'xh-2.50'"
std::string crimp_tool_words(const std::string& family);

}  // namespace plugward
