// SPDX-License-Identifier: MIT
// What a person sees when something is wrong, in a few words, and how it follows from the behaviour of the
// circuit: a machine with an error is set beside the healthy one, function by function.
//
//   const Observer observer(fitting);
//   observer.showing(fault, FaultyMachine(fitting, fault))     // {Judders at plug 0}
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "circuit/behaviour.h"
#include "plan/machine_fault.h"

namespace plugward {

enum class Symptom {
  AlwaysTriggered,
  NeverTriggered,
  Inverted,
  Unsteady,
  FullScale,
  ZeroScale,
  WrongReading,
  HeatsByItself,
  NeverStops,
  NeverStarts,
  Weak,
  TooStrong,
  Judders,
  RunsBackwards,
  Blank,
  Dark,
  WrongOne,
  Dies
};

struct SymptomWords {
  Symptom symptom{};
  std::string_view word;  ///< as on the command line
  std::string_view sees;  ///< what the person sees: a sentence without its subject
};

std::span<const SymptomWords> all_symptoms();
const SymptomWords& words_of(Symptom);
std::optional<Symptom> symptom_of(std::string_view word);

/// A symptom, and the plug at whose device or header it is seen; -1: the whole board.
struct Showing {
  Symptom symptom{};
  int plug = -1;
  friend auto operator<=>(const Showing&, const Showing&) = default;
};

/// Plugs hang together through shared devices: what is wrong in one group is not seen in another, but for
/// rails. By plug, a number for its group.
std::vector<int> plug_groups(const Harness&);

/// Knows how the healthy machine behaves.
class Observer {
 public:
  /// Points into the fitting.
  explicit Observer(const Fitting& whole);

  /// What is seen that is not so on the healthy machine; sorted, each once. Of a machine with an error only
  /// what the error can reach is looked at.
  std::vector<Showing> showing(const MachineFault&, const FaultyMachine&) const;

  const Behaviour& healthy() const { return healthy_; }
  const Fitting& fitting() const { return *whole_; }
  /// The groups that an error reaches; empty: all.
  std::vector<int> reach(const MachineFault&) const;

 private:
  const Fitting* whole_;
  std::vector<int> groups_;
  Behaviour healthy_;
  std::vector<PinRef> inputs_;
};

/// The part of a machine that stands for some groups alone: other devices have no parts, other plugs no
/// contacts. Points into itself and into the machine.
class GroupView {
 public:
  GroupView(const FaultyMachine&, const std::vector<int>& group_of_plug, const std::vector<int>& wanted);
  GroupView(const GroupView&) = delete;
  GroupView& operator=(const GroupView&) = delete;

  Fitting fitting;
  std::vector<Contact> contacts;

 private:
  Harness harness_;
};

}  // namespace plugward
