// SPDX-License-Identifier: MIT
// Which measurement tells the causes of a symptom apart: a path of measurements, each saying which causes
// every reading leaves and where to go on.
//
//   for (const TellingStep& step : tell_apart(observer, causes, Symptom::Judders)) step.action ...
#pragma once

#include <string>
#include <vector>

#include "plan/symptom.h"

namespace plugward {

struct Cause;

enum class MeterPower {
  None,  ///< only looked at
  Off,   ///< power off
  On     ///< power on
};

struct TellingReading {
  std::string words;        ///< "below 2 ohm"
  bool healthy = false;     ///< it is what a machine without an error shows
  std::vector<int> causes;  ///< those that it leaves: indices into the causes given
  int next = -1;            ///< the step to go on with; -1: there is none
};

struct TellingStep {
  MeterPower power{};
  std::string action;
  std::vector<TellingReading> readings;  ///< at least two
};

/// Greedy: each step is the one that leaves fewest causes on average, weighed against its effort. Nothing is
/// measured under power with a plug on while a cause is left that could do harm. Empty when no measurement
/// tells any two apart.
std::vector<TellingStep> tell_apart(const Observer&, const std::vector<Cause>&, Symptom asked);

}  // namespace plugward
