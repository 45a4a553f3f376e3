// SPDX-License-Identifier: MIT
// Invented boards by the thousand, each of about 8.5 kB: headers of all kinds in random order and place, with
// random nets and now and then a pin in doubt. Pin orders, families, rails and figures are drawn once a
// maker, as makers have their habits: two for each kind of header. The same seed gives the same text
// everywhere.
#pragma once

#include <cstdint>
#include <string>

namespace plugward::test {

struct ManyBoards {
  std::uint32_t seed = 1;
  bool jumpers = true;  ///< some supply pins hang on a jumper
  bool doubts = true;   ///< some pins are unknown, contested or assumed
  std::size_t size = 8500;
  std::uint32_t makers = 0;  ///< 0: every board has a maker of its own
};

/// The text of board `number`; it has no errors.
std::string board_text(const ManyBoards&, std::uint32_t number);

}  // namespace plugward::test
