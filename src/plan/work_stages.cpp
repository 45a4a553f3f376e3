// SPDX-License-Identifier: MIT
// Plugs stage by stage, each followed by its checks with power. Tested in tests/unit/plan/work_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "fit/seating.h"
#include "plan/work_steps.h"

namespace plugward {
namespace {

WorkStep& add(WorkSteps& steps, PlugStage stage, WorkStep step) {
  step.plug_stage = stage;
  steps.push_back(std::move(step));
  return steps.back();
}

void add_gate(WorkSteps& steps, const SwapPlan& plan, PlugStage stage) {
  WorkStep& gate =
      add(steps, stage,
          step_of(WorkStage::PlugIn,
                  format("power off, mains plug out, USB out, lamps out; then {}", tr(to_word(stage))),
                  tr("every lamp is out")));
  gate.cautions = {tr("never plug or unplug with power on")};
  gate.readings.push_back(dead_reading(*plan.board));
}

void add_plug(WorkSteps& steps, const SwapPlan& plan, PlugStage stage, int plug) {
  const int header = *plan.of(plug).to;
  const Header& h = plan.board->headers[static_cast<std::size_t>(header)];
  const Plug& p = plan.harness.plugs[static_cast<std::size_t>(plug)];
  WorkStep& step = add(steps, stage,
                       step_of(WorkStage::PlugIn,
                               format("{} on {}, cavity 1 over pin 1", plug_words(plan, plug),
                                      header_words(*plan.board, header)),
                               format("its tag says {}; {}", h.id,
                                      p.positions < h.positions ? tr("cavity 1 over pin 1, the far pins free")
                                                                : tr("no pin free at either end"))));
  step.plugs = {plug};
  step.header = header;
  step.readings.push_back(colours_on(plan.after, header));
  const Catalogue& catalogue = *plan.after.catalogue;
  const bool known = catalogue.find(p.family) != nullptr && catalogue.find(h.family) != nullptr;
  if (p.key == KeyState::Removed || h.key == KeyState::Removed) {
    step.cautions = {tr("a key is cut off: it goes on both ways round; the colour over pin 1 decides")};
  } else if (known && mated_profile(p, h, catalogue) == Profile::Bare) {
    step.cautions = {tr("nothing guides this plug: it goes on turned and shifted too; count the pins")};
  }
}

void add_power(WorkSteps& steps, PlugStage stage) {
  WorkStep on = step_of(WorkStage::PowerOn, tr("power on, hand on the switch"),
                        tr("lamps as on the bare board; after 10 s no plug, lead or part is warm"),
                        tr("power off at once"));
  on.power = true;
  if (stage == PlugStage::Signals) {
    on.see += tr("; temperatures near the room's, not rising for a minute");
    on.code = "M105";
    on.not_proved = tr("which sensor sits in which heater");
  } else if (stage == PlugStage::Motors) {
    on.cautions = {tr("hands clear; axes at mid-travel; low current for the first move")};
  } else if (stage == PlugStage::Loads) {
    on.see += tr("; every rail as on the bare board, at a free header, also with all fans and lights on");
  } else if (stage == PlugStage::Heaters) {
    on.see = tr("for one minute no temperature rises");
    on.wrong = tr(
        "a heater warms while it is off: mains plug out at once; a shorted output, or an always-on header");
    on.code = "M105";
    on.not_proved = tr("that it stays off when the firmware restarts: watch one restart too");
    on.cautions = {tr("attended, clear of anything that burns, switch within reach"),
                   tr("each sensor fixed in its own heater")};
  }
  add(steps, stage, std::move(on));
}

std::string wrong_of(FirmwareRole role) {
  switch (role) {
    case FirmwareRole::Motor:
      return tr("it shakes: windings mixed or a lead open; the wrong way: the direction setting");
    case FirmwareRole::Sense:
      return tr("never changes: wrong input, broken lead, pull; the wrong way round: its setting");
    case FirmwareRole::Sensor:
      return tr("lowest value: lead open; highest: short; far off: another kind of sensor");
    case FirmwareRole::Heater:
      return tr("another channel rises: sensors exchanged; none: wrong output; power off");
    case FirmwareRole::Fan:
      return tr("another fan runs: outputs exchanged; it never stops: shorted output");
    case FirmwareRole::AlwaysOn:
      return tr("stands still: lead, plug, or the header is a switched one");
    case FirmwareRole::Servo:
      return tr("nothing moves: control and supply leads; it blinks or drops: its supply sags");
    case FirmwareRole::Leds:
      return tr("dark: data at the wrong end, or its level; wrong colours: their order is a setting");
    case FirmwareRole::Line:
      return tr("blank or only lit: ribbon turned, or data lines exchanged; power off, feel the ribbon");
  }
  return "";
}

/// One step for all that are checked alike.
void add_checks(WorkSteps& steps, const SwapPlan& plan, PlugStage stage,
                const std::vector<FirmwareSetting>& settings) {
  const std::size_t first = steps.size();
  for (const FirmwareSetting& s : settings) {
    if (stage_of_plug(plan.harness, s.plug) != stage || !plan.of(s.plug).goes_over()) continue;
    const std::string wrong = wrong_of(s.role);
    const auto alike = std::find_if(steps.begin() + static_cast<std::ptrdiff_t>(first), steps.end(),
                                    [&](const WorkStep& step) {
                                      return step.code == s.code && step.see == s.check &&
                                             step.not_proved == s.not_proved && step.wrong == wrong;
                                    });
    if (alike != steps.end()) {
      if (s.role == FirmwareRole::Line && alike->plugs.back() == s.plug)
        continue;  // a display is seen as a whole
      alike->act += "; " + s.what;
      alike->plugs.push_back(s.plug);
      alike->header.reset();
      continue;
    }
    WorkStep step = step_of(WorkStage::PowerOn, s.what, s.check, wrong);
    step.power = true;
    step.plugs = {s.plug};
    step.header = s.header;
    step.code = s.code;
    step.not_proved = s.not_proved;
    add(steps, stage, std::move(step));
  }
}

/// Before heaters go on: their headers once more, now with the firmware running; and the stop.
void add_before_heaters(WorkSteps& steps, const SwapPlan& plan, const std::vector<int>& heaters,
                        PlugStage last) {
  for (const int plug : heaters) {
    const int header = *plan.of(plug).to;
    WorkStep step = step_of(WorkStage::PowerOn, format("{}, still empty, firmware running, heater off",
                                                       header_words(*plan.board, header)));
    step.power = true;
    step.header = header;
    step.readings = bare_board_readings(plan.after, header);
    add(steps, last, std::move(step));
  }
  WorkStep stop = step_of(WorkStage::PowerOn, tr("stop everything, then start the firmware anew"),
                          tr("motors free, fans as at switch-on, the firmware tells that it was stopped"),
                          tr("no stop, no heater: find out first"));
  stop.power = true;
  stop.code = "M112";
  stop.not_proved = tr("that it stops with a firmware that hangs: the mains switch does");
  add(steps, last, std::move(stop));
}

}  // namespace

void add_stages(WorkSteps& steps, const SwapPlan& plan, const std::vector<FirmwareSetting>& settings) {
  std::vector<int> heaters;
  PlugStage last = PlugStage::Signals;
  for (const int plug : plugs_over(plan)) {
    const PlugStage stage = stage_of_plug(plan.harness, plug);
    if (stage == PlugStage::Heaters) {
      heaters.push_back(plug);
    } else {
      last = std::max(last, stage);
    }
  }
  for (const PlugStage stage :
       {PlugStage::Signals, PlugStage::Motors, PlugStage::Loads, PlugStage::Heaters}) {
    std::vector<int> plugs;
    for (const int plug : plugs_over(plan)) {
      if (stage_of_plug(plan.harness, plug) == stage) plugs.push_back(plug);
    }
    if (!plugs.empty()) {
      add_gate(steps, plan, stage);
      for (const int plug : plugs) add_plug(steps, plan, stage, plug);
      add_power(steps, stage);
      add_checks(steps, plan, stage, settings);
    }
    if (stage == last && !heaters.empty()) add_before_heaters(steps, plan, heaters, last);
  }
}

}  // namespace plugward
