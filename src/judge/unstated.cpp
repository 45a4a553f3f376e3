// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/assess_test.cpp.
#include "judge/unstated.h"

#include <algorithm>

#include "base/format.h"
#include "fit/match.h"
#include "judge/built_in_pull.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// One contact whose lead's terminal is known, and what both ends of it are.
struct Meeting {
  const Fitting& fitting;
  const Contact& contact;
  TerminalRef ref;
  const Device& device;
  const Terminal& terminal;
  const Pin& pin;

  std::string pin_words() const { return format("{}, {}", pin_name(fitting, contact), to_words(pin)); }
  std::string terminal_words() const { return terminal_name(fitting, ref); }
};

Finding doubt(const Meeting& m, Rule rule, std::string message, std::string look_up, std::string expect) {
  Finding finding;
  finding.rule = rule;
  finding.weight = Weight::Doubt;
  finding.message = std::move(message);
  finding.measurement =
      Measurement{std::move(look_up), std::move(expect), 0,
                  format("terminal {} on {}", m.terminal_words(), pin_name(m.fitting, m.contact))};
  finding.at = locus_of(m.fitting, m.contact);
  finding.first = m.terminal.span.known() ? m.terminal.span : lead_of(m.fitting, m.contact).span;
  finding.second = m.pin.span;
  finding.second_says = format("{} is declared here", pin_name(m.fitting, m.contact));
  return finding;
}

/// The terminal and all that a current reaches from it through joins, diodes and resistors of the device.
std::vector<TerminalIndex> reached(const Device& device, TerminalIndex terminal) {
  std::vector<TerminalIndex> all{terminal};
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (const Part& part : device.parts) {
      const bool passes = std::holds_alternative<Join>(part) || std::holds_alternative<Diode>(part) ||
                          std::holds_alternative<Resistor>(part);
      const std::vector<TerminalIndex> ends = ends_of(part);
      if (!passes || std::find(ends.begin(), ends.end(), all[i]) == ends.end()) continue;
      for (const TerminalIndex end : ends) {
        if (std::find(all.begin(), all.end(), end) == all.end()) all.push_back(end);
      }
    }
  }
  return all;
}

/// A part of this kind for which `holds`, at a terminal that is reached.
template <class Kind, class Holds>
const Kind* part_at(const Meeting& m, Holds holds) {
  const std::vector<TerminalIndex> near = reached(m.device, m.ref.terminal);
  for (const Part& part : m.device.parts) {
    const auto* found = std::get_if<Kind>(&part);
    if (found == nullptr) continue;
    const bool here =
        std::any_of(near.begin(), near.end(), [&](TerminalIndex t) { return holds(*found, t); });
    if (here) return found;
  }
  return nullptr;
}

void check_supply(const Meeting& m, std::vector<Finding>& out) {
  if (m.terminal.function != TerminalFunction::Supply || m.pin.function != PinFunction::Supply) return;
  const bool stated =
      part_at<Load>(m, [](const Load& load, TerminalIndex t) { return load.plus == t; }) != nullptr ||
      part_at<Heater>(m, [](const Heater& h, TerminalIndex t) { return h.a == t || h.b == t; }) != nullptr ||
      part_at<Regulator>(m, [](const Regulator& r, TerminalIndex t) { return r.in == t; }) != nullptr;
  if (stated) return;
  out.push_back(
      doubt(m, Rule::UnknownLimit,
            format("what supply terminal {} takes is not stated, and it meets {}", m.terminal_words(),
                   m.pin_words()),
            format("read volts and amps of '{}' off its type plate or data sheet", device_name(m.device)),
            format("state them as a load from {}", m.terminal_words())));
}

/// A signal of the device that an input of the board reads.
void check_given_signal(const Meeting& m, std::vector<Finding>& out) {
  if (m.terminal.function != TerminalFunction::Output || m.pin.function != PinFunction::Input) return;
  const auto* driver = part_at<Driver>(m, [](const Driver& d, TerminalIndex t) { return d.terminal == t; });
  const bool passive =
      part_at<Switch>(m, [](const Switch& s, TerminalIndex t) { return s.a == t || s.b == t; }) != nullptr ||
      part_at<TemperatureSensor>(
          m, [](const TemperatureSensor& s, TerminalIndex t) { return s.a == t || s.b == t; }) != nullptr;
  const std::string sheet = format("look up the output of '{}' in its data sheet", device_name(m.device));
  if (driver == nullptr) {
    if (passive) return;
    out.push_back(doubt(
        m, Rule::UnknownLimit,
        format("how terminal {} drives is not stated, and it meets {}", m.terminal_words(), m.pin_words()),
        sheet, format("state it as a driver or switch at {}", m.terminal_words())));
    return;
  }
  // The speed sense of a fan is an open collector that only a pull-up of the board loads.
  if (driver->kind == OutputKind::PushPull || m.device.kind == "fan") return;
  if (!driver->drop) {
    out.push_back(
        doubt(m, Rule::UnknownLimit,
              format("how many volts terminal {} keeps when it conducts is not stated, and it meets {}",
                     m.terminal_words(), m.pin_words()),
              sheet, tr("state it as its drop; proximity switches keep up to 2 or 3 V")));
  }
  // Off-state currents of 10 uA to 0.5 mA are published, by type; 0.5 mA through 10 kohm is 5 V.
  if (!driver->leak && m.device.kind == "proximity") {
    out.push_back(doubt(m, Rule::UnknownLimit,
                        format("what terminal {} leaks when it is off is not stated, and it meets {}",
                               m.terminal_words(), m.pin_words()),
                        sheet, tr("state it as its leak; proximity switches leak up to 0.5 mA")));
  }
}

/// A signal of the board that an input of the device reads.
void check_taken_signal(const Meeting& m, std::vector<Finding>& out) {
  if (m.terminal.function != TerminalFunction::Input || m.pin.function != PinFunction::Output) return;
  const auto* receiver =
      part_at<Receiver>(m, [](const Receiver& r, TerminalIndex t) { return r.terminal == t; });
  const bool low = receiver != nullptr && (receiver->low_below || receiver->low_below_share);
  const bool high = receiver != nullptr && (receiver->high_above || receiver->high_above_share ||
                                            receiver->open_circuit || receiver->pull_up.value_or(false));
  if (!low || !high) {
    out.push_back(doubt(
        m, Rule::UnknownLimit,
        format("from which voltage terminal {} reads {} is not stated, and it meets {}", m.terminal_words(),
               low    ? "high"
               : high ? "low"
                      : tr("low and high"),
               m.pin_words()),
        format("look up the input of '{}' in its data sheet", device_name(m.device)),
        format("state it as a receiver at {}", m.terminal_words())));
  }
  if (m.pin.drive == DriveKind::PushPull && !m.pin.high) {
    out.push_back(
        doubt(m, Rule::UnknownLimit,
              format("how high {} drives is not stated, and terminal {} reads it",
                     pin_name(m.fitting, m.contact), m.terminal_words()),
              format("look up the output levels of the part behind {}", pin_name(m.fitting, m.contact)),
              tr("state the guaranteed and the highest level as 'high'")));
  }
}

/// More than this from a supply of no stated limit is a doubt; as CircuitDefaults::switched_limit.
constexpr Amps unlimited{0.5};
/// The smallest chip resistors in common use (common practice, no source).
constexpr Watts smallest_resistor{0.0625};

/// A supply pin of which neither pin nor rail says how much it gives.
void check_supply_limit(const Meeting& m, std::vector<Finding>& out) {
  if (m.pin.function != PinFunction::Supply || m.pin.limit) return;
  const Rail* rail = rail_of(m.pin, *m.fitting.board, m.fitting.jumpers);
  if (rail == nullptr || rail->limit) return;
  const std::vector<TerminalIndex> near = reached(m.device, m.ref.terminal);
  const auto here = [&](TerminalIndex t) { return std::find(near.begin(), near.end(), t) != near.end(); };
  Amps drawn;
  for (const Part& part : m.device.parts) {
    if (const auto* load = std::get_if<Load>(&part); load != nullptr && here(load->plus)) {
      drawn = drawn + load->draws;
    } else if (const auto* h = std::get_if<Heater>(&part); h != nullptr && (here(h->a) || here(h->b))) {
      if (h->volts.value > 0.0) drawn = drawn + Amps(h->watts.value / h->volts.value);
    }
  }
  if (drawn <= unlimited) return;
  out.push_back(
      doubt(m, Rule::UnknownLimit,
            format("how much rail '{}' gives at {} is not stated, and {} draws {}", rail->id,
                   pin_name(m.fitting, m.contact), m.terminal_words(), to_text(drawn)),
            format("look up the limit of rail '{}'", rail->id),
            format("{} or more left over: state it as 'limit'; less: do not join", to_text(drawn))));
}

/// Windings and resistors between terminals that meet supplies: what they take at the most, if all of the
/// highest voltage were across them, against what they stand.
void check_burden(const Meeting& m, Volts highest, std::vector<Finding>& out) {
  if (m.pin.function != PinFunction::Supply) return;
  const std::vector<TerminalIndex> near = reached(m.device, m.ref.terminal);
  for (const Part& part : m.device.parts) {
    const auto* coil = std::get_if<Coil>(&part);
    const auto* resistor = std::get_if<Resistor>(&part);
    const std::vector<TerminalIndex> ends = ends_of(part);
    const bool here = std::any_of(ends.begin(), ends.end(), [&](TerminalIndex end) {
      return std::find(near.begin(), near.end(), end) != near.end();
    });
    if (!here || (coil == nullptr && resistor == nullptr)) continue;
    if (coil != nullptr && !(coil->ohms.value > 0.0)) continue;  // asked for as a figure
    std::string takes;
    bool fine = false;
    if (coil != nullptr) {
      const Amps amps = highest / coil->ohms;
      fine = coil->amps && amps <= *coil->amps;
      takes = to_text(amps);
    } else {
      const Watts watts = highest * (highest / resistor->ohms);
      fine = watts <= resistor->limit.value_or(smallest_resistor);
      takes = to_text(watts);
    }
    if (fine) continue;
    out.push_back(
        doubt(m, Rule::UnknownLimit,
              format("whether the {} of '{}' stands up to {} is not known", tr(part_word(part)),
                     device_name(m.device), takes),
              format("look up what the {} of '{}' stands", tr(part_word(part)), device_name(m.device)),
              format("{} or more: safe here; less: do not join", takes)));
  }
}

/// The highest voltage of any supply that the device meets; a jumper of no stated position may be at any.
Volts highest_supply(const Fitting& fitting, std::span<const Contact> contacts, int device) {
  Volts highest;
  for (const Contact& contact : contacts) {
    const auto& to = lead_of(fitting, contact).to;
    const Pin& pin = pin_of(fitting, contact);
    if (!to || to->device != device || pin.function != PinFunction::Supply) continue;
    const auto take = [&](const Rail* rail) {
      if (rail != nullptr) highest = std::max(highest, rail->volts.max);
    };
    take(rail_of(pin, *fitting.board, fitting.jumpers));
    const Jumper* jumper = fitting.board->jumper(pin.jumper);
    if (jumper == nullptr || fitting.jumpers.contains(pin.jumper)) continue;
    for (const std::string& id : jumper->rails) take(fitting.board->rail(id));
  }
  return highest;
}

void check_bridge(const Meeting& m, std::vector<Finding>& out) {
  if (m.pin.function != PinFunction::Coil || !m.pin.rail.empty()) return;
  out.push_back(
      doubt(m, Rule::UnknownLimit,
            format("which rail feeds the bridge behind {} is not stated", pin_name(m.fitting, m.contact)),
            tr("look up the supply of the motor drivers"), tr("state it as 'rail'")));
}

/// A signal of no name where the header has several of its kind: any of them would do by name.
void check_signal_name(const Meeting& m, std::vector<Finding>& out) {
  const bool given = m.terminal.function == TerminalFunction::Output && m.pin.function == PinFunction::Input;
  const bool taken = m.terminal.function == TerminalFunction::Input && m.pin.function == PinFunction::Output;
  if ((!given && !taken) || !m.terminal.signal.empty()) return;
  const auto& pins = header_of(m.fitting, m.contact.header).pins;
  const bool several = std::any_of(pins.begin(), pins.end(), [&](const Pin& pin) {
    return pin.function == m.pin.function && pin.signal != m.pin.signal;
  });
  if (!several) return;
  out.push_back(doubt(
      m, Rule::UnknownLead,
      given ? format("which signal terminal {} gives is not stated, and it meets {}, one of several inputs",
                     m.terminal_words(), m.pin_words())
            : format("which signal terminal {} takes is not stated, and it meets {}, one of several outputs",
                     m.terminal_words(), m.pin_words()),
      format("look up what terminal {} of '{}' is for", m.terminal_words(), device_name(m.device)),
      tr("state it as its signal")));
}

}  // namespace

std::vector<Finding> unstated(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> out;
  for (const Contact& contact : contacts) {
    const auto& to = lead_of(fitting, contact).to;
    if (!to) continue;
    const Meeting m{fitting,
                    contact,
                    *to,
                    fitting.harness->devices[static_cast<std::size_t>(to->device)],
                    fitting.harness->terminal(*to),
                    pin_of(fitting, contact)};
    check_supply(m, out);
    check_supply_limit(m, out);
    check_burden(m, highest_supply(fitting, contacts, to->device), out);
    check_given_signal(m, out);
    check_taken_signal(m, out);
    check_bridge(m, out);
    check_signal_name(m, out);
  }
  for (Finding& finding : built_in_pulls(fitting, contacts)) out.push_back(std::move(finding));
  return out;
}

}  // namespace plugward
