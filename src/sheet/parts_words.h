// SPDX-License-Identifier: MIT
// A thing of a parts list in words.
#pragma once

#include <string>
#include <string_view>

#include "plan/parts_list.h"

namespace plugward {

std::string_view to_word(PartKind);  ///< "housing", "counterpart", "contact", "wire", ...
/// "stranded wire, 26 AWG, BN (brown), 100 mm (2 needed, 1 spare): for 'control'"
std::string part_words(const PartItem&);
/// How many contacts are listed beyond those needed.
std::string_view spares_sentence();

}  // namespace plugward
