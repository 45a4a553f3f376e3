// SPDX-License-Identifier: MIT
// place: the best headers for all plugs. Tested in tests/cases.
#include "cli/load.h"

namespace plugward {

Outcome run_place(const Options& options) {
  Workbench bench;
  return {ExitStatus::NotFine, "", stderr_text(bench, options)};
}

}  // namespace plugward
