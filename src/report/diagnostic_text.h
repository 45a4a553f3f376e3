// SPDX-License-Identifier: MIT
// Diagnostics as text for people and editors, in the GNU form "file:line:column: severity: message".
//
//   boards/a.xml:9:42: error: rail '5v' is not declared [undeclared-reference]
//       <pin n="2" function="supply" rail="5v"/>
//                                          ^~
//   help: did you mean '5V'?
//   1 error, 0 warnings
#pragma once

#include <cstddef>
#include <string>

#include "diag/diagnostic.h"
#include "diag/source.h"

namespace plugward {

struct DiagnosticTextOptions {
  bool colour = false;        ///< escape sequences for a terminal; the text says all without them
  std::size_t per_rule = 20;  ///< errors shown of one rule, then "... and 7 more [rule]"; 0: all
  std::size_t widest = 400;   ///< lines of more code points are not shown
};

/// All diagnostics in the order they are in (Diagnostics::sort() is the caller's), then the summary line.
/// "" when there are none. Every line ends with a line feed. Lines and columns count from 1, columns in code
/// points.
std::string diagnostics_text(const Sources&, const Diagnostics&, const DiagnosticTextOptions& = {});

/// "2 errors, 1 warning".
std::string diagnostics_summary(const Diagnostics&);

}  // namespace plugward
