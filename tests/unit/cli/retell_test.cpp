// SPDX-License-Identifier: MIT
#include "cli/retell.h"

#include <doctest/doctest.h>

namespace plugward {

TEST_CASE("retell: the same mating asked of another command") {
  Options options;
  options.words = {"my board.xml", "h.xml"};
  options.at = {{"control", "J9"}};
  options.jumpers = {{"JP2", "5V"}};
  options.seen = {{"control", "BN,?,-"}};
  options.families = {"it's.xml"};
  options.output = "answer.txt";
  CHECK(retell("repin", options) ==
        "plugward repin 'my board.xml' h.xml --at control=J9 --jumper JP2=5V --seen 'control=BN,?,-' "
        "--families 'it'\\''s.xml'");
}

}  // namespace plugward
