// SPDX-License-Identifier: MIT
// What plugward knows, as tables: connector families, functions, colours, gauges, rules.
#pragma once

#include <string>

#include "catalogue/family.h"
#include "diag/rule.h"
#include "report/layout.h"

namespace plugward {

std::string families_text(const Catalogue&, const TextOptions& = {});
/// One family at length, every figure with its source and how sure it is.
std::string family_text(const Family&, const TextOptions& = {});
std::string functions_text(const TextOptions& = {});  ///< of pins and of terminals, the words of the XML
std::string colours_text(const TextOptions& = {});
std::string gauges_text(const TextOptions& = {});  ///< even AWG sizes from 10 to 32
std::string rules_text(const TextOptions& = {});

/// One rule at length: what, why it matters, an example, the cure.
std::string rule_text(const RuleInfo&, const TextOptions& = {});

}  // namespace plugward
