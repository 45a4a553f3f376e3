// SPDX-License-Identifier: MIT
// Sections that a check, a placement and a swap have in common. Every function returns a section without
// blocks when there is nothing to say; add() leaves such a section out.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "plan/firmware.h"
#include "plan/parts_list.h"
#include "sheet/documents.h"
#include "sheet/numbering.h"

namespace plugward::sheet {

Mood mood_of(Verdict);
Mood mood_of(Weight);

Section titled(std::string id, std::string title, bool own_page = false);
Cell cell(std::string text, Mood = Mood::Plain, std::string picture = "");

/// Only sections that say something.
void add(Document&, Section);
/// A list of boxes, or of plain items; nothing when there are none.
void add_list(Section&, const std::vector<std::string>&, bool boxes = false);
/// A strong line and a list under it; nothing when there are no items.
void add_list(Section&, const std::string& heading, const std::vector<std::string>&, bool boxes = false);
/// Columns that are empty in all rows are left out; nothing when there are no rows.
void add_table(Section&, Table);

std::string board_title(const Board&);  ///< "Heron M7, revision 1.2"

/// Power off before all else, and what the plan says before anything is touched; each once.
Section cautions_section(const std::vector<std::string>&);
/// Worst first, each with what it holds under and where it stands.
Section findings_section(const std::vector<Finding>&, const SheetFacts&);
void add_measurements(Section&, const std::vector<Measurement>&, Numbering&);
/// Each with its components and how it is built in.
void add_cures(Section&, const std::vector<Cure>&);
/// One step with the moves of the plug as its parts. REQUIRES: there are moves.
Step moves_step(const Fitting&, const PlugPlan&, Numbering&, const std::string& picture);
/// What the meter must show before power and on the bare board, for the plugs and headers in use.
Section test_card(const Fitting&, Numbering&);
Section firmware_section(const Board&, const std::vector<FirmwareSetting>&, Numbering&);
Section seatings_section(const Fitting&, const Advice&);
Section currents_section(const Fitting&, const Budget&, bool planned);
Section parts_section(const PartsList&);
Section true_size_section(const Fitting&);

}  // namespace plugward::sheet
