// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/sense_test.cpp.
#include "judge/sense.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// The first contact of a terminal or of one joined to it.
std::optional<Contact> contact_of(const Fitting& fitting, std::span<const Contact> contacts, int device_index,
                                  TerminalIndex terminal) {
  for (const Contact& contact : contacts) {
    if (lead_of(fitting, contact).to == TerminalRef{device_index, terminal}) return contact;
  }
  const Device& device = fitting.harness->devices[static_cast<std::size_t>(device_index)];
  for (const Part& part : device.parts) {
    const auto* join = std::get_if<Join>(&part);
    if (join == nullptr || (join->a != terminal && join->b != terminal)) continue;
    const TerminalIndex other = join->a == terminal ? join->b : join->a;
    for (const Contact& contact : contacts) {
      if (lead_of(fitting, contact).to == TerminalRef{device_index, other}) return contact;
    }
  }
  return std::nullopt;
}

/// The first contact at an input of the board that is reached from the terminal through joins, resistors and
/// diodes: a divider between the two gives the same sense. Nothing goes on beyond a terminal with a contact.
std::optional<Contact> input_behind(const Fitting& fitting, std::span<const Contact> contacts,
                                    int device_index, TerminalIndex terminal) {
  const Device& device = fitting.harness->devices[static_cast<std::size_t>(device_index)];
  std::vector<TerminalIndex> reached{terminal};
  for (std::size_t i = 0; i < reached.size(); ++i) {
    bool met = false;
    for (const Contact& contact : contacts) {
      if (lead_of(fitting, contact).to != TerminalRef{device_index, reached[i]}) continue;
      if (pin_of(fitting, contact).function == PinFunction::Input) return contact;
      met = true;
    }
    if (met) continue;
    for (const Part& part : device.parts) {
      if (!std::holds_alternative<Join>(part) && !std::holds_alternative<Resistor>(part) &&
          !std::holds_alternative<Diode>(part)) {
        continue;
      }
      const std::vector<TerminalIndex> ends = ends_of(part);
      if (std::find(ends.begin(), ends.end(), reached[i]) == ends.end()) continue;
      for (const TerminalIndex end : ends) {
        if (std::find(reached.begin(), reached.end(), end) == reached.end()) reached.push_back(end);
      }
    }
  }
  return std::nullopt;
}

/// What an input reads of a device.
struct Sense {
  Contact contact;
  bool high_at_rest = false;
  std::string why;
};

std::vector<Sense> senses(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Sense> out;
  const Harness& harness = *fitting.harness;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    const int index = static_cast<int>(d);
    for (const Part& part : harness.devices[d].parts) {
      if (const auto* s = std::get_if<Switch>(&part)) {
        auto signal = contact_of(fitting, contacts, index, s->a);
        auto other = contact_of(fitting, contacts, index, s->b);
        if (!signal || !other) continue;
        if (pin_of(fitting, *signal).function != PinFunction::Input) std::swap(signal, other);
        const PinFunction common = pin_of(fitting, *other).function;
        if (pin_of(fitting, *signal).function != PinFunction::Input) continue;
        if (common != PinFunction::Ground && common != PinFunction::Supply) continue;
        if (!s->rests_stated) continue;
        const bool to_ground = common == PinFunction::Ground;
        out.push_back({*signal, to_ground != s->rests_closed,
                       to_ground         ? s->rests_closed
                                               ? tr("the switch rests closed and joins the input to ground")
                                               : tr("the switch rests open and joins the input to ground")
                               : s->rests_closed ? tr("the switch rests closed and joins the input to the supply")
                                         : tr("the switch rests open and joins the input to the supply")});
      } else if (const auto* driver = std::get_if<Driver>(&part); driver != nullptr && driver->rests_on) {
        const auto signal = input_behind(fitting, contacts, index, driver->terminal);
        if (!signal) continue;
        const bool conducts_high = driver->kind != OutputKind::Sinking;
        const bool on = *driver->rests_on;
        out.push_back({*signal, conducts_high == *driver->rests_on,
                       driver->kind == OutputKind::PushPull  ? on ? tr("the push-pull output is on at rest")
                                                                  : tr("the push-pull output is off at rest")
                        : driver->kind == OutputKind::Sinking ? on ? tr("the sinking output is on at rest")
                                                                   : tr("the sinking output is off at rest")
                        : on ? tr("the sourcing output is on at rest")
                                                             : tr("the sourcing output is off at rest")});
      }
    }
  }
  return out;
}

}  // namespace

std::vector<Setting> input_senses(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Setting> out;
  for (const Sense& sense : senses(fitting, contacts)) {
    const Pin& pin = pin_of(fitting, sense.contact);
    const std::string net = pin.net.empty() ? "" : format(" (net {})", pin.net);
    const std::string signal = pin.signal.empty() ? "" : format(" '{}'", pin.signal);
    const std::string level = sense.high_at_rest ? tr("high at rest and low when the device works")
                                                 : tr("low at rest and high when the device works");
    out.push_back({format("input{} on {}{} is {}", signal, pin_name(fitting, sense.contact), net, level),
                   sense.why, false, sense.contact.header, sense.contact.pin, level});
  }
  return out;
}

std::vector<Finding> inverted_senses(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> out;
  for (const Sense& sense : senses(fitting, contacts)) {
    const Pin& pin = pin_of(fitting, sense.contact);
    if (!pin.pull || pin.pull->up == sense.high_at_rest) continue;
    Finding finding;
    finding.rule = Rule::InvertedSense;
    finding.weight = Weight::Note;
    finding.message = sense.high_at_rest ? format(
                                               "{} is held high at rest, against its pull: firmware that "
                                               "takes high for triggered must be told",
                                               pin_name(fitting, sense.contact))
                                         : format(
                                               "{} is held low at rest, against its pull: firmware that "
                                               "takes low for triggered must be told",
                                               pin_name(fitting, sense.contact));
    finding.at = locus_of(fitting, sense.contact);
    finding.first = lead_of(fitting, sense.contact).span;
    finding.second = pin.span;
    finding.second_says = format("{} is declared here", pin_name(fitting, sense.contact));
    out.push_back(std::move(finding));
  }
  return out;
}

}  // namespace plugward
