// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/budget_test.cpp.
#include "judge/budget_parts.h"

#include <algorithm>

#include "base/format.h"
#include "judge/carrying.h"
#include "judge/led_string.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// Below this a current is what pulls and leaks bring about.
constexpr double some_amps = 0.001;

const Device& device_at(const Fitting& fitting, int device) {
  return fitting.harness->devices[static_cast<std::size_t>(device)];
}

/// The part that volts are across, when it is of this kind.
template <class Kind>
const Kind* part_at(const Fitting& fitting, const PartVolts& volts) {
  const Device& device = device_at(fitting, volts.device);
  return std::get_if<Kind>(&device.parts[static_cast<std::size_t>(volts.part)]);
}

Locus locus_of_part(const PartVolts& volts) {
  Locus at;
  at.device = volts.device;
  at.part = volts.part;
  return at;
}

/// The lowest voltage of the rail behind a supply pin, whatever its jumper chooses.
std::optional<Volts> supply_of(const Fitting& fitting, const Pin& pin) {
  if (pin.function != PinFunction::Supply) return std::nullopt;
  std::vector<std::string> rails{pin.rail};
  if (const Jumper* jumper = pin.jumper.empty() ? nullptr : fitting.board->jumper(pin.jumper)) {
    const auto stated = fitting.jumpers.find(jumper->id);
    rails = stated == fitting.jumpers.end() ? jumper->rails : std::vector{stated->second};
  }
  std::optional<Volts> least;
  for (const std::string& id : rails) {
    const Rail* rail = fitting.board->rail(id);
    if (rail != nullptr && (!least || rail->volts.min < *least)) least = rail->volts.min;
  }
  return least;
}

bool wants_fuse(const Fitting& fitting, const Placement& p) {
  const std::string& use = header_of(fitting, p.header).use;
  if (use == "heater" || use == "bed" || use == "supply") return true;
  const auto& leads = plug_of(fitting, p.plug).leads;
  return std::any_of(leads.begin(), leads.end(), [&](const Lead& lead) {
    if (!lead.to) return false;
    const auto& parts = device_at(fitting, lead.to->device).parts;
    return std::any_of(parts.begin(), parts.end(),
                       [](const Part& part) { return std::holds_alternative<Heater>(part); });
  });
}

/// The narrowest place on the leads of a plug.
struct Narrowest {
  CarryingLimit limit;
  bool contact = false;  ///< a contact, not a wire
  bool unknown = false;  ///< of some contact or wire nothing is known

  void consider(CarryingLimit other, bool is_contact) {
    if (!other.amps) {
      unknown = true;
    } else if (!limit.amps || *other.amps < *limit.amps) {
      limit = std::move(other);
      contact = is_contact;
    }
  }
};

/// What must be thicker so that the next blade fuse suits.
std::string thicker_words(const Narrowest& narrowest, const std::optional<Amps>& next) {
  if (!next) return tr("it is beyond blade fuses: share the load out");
  const std::string fuse = to_text(*next);
  if (narrowest.contact) return format("a fuse of {} wants contacts for {}", fuse, fuse);
  const auto gauge = thinnest_for(*next);
  return format("a fuse of {} wants leads {}", fuse,
                gauge ? format("of {} or thicker", to_text(*gauge)) : tr("thicker than 10 AWG"));
}

FuseBudget fuse_for(const Fitting& fitting, const Placement& p, const std::vector<BudgetRow>& rows) {
  FuseBudget fuse;
  fuse.at.plug = p.plug;
  fuse.at.header = p.header;
  fuse.what = plug_of(fitting, p.plug).id;
  const auto& leads = plug_of(fitting, p.plug).leads;
  const auto wires =
      std::count_if(leads.begin(), leads.end(), [](const Lead& l) { return l.cavity >= 1 && l.to; });
  Narrowest narrowest;
  for (const BudgetRow& row : rows) {
    if (row.kind != BudgetKind::Contact || row.at.plug != p.plug || row.amps < some_amps) continue;
    fuse.load = std::max(fuse.load, Amps(row.amps));
    std::optional<Amps> rated;
    if (row.limit) rated = Amps(*row.limit);
    narrowest.consider({rated, row.basis, row.source}, true);
    const auto& gauge = leads[static_cast<std::size_t>(row.at.lead)].gauge;
    narrowest.consider(gauge ? fused_wire_limit(*gauge, static_cast<int>(wires)) : CarryingLimit{}, false);
  }
  fuse.weakest = narrowest.limit.amps;
  if (!fuse.weakest) {
    fuse.words = format(
        "'{}': {} flow; which fuse suits cannot be told: what its wires and contacts may carry "
        "is not known",
        fuse.what, to_text(fuse.load));
    return fuse;
  }
  const auto next = blade_fuse(fuse.load);
  const std::string rest =
      format("{}{}", narrowest.limit.basis,
             narrowest.unknown ? tr("; not all of its wires and contacts are known") : "");
  if (next && *next <= *fuse.weakest) {
    fuse.fuse = next;
    fuse.words = format("'{}': a blade fuse of {}; {} flow, and the narrowest place takes {} ({})", fuse.what,
                        to_text(*next), to_text(fuse.load), to_text(*fuse.weakest), rest);
  } else {
    fuse.words =
        format("'{}': no blade fuse suits; {} flow, and the narrowest place takes {} ({}): {}", fuse.what,
               to_text(fuse.load), to_text(*fuse.weakest), rest, thicker_words(narrowest, next));
  }
  return fuse;
}

}  // namespace

std::vector<LeadLoss> lead_losses(const Fitting& fitting, const Flows& flows, Celsius warm) {
  std::vector<LeadLoss> losses;
  for (const ContactFlow& flow : flows.contacts) {
    const Lead& lead = lead_of(fitting, flow.contact);
    if (!lead.gauge || !lead.length || flow.most.amps < some_amps) continue;
    const Amps amps(flow.most.amps);
    losses.push_back({locus_of(fitting, flow.contact),
                      lead_name(fitting, flow.contact.plug, flow.contact.lead), amps.value, *lead.gauge,
                      *lead.length, amps * wire_resistance(*lead.gauge, *lead.length),
                      amps * wire_resistance(*lead.gauge, *lead.length, warm),
                      supply_of(fitting, pin_of(fitting, flow.contact))});
  }
  return losses;
}

std::vector<HeaterBudget> heater_budgets(const Fitting& fitting, const Flows& flows) {
  std::vector<HeaterBudget> list;
  for (const PartVolts& volts : flows.parts) {
    const Heater* heater = part_at<Heater>(fitting, volts);
    if (heater == nullptr || !(heater->volts.value > 0.0)) continue;
    const auto watts = [&](double v) {
      const double ratio = std::max(0.0, v) / heater->volts.value;
      return heater->watts * (ratio * ratio);
    };
    list.push_back({locus_of_part(volts), device_at(fitting, volts.device).id, heater->volts, heater->watts,
                    watts(volts.least), watts(volts.most)});
  }
  return list;
}

std::vector<StringBudget> string_budgets(const Fitting& fitting, const Flows& flows) {
  std::vector<StringBudget> list;
  for (const PartVolts& volts : flows.parts) {
    const Load* load = part_at<Load>(fitting, volts);
    const Device& device = device_at(fitting, volts.device);
    if (load == nullptr || !device.leds) continue;
    StringBudget one{
        locus_of_part(volts), device.id,          device.leds->count, device.leds->brightness.value_or(1.0),
        load->draws,          Volts(volts.least), std::nullopt};
    if (device.leds->loop) one.far = far_end(one.near, one.draws, *device.leds->loop);
    list.push_back(std::move(one));
  }
  return list;
}

std::vector<FuseBudget> fuse_budgets(const Fitting& fitting, const std::vector<BudgetRow>& rows) {
  std::vector<FuseBudget> fuses;
  for (const Placement& p : fitting.placements) {
    if (!wants_fuse(fitting, p)) continue;
    FuseBudget fuse = fuse_for(fitting, p, rows);
    if (fuse.load.value >= some_amps) fuses.push_back(std::move(fuse));
  }
  return fuses;
}

}  // namespace plugward
