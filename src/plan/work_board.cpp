// SPDX-License-Identifier: MIT
// The new board in its place, jumpers set, contacts moved. Tested in tests/unit/plan/work_test.cpp.
#include <algorithm>
#include <cmath>
#include <utility>

#include "base/format.h"
#include "plan/technique.h"
#include "plan/work_steps.h"

namespace plugward {
namespace {

/// Distances between neighbouring holes do not tell where they lie; sorted corners against the first do.
bool same_holes(const Board& a, const Board& b) {
  if (a.holes.size() != b.holes.size()) return false;
  const auto offsets = [](const Board& board) {
    std::vector<std::pair<double, double>> at;
    for (const Hole& hole : board.holes) at.emplace_back(hole.x.value, hole.y.value);
    std::sort(at.begin(), at.end());
    for (auto& [x, y] : at) {
      x -= board.holes.empty() ? 0.0 : at.front().first;
      y -= board.holes.empty() ? 0.0 : at.front().second;
    }
    return at;
  };
  const auto first = offsets(a), second = offsets(b);
  constexpr double play = 0.5;  // mm, of a 3.2 mm hole around an M3 screw, both ends
  for (std::size_t i = 0; i < first.size(); ++i) {
    if (std::abs(first[i].first - second[i].first) > play ||
        std::abs(first[i].second - second[i].second) > play)
      return false;
  }
  return true;
}

void add_fit(WorkSteps& steps, const SwapPlan& plan) {
  WorkStep fit = step_of(WorkStage::Fit, format("{} on standoffs at all its holes", plan.board->title),
                         tr("no screw, strand or sheet metal under the board or between its pins"));
  fit.cautions = {tr("touch earthed metal first; hold the board by its edges")};
  if (!plan.machine->board->holes.empty() && !same_holes(*plan.machine->board, *plan.board))
    fit.cautions.emplace_back(
        tr("its holes do not lie as those of the old board: new standoffs or an adapter plate"));
  steps.push_back(std::move(fit));
  WorkStep modules = step_of(
      WorkStage::Fit, tr("plug-in driver modules, where the board takes any: as in its maker's picture"),
      tr("every module stands in the marked corner, no pin beside its socket"),
      tr("a module turned or one pin off destroys itself and often the board"));
  steps.push_back(std::move(modules));
}

/// The supply's leads: measured while loose, because colours and prints have been wrong.
void add_supply(WorkSteps& steps, const SwapPlan& plan) {
  const int to = power_header(*plan.board);
  if (to < 0) return;
  const Header& header = plan.board->headers[static_cast<std::size_t>(to)];
  const auto plus = std::find_if(header.pins.begin(), header.pins.end(),
                                 [](const Pin& pin) { return pin.function == PinFunction::Supply; });
  const Rail* rail = plan.board->rail(plus->rail);
  WorkStep loose = step_of(
      WorkStage::Fit, tr("leads of the supply loose, apart and insulated; mains on for this one reading"),
      tr("the lead marked plus is plus"));
  loose.power = true;
  loose.cautions = {tr("24 V at 10 A welds: the bare ends must not meet each other or the frame")};
  if (rail != nullptr) {
    ExpectedReading r;
    r.kind = ReadingKind::Voltage;
    r.points = tr("lead marked plus to lead marked minus");
    r.low = rail->volts.min.value;
    r.high = rail->volts.max.value;
    r.unit = "V";
    r.expect = to_text(rail->volts);
    r.too_low = tr("minus sign: the marks are exchanged; less: the supply's voltage switch or trimmer");
    r.too_high = tr("the supply's voltage switch or trimmer; this board does not stand more");
    loose.readings.push_back(std::move(r));
  }
  steps.push_back(std::move(loose));
  WorkStep land = step_of(WorkStage::Fit,
                          format("mains out, lamps out; then the leads on {}: {}",
                                 header_words(*plan.board, to), landing_words(*plan.board, to)),
                          tr("print, marks and this sheet agree; no strand stands out"),
                          tr("if they do not agree: stop; reversed supply destroys the board"));
  land.header = to;
  land.cautions = {tr("ferrules or bare strands under a screw, never tinned ones; tug each lead")};
  const std::string other =
      landing_caution(*plan.machine->board, *plan.board, tr("on the old board plus was"));
  if (!other.empty()) land.cautions.push_back(other);
  land.readings.push_back(dead_reading(*plan.board));
  steps.push_back(std::move(land));
}

void add_jumpers(WorkSteps& steps, const SwapPlan& plan) {
  for (const JumperChoice& choice : plan.jumpers) {
    const Jumper* jumper = plan.board->jumper(choice.jumper);
    const std::string name = jumper == nullptr || jumper->label.empty()
                                 ? choice.jumper
                                 : format("{} ({})", choice.jumper, jumper->label);
    WorkStep step =
        step_of(WorkStage::Jumpers,
                choice.rail.empty()
                    ? format("jumper {}: no plug of this machine hangs on it; note where it sits", name)
                    : format("jumper {} to {}", name, choice.rail),
                choice.rail.empty() ? "" : format("it sits at {}, on both pins", choice.rail),
                choice.rail.empty() ? "" : choice.why);
    step.plugs = choice.plugs;
    steps.push_back(std::move(step));
  }
}

std::vector<Gauge> gauges_of(const Plug& plug) {
  std::vector<Gauge> gauges;
  for (const Lead& lead : plug.leads) {
    if (lead.gauge) gauges.push_back(*lead.gauge);
  }
  return gauges;
}

void add_contacts(WorkSteps& steps, const SwapPlan& plan) {
  bool first = true;
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.goes_over()) continue;
    const Plug& plug = plan.housed.plugs[static_cast<std::size_t>(t.plug)];
    for (const std::string& part : t.parts) {
      WorkStep step = step_of(WorkStage::Contacts, format("{}: {}", plug_words(plan, t.plug), part),
                              tr("built in as the pages on this plug tell"));
      step.plugs = {t.plug};
      steps.push_back(std::move(step));
    }
    if (t.moves.steps.empty()) continue;
    WorkStep step =
        step_of(WorkStage::Contacts,
                format("{}: move its contacts, {} taken out", plug_words(plan, t.plug), t.moves.extractions),
                format("{}; it beeps from its cavity to its device, also when it is wiggled",
                       tug_advice(gauges_of(plug))),
                tr("it slides: the lance is bent flat; free the contact, bend it out, seat it again"));
    step.moves_contacts = true;
    if (std::exchange(first, false))
      step.cautions = {tr("flag every lead with its cavity before the first one is moved"),
                       tr("a lead that is left over: insulate it singly and tag it")};
    step.plugs = {t.plug};
    steps.push_back(std::move(step));
  }
}

}  // namespace

void add_board(WorkSteps& steps, const SwapPlan& plan) {
  add_fit(steps, plan);
  add_supply(steps, plan);
  add_jumpers(steps, plan);
  add_contacts(steps, plan);
}

}  // namespace plugward
