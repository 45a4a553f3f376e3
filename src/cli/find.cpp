// SPDX-License-Identifier: MIT
// find: which boards take this harness. Tested in tests/cases.
#include "cli/load.h"

namespace plugward {

Outcome run_find(const Options& options) {
  Workbench bench;
  return {ExitStatus::NotFine, "", stderr_text(bench, options)};
}

}  // namespace plugward
