// SPDX-License-Identifier: MIT
#include "plan/work.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "base/format.h"
#include "plan/firmware.h"
#include "plan/work_catch.h"
#include "support/bench.h"
#include "support/machine.h"

using namespace plugward;
using plugward::test::Bench;
using plugward::test::Machine;

namespace {

std::string board_text(const std::string& id, const std::string& switch_pins,
                       const std::string& supply_pins) {
  return "<board id='" + id + "' title='Board " + id + R"(' width="50 mm" height="50 mm" evidence="s">
    <evidence id="s" kind="schematic"/>
    <rail id="24V" volts="22.8..25.2 V" limit="10 A"/>
    <rail id="3V3" volts="3.2..3.3 V" limit="0.3 A"/>
    <header id="J1" label="POWER" use="supply" family="screw-5.08" positions="2">)" +
         supply_pins + R"(</header>
    <header id="J2" label="LIMIT" use="limit" family="xh-2.50" positions="2">)" +
         switch_pins + R"(</header>
    <header id="J3" label="HEAT" use="heater" family="vh-3.96" positions="2">
      <pin n="1" function="supply" rail="24V" limit="6 A"/>
      <pin n="2" function="switched" signal="heater" ohms="0.02 ohm" limit="6 A" at-reset="off" net="PA1"/>
    </header>
  </board>)";
}

const std::string supply_minus_first =
    "<pin n='1' function='ground' limit='12 A'/><pin n='2' function='supply' rail='24V' limit='12 A'/>";
const std::string supply_plus_first =
    "<pin n='1' function='supply' rail='24V' limit='12 A'/><pin n='2' function='ground' limit='12 A'/>";
const std::string limit_input =
    "function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' low-below='0.8 V' high-above='2 V' "
    "pull='up' pull-ohms='10 kohm'";

const std::string harness = R"(<harness id="h" title="H" evidence="e"><evidence id="e" kind="measurement"/>
  <dry-switch id="stop" use="limit" rests="closed"/>
  <heater-element id="nozzle" volts="24 V" watts="40 W"/>
  <plug id="limit" family="xh-2.50" positions="2">
    <lead cavity="1" colour="WH" gauge="26 AWG" length="500 mm" to="stop.A"/>
    <lead cavity="2" colour="BK" gauge="26 AWG" length="500 mm" to="stop.B"/>
  </plug>
  <plug id="heater" family="vh-3.96" positions="2">
    <lead cavity="1" colour="RD" gauge="18 AWG" length="900 mm" to="nozzle.A"/>
    <lead cavity="2" colour="RD" gauge="18 AWG" length="900 mm" to="nozzle.B"/>
  </plug></harness>)";

/// A switch and a heater that go straight over.
struct SmallSwap {
  Bench from{board_text("old", "<pin n='1' " + limit_input + " net='PB1'/><pin n='2' function='ground'/>",
                        supply_minus_first),
             harness};
  Bench to{board_text("new", "<pin n='1' " + limit_input + " net='PC7'/><pin n='2' function='ground'/>",
                      supply_plus_first),
           harness};
  Fitting machine = from.fitting({{"limit", "J2"}, {"heater", "J3"}});
  std::unique_ptr<SwapPlan> plan = plan_swap(machine, *to.board, {});
};

/// One line a step: stage, act, readings.
std::vector<std::string> lines_of(const std::vector<WorkStep>& steps) {
  std::vector<std::string> lines;
  for (const WorkStep& step : steps) {
    std::string line = format("{}{}: {}", to_word(step.stage), step.power ? "!" : "", step.act);
    for (const ExpectedReading& r : step.readings) line += format(" | {}: {}", r.points, r.expect);
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

TEST_CASE("the whole order of work of a switch and a heater") {
  const SmallSwap swap;
  REQUIRE(swap.plan->count(Transfer::Straight) == 2);
  const std::vector<std::string> expected{
      "before!: the old machine still runs: keep its settings as a text file, and its firmware's version",
      "isolate: mains plug out, not only switched off; USB out; keep both where nobody plugs them in | J1, "
      "plus to minus: "
      "less than 1 V",
      "record: photograph the old board from above and from two sides, every plug and jumper",
      "record: tag 'limit': 'J2 to J2'",
      "record: tag 'heater': 'J3 to J3'",
      "unplug: 'limit' off J2 (LIMIT)",
      "unplug: 'heater' off J3 (HEAT)",
      "unplug: leads of the supply off the old board; mark plus and minus",
      "fit: Board new on standoffs at all its holes",
      "fit: plug-in driver modules, where the board takes any: as in its maker's picture",
      "fit!: leads of the supply loose, apart and insulated; mains on for this one reading | lead marked "
      "plus to lead "
      "marked minus: 22.8..25.2 V",
      "fit: mains out, lamps out; then the leads on J1 (POWER): plus on pin 1, minus on pin 2 | J1, plus to "
      "minus: less "
      "than 1 V",
      "meter: 'limit' in the hand, tag J2 | colours by cavity: 1 WH, 2 BK | cavity 1 to cavity 2: a beep | "
      "cavity 1 to "
      "cavity 2, worked by hand: open, no beep",
      "meter: 'heater' in the hand, tag J3 | colours by cavity: 1 RD, 2 RD | cavity 1 to cavity 2: "
      "12.1..16.9 ohm",
      "meter: every lead of 'heater' against the frame, and heater leads against sensor leads",
      "meter: J1 (POWER), mains plug out | J1.1 to J1.2: no beep | J1.2 to the supply's minus: a beep",
      "meter: J2 (LIMIT), empty, no power | J2.2 to the supply's minus: a beep",
      "meter: J3 (HEAT), empty, no power | J3.1 to the supply's minus: no beep",
      "bare-board!: nothing plugged in: power on, hand on the switch",
      "bare-board!: J1 (POWER) | J1.1 to J1.2: 22.8..25.2 V",
      "bare-board!: J2 (LIMIT), empty | J2.1 to J2.2: 3.19..3.3 V",
      "bare-board!: J3 (HEAT), empty | J3.1 to the supply's minus: 22.8..25.2 V | J3.1 to J3.2: 0..1 V",
      "bare-board!: load the firmware that was built for this very board and revision, and tell it what the "
      "section on "
      "firmware lists",
      "plug-in: power off, mains plug out, USB out, lamps out; then signals | J1, plus to minus: less than 1 "
      "V",
      "plug-in: 'limit' on J2 (LIMIT), cavity 1 over pin 1 | colours over the pins of J2: 1 WH, 2 BK",
      "power-on!: power on, hand on the switch",
      "power-on!: input J2.1 (net PC7), 'limit'",
      "power-on!: J3 (HEAT), still empty, firmware running, heater off | J3.1 to the supply's minus: "
      "22.8..25.2 V | J3.1 to "
      "J3.2: 0..1 V",
      "power-on!: stop everything, then start the firmware anew",
      "plug-in: power off, mains plug out, USB out, lamps out; then heaters | J1, plus to minus: less than 1 "
      "V",
      "plug-in: 'heater' on J3 (HEAT), cavity 1 over pin 1 | colours over the pins of J3: 1 RD, 2 RD",
      "power-on!: power on, hand on the switch",
      "power-on!: heater output J3.2 (net PA1), 'heater'",
      "settings!: compare the firmware's settings with 'what the firmware must be told' (1 of 2 changed) and "
      "save them",
      "calibrate!: tune each heater, attended",
      "calibrate!: level the plate; first run attended and at low power",
      "close: power off; strain relief on every lead, nothing in fans or belts, motor leads away from switch "
      "and probe "
      "leads",
      "close!: heaters at working temperature: feel or measure terminals and plugs of heaters and supply at "
      "1, 5 and 15 "
      "min, and after the first hours",
      "file: write the new loom file; put this sheet with its readings inside the cover",
      "file: keep the old loom file and the photographs: the way back to Board old"};
  CHECK(lines_of(order_of_work(*swap.plan)) == expected);
}

TEST_CASE("exchanged supply terminals are told at the step that lands them") {
  const SmallSwap swap;
  const std::vector<WorkStep> steps = order_of_work(*swap.plan);
  const auto land = std::find_if(steps.begin(), steps.end(),
                                 [](const WorkStep& s) { return s.act.starts_with("mains out, lamps out"); });
  REQUIRE(land != steps.end());
  CHECK(land->cautions ==
        std::vector<std::string>{"ferrules or bare strands under a screw, never tinned ones; tug each lead",
                                 "on the old board plus was on pin 2 of J1, here it is on pin 1"});
}

TEST_CASE("what the firmware must be told about a switch and a heater") {
  const SmallSwap swap;
  const std::vector<FirmwareSetting> settings = firmware_settings(swap.plan->after, swap.plan->machine);
  REQUIRE(settings.size() == 2);
  CHECK(settings[0].what == "input J2.1 (net PC7), 'limit'");
  CHECK(settings[0].tell == "low at rest and high when the device works; pulled by 10 kohm to 3V3");
  CHECK(settings[0].was == "PB1");
  CHECK(settings[0].changed);
  CHECK(settings[0].code == "M119");
  CHECK(settings[1].what == "heater output J3.2 (net PA1), 'heater'");
  CHECK(settings[1].tell ==
        "heats; its sensor is not told by any name: follow its lead; runaway protection stays on");
  CHECK_FALSE(settings[1].changed);
  for (const FirmwareSetting& s : firmware_settings(swap.plan->after, nullptr)) CHECK(s.changed);
}

TEST_CASE("a dozen plugs that go straight over take as long as the trade says") {
  // Common practice, no source: under 10 minutes practised, 15 to 20 for the first time.
  SwapPlan plan;
  plan.plugs.resize(12);
  for (PlugTransfer& t : plan.plugs) t.kind = Transfer::Straight;
  const WorkTime time = work_time(plan, {});
  CHECK(time.practised == 7);
  CHECK(time.practised < 10);
  CHECK(time.first_time == 17);
  CHECK(time.first_time >= 15);
  CHECK(time.first_time <= 20);
  plan.plugs[0].kind = Transfer::Repin;
  plan.plugs[0].moves.extractions = 4;
  CHECK(work_time(plan, {}).practised == 15);   // 4 contacts of 2 minutes
  CHECK(work_time(plan, {}).first_time == 37);  // of 5 minutes
}

TEST_CASE("the demo's plugs go on in stages, heaters last") {
  const auto wren = Machine::shipped("wren-a4", "heron-m7");
  const Fitting machine = wren->fitting();
  const auto plan = plan_swap(machine, *wren->to, {});
  const std::vector<std::pair<std::string, PlugStage>> expected{
      {"limit-x/limit", PlugStage::Signals},    {"nozzle-thermistor/thermistor", PlugStage::Signals},
      {"kite/control", PlugStage::Signals},     {"kite/trigger", PlugStage::Signals},
      {"spool-arm/sensor", PlugStage::Signals}, {"filament/filament", PlugStage::Signals},
      {"motor-x/motor", PlugStage::Motors},     {"part-fan/fan", PlugStage::Loads},
      {"case-fan/fan", PlugStage::Loads},       {"firefly/light", PlugStage::Loads},
      {"display/display", PlugStage::Loads},    {"nozzle-heater/heater", PlugStage::Heaters},
      {"bed-heater/bed", PlugStage::Heaters},   {"chamber-heater/heater", PlugStage::Heaters}};
  for (const auto& [plug, stage] : expected) {
    CAPTURE(plug);
    CHECK(stage_of_plug(plan->harness, wren->plug(plug)) == stage);
  }
  const std::vector<WorkStep> steps = order_of_work(*plan);
  PlugStage last = PlugStage::Signals;
  WorkStage stage = WorkStage::Before;
  bool gated = false;
  std::set<int> plugged;
  for (const WorkStep& step : steps) {
    const bool in_turn = step.plug_stage && (stage == WorkStage::PlugIn || stage == WorkStage::PowerOn);
    if (!in_turn) CHECK(step.stage >= stage);
    stage = step.stage;
    if (step.plug_stage) CHECK(*step.plug_stage >= last);
    if (step.plug_stage) last = *step.plug_stage;
    if (step.stage != WorkStage::PlugIn) {
      gated = false;
    } else if (step.plugs.empty()) {
      gated = true;  // power off, lamps out
    } else {
      CHECK(gated);
      CHECK_FALSE(step.power);
      for (const int plug : step.plugs) CHECK(plugged.insert(plug).second);
    }
  }
  CHECK(plugged.size() ==
        static_cast<std::size_t>(plan->count(Transfer::Straight) + plan->count(Transfer::Repin) +
                                 plan->count(Transfer::Adapt)));
}

TEST_CASE("the demo's bare board: the probe's header and the fans behind their jumpers") {
  const auto wren = Machine::shipped("wren-a4", "heron-m7");
  const Fitting machine = wren->fitting();
  const auto plan = plan_swap(machine, *wren->to, {});
  std::vector<std::string> lines;
  for (const std::string& line : lines_of(order_of_work(*plan))) {
    if (line.starts_with("bare-board!: J9 ") || line.starts_with("bare-board!: J1") ||
        line.starts_with("bare-board!: J21"))
      lines.push_back(line);
  }
  CHECK(lines ==
        std::vector<std::string>{
            "bare-board!: J1 (POWER IN) | J1.1 to J1.2: 22.8..25.2 V",
            "bare-board!: J9 (PROBE), empty | J9.1 to J9.3: 0..0.4 V | J9.2 to J9.3: 4.9..5.2 V",
            "bare-board!: J10 (TRIGGER), empty | J10.2 to J10.1: 3.19..3.3 V",
            "bare-board!: J11 (FAN 1), empty | J11.1 to the supply's minus: 22.8..25.2 V | J11.1 to J11.2: "
            "0..1 V",
            "bare-board!: J12 (FAN 2), empty | J12.1 to J12.2: 22.8..25.2 V",
            "bare-board!: J13 (CASE FAN), empty | J13.2 to J13.1: 22.8..25.2 V | J13.3 to J13.1: 3.19..3.3 V",
            "bare-board!: J14 (HEAT), empty | J14.1 to the supply's minus: 22.8..25.2 V | J14.1 to J14.2: "
            "0..1 V",
            "bare-board!: J15 (BED), empty | J15.1 to the supply's minus: 22.8..25.2 V | J15.1 to J15.2: "
            "0..1 V",
            "bare-board!: J16 (AUX 24 V), empty | J16.1 to J16.2: 22.8..25.2 V",
            "bare-board!: J17 (BLOWER), empty | J17.1 to the supply's minus: 22.8..25.2 V | J17.1 to J17.2: "
            "0..1 V",
            "bare-board!: J18 (THERM 0), empty | J18.1 to J18.2: 3.19..3.3 V",
            "bare-board!: J19 (THERM BED), empty | J19.1 to J19.2: 3.19..3.3 V",
            "bare-board!: J21 (SENSOR), empty | J21.1 to J21.3: 22.8..25.2 V | J21.2 to J21.3: 3.19..3.3 V"});
}

TEST_CASE("every harmful error on the demo's new board shows before power reaches it") {
  const auto wren = Machine::shipped("wren-a4", "heron-m7");
  bool black = false;  // ... and when every lead of the machine is black
  SUBCASE("coloured") {
    black = false;
  }
  SUBCASE("black") {
    black = true;
  }
  CAPTURE(black);
  Harness leads = *wren->fitting().harness;
  for (Plug& plug : leads.plugs) {
    for (Lead& lead : plug.leads) {
      if (black) lead.colour = {Colour::Black, {}};
      if (black) lead.mark.clear();
    }
  }
  Fitting machine = wren->fitting();
  machine.harness = &leads;
  const auto plan = plan_swap(machine, *wren->to, {});
  const std::vector<WorkStep> steps = order_of_work(*plan);
  const std::set<ExcessKind> harms{ExcessKind::Overvoltage,   ExcessKind::ReversedSupply,
                                   ExcessKind::SupplyTooHigh, ExcessKind::HeaterTooStrong,
                                   ExcessKind::AlwaysOn,      ExcessKind::ClampCurrent,
                                   ExcessKind::BackFeed,      ExcessKind::PinOvercurrent,
                                   ExcessKind::RailOverload,  ExcessKind::ShortCircuit};
  int harmful = 0;
  for (const MachineFault& fault : possible_faults(plan->after, {})) {
    const FaultyMachine faulty(plan->after, fault);
    const std::vector<Excess> found = excesses(faulty.fitting, faulty.contacts);
    if (std::none_of(found.begin(), found.end(), [&](const Excess& e) { return harms.contains(e.kind); }))
      continue;
    ++harmful;
    for (const Mixup how : {Mixup::Set, Mixup::Tagged}) {
      CAPTURE(static_cast<int>(fault.kind));
      CAPTURE(fault.plug < 0 ? "" : wren->name(fault.plug));
      CHECK(caught_at(*plan, steps, fault, how).in_time());
    }
  }
  CHECK(harmful >= 50);
}

TEST_CASE("an error is caught only by a reading, and power reaches it only with its plug on") {
  const SmallSwap swap;
  std::vector<WorkStep> steps = order_of_work(*swap.plan);
  MachineFault exchanged;
  exchanged.kind = FaultKind::LeadsExchanged;
  exchanged.plug = 0;
  exchanged.lead = 0;
  exchanged.other_lead = 1;
  const CaughtAt caught = caught_at(*swap.plan, steps, exchanged);
  REQUIRE(caught.step.has_value());
  REQUIRE(caught.power.has_value());
  CHECK(steps[*caught.step].act == "'limit' in the hand, tag J2");
  CHECK(steps[*caught.step].readings[*caught.reading].expect == "1 WH, 2 BK");
  CHECK(steps[*caught.power].stage == WorkStage::PowerOn);
  CHECK(caught.in_time());
  for (WorkStep& step : steps) step.readings.clear();
  CHECK_FALSE(caught_at(*swap.plan, steps, exchanged).in_time());
  MachineFault none;
  none.kind = FaultKind::Setting;
  none.plug = 0;
  const CaughtAt nothing = caught_at(*swap.plan, order_of_work(*swap.plan), none);
  CHECK_FALSE(nothing.step.has_value());
  CHECK_FALSE(nothing.power.has_value());
}
