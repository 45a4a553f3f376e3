// SPDX-License-Identifier: MIT
// The date of a sheet: what the person says, else that of reproducible builds, else none. Never the clock's:
// equal input gives equal bytes.
//
//   sheet_date("2026-11-25", nullptr)      // "2026-11-25"
//   sheet_date("", "1764028800")           // "2025-11-25"
#pragma once

#include <string>

namespace plugward {

/// `epoch`: the value of SOURCE_DATE_EPOCH, seconds since 1970-01-01 UTC, or nullptr
/// (https://reproducible-builds.org/specs/source-date-epoch/, from memory). Throws UsageError.
std::string sheet_date(const std::string& given, const char* epoch);

}  // namespace plugward
