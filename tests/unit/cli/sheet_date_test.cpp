// SPDX-License-Identifier: MIT
#include "cli/sheet_date.h"

#include <doctest/doctest.h>

#include "cli/options.h"

using namespace plugward;

namespace {

std::string date_or_fault(const std::string& given, const char* epoch) {
  try {
    return sheet_date(given, epoch);
  } catch (const UsageError& error) {
    return error.what();
  }
}

}  // namespace

TEST_CASE("the date of a sheet: what is given, else that of reproducible builds, else none") {
  struct Row {
    std::string given;
    const char* epoch;
    std::string expected;
  };
  const std::string no_count = "' is no count of seconds since 1970-01-01; give '--date YYYY-MM-DD'";
  const std::string no_day = "' is no day, such as 2026-11-25";
  for (const Row& row : {Row{"2026-11-25", nullptr, "2026-11-25"},
                         {"2026-11-25", "0", "2026-11-25"},
                         {"2024-02-29", nullptr, "2024-02-29"},
                         {"", nullptr, ""},
                         {"", "", ""},
                         {"", "0", "1970-01-01"},
                         // `date -u -d @1764115199` and one second later (GNU coreutils 9.1).
                         {"", "1764115199", "2025-11-25"},
                         {"", "1764115200", "2025-11-26"},
                         {"", "253402300799", "9999-12-31"},
                         {"2025-02-29", nullptr, "--date: '2025-02-29" + no_day},
                         {"2026-13-01", nullptr, "--date: '2026-13-01" + no_day},
                         {"26-1-1", nullptr, "--date: '26-1-1" + no_day},
                         {"25.11.2026", nullptr, "--date: '25.11.2026" + no_day},
                         {"", "-1", "SOURCE_DATE_EPOCH: '-1" + no_count},
                         {"", "12x", "SOURCE_DATE_EPOCH: '12x" + no_count},
                         {"", "253402300800", "SOURCE_DATE_EPOCH: '253402300800" + no_count}}) {
    CHECK(date_or_fault(row.given, row.epoch) == row.expected);
  }
}
