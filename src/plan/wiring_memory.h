// SPDX-License-Identifier: MIT
// Assessments of one harness, by what its leads meet. Two boards that order the pins of a header differently
// come to the same circuit once the contacts are moved, and that circuit is judged once.
//
//   WiringMemory memory(1024);
//   const Assessment a = memory.assess(fitting);   // as assess(fitting), but for names of pins and cavities
//
// For who counts findings and shows none of them. May be used by several threads at a time; two that miss the
// same one both judge it.
#pragma once

#include <cstddef>
#include <memory>
#include <shared_mutex>
#include <string>
#include <unordered_map>

#include "judge/judgement.h"

namespace plugward {

class WiringMemory {
 public:
  /// After `most` assessments it starts anew.
  explicit WiringMemory(std::size_t most) : most_(most) {}

  /// REQUIRES: the harness is always the same but for the cavities of its leads. The texts may name pins and
  /// cavities as another board numbers them; weights, rules, parts and figures are those of assess(), and
  /// texts that differ there differ here.
  Assessment assess(const Fitting&);

 private:
  std::size_t most_;
  mutable std::shared_mutex mutex_;
  std::unordered_map<std::string, std::shared_ptr<const Assessment>> known_;
};

}  // namespace plugward
