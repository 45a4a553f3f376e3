// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/place_test.cpp.
#include "base/format.h"
#include "plan/place.h"

namespace plugward {

Harness merged(const std::vector<const Harness*>& list) {
  if (list.size() == 1) return *list.front();
  Harness all;
  for (const Harness* one : list) {
    const int first_device = static_cast<int>(all.devices.size());
    const auto prefixed = [&](const std::string& id) { return format("{}/{}", one->id, id); };
    all.id += (all.id.empty() ? "" : "+") + one->id;
    all.title += (all.title.empty() ? "" : " + ") + one->title;
    all.span = one->span;
    for (Evidence evidence : one->evidences) {
      evidence.id = prefixed(evidence.id);
      all.evidences.push_back(std::move(evidence));
    }
    const auto evidence_of = [&](const std::string& own) {
      const std::string& id = own.empty() ? one->evidence : own;
      return id.empty() ? id : prefixed(id);
    };
    for (Device device : one->devices) {
      device.evidence = evidence_of(device.evidence);
      device.id = prefixed(device.id);
      all.devices.push_back(std::move(device));
    }
    for (Plug plug : one->plugs) {
      plug.evidence = evidence_of(plug.evidence);
      plug.id = prefixed(plug.id);
      for (Lead& lead : plug.leads) {
        if (lead.to) lead.to->device += first_device;
      }
      all.plugs.push_back(std::move(plug));
    }
  }
  return all;
}

}  // namespace plugward
