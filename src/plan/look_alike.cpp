// SPDX-License-Identifier: MIT
// Idea: what a person goes by is the number, the label and the place of the old header, and the housing. Each
// header that the plug goes on and for which one of these speaks is judged with the plug on it, the other
// plugs of its device at home. What the judge lets pass may still be a trap: the load that is no longer
// switched, the output that belongs to something else.
//
// Tested in tests/unit/plan/look_alike_test.cpp.
#include "plan/look_alike.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/format.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "plan/components.h"

namespace plugward {
namespace {

constexpr Millimetres side_by_side(12);  // from edge to edge: less than the width of a fingertip
constexpr double same_place = 0.08;      // of the board's width and height

const Header* old_header(const SwapPlan& plan, int plug) {
  const auto& from = plan.of(plug).from;
  return from ? &plan.machine->board->headers[static_cast<std::size_t>(*from)] : nullptr;
}

/// Pin 1, as a share of the board's width and height.
double apart(const Board& a, const Header& one, const Board& b, const Header& two) {
  const auto share = [](Millimetres at, Millimetres whole) {
    return whole.value > 0 ? at.value / whole.value : 0;
  };
  return std::hypot(share(one.x, a.width) - share(two.x, b.width),
                    share(one.y, a.height) - share(two.y, b.height));
}

std::vector<std::string> reasons(const SwapPlan& plan, int plug, int meant, int other) {
  std::vector<std::string> list;
  const Header& there = header_of(plan.after, other);
  const Header& here = header_of(plan.after, meant);
  if (const Header* old = old_header(plan, plug)) {
    if (!old->label.empty() && old->label == there.label)
      list.push_back(format("is labelled '{}' as its old header was", old->label));
    if (old->id == there.id) list.push_back(format("has the number of its old header, {}", old->id));
    const Board& was = *plan.machine->board;
    if (was.width.value > 0 && plan.board->width.value > 0 &&
        apart(was, *old, *plan.board, there) < same_place)
      list.push_back(format("sits where {} sat on the old board", old->id));
  }
  const std::vector<Seating> near =
      neighbour_seatings(plug_of(plan.after, plug), meant, *plan.board, *plan.after.catalogue, side_by_side);
  if (std::any_of(near.begin(), near.end(), [&](const Seating& s) { return s.header == other; }))
    list.push_back(format("lies beside {} and takes the same plug", here.id));
  if (list.empty() && here.use == there.use)
    list.push_back(tr("is for the same use and takes the same plug"));
  return list;
}

/// The pin that the cavity's lead meets.
const Pin* pin_for(const Header& header, const Lead& lead) {
  return lead.cavity >= 1 && lead.cavity <= static_cast<int>(header.pins.size()) ? &header.pin(lead.cavity)
                                                                                 : nullptr;
}

bool drives(const Pin& pin) {
  return pin.function == PinFunction::Output || pin.function == PinFunction::Switched;
}

/// What follows from the firmware's point of view, where the circuit is content.
struct Consequence {
  Weight weight = Weight::Note;
  bool same_circuit = false;
  std::string words;
};

Consequence consequence(const Plug& plug, const Header& meant, const Header& there) {
  for (const Lead& lead : plug.leads) {
    const Pin* wanted = pin_for(meant, lead);
    const Pin* met = pin_for(there, lead);
    if (wanted == nullptr || met == nullptr) continue;
    if (wanted->function == PinFunction::Switched && met->function == PinFunction::Ground) {
      return {Weight::Fault, false,
              format("it runs for as long as the machine has power: {}.{} is ground, and nothing switches it",
                     there.id, met->number)};
    }
    if (wanted->function == PinFunction::Ground && met->function == PinFunction::Switched) {
      return {Weight::Fault, false,
              format("it stands still until the firmware switches {}.{} on; here it should always run",
                     there.id, met->number)};
    }
  }
  const std::string name = there.label.empty() ? there.id : format("{} ({})", there.id, there.label);
  for (const Lead& lead : plug.leads) {
    const Pin* wanted = pin_for(meant, lead);
    const Pin* met = pin_for(there, lead);
    if (wanted == nullptr || met == nullptr) continue;
    if (there.use == "thermistor" && meant.use == there.use) {
      return {Weight::Harm, true,
              format("the readings look right, but the firmware takes them for those of {}: a heater that is "
                     "watched by "
                     "the wrong sensor runs away",
                     name)};
    }
    if (there.use == "heater" && meant.use == there.use && drives(*met)) {
      return {Weight::Harm, true,
              format("the firmware heats this one when it means {}, and watches another sensor while it does",
                     name)};
    }
    if (met->function == PinFunction::Coil)
      return {Weight::Fault, true, format("it moves when the firmware means {}", name)};
    if (there.use == "limit" && meant.use == there.use)
      return {Weight::Fault, true, format("the firmware stops the axis of {} for it, and not its own", name)};
    if (drives(*wanted) && drives(*met))
      return {Weight::Fault, true, format("it follows the commands for {}", name)};
  }
  return {Weight::Note, true, format("the firmware takes it for {}", name)};
}

class Finder {
 public:
  explicit Finder(const SwapPlan& plan) : plan_(plan), clusters_(clusters(plan.harness)) {}

  std::vector<LookAlike> run() {
    for (const Cluster& cluster : clusters_) {
      for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
        if (plan_.of(cluster.plugs[i]).goes_over()) look_at(cluster, i);
      }
    }
    std::stable_sort(found_.begin(), found_.end(), [](const LookAlike& a, const LookAlike& b) {
      return std::tuple(a.weight, a.same_circuit) < std::tuple(b.weight, b.same_circuit);
    });
    return std::move(found_);
  }

 private:
  void look_at(const Cluster& cluster, std::size_t place) {
    const int plug = cluster.plugs[place];
    const int meant = *plan_.of(plug).to;
    for (int other = 0; other < static_cast<int>(plan_.board->headers.size()); ++other) {
      if (other == meant) continue;
      if (!mate(plug_of(plan_.after, plug), header_of(plan_.after, other), *plan_.after.catalogue).goes_on())
        continue;
      LookAlike one{plug, meant, other, reasons(plan_, plug, meant, other), Weight::Note, false, ""};
      const bool harm_alone = one.reasons.empty();
      const bool never_off = judge(one, cluster, place);
      if (harm_alone && !never_off) continue;
      if (harm_alone) one.reasons = {tr("takes the same plug")};
      found_.push_back(std::move(one));
    }
  }

  /// True when a heater would never be off there.
  bool judge(LookAlike& one, const Cluster& cluster, std::size_t place) {
    Fitting fitting = plan_.after;
    fitting.harness = &cluster.harness;
    fitting.placements.clear();
    for (std::size_t i = 0; i < cluster.plugs.size(); ++i) {
      const PlugTransfer& t = plan_.of(cluster.plugs[i]);
      if (i == place) {
        fitting.placements.push_back({static_cast<int>(i), one.mistaken});
      } else if (t.goes_over() && *t.to != one.mistaken) {
        fitting.placements.push_back({static_cast<int>(i), *t.to});
      }
    }
    const Assessment found = assess(fitting);
    const auto worst = std::find_if(found.findings.begin(), found.findings.end(),
                                    [](const Finding& f) { return f.weight != Weight::Note; });
    const Consequence then = consequence(cluster.harness.plugs[place], header_of(plan_.after, one.meant),
                                         header_of(plan_.after, one.mistaken));
    const bool judged = worst != found.findings.end() && worst->weight <= then.weight;
    one.weight = judged ? worst->weight : then.weight;
    one.same_circuit = !judged && then.same_circuit && worst == found.findings.end();
    one.happens = judged ? worst->message : then.words;
    return judged && worst->weight == Weight::Harm && worst->rule == Rule::AlwaysOn;
  }

  const SwapPlan& plan_;
  std::vector<Cluster> clusters_;
  std::vector<LookAlike> found_;
};

}  // namespace

std::vector<LookAlike> look_alikes(const SwapPlan& plan) {
  return Finder(plan).run();
}

}  // namespace plugward
