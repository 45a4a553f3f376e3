// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/sense_test.cpp.
#include "judge/sense.h"

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

Setting sense(const Fitting& fitting, const Contact& contact, bool high_at_rest, std::string_view why) {
  const Pin& pin = pin_of(fitting, contact);
  const std::string net = pin.net.empty() ? "" : format(" (net {})", pin.net);
  const std::string signal = pin.signal.empty() ? "" : format(" '{}'", pin.signal);
  return {format("input{} on {}{} is {} at rest and {} when the device works", signal, pin_name(fitting, contact), net,
                 high_at_rest ? "high" : "low", high_at_rest ? "low" : "high"),
          std::string(why)};
}

}  // namespace

std::vector<Setting> input_senses(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Setting> out;
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
        const bool to_ground = common == PinFunction::Ground;
        out.push_back(sense(fitting, *signal, to_ground != s->rests_closed,
                            format("the switch rests {} and joins the input to {}",
                                   s->rests_closed ? "closed" : "open", to_ground ? "ground" : "the supply")));
      } else if (const auto* driver = std::get_if<Driver>(&part); driver != nullptr && driver->rests_on) {
        const auto signal = contact_of(fitting, contacts, index, driver->terminal);
        if (!signal || pin_of(fitting, *signal).function != PinFunction::Input) continue;
        const bool conducts_high = driver->kind != OutputKind::Sinking;
        const std::string_view kind = driver->kind == OutputKind::PushPull   ? "push-pull"
                                      : driver->kind == OutputKind::Sinking ? "sinking"
                                                                            : "sourcing";
        out.push_back(sense(fitting, *signal, conducts_high == *driver->rests_on,
                            format("the {} output is {} at rest", kind, *driver->rests_on ? "on" : "off")));
      }
    }
  }
  return out;
}

}  // namespace plugward
