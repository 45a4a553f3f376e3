// SPDX-License-Identifier: MIT
// One thing that is wrong with a machine that is otherwise as its files say: which such errors are possible
// on it, and the machine with one of them carried out on the model.
//
//   for (const MachineFault& fault : possible_faults(fitting, {})) {
//     const FaultyMachine machine(fitting, fault);
//     behaviour(machine.fitting, machine.contacts) ...
//   }
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/behaviour.h"
#include "circuit/meter.h"
#include "fit/seating.h"

namespace plugward {

/// In the order in which they are listed where nothing else decides: how often each is met when such machines
/// are wired, by common experience; the order is judgement, not a count.
enum class FaultKind {
  LeadsExchanged,  ///< two leads of a plug in each other's cavities
  LeadMoved,       ///< a lead in a cavity that should be empty
  Misseated,       ///< the plug turned or shifted on its header
  LeadOpen,        ///< a contact not seated, a crimp without wire, a broken lead
  PlugOff,         ///< the plug not pushed home
  SwitchOn,        ///< a switched output that conducts all the time
  Setting,         ///< nothing wrong with the wiring: the firmware takes it the other way round
  OtherHeader,     ///< the plug on a free header that it fits too
  PlugsExchanged,  ///< two plugs on each other's headers
  WrongJumper,     ///< a jumper at another position
  LeadsTouch,      ///< a whisker, or crushed insulation, between two leads of a plug
  InputHeld,       ///< an input of the board that was damaged and holds its pin at ground
  OutputDead,      ///< an output, switched output or driver pin that no longer conducts
  RailMissing      ///< a rail without volts
};

std::string_view to_word(FaultKind);  ///< "leads-exchanged", "lead-moved" ...

/// Fields that do not apply are -1, 0 or empty.
struct MachineFault {
  FaultKind kind{};
  int plug = -1;
  int lead = -1, other_lead = -1;  ///< indices into Plug::leads
  int cavity = 0;                  ///< LeadMoved: where it sits
  std::optional<Seating> seating;  ///< Misseated, OtherHeader
  int other_plug = -1;             ///< PlugsExchanged
  PinRef pin;                      ///< SwitchOn, InputHeld, OutputDead
  std::string jumper, rail;        ///< WrongJumper: its position; RailMissing
};

/// Every single error that this machine makes possible, in a stable order. Contacts that cannot be moved (a
/// ribbon's) are in no other cavity; in a housing of more than four positions only neighbours are exchanged
/// or touch. `taken`: headers on which something sits that the fitting does not tell of.
std::vector<MachineFault> possible_faults(const Fitting&, const std::vector<int>& taken);

/// A copy of the machine with one error; points into the whole one and into itself.
class FaultyMachine {
 public:
  /// Without an error.
  explicit FaultyMachine(const Fitting& whole);
  FaultyMachine(const Fitting& whole, const MachineFault&);
  FaultyMachine(const FaultyMachine&) = delete;
  FaultyMachine& operator=(const FaultyMachine&) = delete;

  Fitting fitting;
  std::vector<Contact> contacts;
  std::vector<std::vector<HeldContact>> held;  ///< by plug: the contacts in its cavities

 private:
  void change_board(const MachineFault&);
  void touch_pins(const std::vector<std::optional<Seating>>& seating_of);
  std::unique_ptr<Board> board_;
};

/// Index into Fitting::placements of a plug, -1 when it is on no header.
int placement_of_plug(const Fitting&, int plug);

}  // namespace plugward
