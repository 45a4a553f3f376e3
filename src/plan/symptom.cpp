// SPDX-License-Identifier: MIT
// The words of the symptoms, and the part of a machine that an error can reach. What is seen there is in
// observer.cpp.
#include "plan/symptom.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace plugward {
namespace {

constexpr auto table = std::to_array<SymptomWords>({
    {Symptom::AlwaysTriggered, "always-triggered",
     "reads as worked all the time, whatever its switch or sensor does"},
    {Symptom::NeverTriggered, "never-triggered", "never reads as worked, whatever its switch or sensor does"},
    {Symptom::Inverted, "inverted", "reads as worked while it rests, and as resting while it is worked"},
    {Symptom::Unsteady, "unsteady", "flickers: its level is neither clearly low nor clearly high"},
    {Symptom::FullScale, "full-scale",
     "reads its highest value; a thermistor then shows far below the room's temperature"},
    {Symptom::ZeroScale, "zero-scale",
     "reads its lowest value: a thermistor shows far too hot, a speed stays at 0"},
    {Symptom::WrongReading, "wrong-reading", "reads a value, but not a believable one"},
    {Symptom::HeatsByItself, "heats-by-itself", "heats without having been told to"},
    {Symptom::NeverStops, "never-stops", "runs or shines all the time, whatever is commanded"},
    {Symptom::NeverStarts, "never-starts", "does nothing: stands still, stays cold; a sensor's lamp is dark"},
    {Symptom::Weak, "weak", "runs slowly, shines dimly or heats too little"},
    {Symptom::TooStrong, "too-strong", "runs too fast, shines too brightly or gets too hot"},
    {Symptom::Judders, "judders", "the motor judders or whines and does not turn"},
    {Symptom::RunsBackwards, "runs-backwards", "the motor turns the wrong way round"},
    {Symptom::Blank, "blank", "the display stays blank or shows only its back-light"},
    {Symptom::Dark, "dark", "the LEDs stay dark"},
    {Symptom::WrongOne, "wrong-one", "works, but belongs to another output or input than it should"},
    {Symptom::Dies, "dies", "the board stays dead, or resets at some moment"},
});

}  // namespace

std::span<const SymptomWords> all_symptoms() {
  return table;
}

const SymptomWords& words_of(Symptom symptom) {
  return table[static_cast<std::size_t>(symptom)];
}

std::optional<Symptom> symptom_of(std::string_view word) {
  for (const SymptomWords& words : table) {
    if (words.word == word) return words.symptom;
  }
  return std::nullopt;
}

std::vector<int> plug_groups(const Harness& harness) {
  std::vector<int> group(harness.plugs.size());
  std::iota(group.begin(), group.end(), 0);
  std::vector<int> first_of_device(harness.devices.size(), -1);
  for (std::size_t p = 0; p < harness.plugs.size(); ++p) {
    for (const Lead& lead : harness.plugs[p].leads) {
      if (!lead.to) continue;
      int& first = first_of_device[static_cast<std::size_t>(lead.to->device)];
      if (first < 0) first = group[p];
      const int from = group[p], to = first;
      if (from != to) {
        std::replace(group.begin(), group.end(), from, to);
        std::replace(first_of_device.begin(), first_of_device.end(), from, to);
      }
    }
  }
  return group;
}

GroupView::GroupView(const FaultyMachine& machine, const std::vector<int>& group_of_plug,
                     const std::vector<int>& wanted)
    : fitting(machine.fitting) {
  if (wanted.empty()) {
    contacts = machine.contacts;
    return;
  }
  const auto in = [&](int plug) {
    return std::find(wanted.begin(), wanted.end(), group_of_plug[static_cast<std::size_t>(plug)]) !=
           wanted.end();
  };
  harness_ = *machine.fitting.harness;
  std::vector<bool> used(harness_.devices.size(), false);
  for (std::size_t p = 0; p < harness_.plugs.size(); ++p) {
    if (!in(static_cast<int>(p))) continue;
    for (const Lead& lead : harness_.plugs[p].leads) {
      if (lead.to) used[static_cast<std::size_t>(lead.to->device)] = true;
    }
  }
  for (std::size_t d = 0; d < used.size(); ++d) {
    if (!used[d]) harness_.devices[d].parts.clear();
  }
  fitting.harness = &harness_;
  std::erase_if(fitting.placements, [&](const Placement& p) { return !in(p.plug); });
  for (const Contact& contact : machine.contacts) {
    if (in(contact.plug)) contacts.push_back(contact);
  }
}

}  // namespace plugward
