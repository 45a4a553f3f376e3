// SPDX-License-Identifier: MIT
// Idea: the finished machine and the machine as it was are compared plug by plug; what differs is undone in
// the order parts, contacts, seat. The steps are not the old ones read backwards: they are ordered anew, for
// a full housing now may have been an empty one then (plan/repin.h, order_moves). Then all is carried out on
// the model and the result compared with the machine as it was: every lead in its cavity, every plug on its
// header, every part, every jumper.
//
//   1:A 2:B 3:-  was moved to  1:- 2:A 3:B       back: A to 1, B to 2
//
// A lead that was taken out for good has no cavity to be moved from; it is put back last, into the cavity
// that the steps left empty for it. Linear in leads and steps. Tested in tests/unit/plan/way_back_test.cpp.
#include "plan/way_back.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "model/harness_text.h"
#include "plan/technique.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

std::optional<int> header_in(const std::vector<Placement>& placements, int plug) {
  for (const Placement& p : placements) {
    if (p.plug == plug) return p.header;
  }
  return std::nullopt;
}

/// Where the first `count` leads of the plug are.
Arrangement arrangement_of(const Plug& plug, std::size_t count) {
  Arrangement arrangement;
  for (std::size_t l = 0; l < count; ++l) arrangement.cavity.push_back(plug.leads[l].cavity);
  return arrangement;
}

bool same_housing(const Plug& a, const Plug& b) {
  return a.family == b.family && a.positions == b.positions && a.rows == b.rows &&
         a.numbering == b.numbering && a.key == b.key;
}

/// A device as text, without where it stands in a file.
std::string device_words(const Device& device) {
  const std::vector<std::string> ids = terminal_ids(device);
  std::string text;
  for (std::size_t t = 0; t < ids.size(); ++t) {
    const Terminal& terminal = device.terminals[t];
    text +=
        format("{} {} {} {} {} {}\n", ids[t], to_word(terminal.function), terminal.signal, terminal.optional,
               terminal.inner, terminal.withstands ? to_text(*terminal.withstands) : "");
  }
  for (const Part& part : device.parts) text += part_text(part, ids) + "\n";
  return text;
}

/// The devices that the plug's leads go to.
std::set<int> devices_of(const Plug& plug) {
  std::set<int> devices;
  for (const Lead& lead : plug.leads) {
    if (lead.to) devices.insert(lead.to->device);
  }
  return devices;
}

/// Lead by lead, but for where they sit: a cure may have put thicker ones in.
bool same_leads(const Plug& a, const Plug& b) {
  return std::equal(a.leads.begin(), a.leads.end(), b.leads.begin(), b.leads.end(),
                    [](const Lead& x, const Lead& y) {
                      return x.colour == y.colour && x.gauge == y.gauge && x.length == y.length &&
                             x.to == y.to && x.mark == y.mark;
                    });
}

bool same_leads_as_far(Plug now, const Plug& was) {
  now.leads.resize(was.leads.size());
  return same_leads(now, was);
}

class Reverser {
 public:
  explicit Reverser(const SwapPlan& plan) : plan_(plan), was_(*plan.machine->harness) {}

  WayBack run() {
    back_.cautions = cautions_before();
    back_.jumpers = plan_.machine->jumpers;
    for (int plug = 0; plug < static_cast<int>(was_.plugs.size()); ++plug) add(plug);
    back_.checks = checks_after(gauges_);
    back_.proven = ends_as_it_was(plan_, back_);
    return std::move(back_);
  }

 private:
  void add(int index) {
    const Plug& now = plan_.harness.plugs[at(index)];
    const Plug& was = was_.plugs[at(index)];
    PlugWayBack one;
    one.plug = index;
    one.from = header_in(plan_.after.placements, index);
    one.to = header_in(plan_.machine->placements, index);
    one.before = arrangement_of(now, was.leads.size());
    one.after = arrangement_of(was, was.leads.size());
    one.other_housing = !same_housing(now, was);
    for (std::size_t l = was.leads.size(); l < now.leads.size(); ++l) {
      one.leads_out.push_back(now.leads[l].cavity);
    }
    take_out(one);
    if (!one.other_housing) order(one, was);
    if (!one.at_bench() && !one.from && !one.to) return;
    back_.plugs.push_back(std::move(one));
  }

  void order(PlugWayBack& one, const Plug& was) {
    Arrangement within = one.after;
    for (std::size_t l = 0; l < was.leads.size(); ++l) {
      if (one.before.cavity[l] > 0 || one.after.cavity[l] == 0) continue;
      one.put_back.push_back(static_cast<int>(l));
      within.cavity[l] = 0;
    }
    one.steps = order_moves(one.before, within, was.positions);
    for (Step& step : one.steps) {
      step.plug = one.plug;
      if (step.kind == StepKind::Park) step.why = tr("parked in an empty cavity to make room");
      if (step.kind == StepKind::Hold) step.why = tr("held beside the housing to make room");
      if (was.leads[at(step.lead)].gauge) gauges_.push_back(*was.leads[at(step.lead)].gauge);
    }
    if (one.steps.empty() && one.put_back.empty()) return;
    const Family* family = plan_.machine->catalogue->find(was.family);
    if (family == nullptr) return;
    for (const std::string& line : technique(*family)) {
      if (std::find(back_.technique.begin(), back_.technique.end(), line) == back_.technique.end()) {
        back_.technique.push_back(line);
      }
    }
  }

  /// What is to be taken out of the leads of this plug; the parts of a device are named once.
  void take_out(PlugWayBack& one) {
    const Plug& was = was_.plugs[at(one.plug)];
    const Plug& now = plan_.harness.plugs[at(one.plug)];
    one.rebuilt = now.leads.size() != was.leads.size() || !same_leads_as_far(now, was);
    bool first = false;
    for (const int device : devices_of(was)) {
      const bool changed =
          device_words(plan_.harness.devices[at(device)]) != device_words(was_.devices[at(device)]);
      one.rebuilt = one.rebuilt || changed;
      first = first || (changed && told_.insert(device).second);
    }
    if (!first) return;
    for (const Cure& cure : cures_near(one.plug)) one.take_out.push_back(cure.name);
  }

  /// A device's cures are told at its first plug.
  std::vector<Cure> cures_near(int index) const {
    const std::set<int> mine = devices_of(was_.plugs[at(index)]);
    for (const PlugTransfer& other : plan_.plugs) {
      const std::set<int> theirs = devices_of(was_.plugs[at(other.plug)]);
      const bool shared =
          std::any_of(mine.begin(), mine.end(), [&](int device) { return theirs.contains(device); });
      if (shared && !other.cures.empty()) return other.cures;
    }
    return {};
  }

  const SwapPlan& plan_;
  const Harness& was_;
  WayBack back_;
  std::set<int> told_;
  std::vector<Gauge> gauges_;
};

/// The parts out of the plug's leads: its devices are again as they were, and so are the leads themselves.
void take_parts_out(Harness& harness, const Harness& was, const PlugWayBack& one) {
  Plug& plug = harness.plugs[at(one.plug)];
  const Plug& old = was.plugs[at(one.plug)];
  plug.leads.resize(old.leads.size());
  for (std::size_t l = 0; l < old.leads.size(); ++l) {
    const int cavity = plug.leads[l].cavity;
    plug.leads[l] = old.leads[l];
    plug.leads[l].cavity = cavity;
  }
  for (const int device : devices_of(old)) harness.devices[at(device)] = was.devices[at(device)];
}

bool move_contacts(Plug& plug, const Plug& old, const PlugWayBack& one) {
  if (one.other_housing) {
    const std::vector<Lead> leads = plug.leads;
    plug = old;
    plug.leads = leads;
    for (std::size_t l = 0; l < plug.leads.size(); ++l) plug.leads[l].cavity = one.after.cavity[l];
    return true;
  }
  auto reached = carry_out(arrangement_of(plug, plug.leads.size()), one.steps, plug.positions);
  if (!reached) return false;
  for (const int lead : one.put_back) {
    const int cavity = one.after.cavity[at(lead)];
    const bool taken =
        std::find(reached->cavity.begin(), reached->cavity.end(), cavity) != reached->cavity.end();
    if (reached->cavity[at(lead)] != 0 || taken) return false;
    reached->cavity[at(lead)] = cavity;
  }
  for (std::size_t l = 0; l < plug.leads.size(); ++l) plug.leads[l].cavity = reached->cavity[l];
  return true;
}

/// Every plug, lead, part and jumper of `reached` is where and what it is on `machine`.
bool is_as_it_was(const Fitting& reached, const Fitting& machine) {
  const Harness& was = *machine.harness;
  if (reached.jumpers != machine.jumpers || reached.board != machine.board) return false;
  std::map<int, int> seats, old_seats;
  for (const Placement& p : reached.placements) seats[p.plug] = p.header;
  for (const Placement& p : machine.placements) old_seats[p.plug] = p.header;
  if (seats != old_seats) return false;
  const Harness& now = *reached.harness;
  for (std::size_t d = 0; d < was.devices.size(); ++d) {
    if (device_words(now.devices[d]) != device_words(was.devices[d])) return false;
  }
  for (std::size_t p = 0; p < was.plugs.size(); ++p) {
    const Plug& a = now.plugs[p];
    const Plug& b = was.plugs[p];
    if (!same_housing(a, b) || !same_leads(a, b)) return false;
    if (!(arrangement_of(a, a.leads.size()) == arrangement_of(b, b.leads.size()))) return false;
  }
  return true;
}

}  // namespace

bool ends_as_it_was(const SwapPlan& plan, const WayBack& back) {
  Harness reached;
  const auto fitting = carry_out(plan, back, reached);
  return fitting && is_as_it_was(*fitting, *plan.machine);
}

WayBack way_back(const SwapPlan& plan) {
  return Reverser(plan).run();
}

std::optional<Fitting> carry_out(const SwapPlan& plan, const WayBack& back, Harness& harness) {
  const Harness& was = *plan.machine->harness;
  harness = plan.harness;
  Fitting fitting = plan.after;
  fitting.harness = &harness;
  for (const PlugWayBack& one : back.plugs) {
    if (header_in(fitting.placements, one.plug) != one.from) return std::nullopt;
    std::erase_if(fitting.placements, [&](const Placement& p) { return p.plug == one.plug; });
  }
  // What was not named stays on the new board, and shows in the comparison.
  fitting.board = plan.machine->board;
  fitting.jumpers = back.jumpers;
  for (const PlugWayBack& one : back.plugs) {
    Plug& plug = harness.plugs[at(one.plug)];
    if (one.rebuilt) take_parts_out(harness, was, one);
    if (plug.leads.size() != was.plugs[at(one.plug)].leads.size()) return std::nullopt;
    if (!move_contacts(plug, was.plugs[at(one.plug)], one)) return std::nullopt;
    if (!one.to) continue;
    const bool taken = std::any_of(fitting.placements.begin(), fitting.placements.end(),
                                   [&](const Placement& p) { return p.header == *one.to; });
    if (taken) return std::nullopt;
    fitting.placements.push_back({one.plug, *one.to});
  }
  return fitting;
}

}  // namespace plugward
