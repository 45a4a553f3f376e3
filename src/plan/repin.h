// SPDX-License-Identifier: MIT
// From the arrangement in the housing to one that may be mated: which contacts to move, in which order.
//
//   const Advice a = advise(fitting);      // verdict; a.plan when contacts are to be moved
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "judge/budget.h"
#include "judge/judgement.h"
#include "model/fitting.h"

namespace plugward {

/// Where each lead sits. cavity[lead index] in 1..positions; 0: taken out and insulated; -1: loose.
struct Arrangement {
  std::vector<int> cavity;
  friend bool operator==(const Arrangement&, const Arrangement&) = default;
};

enum class StepKind {
  Move,     ///< from a cavity to an empty cavity
  Park,     ///< from a cavity to an empty one that is not its goal
  Hold,     ///< out of the housing; held beside it (only when no cavity is empty); at most one at a time
  Insert,   ///< the held one into its cavity
  Insulate  ///< out of the housing for good: insulate singly and tag
};

struct Step {
  StepKind kind{};
  int plug = 0;
  int lead = 0;     ///< index into Plug::leads
  int from = 0;     ///< cavity; 0 for Insert
  int to = 0;       ///< cavity; 0 for Hold and Insulate
  std::string why;  ///< "terminal 'V' must meet J9.2 (5V)"
};

/// The moves for one plug.
struct PlugPlan {
  int plug = 0;
  Arrangement before;
  Arrangement after;
  std::vector<Step> steps;
  int extractions = 0;  ///< contacts taken out of a cavity
};

struct RepinPlan {
  std::vector<PlugPlan> plugs;
  Harness harness;                     ///< as it will be
  Assessment after;                    ///< judged again: clean
  std::vector<std::string> cautions;   ///< before anything is touched
  std::vector<std::string> technique;  ///< how to free and seat these contacts, by lance type
  std::vector<std::string> checks;     ///< after the last contact is seated
  std::vector<std::string> tools;
};

/// A part to buy.
struct Component {
  std::string kind;     ///< "resistor", "diode", "level buffer", "optocoupler", "regulator", "supply"
  std::string value;    ///< "6.8 kohm"; "" when the kind says it all
  std::string demands;  ///< "1 %, 0.125 W or more"
  std::string between;  ///< "in the lead from terminal 'Q'", "from cavity 3 to ground"
};

/// An added part with its values. The cures of one Advice were judged together on the model, in every corner
/// of their tolerances: nothing is left against the cured circuit.
struct Cure {
  std::string kind;       ///< "divider", "pull-up", "series-diode", "level-buffer", ...
  std::string name;       ///< "a voltage divider of 6.8 kohm and 1.5 kohm"
  std::string what;       ///< one sentence that names it with its values
  std::string why;        ///< with the figures that it reaches
  std::string next_best;  ///< what else was looked at and why it was not chosen; "" when there was nothing
  std::vector<Component> components;
  std::vector<std::string> steps;  ///< how to build it in, with the cautions that belong there
};

/// Verdict, reasons and cure for a fitting.
struct Advice {
  Verdict verdict = Verdict::Apart;
  Assessment now;                   ///< as it stands
  std::optional<RepinPlan> plan;    ///< REPIN, or ADAPT with cures: its result is clean
  std::vector<std::string> softer;  ///< cures that need no tool, to be said first: a jumper, turning the plug
  int new_housings = 0;             ///< how many of `parts` are housings
  std::vector<std::string> housings{};  ///< those
  std::vector<std::string> parts;   ///< ADAPT: what to add, in words
  std::vector<Cure> cures;          ///< ADAPT: computed and judged; empty when no values could be computed
  /// ADAPT of several plugs: the part in words for those whose values could not be proved, beside `cures` of
  /// others. Each cure then holds for its own plug; `cured` and `plan` are empty.
  std::vector<std::string> uncured;
  std::optional<Harness> cured;  ///< with the cures built in and the contacts of `plan` moved; judged clean
  std::vector<Measurement> measurements;  ///< MEASURE: cheapest first
  std::vector<Setting> settings;          ///< that hold after the verdict was followed
  std::vector<SeatingJudgement> wrong;    ///< other seatings after the verdict was followed, worst first
  Budget budget;                          ///< after the verdict was followed, when it was asked for
  std::string summary;                    ///< one sentence
  int moved = 0;                          ///< contacts moved by the cure, whether or not it is a plan
};

class WiringMemory;

/// What to leave out when only the verdict is wanted.
struct AdviseOptions {
  bool wrong_seatings = true;
  bool softer = true;
  bool budget = false;  ///< only for who shows it
  bool cures = true;    ///< false: ADAPT says what to add in words only
  /// false: what stands is judged only where the verdict needs it. Advice::now may then be empty, and the
  /// summary may keep silent on harm that it does as it is.
  bool now = true;
  /// Where assessments are remembered, for who only counts: names of pins and cavities may be another board's.
  WiringMemory* wirings = nullptr;
};

Advice advise(const Fitting&, const AdviseOptions& = {});

/// Fewest steps from `before` to `after`: at most one lead loose at a time, empty cavities used for parking.
/// REQUIRES: both are arrangements of the same leads in `positions` cavities.
std::vector<Step> order_moves(const Arrangement& before, const Arrangement& after, int positions);

/// Carries the steps out on `before`; empty when a step is impossible (cavity taken, two loose, ...).
std::optional<Arrangement> carry_out(const Arrangement& before, const std::vector<Step>& steps,
                                     int positions);

}  // namespace plugward
