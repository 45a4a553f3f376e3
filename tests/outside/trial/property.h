// SPDX-License-Identifier: MIT
// What must hold of every board, harness and placement, whatever they are.
//
//   property_broken(random_world(42)) == ""                      all hold
//                                     == "moves: 3 contacts moved, 2 would do"
#pragma once

#include <string>

#include "judge/judgement.h"
#include "support/random_world.h"

namespace plugward::test {

struct PropertyOptions {
  bool twins = true;   ///< the slow ones: all arrangements, changed files
  bool place = false;  ///< the search for headers as well
};

/// "NAME: what is wrong" of the first property that is broken, "" when all hold. `verdict` gets what was
/// said.
std::string property_broken(const RandomWorld&, const PropertyOptions& = {}, Verdict* verdict = nullptr);

/// "moves" of "moves: 3 contacts ...".
inline std::string property_name(const std::string& broken) {
  return broken.substr(0, broken.find(':'));
}

}  // namespace plugward::test
