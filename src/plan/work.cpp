// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/work_test.cpp.
#include "plan/work.h"

#include <algorithm>

#include "base/format.h"
#include "plan/work_steps.h"

namespace plugward {
WorkStep step_of(WorkStage stage, std::string act, std::string see, std::string wrong) {
  WorkStep step;
  step.stage = stage;
  step.act = std::move(act);
  step.see = std::move(see);
  step.wrong = std::move(wrong);
  return step;
}

std::string header_words(const Board& board, int header) {
  const Header& h = board.headers[static_cast<std::size_t>(header)];
  return h.label.empty() ? h.id : format("{} ({})", h.id, h.label);
}

std::string plug_words(const SwapPlan& plan, int plug) {
  return format("'{}'", plan.machine->harness->plugs[static_cast<std::size_t>(plug)].id);
}

ExpectedReading dead_reading(const Board& board) {
  ExpectedReading r;
  r.kind = ReadingKind::Voltage;
  const int header = power_header(board);
  r.points = header < 0 ? tr("supply plus to supply minus")
                        : format("{}, plus to minus", board.headers[static_cast<std::size_t>(header)].id);
  r.low = 0.0;
  r.high = 1.0;
  r.unit = "V";
  r.expect = tr("less than 1 V");
  r.too_high = tr("power is on, or a charge is left: wait, look for a second supply (USB)");
  return r;
}

std::vector<int> plugs_over(const SwapPlan& plan) {
  std::vector<int> plugs;
  for (const PlugTransfer& t : plan.plugs) {
    if (t.goes_over()) plugs.push_back(t.plug);
  }
  return plugs;
}

PlugStage stage_of_plug(const Harness& harness, int plug) {
  PlugStage stage = PlugStage::Signals;
  for (const Lead& lead : harness.plugs[static_cast<std::size_t>(plug)].leads) {
    if (!lead.to) continue;
    const Device& device = harness.devices[static_cast<std::size_t>(lead.to->device)];
    const auto has = [&]<class Kind>(const Kind*) {
      return std::any_of(device.parts.begin(), device.parts.end(),
                         [](const Part& part) { return std::holds_alternative<Kind>(part); });
    };
    if (device.use == "heater" || has(static_cast<const Heater*>(nullptr))) return PlugStage::Heaters;
    const bool reads = device.use == "probe" || device.use == "limit" || device.use == "sensor" ||
                       device.use == "filament" || has(static_cast<const Driver*>(nullptr));
    if (has(static_cast<const Coil*>(nullptr))) {
      stage = std::max(stage, PlugStage::Motors);
    } else if (device.use == "fan" || device.use == "led" || device.use == "display" ||
               (has(static_cast<const Load*>(nullptr)) && !reads)) {
      stage = std::max(stage, PlugStage::Loads);
    }
  }
  return stage;
}

std::vector<WorkStep> order_of_work(const SwapPlan& plan) {
  const std::vector<FirmwareSetting> settings = firmware_settings(plan.after, plan.machine);
  WorkSteps steps;
  add_isolation(steps, plan);
  add_board(steps, plan);
  add_meter(steps, plan);
  add_stages(steps, plan, settings);
  add_closing(steps, plan, settings);
  return steps;
}

std::string_view to_word(WorkStage stage) {
  switch (stage) {
    case WorkStage::Before:
      return "before";
    case WorkStage::Isolate:
      return "isolate";
    case WorkStage::Record:
      return "record";
    case WorkStage::Unplug:
      return "unplug";
    case WorkStage::Fit:
      return "fit";
    case WorkStage::Jumpers:
      return "jumpers";
    case WorkStage::Contacts:
      return "contacts";
    case WorkStage::MeterOff:
      return "meter";
    case WorkStage::BareBoard:
      return "bare-board";
    case WorkStage::PlugIn:
      return "plug-in";
    case WorkStage::PowerOn:
      return "power-on";
    case WorkStage::Settings:
      return "settings";
    case WorkStage::Calibrate:
      return "calibrate";
    case WorkStage::Close:
      return "close";
    case WorkStage::File:
      return "file";
  }
  return "";
}

std::string_view to_word(PlugStage stage) {
  switch (stage) {
    case PlugStage::Signals:
      return later("signals");
    case PlugStage::Motors:
      return later("motors");
    case PlugStage::Loads:
      return later("fans, lights, displays");
    case PlugStage::Heaters:
      return later("heaters");
  }
  return "";
}

}  // namespace plugward
