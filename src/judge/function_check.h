// SPDX-License-Identifier: MIT
// Does every terminal meet a pin of the function it wishes?
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "fit/match.h"
#include "judge/judgement.h"

namespace plugward {

struct FunctionCheck {
  std::vector<Finding> findings;
  std::vector<Setting> settings;
};

/// Takes for each group the alternative that misses least (the first of equals), and reports what it misses.
FunctionCheck check_functions(const Fitting&, std::span<const Contact>);

/// A terminal that has a lead in a plug that is placed.
bool placed(const Fitting&, TerminalRef);
/// A terminal that has a lead in any plug.
bool leaded(const Harness&, TerminalRef);
/// A lead that goes nobody knows where meets a pin behind which something stands.
bool brings_unknown(const Fitting&, std::span<const Contact>);

}  // namespace plugward
