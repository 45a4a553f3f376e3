// SPDX-License-Identifier: MIT
// The day on which something was looked at or measured.
#pragma once

#include <string>

namespace plugward {

/// `given` as after --date, else the day of SOURCE_DATE_EPOCH, else today in UTC. Throws UsageError.
std::string evidence_date(const std::string& given);

}  // namespace plugward
