// SPDX-License-Identifier: MIT
// What is not known about the pins, leads, devices and plugs that meet: each a doubt with its measurement.
#pragma once

#include <span>
#include <vector>

#include "circuit/circuit.h"
#include "judge/judgement.h"

namespace plugward {

std::vector<Finding> doubts(const Fitting&, std::span<const Contact>);

/// Jumpers that choose the rail of a touched pin and whose position is not stated, each once,
/// with a pin that it feeds.
struct OpenJumper {
  const Jumper* jumper = nullptr;
  int header = 0;
  int pin = 0;
};
std::vector<OpenJumper> open_jumpers(const Fitting&, std::span<const Contact>);

}  // namespace plugward
