// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/led_string_test.cpp.
#include "judge/led_string.h"

#include <algorithm>

#include "base/format.h"
#include "circuit/flows.h"
#include "judge/doubts.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// From so many LEDs on, a metre of a dense strip, what the tracks lose is worth a measurement (common
/// practice, no source).
constexpr int many_leds = 60;

const Device& device_at(const Fitting& fitting, int device) {
  return fitting.harness->devices[static_cast<std::size_t>(device)];
}

/// Strings that a contact reaches, each with its load's index among the parts.
std::vector<Locus> strings_of(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Locus> all;
  for (int d = 0; d < static_cast<int>(fitting.harness->devices.size()); ++d) {
    const Device& device = device_at(fitting, d);
    const bool touched = std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
      const auto& to = lead_of(fitting, contact).to;
      return to && to->device == d;
    });
    if (!device.leds || !touched) continue;
    for (std::size_t p = 0; p < device.parts.size(); ++p) {
      if (!std::holds_alternative<Load>(device.parts[p])) continue;
      Locus at;
      at.device = d;
      at.part = static_cast<int>(p);
      all.push_back(at);
    }
  }
  return all;
}

const Load& load_at(const Fitting& fitting, const Locus& at) {
  return std::get<Load>(device_at(fitting, at.device).parts[static_cast<std::size_t>(at.part)]);
}

Finding finding_about(const Fitting& fitting, const Locus& at, Weight weight, std::string message) {
  Finding finding;
  finding.rule = Rule::SupplyTooLow;
  finding.weight = weight;
  finding.message = std::move(message);
  finding.at = at;
  finding.first = device_at(fitting, at.device).span;
  finding.unit = "V";
  return finding;
}

}  // namespace

Volts far_end(Volts near, Amps amps, Ohms loop) {
  return near - amps * loop * 0.5;
}

std::vector<Setting> brightness_settings(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Setting> settings;
  for (const Locus& at : strings_of(fitting, contacts)) {
    const Device& device = device_at(fitting, at.device);
    if (!device.leds->brightness || *device.leds->brightness >= 1.0) continue;
    const Amps full = device.leds->each * static_cast<double>(device.leds->count);
    settings.push_back({format("keep the brightness of '{}' at {:.3g} % or less, from the first moment on",
                               device.id, 100.0 * *device.leds->brightness),
                        format("its {} LEDs are counted with {}; all at full white they take {}",
                               device.leds->count, to_text(load_at(fitting, at).draws), to_text(full)),
                        false});
  }
  return settings;
}

std::vector<Finding> far_end_findings(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> findings;
  const std::vector<Locus> strings = strings_of(fitting, contacts);
  const bool solve = std::any_of(strings.begin(), strings.end(), [&](const Locus& at) {
    return device_at(fitting, at.device).leds->loop.has_value();
  });
  // Where a jumper sits is asked for anyway; until it is known there are no volts to begin with.
  if (solve && !open_jumpers(fitting, contacts).empty()) return findings;
  const Flows flowing = solve ? flows(fitting, contacts) : Flows{};
  for (const Locus& at : strings) {
    const Device& device = device_at(fitting, at.device);
    const Load& load = load_at(fitting, at);
    const auto volts = std::find_if(flowing.parts.begin(), flowing.parts.end(), [&](const PartVolts& v) {
      return v.device == at.device && v.part == at.part;
    });
    if (!device.leds->loop) {
      if (device.leds->count < many_leds) continue;
      findings.push_back(finding_about(
          fitting, at, Weight::Note,
          format("what the tracks of the {} LEDs of '{}' lose is not stated: with all of them white, measure "
                 "volts between plus and ground at the last one; below {} feed the far end as well",
                 device.leds->count, device.id, to_text(load.needs.min))));
      findings.back().unit.clear();
      continue;
    }
    if (volts == flowing.parts.end() || volts->least < load.needs.min.value) continue;  // said already
    const Volts far = far_end(Volts(volts->least), load.draws, *device.leds->loop);
    if (far >= load.needs.min) continue;
    Finding finding = finding_about(
        fitting, at, Weight::Fault,
        format("the far end of '{}' gets {}, and needs {}: of {} at its near end, half of {} x {} is lost in "
               "its tracks",
               device.id, to_text(far), to_text(load.needs.min), to_text(Volts(volts->least)),
               to_text(load.draws), to_text(*device.leds->loop)));
    finding.figure = far.value;
    finding.limit = load.needs.min.value;
    finding.part = "far-end-feed";
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace plugward
