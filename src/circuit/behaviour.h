// SPDX-License-Identifier: MIT
// What a machine does, seen from outside: what each input of the board reads while its switch rests and while
// it works, what each load gets while it is commanded off and on, how each motor turns. No limits are judged
// here; a machine with a wiring error has a behaviour like any other.
//
//   const Behaviour b = behaviour(fitting, contacts);
//   b.inputs[0].rest.most, b.inputs[0].worked.most     // 5.15 V and 0.02 V: it follows its switch
#pragma once

#include <span>
#include <string>
#include <vector>

#include "circuit/circuit.h"

namespace plugward {

/// A pin of the board; header -1: ground itself.
struct PinRef {
  int header = -1, number = 0;
  friend auto operator<=>(const PinRef&, const PinRef&) = default;
};

struct PartRef {
  int device = -1, part = -1;
  friend auto operator<=>(const PartRef&, const PartRef&) = default;
};

/// Least and most over the states that count; no state: not found.
struct Band {
  bool found = false;
  double least = 0, most = 0;
  void take(double value);
};

/// A digital input, while the firmware does not run. Volts.
struct InputSight {
  PinRef pin;
  std::vector<PartRef> givers;  ///< switches and outputs of devices that are wired to it
  bool floats = false;          ///< nothing holds it in some state
  Band rest, worked;            ///< every giver as it rests, every giver worked
};

/// An analogue input: its volts as a share of the rail that feeds its pull.
struct AnalogueSight {
  PinRef pin;
  std::vector<PartRef> sensors;
  Band share;
};

/// Volts across a Load (plus to minus) or a Heater (either way).
struct LoadSight {
  PartRef part;
  std::vector<PinRef> switches;  ///< switched outputs that have a say
  Band off, on;                  ///< with all of them off, with all of them on
};

/// Volts at a Receiver against its minus.
struct ReceiverSight {
  PartRef part;
  PinRef output;   ///< the board's output that is wired to it; number 0: none
  Band low, high;  ///< while that output is low, is high
};

enum class Turning { Still, Judders, Forwards, Backwards };

/// A device with two windings, its driver going through the four states of a full step. Forwards: the first
/// winding leads as it does when coil 1 A-B meets the first winding's a-b and coil 2 the second's.
struct MotorSight {
  int device = -1;
  int header = -1;  ///< the driver's; -1: none, or several
  Turning turning = Turning::Still;
};

struct Behaviour {
  std::vector<InputSight> inputs;
  std::vector<AnalogueSight> analogue;
  std::vector<LoadSight> loads;
  std::vector<ReceiverSight> receivers;
  std::vector<MotorSight> motors;
  bool shorted = false;          ///< some state is a short circuit; such states do not count above
  bool shorted_at_rest = false;  ///< ... also with every output off and every switch as it rests
  bool shorted_by_hand = false;  ///< ... also with every output off, some switch worked
  std::string short_state;       ///< "switch closed"; "" when in every state
  std::string short_path;
};

/// `watched`: pins that are looked at though no lead may touch them.
Behaviour behaviour(const Fitting&, std::span<const Contact>, std::span<const PinRef> watched = {},
                    const CircuitDefaults& = {});

}  // namespace plugward
