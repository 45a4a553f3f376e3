// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/wiring_memory_test.cpp.
#include "plan/wiring_memory.h"

#include <mutex>
#include <utility>

#include "plan/likeness.h"

namespace plugward {

Assessment WiringMemory::assess(const Fitting& fitting) {
  std::string key = wiring(fitting);
  {
    const std::shared_lock lock(mutex_);
    const auto known = known_.find(key);
    if (known != known_.end()) return *known->second;
  }
  auto judged = std::make_shared<const Assessment>(plugward::assess(fitting));
  const std::unique_lock lock(mutex_);
  if (known_.size() >= most_) known_.clear();
  known_.emplace(std::move(key), judged);
  return *judged;
}

}  // namespace plugward
