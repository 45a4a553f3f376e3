// SPDX-License-Identifier: MIT
// From a symptom back to the wiring errors that make it on this machine, each with the measurements that tell
// them apart. Every possible single error is carried out on a copy of the machine and the circuit says what
// is seen then; nothing is looked up by name.
//
//   const CauseFinder finder(fitting);
//   for (const PlugCauses& seen : finder.causes(Symptom::AlwaysTriggered)) seen.causes[0].what ...
//
// One error at a time: two at once, and what no description tells of, are not found. Time: one solution of
// the error's own group of plugs for each error; some 300 for a machine of 19 plugs, 10 ms.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/symptom.h"
#include "plan/tell_apart.h"

namespace plugward {

struct Cause {
  MachineFault fault;
  std::string what;                ///< one sentence: which plug, header, lead
  std::string how;                 ///< how such a thing comes about
  std::string cure;                ///< what to do when it is this
  std::vector<std::string> harms;  ///< what the circuit says that it can damage or hurt
  std::vector<Showing> shows;      ///< all symptoms, the one asked for among them
  bool shorts_by_hand = false;     ///< a rail is shorted while every output is off
};

/// A symptom at one plug, or of the whole board (plug -1).
struct PlugCauses {
  Symptom symptom{};
  int plug = -1;
  std::vector<Cause> causes;          ///< likely kinds first
  std::vector<TellingStep> steps;     ///< the first is where to begin; the others are reached by `next`
  std::vector<std::string> cautions;  ///< before the first step
};

/// A symptom that the machine can show, and how many errors make it.
struct PossibleSymptom {
  Showing showing;
  int causes = 0;
};

class CauseFinder {
 public:
  /// Points into the fitting. `taken`: headers on which something sits that the fitting does not tell of.
  explicit CauseFinder(const Fitting&, std::vector<int> taken = {});

  /// By plug, then in the order of Symptom; the whole board first. `plug`: seen there alone; of what the
  /// whole board shows, only what errors of that plug make.
  std::vector<PossibleSymptom> possible(std::optional<int> plug = std::nullopt) const;
  /// Where the symptom can be seen: by plug. `plug`: there alone; for what the whole board shows, only
  /// errors of that plug.
  std::vector<PlugCauses> causes(Symptom, std::optional<int> plug = std::nullopt) const;

  int errors() const { return static_cast<int>(faults_.size()); }  ///< how many were tried

 private:
  Cause cause_of(std::size_t fault) const;

  Fitting fitting_;
  Observer observer_;
  std::vector<MachineFault> faults_;
  std::vector<std::vector<Showing>> shown_;  ///< by fault
};

}  // namespace plugward
