// SPDX-License-Identifier: MIT
// Internal. Added parts that may cure one finding, each with its values, its words and the harness with it
// built in. Nothing here is proven: the search judges it.
//
//   const Offer offer = remedies({fitting, harness, finding});
//   offer.remedies.front().cure.name          "a voltage divider of 6.8 kohm and 910 ohm"
//   offer.passed                              "a series resistor alone: no injection limit is stated ..."
#pragma once

#include <string>
#include <vector>

#include "plan/cure_reading.h"
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
  Cure cure;             ///< next_best for when no other kind of part was looked at
  Harness harness;
  std::vector<Toleranced> resistors;
  std::vector<LateSeat> seats;          ///< leads that are seated once the contacts have moved
  std::optional<ReadingPlace> reading;  ///< where a meter tells whether it is built in right
};

/// What was found for one finding.
struct Offer {
  std::vector<Remedy> remedies;     ///< the preferred first
  std::vector<std::string> passed;  ///< what was looked at and is none: "an optocoupler: the output ..."
};

/// A finding, where it is found, and the harness that is to be changed. `fitting` holds the same harness with
/// its contacts where they will be; the two differ in nothing but cavities.
struct Complaint {
  const Fitting& fitting;
  const Harness& base;
  const Finding& finding;
};

Offer remedies(const Complaint&);

// By what they are put into.
Offer input_remedies(const Complaint&);    ///< a signal that the board reads
Offer output_remedies(const Complaint&);   ///< a signal that the device reads
Offer supply_remedies(const Complaint&);   ///< what feeds the device
Offer lead_remedies(const Complaint&);     ///< a terminal without a lead

/// Supply leads in a thicker gauge, where the rail would be enough and the present ones lose too much.
void offer_thicker_leads(const Complaint&, const MetLead& plus, const std::optional<MetLead>& minus, Offer&);

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
/// A lead in an empty cavity: its contact and colour to be bought, and when it is seated.
void say_new_lead(Remedy&, const Fitting&, const EmptySeat&, std::string_view colour);

}  // namespace plugward
