// SPDX-License-Identifier: MIT
// Counted in three steps: everything that the plan names goes into a heap, equal things are added up, and
// spares are reckoned once on the sums. Tested in tests/unit/plan/parts_list_test.cpp.
#include "plan/parts_list.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "plan/adapter_words.h"
#include "plan/contact_wire.h"
#include "plan/technique.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Things alike in all of this are one line of the list.
bool alike(const PartItem& a, const PartItem& b) {
  return a.kind == b.kind && a.what == b.what && a.family == b.family && a.positions == b.positions &&
         a.gauge == b.gauge && a.colour == b.colour && a.length == b.length && a.value == b.value &&
         a.demands == b.demands;
}

class Heap {
 public:
  void add(PartItem item) {
    const auto found =
        std::find_if(items_.begin(), items_.end(), [&](const PartItem& other) { return alike(item, other); });
    if (found == items_.end()) {
      items_.push_back(std::move(item));
      return;
    }
    found->needed += item.needed;
    found->spares += item.spares;
    if (item.purpose.empty() ||
        ("; " + found->purpose + ";").find("; " + item.purpose + ";") != std::string::npos)
      return;
    found->purpose += found->purpose.empty() ? item.purpose : "; " + item.purpose;
  }

  /// By kind; among a kind as they were added.
  std::vector<PartItem> sorted() && {
    std::stable_sort(items_.begin(), items_.end(),
                     [](const PartItem& a, const PartItem& b) { return a.kind < b.kind; });
    for (PartItem& item : items_) {
      if (item.kind == PartKind::Tool) item.needed = 1;
      if (item.kind == PartKind::Contact) item.spares = spare_contacts(item.needed);
    }
    return std::move(items_);
  }

 private:
  std::vector<PartItem> items_;
};

PartItem housing(const std::string& family, int positions, std::string purpose) {
  PartItem item;
  item.kind = PartKind::Housing;
  item.what = format("housing of family '{}', {} positions", family, positions);
  item.family = family;
  item.positions = positions;
  item.needed = 1;
  item.purpose = std::move(purpose);
  return item;
}

PartItem contact(std::string_view for_what, const std::string& family, const std::optional<Gauge>& gauge,
                 std::string purpose) {
  PartItem item;
  item.kind = PartKind::Contact;
  item.what = format("contact for a {} of family '{}', {}", for_what, family,
                     gauge ? to_text(*gauge) : tr("for the gauge of the cable's leads"));
  item.family = family;
  item.gauge = gauge;
  item.needed = 1;
  item.purpose = std::move(purpose);
  return item;
}

PartItem tool(const std::string& what) {
  PartItem item;
  item.kind = PartKind::Tool;
  item.what = what;
  item.needed = 1;
  return item;
}

void add_tools(Heap& heap, const std::vector<std::string>& tools) {
  for (const std::string& what : tools) heap.add(tool(what));
}

void add_cures(Heap& heap, const std::vector<Cure>& cures) {
  for (const Cure& cure : cures) {
    for (const Component& component : cure.components) {
      PartItem item;
      item.kind = PartKind::Component;
      item.what = component.kind;
      item.value = component.value;
      item.demands = component.demands;
      item.needed = 1;
      item.purpose = component.between;
      heap.add(std::move(item));
    }
  }
  if (cures.empty()) return;
  PartItem tube;
  tube.kind = PartKind::HeatShrink;
  tube.what = tr("heat-shrink tube, one piece over each joint of an added part");
  tube.needed = 1;
  heap.add(std::move(tube));
  add_tools(heap, {tr("soldering iron and heat source for the shrink tube")});
}

/// Contacts stay in use when they are moved, unless the family's maker says otherwise; what breaks is a lance
/// (a spare contact) or a flap (a spare housing).
void add_moves(Heap& heap, const Fitting& fitting, const RepinPlan& plan) {
  for (const PlugPlan& one : plan.plugs) {
    const Plug& plug = plug_of(fitting, one.plug);
    const Family& family = *fitting.catalogue->find(plug.family);
    if (joint_of(family) != Joint::Crimp) continue;
    std::set<int> moved;
    for (const Step& step : one.steps) moved.insert(step.lead);
    const bool anew = family.reuse.has_value();
    for (const int lead : moved) {
      PartItem item = contact(tr("housing"), plug.family, plug.leads[at(lead)].gauge,
                              anew ? family.reuse->value : tr("should one be damaged on its way"));
      item.needed = anew ? 1 : 0;
      heap.add(std::move(item));
    }
    if (moved.empty() || !family.lance || family.lance->value != Lance::Housing) continue;
    PartItem spare = housing(plug.family, plug.positions, tr("should a flap break: it cannot be mended"));
    spare.needed = 0;
    spare.spares = 1;
    heap.add(std::move(spare));
  }
  add_tools(heap, plan.tools);
}

PartItem wire(const Gauge& gauge, const WireColour& colour, const std::optional<Millimetres>& length,
              std::string purpose) {
  PartItem item;
  item.kind = PartKind::Wire;
  item.what = tr("stranded wire");
  item.gauge = gauge;
  item.colour = colour;
  item.length = length;
  item.needed = 1;
  item.purpose = std::move(purpose);
  return item;
}

/// Contacts for the leads of a plug in another family; a lead that they do not take is replaced.
void add_contacts_anew(Heap& heap, const Plug& plug, const Family& family, const std::string& purpose) {
  for (const Lead& lead : plug.leads) {
    if (lead.cavity < 1) continue;
    if (can_crimp(family, lead)) {
      heap.add(contact(tr("housing"), family.id, lead.gauge, purpose));
      continue;
    }
    const Gauge other = nearest_taken(family, *lead.gauge);
    heap.add(contact(tr("housing"), family.id, other,
                     format("{}; not made for its {} leads: replace them by the wire listed here, or take an "
                            "adapter lead ('--adapter')",
                            purpose, to_text(*lead.gauge))));
    heap.add(wire(
        other, lead.colour, lead.length,
        format("instead of the {} lead in cavity {} of '{}'", to_text(*lead.gauge), lead.cavity, plug.id)));
  }
}

/// A housing for every plug that does not go on its header; returns how many.
int add_housings(Heap& heap, const Fitting& fitting) {
  int added = 0;
  for (const Placement& where : fitting.placements) {
    const Plug& plug = plug_of(fitting, where.plug);
    const Header& header = header_of(fitting, where.header);
    if (mate(plug, header, *fitting.catalogue).goes_on()) continue;
    const std::string purpose = format("for plug '{}' on '{}'", plug.id, header.id);
    heap.add(housing(header.family, header.positions, purpose));
    ++added;
    const Family& family = *fitting.catalogue->find(header.family);
    if (joint_of(family) != Joint::Crimp) continue;
    add_contacts_anew(heap, plug, family, purpose);
    add_tools(heap, {crimp_tool_words(header.family), tr("wire cutter and stripper")});
  }
  return added;
}

/// Parts that no values were computed for, in the words of the advice.
void add_words(Heap& heap, const std::vector<std::string>& parts, const std::vector<std::string>& told) {
  for (const std::string& part : parts) {
    if (std::find(told.begin(), told.end(), part) != told.end()) continue;
    PartItem item;
    item.kind = PartKind::Other;
    item.what = part;
    item.needed = 1;
    heap.add(std::move(item));
  }
}

void add_wire(Heap& heap, const Adapter& adapter) {
  if (adapter.spliced) {
    for (const AdapterEnd* end : {&adapter.a, &adapter.b}) {
      PartItem item;
      item.kind = PartKind::Wire;
      item.what = format("flat cable, {} conductors", end->positions);
      item.positions = end->positions;
      item.gauge = adapter.leads.front().gauge;
      item.length = adapter.length / 2.0;
      item.needed = 1;
      item.purpose = adapter.id;
      heap.add(std::move(item));
    }
    return;
  }
  for (const AdapterLead& lead : adapter.leads)
    heap.add(wire(lead.gauge, lead.colour, adapter.length, adapter.id));
}

void add_ends(Heap& heap, const Adapter& adapter) {
  PartItem counterpart = housing(adapter.a.family, adapter.a.positions, format("{}, end A", adapter.id));
  counterpart.kind = PartKind::Counterpart;
  counterpart.what = format("header or cable-side counterpart of family '{}', {} positions", adapter.a.family,
                            adapter.a.positions);
  heap.add(std::move(counterpart));
  heap.add(housing(adapter.b.family, adapter.b.positions, format("{}, end B", adapter.id)));
  for (const AdapterLead& lead : adapter.leads) {
    if (adapter.a.joint == Joint::Crimp) {
      heap.add(contact(tr("counterpart"), adapter.a.family, lead.gauge,
                       format("{}, end A; none where a header is soldered on", adapter.id)));
    }
    if (adapter.b.joint == Joint::Crimp)
      heap.add(contact(tr("housing"), adapter.b.family, lead.gauge, format("{}, end B", adapter.id)));
  }
  PartItem tube;
  tube.kind = PartKind::HeatShrink;
  tube.what = tr("heat-shrink tube, one piece over each lead");
  tube.needed = static_cast<int>(adapter.leads.size());
  tube.purpose = adapter.spliced ? format("{}, splices", adapter.id)
                                 : format("{}, end A, where a header is soldered on", adapter.id);
  heap.add(std::move(tube));
}

}  // namespace

int spare_contacts(int needed) {
  return std::max(2, (needed + 4) / 5);
}

PartsList parts_list(const Fitting& fitting, const Advice& advice) {
  PartsList list;
  list.summary = advice.summary;
  if (advice.verdict == Verdict::Measure || advice.verdict == Verdict::Apart) return list;
  list.planned = true;
  if (advice.verdict == Verdict::Mate) return list;
  Heap heap;
  const int housings = advice.new_housings > 0 ? add_housings(heap, fitting) : 0;
  if (advice.plan) add_moves(heap, fitting, *advice.plan);
  add_cures(heap, advice.cures);
  add_words(heap, advice.cures.empty() ? advice.parts : advice.uncured,
            housings > 0 ? advice.housings : std::vector<std::string>{});
  list.items = std::move(heap).sorted();
  return list;
}

PartsList parts_list(const AdapterAdvice& advice) {
  PartsList list;
  list.summary = advice.summary;
  list.planned = advice.plan.has_value() || advice.nothing_to_do;
  if (!advice.plan) return list;
  Heap heap;
  for (const Adapter& adapter : advice.plan->adapters) {
    add_ends(heap, adapter);
    add_wire(heap, adapter);
  }
  add_tools(heap, advice.plan->tools);
  add_cures(heap, advice.plan->cures);
  list.items = std::move(heap).sorted();
  return list;
}

}  // namespace plugward
