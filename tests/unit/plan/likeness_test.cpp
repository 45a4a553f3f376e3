// SPDX-License-Identifier: MIT
#include "plan/likeness.h"

#include <doctest/doctest.h>

#include <functional>

using namespace plugward;

namespace {

Board board() {
  Board b;
  b.evidence = "print";
  b.evidences = {{"print", EvidenceKind::BoardPrint, "", "", "", {}},
                 {"guess", EvidenceKind::Assumption, "", "", "", {}}};
  b.rails = {{"24V", {Volts(22), Volts(26)}, Amps(10), {}, {}},
             {"5V", {Volts(4.75), Volts(5.25)}, {}, {}, {}}};
  b.jumpers = {{"JP2", "PROBE V", {"5V", "24V"}, {}, {}, {}}};
  Header header;
  header.id = "J9";
  header.label = "PROBE";
  header.use = "probe";
  header.family = "pin-2.54";
  header.positions = 3;
  header.x = Millimetres(10);
  header.pins.resize(3);
  header.pins[0].number = 1;
  header.pins[0].function = PinFunction::Output;
  header.pins[0].signal = "servo";
  header.pins[0].rail = "5V";
  header.pins[0].clamp = Clamp{"5V", Volts(0.3), {}, {}};
  header.pins[1].number = 2;
  header.pins[1].function = PinFunction::Supply;
  header.pins[1].jumper = "JP2";
  header.pins[2].number = 3;
  header.pins[2].function = PinFunction::Ground;
  b.headers = {header, header};
  b.headers[1].id = "J23";
  b.headers[1].x = Millimetres(50);
  return b;
}

Pin& pin(Board& b, int n) {
  return b.headers[0].pins[static_cast<std::size_t>(n) - 1];
}

}  // namespace

TEST_CASE("likeness: names, places and labels do not count; everything that is judged does") {
  struct Row {
    std::string name;
    std::function<void(Board&)> change;
    bool alike;
  };
  const std::vector<Row> rows{
      {"header name", [](Board& b) { b.headers[0].id = "K1"; }, true},
      {"header label", [](Board& b) { b.headers[0].label = ""; }, true},
      {"place", [](Board& b) { b.headers[0].x = Millimetres(70); }, true},
      {"net and label", [](Board& b) { pin(b, 1).net = "PC6", pin(b, 1).label = "S"; }, true},
      {"rail name",
       [](Board& b) {
         b.rails[1].id = "VCC", pin(b, 1).rail = "VCC", pin(b, 1).clamp->rail = "VCC",
         b.jumpers[0].rails[0] = "VCC";
       },
       true},
      {"jumper name", [](Board& b) { b.jumpers[0].id = "W1", pin(b, 2).jumper = "W1"; }, true},
      {"a rail that no pin names",
       [](Board& b) {
         b.rails.insert(b.rails.begin(), {"12V", {Volts(12), Volts(12)}, {}, {}, {}});
       },
       true},
      {"evidence of the same kind",
       [](Board& b) {
         b.evidences.push_back({"other", EvidenceKind::BoardPrint, "", "", "", {}}),
             pin(b, 1).evidence = "other";
       },
       true},
      {"use", [](Board& b) { b.headers[0].use = "servo"; }, false},
      {"family", [](Board& b) { b.headers[0].family = "xh-2.50"; }, false},
      {"positions", [](Board& b) { b.headers[0].positions = 4; }, false},
      {"rows", [](Board& b) { b.headers[0].rows = 2; }, false},
      {"numbering", [](Board& b) { b.headers[0].numbering = Numbering::ByRow; }, false},
      {"key", [](Board& b) { b.headers[0].key = KeyState::Removed; }, false},
      {"rail volts", [](Board& b) { b.rails[0].volts.max = Volts(27); }, false},
      {"rail limit", [](Board& b) { b.rails[1].limit = Amps(1); }, false},
      {"jumper order", [](Board& b) { std::swap(b.jumpers[0].rails[0], b.jumpers[0].rails[1]); }, false},
      {"rail order", [](Board& b) { std::swap(b.rails[0], b.rails[1]); }, false},
      {"function", [](Board& b) { pin(b, 3).function = PinFunction::Unused; }, false},
      {"signal", [](Board& b) { pin(b, 1).signal = "led-data"; }, false},
      {"drive", [](Board& b) { pin(b, 1).drive = DriveKind::OpenDrain; }, false},
      {"high",
       [](Board& b) {
         pin(b, 1).high = Range<Volts>{Volts(3), Volts(3)};
       },
       false},
      {"limit", [](Board& b) { pin(b, 1).limit = Amps(0.02); }, false},
      {"reset", [](Board& b) { pin(b, 1).on_at_reset = false; }, false},
      {"withstands",
       [](Board& b) {
         pin(b, 1).withstands = Range<Volts>{Volts(0), Volts(5.5)};
       },
       false},
      {"withstands unpowered", [](Board& b) { pin(b, 1).withstands_unpowered = Volts(3.6); }, false},
      {"withstands pulled", [](Board& b) { pin(b, 1).withstands_pulled = Volts(3.6); }, false},
      {"analogue", [](Board& b) { pin(b, 1).analogue = true; }, false},
      {"thresholds", [](Board& b) { pin(b, 1).low_below = Volts(0.8); }, false},
      {"pull",
       [](Board& b) {
         pin(b, 1).pull = Pull{true, Ohms(4700), {}};
       },
       false},
      {"clamp", [](Board& b) { pin(b, 1).clamp->drop = Volts(0.5); }, false},
      {"coil", [](Board& b) { pin(b, 1).coil = 2; }, false},
      {"assumption", [](Board& b) { pin(b, 1).evidence = "guess"; }, false},
      {"contest",
       [](Board& b) {
         pin(b, 1).contest = Contest{"ground, by 'drawing'", {}};
       },
       false},
  };
  const Board before = board();
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Board after = board();
    row.change(after);
    CHECK((likeness(before, {0}).key == likeness(after, {0}).key) == row.alike);
  }
  CHECK(likeness(before, {0}).key == likeness(before, {1}).key);
  CHECK(likeness(before, {0}).key != likeness(before, {0, 1}).key);
}

TEST_CASE("likeness: the part stands for itself, and its names can be put back") {
  const Board whole = board();
  const Likeness like = likeness(whole, {1});
  const Board part = part_of(whole, like);
  REQUIRE(part.headers.size() == 1);
  CHECK(part.rail(part.headers[0].pin(1).rail)->volts.max == Volts(5.25));
  CHECK(part.jumper(part.headers[0].pin(2).jumper)->rails.size() == 2);
  const std::string says = part.headers[0].id + ".2 by " + part.jumpers[0].id + " at " +
                           part.jumpers[0].rails[1] + ", " + part.jumpers[0].rails[0];
  CHECK(with_names(says, whole, like) == "J23.2 by JP2 at 24V, 5V");
  CHECK(with_names("nothing to replace", whole, like) == "nothing to replace");
}
