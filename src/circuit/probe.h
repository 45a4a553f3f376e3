// SPDX-License-Identifier: MIT
// Internal. Every figure that is judged is a sum of weighted node voltages: a voltage between two nodes, a
// current through a resistance, the distance from a threshold. Its extremes over all states are found island
// by island.
//
//   const Probe volts = {{plus, 1.0}, {minus, -1.0}};
//   const Extreme worst = extreme(solved, volts, Side::Highest);
//   if (worst.found && worst.value > 5.5) ... words_of(solved, volts, worst, [](double v) { return v > 5.5;
//   })
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "circuit/islands.h"

namespace plugward::circuit {

struct Term {
  Node node = 0;
  double weight = 1.0;
};
using Probe = std::vector<Term>;

/// A state of an island.
struct Where {
  int island = 0;
  int state = 0;
};

enum class Side { Lowest, Highest };

struct Extreme {
  bool found = false;  ///< false: no state passes the filter
  double value = 0;
  std::vector<Where> where;  ///< one state of each island that has a part in it, all compatible
};

/// Which states count. Empty: all.
using Filter = std::function<bool(int island, const Island&, int state)>;

bool powered(int island, const Island&, int state);
bool unpowered(int island, const Island&, int state);

/// REQUIRES: the terms name free nodes, ground, or rails beside a free node of an island the rail touches.
Extreme extreme(const Solved&, const Probe&, Side, const Filter& = {});

/// The probe's value in given states; islands not named count as 0 V.
double value_in(const Solved&, const Probe&, const std::vector<Where>&);

/// The choices without which the figure would not be bad: "switch closed, 5V at 5.25 V"; "" when it is bad in
/// every state. When no single choice decides, all that differ from rest, and the rails.
std::string words_of(const Solved&, const Probe&, const Extreme&, const std::function<bool(double)>& bad,
                     const Filter& = {});
/// One choice of one knob: "switch closed", "J1.2 on". `knob` is an index into Circuit::knobs.
std::string choice_words(const Solved&, int knob, int choice);
/// All choices of the states that differ from rest.
std::string words_of(const Solved&, const std::vector<Where>&);

}  // namespace plugward::circuit
