// SPDX-License-Identifier: MIT
// Findings as SARIF 2.1.0 (OASIS), for editors and code hosts: all rules with their texts, and each finding
// at its place in the XML.
//
//   lint_sarif(sources, diagnostics, {.version = "1.0", .folder = "/home/me/machine"})
//
// Places are relative to the folder that plugward runs in (uriBaseId "FOLDER"), percent-encoded, in code
// points from 1, the end one past the last.
#pragma once

#include <string>
#include <string_view>

#include "diag/diagnostic.h"
#include "diag/source.h"
#include "plan/repin.h"

namespace plugward {

struct SarifOptions {
  std::string version;  ///< of this program
  std::string folder;   ///< absolute paths are told from here; "": they stay as they are
};

/// Level by severity; notes become related places; "did you mean 'x'?" at a value becomes a fix.
std::string lint_sarif(const Sources&, const Diagnostics&, const SarifOptions&);

/// Harm and fault are errors, doubts warnings, notes notes. Verdict and summary are properties of the run.
std::string check_sarif(const Sources&, const Advice&, const SarifOptions&);

/// A path as a reference of RFC 3986: '/' between its parts, everything but letters, digits and -._~ encoded.
std::string uri_of(std::string_view path, std::string_view folder);

}  // namespace plugward
