// SPDX-License-Identifier: MIT
#include "report/work_text.h"

#include <doctest/doctest.h>

#include <limits>

#include "report/json.h"
#include "report/work_json.h"
#include "support/bench.h"

using namespace plugward;

namespace {

/// A plan of one plug, and one step with all that a step can have.
struct Sample {
  test::Bench bench = test::Bench::shipped("heron-m7", "nozzle-heater");
  Fitting machine = bench.fitting({});
  SwapPlan plan;
  std::vector<WorkStep> steps;

  Sample() {
    plan.machine = &machine;
    plan.board = bench.board.get();
    plan.plugs.resize(1);
    WorkStep step;
    step.stage = WorkStage::PowerOn;
    step.plug_stage = PlugStage::Heaters;
    step.act = "power on";
    step.see = "nothing warms";
    step.wrong = "off";
    step.cautions = {"attended"};
    step.code = "M105";
    step.not_proved = "that it stays so";
    step.plugs = {0};
    step.header = 0;
    step.power = true;
    ExpectedReading volts;
    volts.kind = ReadingKind::Voltage;
    volts.at = {0, -1, 1, 2, Hand::Rest, {}};
    volts.points = "J1.1 to J1.2";
    volts.low = 22.8;
    volts.high = 25.2;
    volts.unit = "V";
    volts.expect = "22.8..25.2 V";
    volts.too_low = "the rail is not up";
    volts.too_high = "another board";
    ExpectedReading open = volts;
    open.kind = ReadingKind::Resistance;
    open.at = {-1, 0, 1, 2, Hand::Worked, {}};
    open.points = "cavity 1 to cavity 2";
    open.high = std::numeric_limits<double>::infinity();
    open.unit = "ohm";
    open.expect = "22 ohm or more";
    open.too_low = "another board";
    open.too_high = "";
    step.readings = {volts, open};
    steps = {step};
  }
};

}  // namespace

TEST_CASE("a step with its caution, box, blanks and letters") {
  const Sample sample;
  Paper paper({.colour = false, .width = 90});
  write_work(paper, sample.plan, sample.steps);
  const std::string text = paper.text();
  CHECK(text.substr(text.find("  Check with power")) == R"(  Check with power, stage 4: heaters
       !   attended
  [ ]   1. power on
           check with: M105
           must be seen: nothing warms
           if not: off
           does not prove: that it stays so
           J1.1 to J1.2          22.8..25.2 V    ______ V    low a, high b
           cavity 1 to cavity 2  22 ohm or more  ______ ohm  low b
  Readings that are not as expected point to:
     a  the rail is not up
     b  another board
)");
}

TEST_CASE("the same step as JSON; up to an open circuit is null") {
  const Sample sample;
  CHECK(
      work_json(sample.plan, sample.steps).dump() ==
      R"([{"stage":"power-on","plug_stage":"heaters","act":"power on","see":"nothing warms","wrong":"off",)"
      R"("cautions":["attended"],"readings":[{"kind":"volts","header":"J1","plug":null,"red":1,"black":2,)"
      R"("worked":false,"points":"J1.1 to J1.2","low":22.8,"high":25.2,"unit":"V","expect":"22.8..25.2 V",)"
      R"("too_low":"the rail is not up","too_high":"another board"},{"kind":"ohms","header":null,"plug":"heater",)"
      R"("red":1,"black":2,"worked":true,"points":"cavity 1 to cavity 2","low":22.8,"high":null,"unit":"ohm",)"
      R"("expect":"22 ohm or more","too_low":"another board","too_high":null}],"plugs":["heater"],"header":"J1",)"
      R"("power":true,"code":"M105","not_proved":"that it stays so"}])");
}

TEST_CASE("the time in words") {
  WorkTime time;
  time.practised = 7;
  time.first_time = 17;
  time.practised_checks = 10;
  time.first_time_checks = 20;
  time.rows = {{"12 plugs over", 7.2, 16.8}};
  time.check_rows = {{"board out, the other one in", 10, 20}};
  Paper paper({.colour = false, .width = 80});
  write_work_time(paper, time);
  CHECK(paper.text() == R"(Time
  the change itself: 7 min practised, 17 min for the first time
  board and checks around it: 10 min practised, 20 min for the first time
    12 plugs over                8 min   17 min
    board out, the other one in  10 min  20 min
  Waiting and calibration are not counted; the figures are judgement.
)");
}

TEST_CASE("a setting that changed and one that did not") {
  const Sample sample;
  FirmwareSetting changed;
  changed.what = "input J5.3 (net PB12), 'limit'";
  changed.tell = "low at rest and high when the device works; pulled by 10 kohm to 3V3";
  changed.was = "PE4";
  changed.changed = true;
  changed.code = "M119";
  FirmwareSetting same;
  same.what = "always on: J12 (FAN 2), 'fan'";
  same.tell = "runs whenever the board has power";
  Paper paper({.colour = false, .width = 90});
  write_firmware(paper, sample.plan, {changed, same});
  const std::string text = paper.text();
  CHECK(text.substr(0, text.find("  Codes of")) == R"(What the firmware must be told
  For Heron M7 motion board, revision B; 1 of 2 are not as they were. Neutral words: where
  they are entered is told by the firmware's own pages.
  [ ] changed: input J5.3 (net PB12), 'limit'
      low at rest and high when the device works; pulled by 10 kohm to 3V3
      was PE4
      check with M119
  [ ] as it was: always on: J12 (FAN 2), 'fan'
      runs whenever the board has power
)");
  CHECK(firmware_json(sample.plan, {changed}).dump() ==
        R"([{"role":"sense","plug":"heater","header":"J1","pin":null,"net":null,)"
        R"("what":"input J5.3 (net PB12), 'limit'",)"
        R"("tell":"low at rest and high when the device works; pulled by 10 kohm to 3V3","was":"PE4",)"
        R"("changed":true,"code":"M119","check":null,"not_proved":null}])");
}
