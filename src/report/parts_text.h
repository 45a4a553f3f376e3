// SPDX-License-Identifier: MIT
// A parts list for people, to tick off, and as comma-separated values.
//
// The CSV follows RFC 4180: CRLF after every record, a header row, fields with commas, quotes or line ends in
// quotes, quotes doubled. Fields that do not apply are empty. A field that a spreadsheet would take for a
// formula begins with an apostrophe.
#pragma once

#include <string>

#include "plan/parts_list.h"
#include "report/layout.h"
#include "sheet/parts_words.h"

namespace plugward {

std::string parts_text(const Fitting&, const PartsList&, const TextOptions& = {});
std::string parts_csv(const PartsList&);

/// One field of a CSV record.
std::string csv_field(std::string_view text);

}  // namespace plugward
