// SPDX-License-Identifier: MIT
// Readings of the meter put in the place of what was doubted. A reading that agrees with one statement and
// not with its rival settles the doubt; one that agrees with none makes the pin contested: evidence that
// contradicts itself counts as not known. A reading that both could give proves nothing, and a note says so.
//
//   apply_measured(bench, fitting, options);      // before the fitting is judged
//
// Volts are read on the board powered alone, nothing plugged in; ohms and beeps with all power off.
#pragma once

#include "cli/load.h"

namespace plugward {

/// Applies --measured to the board, the jumpers and the harness of the fitting, and notes what each reading
/// told. With --record-measured, writes the board file with what was settled as evidence. Throws UsageError
/// for points that are not there, WorldError when the file cannot be written.
void apply_measured(Workbench&, Fitting&, const Options&);

}  // namespace plugward
