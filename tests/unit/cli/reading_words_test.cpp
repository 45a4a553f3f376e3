// SPDX-License-Identifier: MIT
#include "cli/reading_words.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "cli/options.h"

using namespace plugward;

namespace {

std::string told(const std::string& text) {
  try {
    const MeterReading r = read_reading(text);
    return format("{} {} {}{}{}", r.red, r.black, shown_words(r), r.beep() ? " beeps" : "",
                  r.open() ? " open" : "");
  } catch (const UsageError& error) {
    return error.what();
  }
}

}  // namespace

TEST_CASE("points and what the meter showed") {
  const std::pair<const char*, const char*> rows[] = {
      {"J9.2=5.02V", "J9.2 minus 5.02 V"},
      {"J9.2=-0.3 V", "J9.2 minus -0.3 V"},
      {"minus:J9.2=5V", "J9.2 minus -5 V"},
      {"J9.2:J9.3=4.7kohm", "J9.2 J9.3 4.7 kohm open"},
      {"J9.2:J9.3=0.3ohm", "J9.2 J9.3 0.3 ohm beeps"},
      {"J9.2:J9.3=5 ohm", "J9.2 J9.3 5 ohm"},
      {"light.1:V=beep", "light.1 V a beep beeps"},
      {"J9.3:minus=open", "J9.3 minus no beep open"},
      {"J9.3", "'--measured J9.3' is not of the form POINT=READING or POINT:POINT=READING"},
      {"J9.3:J9.3=beep", "'--measured J9.3:J9.3=beep': a reading is between two points"},
  };
  for (const auto& [text, words] : rows) CHECK(told(text) == words);
}
