// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/cure_test.cpp; whole cures of published cases in
// tests/outside/whole_cure_test.cpp.
#include "plan/cure_input.h"

#include "base/format.h"
#include "circuit/defaults.h"
#include "fit/match.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// Nothing when it is neither an output nor a switch, or when it cannot be parted from another end.
std::optional<Giver> giver_of(const Fitting& fitting, TerminalRef terminal) {
  const Device& d = fitting.harness->devices[at(terminal.device)];
  if (is_joined(d, terminal.terminal)) return std::nullopt;
  Giver giver;
  giver.device = terminal.device;
  giver.terminal = terminal.terminal;
  if (const int driver = driver_at(d, giver.terminal); driver >= 0) {
    giver.driver = &std::get<Driver>(d.parts[at(driver)]);
    giver.sinks = giver.driver->kind == OutputKind::Sinking;
    giver.drives_low = giver.driver->kind != OutputKind::Sourcing;
    giver.drop = giver.driver->drop.value_or(CircuitDefaults{}.driver_drop);
    giver.leak = giver.driver->leak.value_or(Amps{});
    giver.supply = volts_at(fitting, {giver.device, giver.driver->plus});
    return giver;
  }
  const int contact = switch_at(d, giver.terminal);
  if (contact < 0) return std::nullopt;
  const auto& s = std::get<Switch>(d.parts[at(contact)]);
  const TerminalIndex far = s.a == giver.terminal ? s.b : s.a;
  giver.supply = volts_at(fitting, {giver.device, far});
  giver.sinks = !giver.supply;
  return giver;
}

Offer offer_for(const InputPlace& place) {
  Offer offer;
  const Giver& giver = place.giver;
  switch (place.complaint.finding.rule) {
    case Rule::Overvoltage:
    case Rule::ClampCurrent:
      if (giver.sinks) {
        offer_diode(place, offer), offer_optocoupler(place, offer);
      } else {
        offer_divider(place, offer), offer_series_resistor(place, offer), offer_optocoupler(place, offer);
      }
      break;
    case Rule::FloatingInput:
      offer_pull(place, giver.sinks, offer);
      if (!giver.sinks) offer_divider(place, offer);
      break;
    case Rule::LevelHigh:
      if (giver.sinks) {
        offer_pull(place, true, offer), offer_optocoupler(place, offer);
      } else if (giver.drives_low) {
        offer_buffer(place, offer);
      }
      break;
    case Rule::LevelLow:
      if (!giver.sinks && !giver.drives_low) offer_pull(place, false, offer), offer_divider(place, offer);
      if (giver.sinks || giver.drives_low) offer_optocoupler(place, offer);
      break;
    default:
      break;
  }
  return offer;
}

}  // namespace

std::string pin_words(const InputPlace& place) {
  return pin_name(place.fitting(), place.joint.header, place.joint.pin);
}

std::string lead_words(const InputPlace& place) {
  return lead_words(place.fitting(), place.joint);
}

std::string limits_words(const InputPlace& place) {
  std::string words = format("{} withstands {}", pin_words(place), to_text(place.side.most));
  if (place.side.low_below && place.side.high_above) {
    words += format(", reads low below {} and high from {}", to_text(*place.side.low_below),
                    to_text(*place.side.high_above));
  }
  return words;
}

std::string end_words(const InputPlace& place, TerminalIndex end, const std::string& added) {
  const auto joint = joint_of(place.fitting(), {place.giver.device, end});
  return joint ? lead_words(place.fitting(), *joint) : added;
}

Remedy begin(const InputPlace& place, std::string kind) {
  Remedy r;
  r.harness = place.complaint.base;
  r.cure.kind = std::move(kind);
  r.cure.steps = {power_off_step()};
  return r;
}

TerminalIndex split_signal(const InputPlace& place, Remedy& r, const std::string& behind) {
  Device& d = r.harness.devices[at(place.giver.device)];
  const TerminalIndex inner = split(d, place.giver.terminal, behind);
  if (const int contact = switch_at(d, inner); place.giver.driver == nullptr && contact >= 0) {
    // Either end of a bare switch may give the signal; of one with a part before it, only this.
    const auto& s = std::get<Switch>(d.parts[at(contact)]);
    d.terminals[at(place.giver.terminal)].function = TerminalFunction::Output;
    d.terminals[at(s.a == inner ? s.b : s.a)].function = TerminalFunction::Supply;
  }
  return inner;
}

std::optional<TerminalIndex> ground_for(const InputPlace& place, Remedy& r) {
  if (const auto has = ground_of(place.fitting(), place.giver.device)) return has;
  const auto seats = empty_seats(place.fitting(), r.harness, place.joint, PinFunction::Ground);
  if (seats.empty()) return std::nullopt;
  say_new_lead(r, place.fitting(), seats.front(), tr("black"));
  return add_lead(place.fitting(), r.harness, place.joint, seats.front(), r.seats);
}

void finish(const InputPlace& place, Remedy& r, bool alone, const std::string& test, Offer& offer) {
  r.cure.steps.push_back(sleeve_step());
  if (!test.empty()) r.cure.steps.push_back(test);
  const InputSide& side = place.side;
  if (side.low_below && side.high_above) {
    ReadingPlace reading;
    reading.header = place.joint.header;
    reading.pin = place.joint.pin;
    reading.middle = (*side.low_below + *side.high_above) * 0.5;
    reading.where = format("{} against ground", pin_words(place));
    reading.most = side.most;
    reading.alone = alone;
    r.reading = reading;
  }
  offer.remedies.push_back(std::move(r));
}

Offer input_remedies(const Complaint& c) {
  const auto joint = joint_at_pin(c.fitting, c.finding.at.header, c.finding.at.pin);
  if (!joint) return {};
  const Pin& pin = header_of(c.fitting, joint->header).pin(joint->pin);
  const auto side = input_side(c.fitting, pin);
  const auto giver = giver_of(c.fitting, joint->terminal);
  if (!side || !giver || pin.analogue) return {};
  return offer_for({c, *joint, pin, *side, *giver});
}

}  // namespace plugward
