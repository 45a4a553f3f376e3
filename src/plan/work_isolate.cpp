// SPDX-License-Identifier: MIT
// Until the old board is free. Cautions are the customary ones of the trade (common practice, no source)
// unless one is named. Tested in tests/unit/plan/work_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "plan/work_steps.h"

namespace plugward {
namespace {

void add_before(WorkSteps& steps, const SwapPlan& plan) {
  for (const std::string& line : plan.missing) {
    steps.push_back(step_of(WorkStage::Before, format("have to hand: {}", line)));
  }
  WorkStep save = step_of(
      WorkStage::Before,
      tr("the old machine still runs: keep its settings as a text file, and its firmware's version"),
      tr("steps per millimetre, currents, directions, offsets, sensor kinds, heater tuning, all in the file"),
      tr("what is not saved has to be measured anew at 'calibrate'"));
  save.code = "M503";
  save.not_proved = tr("what was set when the firmware was built: keep its configuration too");
  save.power = true;
  steps.push_back(std::move(save));
}

void add_isolate(WorkSteps& steps, const SwapPlan& plan) {
  WorkStep off =
      step_of(WorkStage::Isolate,
              tr("mains plug out, not only switched off; USB out; keep both where nobody plugs them in"));
  off.see = tr("every lamp is out; the machine is cool and nothing moves");
  off.wrong = tr("a lamp still lit: a charge in the supply, or a second supply");
  off.cautions = {
      tr("mains leads and the inside of the supply are for a qualified person; this sheet does not go there"),
      tr("wait some minutes after the lamps: supplies stay charged"),
      tr("do not turn connected motors by hand: they generate")};
  off.readings.push_back(dead_reading(*plan.machine->board));
  steps.push_back(std::move(off));
}

/// "1 V, 2 G".
std::string terminals_by_cavity(const Harness& harness, int plug) {
  std::vector<std::string> words;
  for (const Lead& lead : harness.plugs[static_cast<std::size_t>(plug)].leads) {
    if (lead.cavity > 0)
      words.push_back(
          format("{} {}", lead.cavity, lead.to ? harness.terminal_name(*lead.to) : tr("unknown")));
  }
  return format("{}", join(words, ", "));
}

void add_record(WorkSteps& steps, const SwapPlan& plan) {
  steps.push_back(step_of(WorkStage::Record,
                          tr("photograph the old board from above and from two sides, every plug and jumper"),
                          tr("every plug, its leads and the print beside it can be read in the pictures")));
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.from) continue;
    const std::string& old_id = plan.machine->board->headers[static_cast<std::size_t>(*t.from)].id;
    const std::string tag =
        t.goes_over() ? format("'{} to {}'", old_id, plan.board->headers[static_cast<std::size_t>(*t.to)].id)
                      : format("'{}, stays off'", old_id);
    WorkStep step = step_of(WorkStage::Record, format("tag {}: {}", plug_words(plan, t.plug), tag));
    step.plugs = {t.plug};
    if (looks_alike(*plan.machine->harness, t.plug)) {
      step.act += format("; its leads look alike: a flag with the name of its terminal on each ({})",
                         terminals_by_cavity(*plan.machine->harness, t.plug));
    }
    steps.push_back(std::move(step));
  }
}

void add_unplug(WorkSteps& steps, const SwapPlan& plan) {
  bool first = true;
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.from) continue;
    WorkStep step = step_of(WorkStage::Unplug, format("{} off {}", plug_words(plan, t.plug),
                                                      header_words(*plan.machine->board, *t.from)));
    if (first) {
      step.cautions = {tr("touch earthed metal first; hold boards by their edges"),
                       tr("pull the housing, never the leads; press the latch where there is one")};
      first = false;
    }
    step.plugs = {t.plug};
    steps.push_back(std::move(step));
  }
  WorkStep supply =
      step_of(WorkStage::Unplug, tr("leads of the supply off the old board; mark plus and minus"));
  supply.cautions = {tr("marked by where they sat, not by colour")};
  steps.push_back(std::move(supply));
}

}  // namespace

void add_isolation(WorkSteps& steps, const SwapPlan& plan) {
  add_before(steps, plan);
  add_isolate(steps, plan);
  add_record(steps, plan);
  add_unplug(steps, plan);
}

}  // namespace plugward
