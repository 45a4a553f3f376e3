// SPDX-License-Identifier: MIT
// Internal. The limits that are judged, one file for each kind; all report into one list.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/path.h"
#include "circuit/probe.h"

namespace plugward::circuit {

/// What has been found: one excess for each (kind, place), the worst.
struct Excesses {
  std::vector<Excess> list;

  /// Keeps the one that is further from its limit when the same is known already.
  void add(Excess);
};

void judge_shorts(Solved&, Excesses&);  ///< marks the states that are shorted: first of all
void judge_voltages(const Solved&, Excesses&);
void judge_supplies(const Solved&, Excesses&);
void judge_currents(const Solved&, Excesses&);
void judge_added_parts(const Solved&, Excesses&);    ///< resistors of a stated limit, regulators
void judge_output_levels(const Solved&, Excesses&);  ///< board to device, and device to itself
void judge_input_levels(const Solved&, Excesses&);   ///< device to board

// Common tools.
bool unshorted(int island, const Island&, int state);  ///< powered and not shorted
Locus pin_locus(const TouchedPin&);
Locus terminal_locus(int device, TerminalIndex);
Locus part_locus(const PartBranch&);
Locus contact_locus(const ContactBranch&);
const Part& part_of(const Circuit&, const PartBranch&);
/// Does a contact touch the terminal, or one that is joined to it?
bool touched(const Circuit&, int device, TerminalIndex);
/// Index into Circuit::parts of the receiver at a terminal, -1 when there is none.
int receiver_at(const Circuit&, int device, TerminalIndex);
/// Terminals that a pin's leads lead to, and on through joins, resistors and diodes of the devices. Nothing
/// goes on beyond a terminal that another pin holds at ground or at a rail.
std::vector<TerminalRef> wired_to(const Circuit&, int pin);
/// The same from a terminal.
std::vector<TerminalRef> wired_to(const Circuit&, TerminalRef);
/// What a load, or an input that is fed like one, gets.
void judge_load(const Solved&, Excesses&, const PartBranch&, const Load&);
/// Every combination of the ends of tolerance of the rails that reach a probe.
std::vector<std::uint64_t> corners(const Solved&, const Probe&);
/// Amperes from the pin into the lead.
Probe current_of(const Circuit&, const ContactBranch&);

}  // namespace plugward::circuit
