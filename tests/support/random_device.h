// SPDX-License-Identifier: MIT
// Random devices for random_world.h, with what each of their terminals would like to meet.
#pragma once

#include <string>
#include <vector>

#include "support/dice.h"
#include "support/xml_node.h"

namespace plugward::test {

/// What a terminal's lead would best meet, in words of the board file.
struct TerminalWish {
  std::string id;
  std::vector<std::string> functions;  ///< of a pin; the first found is taken
  std::string signal = "";             ///< "" when it does not matter
  std::string coil = "";               ///< "1A" for end A of bridge 1
};

struct RandomDevice {
  XmlNode node;
  std::vector<TerminalWish> wishes;
};

/// A device that suits a header for this use, fed with `volts`: "24", "12", "5",
/// "3.3"; "" when the header has no supply.
RandomDevice random_device(Dice&, const std::string& id, const std::string& use, const std::string& volts);

}  // namespace plugward::test
