// SPDX-License-Identifier: MIT
// What lies between two states of a machine: board, jumpers, and plug by plug where it sits, which contacts
// moved, which parts came or went.
//
//   const LoomDifference d = difference(old_loom, old_files, new_loom, new_files);
//   for (const PlugDifference& p : d.plugs) ... p.name, p.header_a, p.header_b, p.moves
//
// Plugs are the same when loom and harness call them the same: "kite/control". Leads are the same when they
// have one cavity in one file, or, where the harness has another file, when they go to the same terminal and
// look the same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/loom.h"

namespace plugward {

struct LeadMove {
  std::string lead;  ///< "RD to 'V'"
  int from = 0;      ///< cavity; 0: out of the housing
  int to = 0;
};

/// What became of a plug, the most telling first.
enum class PlugChange {
  Same,       ///< sits where it sat
  Moved,      ///< on another header, or on one of another board
  Unplugged,  ///< sat on a header, sits on none
  PluggedIn,  ///< sat on none, sits on a header
  Unclear,    ///< one of the looms does not say where it is
  Added,      ///< only in the second
  Removed     ///< only in the first
};

struct PlugDifference {
  std::string name;  ///< "kite/control"
  PlugChange change = PlugChange::Same;
  std::optional<SeatState> state_a, state_b;  ///< nothing: that loom has no such plug
  std::string header_a, header_b;             ///< "" when on none, or not known
  std::vector<LeadMove> moves;                ///< contacts in other cavities
  std::vector<std::string> leads_in;          ///< leads only in the second: "RD to '5V' in cavity 3"
  std::vector<std::string> leads_out;         ///< only in the first
  std::string housing_a, housing_b;           ///< "xh-2.50, 3 positions", when they differ
  std::vector<std::string> parts_in;  ///< of the harness, at its first plug: "a resistor of 6.8 kohm, 0.25 W"
  std::vector<std::string> parts_out;

  /// Nothing is to be done to the plug but to set it on its header.
  bool untouched() const {
    return moves.empty() && leads_in.empty() && leads_out.empty() && housing_a == housing_b &&
           parts_in.empty() && parts_out.empty();
  }
};

/// A jumper with another position, or of one board only.
struct JumperDifference {
  std::string jumper;
  bool in_a = false, in_b = false;  ///< the loom speaks of it
  std::string rail_a, rail_b;       ///< "": not known
};

struct LoomDifference {
  std::string loom_a, loom_b;    ///< ids
  std::string board_a, board_b;  ///< ids
  std::vector<JumperDifference> jumpers;
  std::vector<PlugDifference> plugs;  ///< all: in the order of the first loom, then those added

  bool other_board() const { return board_a != board_b; }
  int count(PlugChange) const;
  int touched() const;  ///< plugs whose contacts, parts or housing differ
};

LoomDifference difference(const Loom& a, const LoomFiles& files_a, const Loom& b, const LoomFiles& files_b);

std::string_view to_word(PlugChange);  ///< "same", "moved", "unplugged", "plugged-in", ...

/// "a resistor of 6.8 kohm, 0.25 W": a part without its terminals, and without what nobody has stated of it.
std::string part_in_words(const Part&);

}  // namespace plugward
