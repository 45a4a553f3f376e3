// SPDX-License-Identifier: MIT
// Into the lead of a signal that the device reads: a level buffer where the board's level falls short, a
// divider where it is too much.
// Tested in tests/unit/plan/cure_test.cpp.
#include "base/format.h"
#include "circuit/defaults.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/cure_build.h"

namespace plugward {
namespace {

constexpr double resistor_tolerance = 0.01;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// What the board's output gives when it is high; nothing when that is not stated.
std::optional<Range<Volts>> high_of(const Fitting& fitting, const Pin& pin) {
  if (pin.high) return *pin.high;
  const Rail* rail = rail_of(pin, *fitting.board, fitting.jumpers);
  return rail == nullptr ? std::nullopt : std::optional(rail->volts);
}

std::string reads_words(const Receiver& receiver) {
  if (receiver.high_above) return format("from {}", to_text(*receiver.high_above));
  if (receiver.high_above_share) return format("from {:.4g} of its supply", *receiver.high_above_share);
  return tr("from a level that is not stated");
}

/// The middle between the receiver's thresholds, measured at the terminal behind the part.
std::optional<ReadingPlace> reading_at(const Complaint& c, int device, const Receiver& receiver,
                                       TerminalIndex terminal, const std::string& where) {
  const auto supply = volts_at(c.fitting, {device, receiver.plus});
  const auto level = [&](std::optional<Volts> volts, std::optional<double> share) -> std::optional<Volts> {
    if (volts) return volts;
    return share && supply ? std::optional(supply->middle() * *share) : std::nullopt;
  };
  const auto low = level(receiver.low_below, receiver.low_below_share),
             high = level(receiver.high_above, receiver.high_above_share);
  if (!low || !high) return std::nullopt;
  ReadingPlace place;
  place.device = device;
  place.terminal = terminal;
  place.minus = receiver.minus;
  place.middle = (*low + *high) * 0.5;
  place.where = where;
  return place;
}

void buffer(const Complaint& c, const MetLead& joint, const Receiver& receiver, Offer& offer) {
  const auto volts = volts_at(c.fitting, {joint.terminal.device, receiver.plus});
  if (!volts || volts->min < hct_supply.min || volts->max > hct_supply.max) {
    offer.passed.push_back(format("a level buffer of the 74HCT family: it takes {}, and the device has {}",
                                  to_text(hct_supply), volts ? to_text(*volts) : tr("none that is known")));
    return;
  }
  Remedy r;
  r.harness = c.base;
  r.cure.kind = "level-buffer";
  r.cure.steps = {power_off_step()};
  Device& d = r.harness.devices[at(joint.terminal.device)];
  const TerminalIndex inner = split(d, joint.terminal.terminal, tr("level buffer"));
  add_buffer(d, joint.terminal.terminal, inner, receiver.plus, receiver.minus, std::nullopt);
  r.cure.name = tr("a level buffer of the 74HCT family");
  r.drawback = tr("it takes a buffer and its capacitor");
  say_buffer(r, c.fitting, joint, receiver.plus, receiver.minus);
  const Pin& pin = header_of(c.fitting, joint.header).pin(joint.pin);
  const auto high = high_of(c.fitting, pin);
  r.cure.why = format(
      "{} gives {} when high, and terminal {} reads high {}. The buffer reads high from 2 V whatever its "
      "supply, and gives that supply less 0.1 V: {} or more.",
      pin_name(c.fitting, joint.header, joint.pin), high ? to_text(*high) : tr("too little"),
      terminal_name(c.fitting, joint.terminal), reads_words(receiver), to_text(volts->min - Volts(0.1)));
  if (high && receiver.high_above_share && *receiver.high_above_share > 0) {
    r.cure.next_best = format(
        "a supply of at most {} for the device, of which the board's {} are {:.4g}: a converter for all of "
        "its current",
        to_text(high->min / *receiver.high_above_share), to_text(high->min), *receiver.high_above_share);
  }
  r.cure.steps.push_back(sleeve_step());
  r.reading = reading_at(c, joint.terminal.device, receiver, inner,
                         tr("the buffer's output against ground, at the device,"));
  offer.remedies.push_back(std::move(r));
}

void divider(const Complaint& c, const MetLead& joint, Offer& offer) {
  const Pin& pin = header_of(c.fitting, joint.header).pin(joint.pin);
  const int device = joint.terminal.device;
  const Device& d = c.fitting.harness->devices[at(device)];
  const auto high = high_of(c.fitting, pin);
  const int index = receiver_at(d, joint.terminal.terminal);
  const auto ground = ground_of(c.fitting, device);
  if (!high || index < 0 || !ground || !c.finding.limit || is_joined(d, joint.terminal.terminal)) return;
  const auto& receiver = std::get<Receiver>(d.parts[at(index)]);
  const auto supply = volts_at(c.fitting, {device, receiver.plus});
  DividerNeeds n;
  n.high = *high;
  n.low = Range<Volts>{Volts(0), pin.low.value_or(CircuitDefaults{}.output_low)};
  n.most = Volts(*c.finding.limit);
  n.tolerance = resistor_tolerance;
  if (receiver.high_above) {
    n.high_above = *receiver.high_above;
  } else if (receiver.high_above_share && supply) {
    n.high_above = supply->max * *receiver.high_above_share;
  } else {
    return;
  }
  if (receiver.low_below) {
    n.low_below = receiver.low_below;
  } else if (receiver.low_below_share && supply) {
    n.low_below = supply->min * *receiver.low_below_share;
  }
  const auto chosen = choose_divider(n);
  if (!chosen) return;
  const auto upper = power_rating(chosen->upper_watts), lower = power_rating(chosen->lower_watts);
  if (!upper || !lower) return;
  const std::string lead = lead_words(c.fitting, joint);
  const std::string to = lead_words(c.fitting, *joint_of(c.fitting, {device, *ground}));
  Remedy r;
  r.harness = c.base;
  const TerminalIndex inner = split(r.harness.devices[at(device)], joint.terminal.terminal, "divider");
  add_resistor(r, device, joint.terminal.terminal, inner, chosen->upper, *upper, resistor_tolerance);
  add_resistor(r, device, inner, *ground, chosen->lower, *lower, resistor_tolerance);
  r.cure.name = format("a voltage divider of {} and {}", to_text(chosen->upper), to_text(chosen->lower));
  r.drawback = tr("it takes two resistors");
  r.cure.kind = "divider";
  r.cure.what = format("A voltage divider in {}: {} in the lead, {} from its device side to ground.", lead,
                       to_text(chosen->upper), to_text(chosen->lower));
  r.cure.why = format(
      "Terminal {} withstands {} and reads high {}. Behind the divider it gets {} when {} gives {}, with "
      "both resistors anywhere within 1 %.",
      terminal_name(c.fitting, joint.terminal), to_text(n.most), reads_words(receiver), to_text(chosen->high),
      pin_name(c.fitting, joint.header, joint.pin), to_text(*high));
  r.cure.components = {{tr("resistor"), to_text(chosen->upper), format("1 %, {}", rating_words(*upper)),
                        format("in {}", lead)},
                       {tr("resistor"), to_text(chosen->lower), format("1 %, {}", rating_words(*lower)),
                        format("from the device side of it to {}", to)}};
  r.cure.next_best =
      format("a series resistor alone: what the protection diodes of terminal {} stand is not stated",
             terminal_name(c.fitting, joint.terminal));
  r.cure.steps = {power_off_step(),
                  format("cut {} near the device and join the ends through {}", lead, to_text(chosen->upper)),
                  format("from its end on the device's side lead {} to {}", to_text(chosen->lower), to),
                  sleeve_step()};
  r.reading = reading_at(c, device, receiver, inner, tr("the device's side of the divider against ground"));
  offer.remedies.push_back(std::move(r));
}

}  // namespace

Offer output_remedies(const Complaint& c) {
  const Locus& where = c.finding.at;
  if (where.device < 0 || where.terminal < 0) return {};
  const auto joint = joint_of(c.fitting, {where.device, where.terminal});
  if (!joint) return {};
  const Device& d = c.fitting.harness->devices[at(where.device)];
  const PinFunction function = header_of(c.fitting, joint->header).pin(joint->pin).function;
  const int receiver = receiver_at(d, where.terminal);
  if (function != PinFunction::Output || receiver < 0 || is_joined(d, where.terminal)) return {};
  Offer offer;
  if (c.finding.rule == Rule::Overvoltage) {
    divider(c, *joint, offer);
  } else {
    buffer(c, *joint, std::get<Receiver>(d.parts[at(receiver)]), offer);
  }
  return offer;
}

}  // namespace plugward
