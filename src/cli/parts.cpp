// SPDX-License-Identifier: MIT
// parts: what to buy for a plan. Tested in tests/cases.
#include "cli/load.h"

namespace plugward {

Outcome run_parts(const Options& options) {
  Workbench bench;
  return {ExitStatus::NotFine, "", stderr_text(bench, options)};
}

}  // namespace plugward
