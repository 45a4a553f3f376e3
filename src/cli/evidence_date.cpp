// SPDX-License-Identifier: MIT
// Tested in tests/cases: start-leds, measured-record.
#include "cli/evidence_date.h"

#include <chrono>
#include <cstdlib>

#include "base/format.h"
#include "cli/sheet_date.h"

namespace plugward {

std::string evidence_date(const std::string& given) {
  const std::string stated = sheet_date(given, std::getenv("SOURCE_DATE_EPOCH"));
  if (!stated.empty()) return stated;
  const std::chrono::year_month_day today(
      std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now()));
  return verbatim("{:04}-{:02}-{:02}", static_cast<int>(today.year()), static_cast<unsigned>(today.month()),
                  static_cast<unsigned>(today.day()));
}

}  // namespace plugward
