// SPDX-License-Identifier: MIT
// May these two be mated? The verdict, and everything that led to it, as data.
//
//   const Judgement j = judge(fitting);
//   if (j.verdict == Verdict::Mate) ...
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "diag/rule.h"
#include "fit/seating.h"
#include "model/fitting.h"

namespace plugward {

enum class Weight {
  Harm,   ///< can damage or hurt
  Fault,  ///< will not work
  Doubt,  ///< cannot be decided from what is known
  Note    ///< worth knowing
};

/// What settles a doubt: two points to measure between, and what each reading means.
struct Measurement {
  std::string action;  ///< "measure volts between J9.2 and J9.3, board powered, nothing plugged in"
  std::string expect;  ///< "4.75..5.25 V: JP2 is at 5V; 21.6..26.4 V: JP2 is at 24V"
  int cost = 0;  ///< 0 look, 1 continuity or ohms with power off, 2 volts on the bare board, 3 volts with the
                 ///< device fed
  std::string settles;  ///< which doubt, in words
  friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// One thing that the judge has to say.
struct Finding {
  Rule rule{};
  Weight weight{};
  std::string message;           ///< complete, with the figure: "24 V on 'P', withstands 5.5 V"
  std::string state;             ///< "switch closed, 5V at 5.25 V"; "" when in every state
  std::string path;              ///< "24V - J7.1 - BN - P"
  Locus at;                      ///< whom it is about: pin, lead, terminal or part, as far as known
  Span first{};                  ///< in the file to change (harness)
  Span second{};                 ///< the other side (board)
  std::string second_says;       ///< note at the second place: "J9.2 is declared here"
  std::optional<double> figure;  ///< the value that broke the limit, in `unit`
  std::optional<double> limit;
  std::string unit;                        ///< "V", "A", "W", "mm"
  std::optional<Measurement> measurement;  ///< of a doubt
  std::string
      part;  ///< of a harm or fault that an added part may cure: "level-buffer", "divider" ...; else ""
};

enum class Verdict { Mate, Repin, Adapt, Measure, Apart };

/// Something that the firmware must be told because of the wiring.
struct Setting {
  std::string what;      ///< "turn the direction of the motor on 'J3' round"
  std::string why;       ///< "its windings meet the driver the other way round than stated"
  bool inverts = false;  ///< a cure that stands for moving contacts, not only something to be known
  int header = -1, pin = -1;  ///< the pin that it is about; -1: not of one header, not of one pin
  std::string level{};        ///< of an input: "high at rest and low when the device works"
  /// The words name the pin.
  friend bool operator==(const Setting& a, const Setting& b) {
    return a.what == b.what && a.why == b.why && a.inverts == b.inverts;
  }
};

/// A wrong seating and what it would do.
struct SeatingJudgement {
  int plug = 0;
  Seating seating;
  std::vector<Finding> findings;  ///< worst first
  Weight worst = Weight::Note;
};

/// One arrangement judged as it stands, without any cure.
struct Assessment {
  std::vector<Finding> findings;  ///< worst first; the order is stable
  std::vector<Setting> settings;

  bool has(Weight) const;
  bool clean() const { return !has(Weight::Harm) && !has(Weight::Fault) && !has(Weight::Doubt); }
};

/// Judges the fitting with every plug at home.
Assessment assess(const Fitting&);
/// How many faults of function `assess` reports that no part cures, told without the circuit; 0 when one of the
/// pins hangs on a jumper whose position is not stated.
int wrong_functions(const Fitting&);
/// As `assess`, with other seatings for some plugs: seating_of[i] belongs to fitting.placements[i].
Assessment assess(const Fitting&, const std::vector<Seating>& seating_of);

/// Each plug in each of its other seatings, the others at home; worst first.
std::vector<SeatingJudgement> wrong_seatings(const Fitting&);

std::string_view to_word(Weight);   ///< "harm", "fault", "doubt", "note"
std::string_view to_word(Verdict);  ///< "MATE", "REPIN", "ADAPT", "MEASURE", "APART"

}  // namespace plugward
