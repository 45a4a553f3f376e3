// SPDX-License-Identifier: MIT
// A small mating with an answer, made by hand, for the renderers' tests: a fan on a three-pin header.
#pragma once

#include "plan/repin.h"

namespace plugward {

/// Points into itself: not to be copied.
struct Sample {
  Sample();
  Sample(const Sample&) = delete;
  Sample& operator=(const Sample&) = delete;

  Sources sources;
  Catalogue catalogue;
  Board board;
  Harness harness;
  Fitting fitting;
  Advice repin;    ///< RD and BK change places through the empty cavity 3
  Advice measure;  ///< one doubt
  Advice mate;     ///< nothing to say
};

}  // namespace plugward
