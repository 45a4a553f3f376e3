// SPDX-License-Identifier: MIT
// What published standards give the contacts of a family to carry: the lines of a serial port on DE-9
// (TIA-574) and the pairs and colours of 8P8C (TIA-568). Nothing for other families.
//
//   port_line("de-9", 3)->name == "TxD"         an output of a DTE
//   contact_pairs("8p8c")[1] == {3, 6}
#pragma once

#include <array>
#include <span>
#include <string_view>

namespace plugward {

/// Who drives a line of a serial port; the names are those of the terminal (DTE) at both ends.
enum class LineEnd { Dte, Dce, Both };

struct PortLine {
  std::string_view name;   ///< "TxD"
  std::string_view words;  ///< "transmitted data"
  LineEnd driven_by = LineEnd::Both;
};

/// nullptr: nothing is known of this contact.
const PortLine* port_line(std::string_view family, int contact);

struct ContactPair {
  int one = 0, other = 0;
};

std::span<const ContactPair> contact_pairs(std::string_view family);

/// The colours of contacts 1 to 8, in the codes of IEC 60757.
struct PairScheme {
  std::string_view name;
  std::array<std::string_view, 8> colours;
};
std::span<const PairScheme> pair_schemes();

}  // namespace plugward
