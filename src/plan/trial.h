// SPDX-License-Identifier: MIT
// Internal. The measurements that could be made on a machine, and what each would show under every cause:
// every reading is computed on the model of the machine with that cause in it.
#pragma once

#include <string>
#include <vector>

#include "plan/causes.h"

namespace plugward {

/// One measurement that could be made.
struct Trial {
  MeterPower power{};
  std::string action;
  double effort = 0;                ///< 0: a look; 1: ohms; 2: volts
  bool live = false;                ///< power on with the plug in place: not while something may do harm
  std::string healthy{};            ///< the reading without an error; "" when there is no such thing
  std::vector<std::string> says{};  ///< by cause
};

/// Those that do not read the same under all causes, or read otherwise than healthy.
std::vector<Trial> trials(const Observer&, const std::vector<Cause>&, Symptom asked);

/// Figures as readings that can be told apart by a meter: figures that lie close get one text. Ohms: a factor
/// of 1.5, and where electronics lie between, only whether there is a short; volts: 0.4 V and a tenth.
std::vector<std::string> ohm_readings(const std::vector<HandOhms>&);
std::vector<std::string> volt_readings(const std::vector<Band>&);

}  // namespace plugward
