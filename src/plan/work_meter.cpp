// SPDX-License-Identifier: MIT
// The meter, first without power, then on the bare board. Tested in tests/unit/plan/work_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "plan/work_steps.h"

namespace plugward {
namespace {

void add_plugs(WorkSteps& steps, const SwapPlan& plan) {
  bool first = true;
  for (const int plug : plugs_over(plan)) {
    const int header = *plan.of(plug).to;
    WorkStep step =
        step_of(WorkStage::MeterOff, format("{} in the hand, tag {}", plug_words(plan, plug),
                                            plan.board->headers[static_cast<std::size_t>(header)].id));
    if (first) {
      step.cautions = {
          tr("hold the tips of the meter together first and take off what it shows; do not touch both tips")};
      first = false;
    }
    step.plugs = {plug};
    step.header = header;
    step.readings.push_back(colours_in_hand(plan.after, plug));
    for (ExpectedReading& r : plug_readings(plan.after, plug)) step.readings.push_back(std::move(r));
    steps.push_back(std::move(step));
  }
}

void add_frame(WorkSteps& steps, const SwapPlan& plan) {
  std::vector<std::string> names;
  std::vector<int> plugs;
  for (const int plug : plugs_over(plan)) {
    const auto& leads = plan.harness.plugs[static_cast<std::size_t>(plug)].leads;
    const bool sensor = std::any_of(leads.begin(), leads.end(), [&](const Lead& lead) {
      if (!lead.to) return false;
      const auto& parts = plan.harness.devices[static_cast<std::size_t>(lead.to->device)].parts;
      return std::any_of(parts.begin(), parts.end(),
                         [](const Part& part) { return std::holds_alternative<TemperatureSensor>(part); });
    });
    if (!sensor && stage_of_plug(plan.harness, plug) != PlugStage::Heaters) continue;
    names.push_back(plug_words(plan, plug));
    plugs.push_back(plug);
  }
  if (plugs.empty()) return;
  WorkStep step = step_of(
      WorkStage::MeterOff,
      format("every lead of {} against the frame, and heater leads against sensor leads", join(names, ", ")),
      tr("no beep, all open"), tr("crushed insulation: heater voltage would reach the board's sensor input"));
  step.plugs = plugs;
  steps.push_back(std::move(step));
}

void add_headers(WorkSteps& steps, const SwapPlan& plan) {
  for (int h = 0; h < static_cast<int>(plan.board->headers.size()); ++h) {
    std::vector<ExpectedReading> readings = power_off_readings(plan.after, h);
    if (readings.empty()) continue;
    WorkStep step =
        step_of(WorkStage::MeterOff,
                format("{}{}", header_words(*plan.board, h),
                       h == power_header(*plan.board) ? tr(", mains plug out") : tr(", empty, no power")));
    step.header = h;
    step.readings = std::move(readings);
    steps.push_back(std::move(step));
  }
}

void add_bare(WorkSteps& steps, const SwapPlan& plan) {
  WorkStep on = step_of(WorkStage::BareBoard, tr("nothing plugged in: power on, hand on the switch"),
                        tr("its lamp lights; after 10 s no part is hot, nothing smells"),
                        tr("power off at once; do not power a board again that smoked"));
  on.power = true;
  on.cautions = {tr("tips and tools: one slip from a supply pin to a signal pin destroys the input"),
                 tr("best from a supply with a current limit, where one is to hand")};
  steps.push_back(std::move(on));
  for (int h = 0; h < static_cast<int>(plan.board->headers.size()); ++h) {
    std::vector<ExpectedReading> readings = bare_board_readings(plan.after, h);
    if (readings.empty()) continue;
    WorkStep step = step_of(
        WorkStage::BareBoard,
        format("{}{}", header_words(*plan.board, h), h == power_header(*plan.board) ? "" : tr(", empty")));
    step.power = true;
    step.header = h;
    step.readings = std::move(readings);
    steps.push_back(std::move(step));
  }
  WorkStep load = step_of(WorkStage::BareBoard,
                          tr("load the firmware that was built for this very board and revision, and "
                             "tell it what the section on firmware lists"),
                          tr("it answers, and tells its version"),
                          tr("another board's firmware switches other pins: do not go on"));
  load.power = true;
  load.cautions = {tr("runaway protection on; no limit raised to silence an alarm"),
                   tr("USB and the main supply together only where the board's page allows it")};
  steps.push_back(std::move(load));
}

}  // namespace

void add_meter(WorkSteps& steps, const SwapPlan& plan) {
  add_plugs(steps, plan);
  add_frame(steps, plan);
  add_headers(steps, plan);
  add_bare(steps, plan);
}

}  // namespace plugward
