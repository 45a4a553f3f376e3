// SPDX-License-Identifier: MIT
// What `lint` says about descriptions: a line a file for people, everything for programs.
// Schema of the JSON: report/schemas/lint.json.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "diag/diagnostic.h"
#include "plan/loom_bench.h"
#include "reader/descriptions.h"

namespace plugward {

/// What is told of a file. The description itself need not be kept: thousands may be read in one run.
struct LintedFile {
  FileId file = 0;
  std::string_view kind;  ///< "board", "harness", "loom", "families"; "" when nothing was read
  std::string words;      ///< "board 'heron-m7': 12 headers, 43 pins, 2 not known"; "" likewise
};
LintedFile linted(FileId, const Description&);

/// "boards/heron-m7.xml: board 'heron-m7': 12 headers, 43 pins, 2 not known".
std::string lint_text(const Sources&, const std::vector<LintedFile>&, const Diagnostics&);

/// What was found about the machine of a loom, as warnings at the seats in the loom: it is running today, so
/// nothing here is an error of its description. Findings that are only worth knowing are left to `check`.
void lint_loom(const Loom&, const Fitting&, const Assessment&, Diagnostics&);

std::string lint_json(const Sources&, const std::vector<LintedFile>&, const Diagnostics&);

}  // namespace plugward
