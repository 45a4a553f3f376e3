// SPDX-License-Identifier: MIT
// The way back from a harness to its file.
//
//   write_file("kite-with-divider.xml", harness_text(cured));   // reads back equal
//
// Devices that a file describes in one line are written out as terminals and parts. Names of inner terminals,
// which a cure makes of words, become ids: "Q behind the divider" is "Q-behind-the-divider". A lead that is
// in no cavity (cavity 0) cannot be told in a harness file and is left out: the loom says that it is out of
// its housing.
#pragma once

#include <string>
#include <vector>

#include "model/harness.h"

namespace plugward {

/// REQUIRES: as every harness that was read, and every cure of one: ids are ids, texts hold no control
/// characters, leads go to terminals that are there and not inner.
std::string harness_text(const Harness&);

/// The names that the terminals of a device have in its file, in the order of the terminals.
std::vector<std::string> terminal_ids(const Device&);

/// `<resistor a="Q" b="G" ohms="6.8 kohm"/>`, with these names for the terminals.
std::string part_text(const Part&, const std::vector<std::string>& terminals);

}  // namespace plugward
