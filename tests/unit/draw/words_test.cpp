// SPDX-License-Identifier: MIT
#include "draw/words.h"

#include <doctest/doctest.h>

#include "unit/draw/fixtures.h"

namespace plugward {

TEST_CASE("pin_phrases") {
  const test::FixturePtr f = test::fan_to_measure();
  struct Row {
    std::string_view name;
    Pin pin;
    std::vector<std::string> expected;
  };
  std::vector<Row> rows;
  const auto add = [&](std::string_view name, PinFunction function,
                       std::vector<std::string> expected) -> Pin& {
    Pin pin;
    pin.number = 1;
    pin.function = function;
    rows.push_back({name, pin, std::move(expected)});
    return rows.back().pin;
  };
  add("rail", PinFunction::Supply, {"supply 5V", "4.75..5.25 V"}).rail = "5V";
  add("jumper not stated", PinFunction::Supply, {"supply", "5V or 24V: JP2 decides"}).jumper = "JP2";
  add("no rail", PinFunction::Supply, {"supply", "volts not known"});
  add("ground", PinFunction::Ground, {"ground"});
  add("switched", PinFunction::Switched, {"fan switched to ground"}).signal = "fan";
  add("input", PinFunction::Input, {"in"});
  add("unused", PinFunction::Unused, {"not connected"});
  add("unknown", PinFunction::Unknown, {"not known", "print: SIG"}).label = "SIG";
  Pin& output = add("output", PinFunction::Output, {"servo out", "2.9..3.4 V"});
  output.signal = "servo";
  output.high = Range<Volts>{Volts(2.9), Volts(3.4)};
  Pin& coil = add("coil", PinFunction::Coil, {"motor 2B"});
  coil.coil = 2;
  coil.coil_end = 'B';
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(pin_phrases(row.pin, f->fitting) == row.expected);
  }
}

TEST_CASE("the rail follows a stated jumper") {
  const test::FixturePtr f = test::fan_to_measure();
  f->fitting.jumpers["JP2"] = "24V";
  CHECK(pin_phrases(f->board.headers[0].pins[0], f->fitting) ==
        std::vector<std::string>{"supply 24V", "21.6..26.4 V"});
}

TEST_CASE("step_words") {
  const test::FixturePtr f = test::probe_to_repin();
  struct Row {
    StepKind kind;
    int from, to;
    std::string expected;
  };
  const Row rows[] = {
      {StepKind::Move, 1, 3, "move BN (G) from cavity 1 to cavity 3"},
      {StepKind::Park, 1, 4, "park BN (G): from cavity 1 to the empty cavity 4"},
      {StepKind::Hold, 1, 0, "take BN (G) out of cavity 1 and hold it beside the housing"},
      {StepKind::Insert, 0, 3, "seat BN (G), the one held, in cavity 3"},
      {StepKind::Insulate, 1, 0, "take BN (G) out of cavity 1, insulate it and tag it"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.expected);
    CHECK(step_words({row.kind, 0, 0, row.from, row.to, ""}, f->harness.plugs[0], f->harness) ==
          row.expected);
  }
}

TEST_CASE("lead_phrases: function, part, unknown end") {
  const test::FixturePtr motor = test::motor_mates(), fan = test::fan_to_measure();
  CHECK(lead_phrases(motor->harness.plugs[0].leads[0], motor->harness) ==
        std::vector<std::string>{"A1", "winding"});
  CHECK(lead_phrases(fan->harness.plugs[0].leads[0], fan->harness) ==
        std::vector<std::string>{"V", "supply"});
  CHECK(lead_phrases(fan->harness.plugs[0].leads[1], fan->harness) ==
        std::vector<std::string>{"goes to: not known"});
  CHECK(lead_name(fan->harness.plugs[0].leads[1], fan->harness) == "? (not known)");
}

}  // namespace plugward
