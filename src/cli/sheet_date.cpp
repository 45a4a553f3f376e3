// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/sheet_date_test.cpp.
#include "cli/sheet_date.h"

#include <charconv>
#include <chrono>
#include <optional>
#include <string_view>

#include "base/format.h"
#include "cli/options.h"

namespace plugward {
namespace {

std::optional<long long> whole_number(std::string_view text) {
  long long number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc() || end != text.data() + text.size() || number < 0) return std::nullopt;
  return number;
}

std::string iso(const std::chrono::year_month_day& day) {
  return format("{:04}-{:02}-{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                static_cast<unsigned>(day.day()));
}

/// "2026-11-25" when there is such a day.
bool is_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const auto year = whole_number(text.substr(0, 4)), month = whole_number(text.substr(5, 2)),
             day = whole_number(text.substr(8, 2));
  if (!year || !month || !day) return false;
  return std::chrono::year_month_day(std::chrono::year(static_cast<int>(*year)),
                                     std::chrono::month(static_cast<unsigned>(*month)),
                                     std::chrono::day(static_cast<unsigned>(*day)))
      .ok();
}

}  // namespace

std::string sheet_date(const std::string& given, const char* epoch) {
  if (!given.empty()) {
    if (!is_day(given)) throw UsageError(format("--date: '{}' is no day, such as 2026-11-25", given));
    return given;
  }
  if (epoch == nullptr || *epoch == '\0') return "";
  constexpr long long end_of_9999 = 253402300800;
  const std::optional<long long> seconds = whole_number(epoch);
  if (!seconds || *seconds >= end_of_9999) {
    throw UsageError(format(
        "SOURCE_DATE_EPOCH: '{}' is no count of seconds since 1970-01-01; give '--date YYYY-MM-DD'", epoch));
  }
  return iso(std::chrono::sys_days(std::chrono::days(*seconds / 86400)));
}

}  // namespace plugward
