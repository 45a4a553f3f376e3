// SPDX-License-Identifier: MIT
// Settings, reminders, closing, record. Tested in tests/unit/plan/work_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "plan/work_steps.h"

namespace plugward {
namespace {

bool any(const std::vector<FirmwareSetting>& settings, FirmwareRole role) {
  return std::any_of(settings.begin(), settings.end(),
                     [&](const FirmwareSetting& s) { return s.role == role; });
}

WorkStep reminder(std::string act, std::string code, std::string see = "", std::string not_proved = "") {
  WorkStep step = step_of(WorkStage::Calibrate, std::move(act), std::move(see));
  step.code = std::move(code);
  step.not_proved = std::move(not_proved);
  step.power = true;
  return step;
}

}  // namespace

void add_closing(WorkSteps& steps, const SwapPlan& plan, const std::vector<FirmwareSetting>& settings) {
  const auto changed =
      std::count_if(settings.begin(), settings.end(), [](const FirmwareSetting& s) { return s.changed; });
  WorkStep save = step_of(WorkStage::Settings,
                          format("compare the firmware's settings with 'what the firmware must be told' ({} "
                                 "of {} changed) and save them",
                                 changed, settings.size()),
                          tr("after a restart they are the same"));
  save.code = "M500, M503";
  save.not_proved = tr("what was set when the firmware was built");
  save.power = true;
  save.cautions = {tr("runaway protection on for every heater")};
  steps.push_back(std::move(save));
  if (any(settings, FirmwareRole::Heater))
    steps.push_back(reminder(tr("tune each heater, attended"), "M303", tr("steady within a few degrees")));
  if (any(settings, FirmwareRole::Motor)) {
    steps.push_back(reminder(tr("current and steps of each motor"), "M906, M92",
                             tr("100 mm told are 100 mm measured"),
                             tr("that no step is lost under load: feel the motors after an hour")));
    steps.push_back(reminder(tr("home each axis, one at a time, hand on the switch"), "G28",
                             tr("each runs towards its own switch and stops there")));
  }
  if (any(settings, FirmwareRole::Servo))
    steps.push_back(reminder(
        tr("probe: first homing high above the plate, finger as the plate; then offset and repeatability"),
        "M48, M851", "", tr("the trigger at temperature")));
  steps.push_back(reminder(tr("level the plate; first run attended and at low power"), ""));
  WorkStep relief =
      step_of(WorkStage::Close,
              tr("power off; strain relief on every lead, nothing in fans or belts, motor leads "
                 "away from switch and probe leads"),
              tr("every plug holds a light tug; the cover closes without pressing on a lead"));
  steps.push_back(std::move(relief));
  if (any(settings, FirmwareRole::Heater)) {
    WorkStep warm =
        step_of(WorkStage::Close,
                tr("heaters at working temperature: feel or measure terminals and plugs of heaters "
                   "and supply at 1, 5 and 15 min, and after the first hours"),
                tr("hand-warm at most; screws still tight"),
                tr("hot joint: loose screw, tinned strands, contact or lead too small"));
    warm.power = true;
    steps.push_back(std::move(warm));
  }
  steps.push_back(step_of(
      WorkStage::File, tr("write the new loom file; put this sheet with its readings inside the cover"),
      tr("headers, jumpers, moved contacts, cut keys, firmware's version and date are in it")));
  steps.push_back(step_of(
      WorkStage::File,
      format("keep the old loom file and the photographs: the way back to {}", plan.machine->board->title)));
}

}  // namespace plugward
