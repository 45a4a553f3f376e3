// SPDX-License-Identifier: MIT
// Findings for people: what, when, by which path, and the two places in the files.
//
//   1. 24 V on 'P', withstands 5.5 V [overvoltage]
//      when   switch closed
//      path   24V - J7.1 - BN - P
//      see    harnesses/kite-probe.xml:17:5
//      and    boards/heron-m7.xml:14:5, J7.1 is declared here
#pragma once

#include <vector>

#include "diag/source.h"
#include "judge/judgement.h"
#include "report/layout.h"

namespace plugward {

/// Under one heading a weight, worst weight first, numbered through. Nothing when there are none.
void write_findings(Paper&, const Sources&, const std::vector<Finding>&);

}  // namespace plugward
