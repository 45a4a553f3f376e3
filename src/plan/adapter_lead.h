// SPDX-License-Identifier: MIT
// A short lead between a cable that must stay as it is and the board: end A takes the cable's plug, end B
// goes on the header, and the leads cross in between as re-pinning would have had them.
//
//   const AdapterAdvice a = advise_adapter(fitting, advise(fitting), {}, Millimetres(150.0));
//   if (a.plan) for (const AdapterLead& l : a.plan->adapters[0].leads) ... l.a, l.b, l.colour
//
// A plan was judged on the model from both sides before it is given: end B on the header with the contacts
// and wire of both parts in series, and the cable's plug in end A, whose positions then are the board's pins
// in another order.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/adapter_wire.h"
#include "plan/repin.h"

namespace plugward {

/// From housing to housing where nothing else is asked for (common practice, no source).
inline constexpr Millimetres usual_adapter_length{100.0};

struct AdapterEnd {
  std::string family;
  int positions = 0;
  int rows = 1;
  Joint joint = Joint::Crimp;
  std::vector<int> empty;  ///< positions that get no lead
  std::string first;       ///< how position 1 and the key are known, one sentence
};

struct AdapterLead {
  int lead = 0;  ///< of the cable's plug, index into Plug::leads
  int a = 0;     ///< position at end A: the cable's cavity
  int b = 0;     ///< position at end B: the header's pin
  WireColour colour;
  Gauge gauge;
};

/// One lead between one plug and one header.
struct Adapter {
  int plug = 0;
  int header = 0;
  Millimetres length = usual_adapter_length;  ///< of each lead, from housing to housing
  std::string id;                  ///< "adapter-J9"; its ends are called "adapter-J9.A" and "adapter-J9.B"
  AdapterEnd a;                    ///< what the cable's plug mates with
  AdapterEnd b;                    ///< the housing that goes on the header
  std::vector<AdapterLead> leads;  ///< by position at end A
  bool spliced = false;            ///< both ends are pressed on flat cable: the leads cross at splices
  std::vector<std::string> notes;  ///< what departs from the rule: a thinner gauge, another colour
};

struct AdapterPlan {
  std::vector<Adapter> adapters;          ///< in the order of the placements; only where one is needed
  Harness harness;                        ///< as the board then meets it, cures built in
  Board board;                            ///< as the cable then meets it: ends A instead of their headers
  Assessment after;                       ///< of end B on the board: clean
  std::vector<SeatingJudgement> wrong_a;  ///< the cable's plug wrong in end A, worst first
  std::vector<SeatingJudgement> wrong_b;  ///< end B wrong on the board, worst first
  std::string not_judged;                 ///< what of end A was not judged, and why; "" when all was
  std::vector<Cure> cures;                ///< to be built in as well
  std::vector<Setting> settings;
  std::vector<std::string> tools;
  std::vector<std::string> steps;   ///< how to build it
  std::vector<std::string> checks;  ///< on the finished lead, before it is used
};

struct AdapterAdvice {
  std::optional<AdapterPlan> plan;
  bool nothing_to_do = false;             ///< the cable may be mated as it is
  std::string summary;                    ///< one sentence: what to build, or why there is no plan
  std::vector<Measurement> measurements;  ///< what must be known first, cheapest first
};

/// `advice` is what advise() says about the fitting; `length` is that of every lead between.
/// REQUIRES: length > 0.
AdapterAdvice advise_adapter(const Fitting&, const Advice& advice, const AdviseOptions& = {},
                             Millimetres length = usual_adapter_length);

/// The fitting seen from the cable: `plan.board` with the cable as it is..
Fitting seen_from_cable(const Fitting&, const AdapterPlan& plan);
/// The fitting seen from the board: `plan.harness` on it.
Fitting seen_from_board(const Fitting&, const AdapterPlan& plan);

}  // namespace plugward
