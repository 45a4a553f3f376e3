// SPDX-License-Identifier: MIT
// Internal. Added parts that may cure one finding, each with its values, its words and the harness with it
// built in. Nothing here is proven: the search judges it.
#pragma once

#include <string>
#include <vector>

#include "plan/cure_site.h"
#include "plan/repin.h"

namespace plugward {

/// A resistor of a cure, which may be anywhere within its tolerance.
struct Toleranced {
  int device = 0, part = 0;
  double tolerance = 0.01;
};

struct Remedy {
  std::string drawback;  ///< why others come before it
  Cure cure;             ///< next_best for when nothing else was looked at
  Harness harness;
  std::vector<Toleranced> resistors;
};

/// A finding, where it is found, and the harness that is to be changed. `fitting` holds the same harness with
/// its contacts where they will be; the two differ in nothing but cavities.
struct Complaint {
  const Fitting& fitting;
  const Harness& base;
  const Finding& finding;
};

/// The preferred first.
std::vector<Remedy> remedies(const Complaint&);

// By what they are put into.
std::vector<Remedy> input_remedies(const Complaint&);   ///< a signal that the board reads
std::vector<Remedy> output_remedies(const Complaint&);  ///< a signal that the device reads
std::vector<Remedy> supply_remedies(const Complaint&);  ///< what feeds the device

/// The 74HCT family as level buffer: its inputs read low below 0.8 V and high from 2.0 V at a supply of
/// 4.5..5.5 V and stand 0.5 V beyond it (SN74HCT00 data sheet); unloaded, its output keeps within 0.1 V of
/// its supplies (CD74HC4024 data sheet, same output stage).
inline constexpr Range<Volts> hct_supply{Volts(4.5), Volts(5.5)};
void add_buffer(Device&, TerminalIndex from, TerminalIndex to, TerminalIndex plus, TerminalIndex minus,
                std::optional<bool> rests_high);
/// Its component and steps.
void say_buffer(Remedy&, const Fitting&, const MetLead& lead, TerminalIndex plus, TerminalIndex minus);

// Common words and parts.
std::string power_off_step();
std::string sleeve_step();
std::string rating_words(Watts);  ///< "0.25 W or more"
/// Adds a resistor to the remedy's harness and remembers its tolerance.
void add_resistor(Remedy&, int device, TerminalIndex a, TerminalIndex b, Ohms, Watts rating,
                  double tolerance);

}  // namespace plugward
