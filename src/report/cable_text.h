// SPDX-License-Identifier: MIT
// What `cable` says about one cable, or about several joined end to end. Schema of the JSON:
// schemas/cable.json (`plugward list schemas cable`).
#pragma once

#include <string>
#include <vector>

#include "fit/cable.h"
#include "report/layout.h"

namespace plugward {

struct JudgedCable {
  std::vector<const Harness*> chain;
  CableMap map;
  CableJudgement judgement;

  /// One of the kinds that have a name, and no pair of it split.
  bool fine() const;
};

std::string cable_text(const JudgedCable&, const TextOptions& = {});
std::string cable_json(const JudgedCable&);

/// A contact of two rows by the other way to number it; 0 for one row.
int other_number(const Plug&, int contact);

}  // namespace plugward
