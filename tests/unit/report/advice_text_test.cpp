// SPDX-License-Identifier: MIT
#include "report/advice_text.h"

#include <doctest/doctest.h>

#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("advice as text: REPIN, whole") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.repin, {{}, "plugward repin b.xml h.xml"}) ==
        R"(REPIN
)");
}

TEST_CASE("advice as text: MEASURE names what settles the doubt") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.measure) == R"(MEASURE
)");
}

TEST_CASE("advice as text: MATE is short") {
  const Sample sample;
  CHECK(advice_text(sample.sources, sample.fitting, sample.mate) == R"(MATE
)");
}

TEST_CASE("advice as text: colour changes no word") {
  const Sample sample;
  const std::string plain = advice_text(sample.sources, sample.fitting, sample.repin);
  std::string coloured = advice_text(sample.sources, sample.fitting, sample.repin, {{.colour = true}, ""});
  CHECK(coloured.find('\x1b') != std::string::npos);
  for (std::size_t at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b')) {
    coloured.erase(at, coloured.find('m', at) + 1 - at);
  }
  CHECK(coloured == plain);
}

}  // namespace plugward
