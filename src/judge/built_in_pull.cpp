// SPDX-License-Identifier: MIT
// The worst that a resistor of unknown size can do is to put all of the plus on the pin, so that is compared
// with what the pin withstands. A resistor from a sourcing output to minus brings nothing. Tested in
// tests/unit/judge/built_in_pull_test.cpp.
#include "judge/built_in_pull.h"

#include <algorithm>

#include "base/format.h"
#include "circuit/defaults.h"
#include "fit/match.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr int device_fed = 3;  // Measurement::cost

bool holds(const std::vector<TerminalIndex>& all, TerminalIndex terminal) {
  return std::find(all.begin(), all.end(), terminal) != all.end();
}

/// The terminal and all from which a current may flow out at it through joins, resistors and diodes.
std::vector<TerminalIndex> flows_out_at(const Device& device, TerminalIndex terminal) {
  std::vector<TerminalIndex> all{terminal};
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Part& part : device.parts) {
      std::vector<TerminalIndex> from;
      if (const auto* diode = std::get_if<Diode>(&part)) {
        if (diode->cathode == all[i]) from = {diode->anode};
      } else if (std::holds_alternative<Join>(part) || std::holds_alternative<Resistor>(part)) {
        if (const auto ends = ends_of(part); holds(ends, all[i])) from = ends;
      }
      for (const TerminalIndex end : from) {
        if (!holds(all, end)) all.push_back(end);
      }
    }
  }
  return all;
}

/// A sinking output, met at `terminal`, that may have a resistor to its plus for all that is stated.
const Driver* maybe_pulled(const Device& device, TerminalIndex terminal) {
  const std::vector<TerminalIndex> near = flows_out_at(device, terminal);
  for (const Part& part : device.parts) {
    const auto* driver = std::get_if<Driver>(&part);
    if (driver == nullptr || !holds(near, driver->terminal)) continue;
    if (driver->kind == OutputKind::Sinking && !driver->pull_stated) return driver;
  }
  return nullptr;
}

/// The highest voltage of the rail that a pin is tied to; of several when its jumper is not stated; else 0 V.
Volts highest_rail(const Fitting& fitting, const Pin& pin) {
  Volts highest;
  const auto take = [&](const Rail* rail) {
    if (rail != nullptr) highest = std::max(highest, rail->volts.max);
  };
  take(rail_of(pin, *fitting.board, fitting.jumpers));
  const Jumper* jumper = fitting.board->jumper(pin.jumper);
  if (jumper == nullptr || fitting.jumpers.contains(pin.jumper)) return highest;
  for (const std::string& id : jumper->rails) take(fitting.board->rail(id));
  return highest;
}

/// The highest voltage that a plus of the device may come to: of what its leads meet, or of its own supply;
/// what the device is made for when no lead is there to tell, or one meets a pin of which nothing is known.
Volts highest_plus(const Fitting& fitting, std::span<const Contact> contacts, int index, TerminalIndex plus) {
  const Device& device = fitting.harness->devices[static_cast<std::size_t>(index)];
  const std::vector<TerminalIndex> near = flows_out_at(device, plus);
  bool fed = false, unknown = false;
  Volts highest, made_for;
  for (const Contact& contact : contacts) {
    const auto& to = lead_of(fitting, contact).to;
    if (!to || to->device != index || !holds(near, to->terminal)) continue;
    fed = true;
    unknown = unknown || pin_of(fitting, contact).function == PinFunction::Unknown;
    highest = std::max(highest, highest_rail(fitting, pin_of(fitting, contact)));
  }
  for (const Part& part : device.parts) {
    if (const auto* source = std::get_if<Source>(&part); source != nullptr && holds(near, source->plus)) {
      fed = true;
      highest = std::max(highest, source->volts.max);
    }
    if (const auto* regulator = std::get_if<Regulator>(&part);
        regulator != nullptr && holds(near, regulator->out)) {
      fed = true;
      highest = std::max(highest, regulator->volts.max);
    }
    if (const auto* load = std::get_if<Load>(&part); load != nullptr && holds(near, load->plus)) {
      made_for = std::max(made_for, load->needs.max);
    }
  }
  return fed && !unknown ? highest : std::max(highest, made_for);
}

/// What a signal pin withstands: as stated, else as far as its clamp or its own rail holds it.
Volts highest_withstood(const Fitting& fitting, const Pin& pin) {
  if (pin.pull && pin.withstands_pulled) return *pin.withstands_pulled;
  if (pin.withstands) return pin.withstands->max;
  if (pin.clamp) {
    const Rail* rail = fitting.board->rail(pin.clamp->rail);
    return (rail == nullptr ? Volts{} : rail->volts.max) + pin.clamp->drop;
  }
  return highest_rail(fitting, pin) + CircuitDefaults{}.beyond_supply;
}

Finding doubt(const Fitting& fitting, const Contact& contact, const Driver& driver, Volts plus,
              Volts withstood) {
  const std::string terminal = terminal_name(fitting, *lead_of(fitting, contact).to);
  const std::string pin = pin_name(fitting, contact);
  Finding finding;
  finding.rule = Rule::UnknownLimit;
  finding.weight = Weight::Doubt;
  finding.message = format(
      "whether {} has a resistor to its plus inside is not stated; if it has, up to {} reach {}, "
      "which withstands {}",
      terminal, to_text(plus), pin, to_text(withstood));
  finding.measurement = Measurement{
      format(
          "device fed, its signal lead off the board: volts from the lead of {} to ground while the output "
          "is off",
          terminal),
      format("near 0 V or drifting: it has none, state pull=\"none\"; near the supply: do not join it to {} "
             "directly",
             pin),
      device_fed, format("whether {} has a resistor to its plus inside", terminal)};
  finding.at = locus_of(fitting, contact);
  finding.first = driver.span.known() ? driver.span : lead_of(fitting, contact).span;
  finding.second = pin_of(fitting, contact).span;
  finding.second_says = format("{} is declared here", pin);
  finding.figure = plus.value;
  finding.limit = withstood.value;
  finding.unit = "V";
  return finding;
}

}  // namespace

std::vector<Finding> built_in_pulls(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> out;
  for (const Contact& contact : contacts) {
    const auto& to = lead_of(fitting, contact).to;
    const Pin& pin = pin_of(fitting, contact);
    const bool signal = pin.function == PinFunction::Input || pin.function == PinFunction::Output;
    if (!to || !signal) continue;
    const Device& device = fitting.harness->devices[static_cast<std::size_t>(to->device)];
    const Driver* driver = maybe_pulled(device, to->terminal);
    if (driver == nullptr) continue;
    const Volts plus = highest_plus(fitting, contacts, to->device, driver->plus);
    const Volts withstood = highest_withstood(fitting, pin);
    if (plus > withstood + CircuitDefaults{}.margin)
      out.push_back(doubt(fitting, contact, *driver, plus, withstood));
  }
  return out;
}

}  // namespace plugward
