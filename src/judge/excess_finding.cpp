// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/excess_finding_test.cpp.
#include "judge/excess_finding.h"

#include "base/format.h"
#include "judge/measurement.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// How a kind of excess is reported.
struct Kind {
  Rule rule;
  Weight weight;
  std::string_view unit;
  std::string_view part;  ///< what may cure it: a key of plan/parts
};

Kind kind_of(const Excess& excess) {
  const Weight by_corner = excess.always ? Weight::Fault : Weight::Doubt;
  switch (excess.kind) {
    case ExcessKind::Overvoltage:
      return {Rule::Overvoltage, Weight::Harm, "V", "divider"};
    case ExcessKind::UnknownLimit:
      return {Rule::UnknownLimit, Weight::Doubt, "V", ""};
    case ExcessKind::ReversedSupply:
      return {Rule::ReversedSupply, Weight::Harm, "V", ""};
    case ExcessKind::SupplyTooHigh:
      return {Rule::SupplyTooHigh, Weight::Harm, "V", "regulator"};
    case ExcessKind::SupplyTooLow:
      return {Rule::SupplyTooLow, by_corner, "V", "supply"};
    case ExcessKind::HeaterTooStrong:
      return {Rule::HeaterPower, Weight::Harm, "W", ""};
    case ExcessKind::HeaterTooWeak:
      return {Rule::HeaterPower, Weight::Fault, "W", ""};
    case ExcessKind::AlwaysOn:
      return {Rule::AlwaysOn, Weight::Harm, "W", ""};
    case ExcessKind::ClampCurrent:
      return {Rule::ClampCurrent, Weight::Harm, "A", "divider"};
    case ExcessKind::BackFeed:
      return {Rule::BackFeed, Weight::Harm, "A", ""};
    case ExcessKind::PinOvercurrent:
      return {Rule::PinOvercurrent, Weight::Harm, "A", ""};
    case ExcessKind::ContactOvercurrent:
      return {Rule::ContactOvercurrent, Weight::Harm, "A", ""};
    case ExcessKind::UnknownRating:
      return {Rule::UnknownRating, Weight::Doubt, "A", ""};
    case ExcessKind::WireOvercurrent:
      return {Rule::WireOvercurrent, Weight::Harm, "A", ""};
    case ExcessKind::RailOverload:
      return {Rule::RailOverload, Weight::Harm, "A", ""};
    case ExcessKind::ShortCircuit:
      return {Rule::ShortCircuit, Weight::Harm, "A", ""};
    case ExcessKind::LevelHigh:
      return {Rule::LevelHigh, by_corner, "V", "level-buffer"};
    case ExcessKind::LevelLow:
      return {Rule::LevelLow, by_corner, "V", "level-buffer"};
    case ExcessKind::Stuck:
      return {Rule::FloatingInput, Weight::Fault, "V", ""};
    case ExcessKind::Floating:
      return {Rule::FloatingInput, Weight::Fault, "V", ""};
    case ExcessKind::ResistorPower:
      return {Rule::ResistorPower, Weight::Harm, "W", ""};
    case ExcessKind::ResetUnknown:
      return {Rule::AlwaysOn, Weight::Doubt, "", ""};
    case ExcessKind::TooManyStates:
      return {Rule::TooManyStates, Weight::Doubt, "", ""};
  }
  return {Rule::TooManyStates, Weight::Doubt, "", ""};
}

const Part* part_at(const Fitting& fitting, const Locus& at) {
  if (at.device < 0 || at.part < 0) return nullptr;
  const Device& device = fitting.harness->devices[static_cast<std::size_t>(at.device)];
  return &device.parts[static_cast<std::size_t>(at.part)];
}

/// A polarised load that is not said to be destroyed by reversal only fails to work.
Weight reversal_weight(const Fitting& fitting, const Locus& at) {
  const Part* part = part_at(fitting, at);
  const auto* load = part == nullptr ? nullptr : std::get_if<Load>(part);
  if (load == nullptr) return Weight::Harm;
  return load->reversed == Reversal::Blocked || load->reversed == Reversal::Harmless ? Weight::Fault
                                                                                     : Weight::Harm;
}

bool is_load(const Fitting& fitting, const Locus& at) {
  const Part* part = part_at(fitting, at);
  return part != nullptr && std::holds_alternative<Load>(*part);
}

bool is_output(const Fitting& fitting, const Locus& at, OutputKind kind) {
  const Part* part = part_at(fitting, at);
  const auto* driver = part == nullptr ? nullptr : std::get_if<Driver>(part);
  return driver != nullptr && driver->kind == kind;
}

/// An output that only ever pulls up needs something that pulls down, and the other way round.
std::string pull_for(const Fitting& fitting, const Excess& excess) {
  const bool sourcing = is_output(fitting, excess.from, OutputKind::Sourcing);
  if (excess.kind == ExcessKind::Floating) return sourcing ? "pull-down" : "pull-up";
  if (sourcing && excess.value > excess.limit) return "pull-down";
  const bool sinking = is_output(fitting, excess.from, OutputKind::Sinking);
  return sinking && excess.value < excess.limit ? "pull-up" : "";
}

std::string locus_name(const Fitting& fitting, const Locus& at) {
  if (at.pin > 0 && at.header >= 0) return pin_name(fitting, at.header, at.pin);
  if (at.terminal >= 0) return terminal_name(fitting, {at.device, at.terminal});
  if (const Part* part = part_at(fitting, at)) {
    const Device& device = fitting.harness->devices[static_cast<std::size_t>(at.device)];
    return format("the {} of '{}'", tr(part_word(*part)), device.id);
  }
  if (at.lead >= 0) return format("the {}", lead_name(fitting, at.plug, at.lead));
  if (at.rail >= 0) return format("rail '{}'", fitting.board->rails[static_cast<std::size_t>(at.rail)].id);
  return tr("the circuit");
}

Span harness_span(const Fitting& fitting, const Locus& at) {
  if (at.lead >= 0) return plug_of(fitting, at.plug).leads[static_cast<std::size_t>(at.lead)].span;
  if (const Part* part = part_at(fitting, at)) return part_span(*part);
  if (at.terminal >= 0) return fitting.harness->terminal({at.device, at.terminal}).span;
  return {};
}

Span board_span(const Fitting& fitting, const Locus& at) {
  if (at.pin > 0 && at.header >= 0) {
    const Pin& pin = header_of(fitting, at.header).pin(at.pin);
    return pin.span.known() ? pin.span : header_of(fitting, at.header).span;
  }
  if (at.rail >= 0) return fitting.board->rails[static_cast<std::size_t>(at.rail)].span;
  return {};
}

std::string message(const Fitting& fitting, const Excess& excess) {
  const std::string at = locus_name(fitting, excess.at);
  const auto volts = [](double v) { return to_text(Volts(v)); };
  const auto amps = [](double v) { return to_text(Amps(v)); };
  const auto watts = [](double v) { return to_text(Watts(v)); };
  switch (excess.kind) {
    case ExcessKind::Overvoltage:
      return excess.value < excess.limit
                 ? format("{} on {}, which stands no less than {}", volts(excess.value), at,
                          volts(excess.limit))
                 : format("{} on {}, which withstands {}", volts(excess.value), at, volts(excess.limit));
    case ExcessKind::UnknownLimit:
      if (lacks_thresholds(excess))
        return format("from which voltages {} reads low and high is not stated", at);
      return format("{} on {}, and what it withstands is not stated", volts(excess.value), at);
    case ExcessKind::ReversedSupply:
      return format("{} gets its supply reversed: {}", at, volts(excess.value));
    case ExcessKind::SupplyTooHigh:
      return format("{} gets {}, and takes {} at most", at, volts(excess.value), volts(excess.limit));
    case ExcessKind::SupplyTooLow:
      return format("{} gets {} at best{}, and needs {}", at, volts(excess.value),
                    excess.always ? "" : tr(" in the worst case"), volts(excess.limit));
    case ExcessKind::HeaterTooStrong:
      return format("{} heats with {}, more than {}", at, watts(excess.value), watts(excess.limit));
    case ExcessKind::HeaterTooWeak:
      return format("{} heats with {} at best, less than {}", at, watts(excess.value), watts(excess.limit));
    case ExcessKind::AlwaysOn:
      return is_load(fitting, excess.at)
                 ? format("{} gets {} while nothing is switched on, and the heater behind it heats", at,
                          volts(excess.value))
                 : format("{} heats with {} while nothing is switched on", at, watts(excess.value));
    case ExcessKind::ClampCurrent:
      return format("{} flows into the protection diode of {}, which stands {}", amps(excess.value), at,
                    amps(excess.limit));
    case ExcessKind::BackFeed:
      return format("{} flows backwards into {}", amps(excess.value), at);
    case ExcessKind::PinOvercurrent:
      return format("{} through {}, limit {}", amps(excess.value), at, amps(excess.limit));
    case ExcessKind::ContactOvercurrent:
      return format("{} through the contact of {}, rated {}", amps(excess.value), at, amps(excess.limit));
    case ExcessKind::UnknownRating:
      return format("{} through the contact of {}, and no rating is published for its gauge",
                    amps(excess.value), at);
    case ExcessKind::WireOvercurrent:
      return format("{} through {}, a wire for {}", amps(excess.value), at, amps(excess.limit));
    case ExcessKind::RailOverload:
      return format("{} drawn from {}, limit {}", amps(excess.value), at, amps(excess.limit));
    case ExcessKind::ShortCircuit:
      return format("short circuit at {}: {}", at, amps(excess.value));
    case ExcessKind::LevelHigh:
      return format("{} reaches {} when high{}, and is read as high from {}", at, volts(excess.value),
                    excess.always ? "" : tr(" in the worst case"), volts(excess.limit));
    case ExcessKind::LevelLow:
      return format("{} falls to {} when low{}, and is read as low below {}", at, volts(excess.value),
                    excess.always ? "" : tr(" in the worst case"), volts(excess.limit));
    case ExcessKind::Stuck:
      return format("{} stays at {} whatever the device does", at, volts(excess.value));
    case ExcessKind::Floating:
      return format("nothing drives {} in this state", at);
    case ExcessKind::ResistorPower:
      return format("{} turns {} into heat, made for {}", at, watts(excess.value), watts(excess.limit));
    case ExcessKind::ResetUnknown:
      return format("{} switches {}, and its state at reset is not stated", locus_name(fitting, excess.from),
                    at);
    case ExcessKind::TooManyStates:
      return tr("the circuit has more states than were tried");
  }
  return "";
}

}  // namespace

bool lacks_thresholds(const Excess& excess) {
  return excess.kind == ExcessKind::UnknownLimit && excess.value == 0 && excess.limit == 0;
}

Finding finding_of(const Fitting& fitting, const Excess& excess) {
  const Kind kind = kind_of(excess);
  Finding finding;
  finding.rule = kind.rule;
  finding.weight =
      excess.kind == ExcessKind::ReversedSupply ? reversal_weight(fitting, excess.at) : kind.weight;
  finding.message = message(fitting, excess);
  finding.state = excess.state;
  finding.path = excess.path;
  finding.at = excess.at;
  const Span mine = harness_span(fitting, excess.at);
  const Span my_source = harness_span(fitting, excess.from);
  const Span board = board_span(fitting, excess.at);
  const Span board_source = board_span(fitting, excess.from);
  finding.first = mine.known() ? mine : my_source.known() ? my_source : board;
  const Span second = board.known() ? board : board_source;
  if (second.known() && !(second == finding.first)) {
    finding.second = second;
    const Locus& where = board.known() ? excess.at : excess.from;
    finding.second_says =
        format("{} is declared here",
               locus_name(fitting, {where.header, where.pin, -1, -1, -1, -1, -1, where.rail}));
  }
  if (!kind.unit.empty() && !lacks_thresholds(excess)) {
    finding.figure = excess.value;
    if (excess.limit != 0) finding.limit = excess.limit;
    finding.unit =
        excess.kind == ExcessKind::AlwaysOn && is_load(fitting, excess.at) ? "V" : std::string(kind.unit);
  }
  finding.part = std::string(kind.part);
  if (excess.kind == ExcessKind::Floating || excess.kind == ExcessKind::Stuck)
    finding.part = pull_for(fitting, excess);
  if (finding.weight == Weight::Doubt) finding.measurement = measure_excess(fitting, excess);
  return finding;
}

}  // namespace plugward
