// SPDX-License-Identifier: MIT
// A table as pieces of a page: columns as wide as their words need, cells that wrap, a row a piece, the head
// set again on each page.
#pragma once

#include "draw/sheet_flow_text.h"
#include "sheet/document.h"

namespace plugward {

/// `tallest`: height of a page; a row that is higher is parted between its lines.
void add_table(FlowText&, const sheet::Table&, double tallest);

/// Widths of columns that fill no more than `room`: `natural` where all have room, else no less than `least`
/// where that is possible, and the rest in proportion to what each would like to have.
std::vector<double> column_widths(const std::vector<double>& least, const std::vector<double>& natural,
                                  double room);

/// Sign that says the mood without colour: "✓", "!", "✗", "?"; "" for Plain.
std::string_view mood_sign(sheet::Mood);

}  // namespace plugward
