// SPDX-License-Identifier: MIT
#include "report/words.h"

#include <doctest/doctest.h>

#include "unit/report/sample.h"

namespace plugward {

TEST_CASE("words: what stands behind a pin") {
  Sample sample;
  Fitting fitting = sample.fitting;
  Pin pin;
  struct Row {
    const char* expected;
    Pin pin;
  };
  const auto made = [](PinFunction function, auto change) {
    Pin p;
    p.function = function;
    change(p);
    return p;
  };
  const Row rows[] = {
      {"supply 5V", made(PinFunction::Supply, [](Pin& p) { p.rail = "5V"; })},
      {"supply 24V (by JP1)", made(PinFunction::Supply, [](Pin& p) { p.jumper = "JP1"; })},
      {"supply, by jumper JP7: not stated", made(PinFunction::Supply, [](Pin& p) { p.jumper = "JP7"; })},
      {"ground", made(PinFunction::Ground, [](Pin&) {})},
      {"output servo", made(PinFunction::Output, [](Pin& p) { p.signal = "servo"; })},
      {"coil 2 end B", made(PinFunction::Coil,
                            [](Pin& p) {
                              p.coil = 2;
                              p.coil_end = 'B';
                            })},
      {"not known", made(PinFunction::Unknown, [](Pin&) {})},
      {"not known: its evidence disagrees", made(PinFunction::Ground, [](Pin& p) { p.contest = Contest{}; })},
  };
  for (const Row& row : rows) CHECK(pin_words(fitting, row.pin) == row.expected);
}

TEST_CASE("words: leads, headers and plugs that are nowhere") {
  const Sample sample;
  const Plug& plug = sample.harness.plugs[0];
  CHECK(lead_with_terminal(sample.harness, plug.leads[0]) == "BK to 'G'");
  CHECK(lead_with_terminal(sample.harness, plug.leads[1]) == "RD marked '+' to 'V'");
  CHECK(lead_with_terminal(sample.harness, Lead{}) == "?, where it goes is not known");
  CHECK(header_title(sample.board.headers[0]) == "J1 (FAN0)");
  CHECK(header_title(Header{}) == "");
  CHECK(unplaced_plugs(sample.fitting) == std::vector<int>{1});
  CHECK(home_pins(sample.fitting, sample.fitting.placements[0]) == std::vector<int>{1, 2, 3});
}

}  // namespace plugward
