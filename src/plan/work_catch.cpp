// SPDX-License-Identifier: MIT
// Idea: a step shows an error when no value that its reading can have with the error lies within the band
// that the sheet gives. Power reaches an error at the first step with power at which a plug is on whose
// contacts, or the rails behind them, are not as planned.
//
//   cavities 1 and 2 exchanged (RD, BK)     shown at 'meter': "1 BK, 2 RD"; power at stage 3
//   jumper at 24V instead of 5V             shown at 'bare-board': 22.8 V at least, not 4.9..5.2 V
//
// All readings of all steps, so O(steps) solutions of small networks. The alternative, to reason about what
// each kind of error changes, would test our opinion of the sheet and not the sheet.
// Tested in tests/unit/plan/work_test.cpp.
#include "plan/work_catch.h"

#include <algorithm>
#include <set>

namespace plugward {
namespace {

/// The plug that is in the hand when the sheet asks for `plug`.
int in_hand(const MachineFault& fault, Mixup how, int plug) {
  if (how != Mixup::Tagged || fault.kind != FaultKind::PlugsExchanged) return plug;
  if (plug == fault.plug) return fault.other_plug;
  if (plug == fault.other_plug) return fault.plug;
  return plug;
}

/// Its tag names another header than the one that it sits on.
bool tag_differs(const AsFound& found, const SwapPlan& plan, int header) {
  return std::any_of(found.contacts.begin(), found.contacts.end(),
                     [&](const Contact& c) { return c.header == header && plan.of(c.plug).to != header; });
}

struct Touch {
  PinRef pin;
  int plug = 0, lead = 0;
  friend auto operator<=>(const Touch&, const Touch&) = default;
};

std::set<Touch> touches(const std::vector<Contact>& contacts, const std::set<int>& on) {
  std::set<Touch> all;
  for (const Contact& c : contacts) {
    if (on.contains(c.plug)) all.insert({{c.header, c.pin}, c.plug, c.lead});
  }
  return all;
}

/// Plugs that the step sets, as they are with the error: whoever sets one of two exchanged plugs has the
/// other in mind too.
void set_plugs(const WorkStep& step, const MachineFault& fault, std::set<int>& on) {
  if (step.stage != WorkStage::PlugIn) return;
  for (const int plug : step.plugs) {
    on.insert(plug);
    if (fault.kind != FaultKind::PlugsExchanged) continue;
    if (plug == fault.plug) on.insert(fault.other_plug);
    if (plug == fault.other_plug) on.insert(fault.plug);
  }
}

bool feeds(const Board& board, const std::set<Touch>& touched, const MachineFault& fault) {
  return std::any_of(touched.begin(), touched.end(), [&](const Touch& t) {
    const Pin& pin = board.headers[static_cast<std::size_t>(t.pin.header)].pin(t.pin.number);
    if (fault.kind == FaultKind::WrongJumper) return pin.jumper == fault.jumper;
    if (fault.kind == FaultKind::SwitchOn) return t.pin == fault.pin;
    if (fault.kind == FaultKind::LeadsTouch) return t.plug == fault.plug;
    return false;
  });
}

std::optional<std::size_t> power_at(const SwapPlan& plan, const std::vector<WorkStep>& steps,
                                    const MachineFault& fault, const AsFound& healthy, const AsFound& found) {
  std::set<int> on;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    set_plugs(steps[i], fault, on);
    if (!steps[i].power || on.empty()) continue;
    const std::set<Touch> now = touches(found.contacts, on);
    if (now != touches(healthy.contacts, on) || feeds(*plan.board, now, fault)) return i;
  }
  return std::nullopt;
}

bool shows(const ExpectedReading& reading, const AsFound& found, const MachineFault& fault, Mixup how) {
  if (reading.at.header < 0 && reading.at.plug < 0) return false;  // of the supply
  ExpectedReading with = reading;
  if (reading.at.plug >= 0) with.at.plug = in_hand(fault, how, reading.at.plug);
  return certainly_differs(reading, read_again(with, found));
}

}  // namespace

CaughtAt caught_at(const SwapPlan& plan, const std::vector<WorkStep>& steps, const MachineFault& fault,
                   Mixup how) {
  const FaultyMachine machine(plan.after, fault);
  const AsFound healthy = as_described(plan.after);
  const AsFound found{&machine.fitting, machine.contacts, machine.held};
  CaughtAt caught;
  caught.power = power_at(plan, steps, fault, healthy, found);
  for (std::size_t i = 0; i < steps.size() && !caught.step; ++i) {
    const WorkStep& step = steps[i];
    for (std::size_t r = 0; r < step.readings.size() && !caught.step; ++r) {
      if (!shows(step.readings[r], found, fault, how)) continue;
      caught.step = i;
      caught.reading = r;
    }
    if (!caught.step && step.stage == WorkStage::PlugIn && step.header && how == Mixup::Set &&
        tag_differs(found, plan, *step.header)) {
      caught.step = i;
    }
  }
  return caught;
}

}  // namespace plugward
