// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/lack_test.cpp.
#include "judge/lack.h"

#include <algorithm>

#include "judge/function_check.h"
#include "judge/words.h"

namespace plugward {
namespace {

using Terminals = std::vector<TerminalIndex>;

bool is_a_lack(const Finding& finding) {
  if (finding.weight != Weight::Fault) return false;
  return finding.rule == Rule::SupplyTooLow || finding.rule == Rule::FloatingInput ||
         finding.rule == Rule::LevelHigh || finding.rule == Rule::LevelLow ||
         finding.rule == Rule::HeaterPower;
}

const Device& device_of(const Fitting& fitting, const Locus& at) {
  return fitting.harness->devices[static_cast<std::size_t>(at.device)];
}

/// The ends of the part, and of every other part that gives the same pin its level: a change-over switch has
/// two throws on one signal, and either may be the one that is named.
Terminals ends_at(const Fitting& fitting, std::span<const Contact> contacts, const Locus& part,
                  const Locus& pin) {
  const Device& device = device_of(fitting, part);
  Terminals ends = ends_of(device.parts[static_cast<std::size_t>(part.part)]);
  if (pin.pin < 0) return ends;
  const Terminals named = ends;
  const auto on_the_pin = [&](TerminalIndex t) {
    return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
      return contact.header == pin.header && contact.pin == pin.pin &&
             lead_of(fitting, contact).to == TerminalRef{part.device, t};
    });
  };
  for (const Part& other : device.parts) {
    if (!std::holds_alternative<Switch>(other) && !std::holds_alternative<Driver>(other)) continue;
    const Terminals more = ends_of(other);
    const bool shared = std::any_of(more.begin(), more.end(), [&](TerminalIndex t) {
      return on_the_pin(t) && std::find(named.begin(), named.end(), t) != named.end();
    });
    if (shared) ends.insert(ends.end(), more.begin(), more.end());
  }
  return ends;
}

/// Some end meets nothing yet, and a lead that goes nobody knows where, or a plug that is not placed, may
/// bring what is missing there; or it meets a pin of which nothing is known.
bool may_be_brought(const Fitting& fitting, std::span<const Contact> contacts, int device_index,
                    const Terminals& ends) {
  const Device& device = fitting.harness->devices[static_cast<std::size_t>(device_index)];
  const bool unknown = brings_unknown(fitting, contacts);
  return std::any_of(ends.begin(), ends.end(), [&](TerminalIndex end) {
    const Terminals same = joined_to(device, end);
    const auto is = [&](auto holds) {
      return std::any_of(same.begin(), same.end(), [&](TerminalIndex t) {
        return holds(TerminalRef{device_index, t});
      });
    };
    const auto meets = [&](bool an_unknown_pin) {
      return is([&](TerminalRef t) {
        return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
          const bool is_unknown = pin_of(fitting, contact).function == PinFunction::Unknown;
          return lead_of(fitting, contact).to == t && is_unknown == an_unknown_pin;
        });
      });
    };
    if (meets(true)) return true;
    return !meets(false) &&
           (unknown || is([&](TerminalRef t) { return leaded(*fitting.harness, t) && !placed(fitting, t); }));
  });
}

bool may_be_brought(const Fitting& fitting, std::span<const Contact> contacts, const Locus& part,
                    const Locus& pin) {
  return part.device >= 0 && part.part >= 0 &&
         may_be_brought(fitting, contacts, part.device, ends_at(fitting, contacts, part, pin));
}

/// An end of the part has no lead at all, which is a finding of its own.
bool lacks_a_lead(const Fitting& fitting, const std::vector<Finding>& functions, const Locus& at) {
  if (at.device < 0 || at.part < 0) return false;
  const Terminals ends = ends_of(device_of(fitting, at).parts[static_cast<std::size_t>(at.part)]);
  return std::any_of(functions.begin(), functions.end(), [&](const Finding& f) {
    return f.part == "lead" && f.at.device == at.device &&
           std::find(ends.begin(), ends.end(), f.at.terminal) != ends.end();
  });
}

}  // namespace

bool follows_from_a_lack(const Fitting& fitting, std::span<const Contact> contacts,
                         const std::vector<Finding>& functions, const Excess& excess,
                         const Finding& finding) {
  if (!is_a_lack(finding)) return false;
  return may_be_brought(fitting, contacts, excess.at, {}) ||
         may_be_brought(fitting, contacts, excess.from, excess.at) ||
         lacks_a_lead(fitting, functions, excess.at);
}

}  // namespace plugward
