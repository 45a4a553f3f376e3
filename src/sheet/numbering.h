// SPDX-License-Identifier: MIT
// Numbers of steps and readings, each once in a document: what is ticked on one paper is found on another.
//
//   Numbering numbers;
//   Step step = numbers.step("plug it in");            // id "s1", number 1
//   numbers.add_blanks(step, plug_readings(fitting, 0)) // ids "r1-1", "r1-2", ...
#pragma once

#include <string>
#include <vector>

#include "plan/meter.h"
#include "sheet/document.h"

namespace plugward::sheet {

class Numbering {
 public:
  Step step(std::string act);
  static void add_blanks(Step&, const std::vector<ExpectedReading>&);

 private:
  int last_ = 0;
};

}  // namespace plugward::sheet
