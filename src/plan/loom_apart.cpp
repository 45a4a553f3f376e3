// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/record_test.cpp.
#include "plan/loom_apart.h"

#include <algorithm>
#include <cassert>

#include "model/harness_text.h"

namespace plugward {

std::vector<int> file_cavities(const Plug& in_file, const Seat* seat) {
  std::vector<int> cavities;
  if (seat == nullptr || seat->leads.empty()) {
    for (const Lead& lead : in_file.leads) cavities.push_back(lead.cavity);
    return cavities;
  }
  std::copy_if(seat->leads.begin(), seat->leads.end(), std::back_inserter(cavities),
               [](int cavity) { return cavity > 0; });
  return cavities;
}

std::vector<Harness> harnesses_apart(const Harness& joined, const LoomFiles& files) {
  std::vector<Harness> all = files.harnesses;
  std::size_t next_device = 0, next_plug = 0;
  for (Harness& one : all) {
    const int first_device = static_cast<int>(next_device);
    for (Device& device : one.devices) {
      assert(next_device < joined.devices.size());
      const Device& now = joined.devices[next_device++];
      device.terminals = now.terminals;
      device.parts = now.parts;
      device.leds = now.leds;
    }
    for (Plug& plug : one.plugs) {
      assert(next_plug < joined.plugs.size());
      Plug now = joined.plugs[next_plug++];
      now.id = plug.id;
      now.evidence = plug.evidence;
      for (Lead& lead : now.leads) {
        if (lead.to) lead.to->device -= first_device;
      }
      plug = std::move(now);
    }
  }
  return all;
}

bool is_rebuilt(const Harness& now, const Harness& in_file, const Loom& loom) {
  Harness was = in_file;
  Harness is = now;
  for (std::size_t p = 0; p < was.plugs.size(); ++p) {
    const std::vector<int> cavities =
        file_cavities(in_file.plugs[p], loom.seat(in_file.id, in_file.plugs[p].id));
    // Leads that the old loom tells to be out of their housing are in neither.
    std::erase_if(was.plugs[p].leads, [&](const Lead& lead) {
      return std::find(cavities.begin(), cavities.end(), lead.cavity) == cavities.end();
    });
    std::vector<Lead>& leads = is.plugs[p].leads;
    if (leads.size() != cavities.size()) return true;
    for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = cavities[l];
  }
  return harness_text(is) != harness_text(was);
}

std::vector<int> leads_now(const Plug& now, const Plug& in_file, const Seat* old_seat) {
  const std::vector<int> cavities = file_cavities(in_file, old_seat);
  std::vector<int> leads(static_cast<std::size_t>(in_file.positions), 0);
  for (std::size_t l = 0; l < now.leads.size(); ++l) {
    if (now.leads[l].cavity > 0) leads[static_cast<std::size_t>(now.leads[l].cavity) - 1] = cavities[l];
  }
  for (std::size_t c = 0; c < leads.size(); ++c) {
    const int cavity = static_cast<int>(c) + 1;
    if (leads[c] != (in_file.lead_in(cavity) != nullptr ? cavity : 0)) return leads;
  }
  return {};
}

}  // namespace plugward
