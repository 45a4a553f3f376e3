// SPDX-License-Identifier: MIT
// Internal. What an added part finds at its place: the pin that a lead meets, what gives the signal, from
// which rails and grounds of the same device it can be fed. And the edits that put it there.
//
// A cure never touches a lead: the lead stays on its terminal, and everything of the device that hung on that
// terminal moves to an inner node behind the added part.
//
//   before   lead - Q - [output]          after   lead - Q - [upper] - Q behind the divider - [output]
//                                                        |
//                                                     [lower] - G
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "judge/judgement.h"
#include "model/fitting.h"
#include "plan/cure_values.h"

namespace plugward {

/// A lead of a placed plug over a pin.
struct MetLead {
  int plug = 0, lead = 0;
  int header = 0, pin = 0;
  TerminalRef terminal;
};

/// Leads that go to a known terminal and meet a pin, every plug at home.
std::vector<MetLead> joints(const Fitting&);
std::optional<MetLead> joint_at_pin(const Fitting&, int header, int pin);
std::optional<MetLead> joint_of(const Fitting&, TerminalRef);

/// An input of the board, as far as its description goes.
struct InputSide {
  Volts most{};
  std::optional<Volts> low_below, high_above;
  std::optional<PullBehind> pull;
  bool pulled_up = false;
};
/// Nothing when the pin is no input, or when neither a limit nor a rail is stated.
std::optional<InputSide> input_side(const Fitting&, const Pin&);

/// Volts between the supply terminal and the board's ground: of the rail that its lead meets, of a regulator
/// or an own supply behind it. Nothing when it meets none.
std::optional<Range<Volts>> volts_at(const Fitting&, TerminalRef);
/// A terminal of the device whose lead meets ground.
std::optional<TerminalIndex> ground_of(const Fitting&, int device);
/// A terminal of the device whose lead meets a supply that lies within `volts`, all of it.
std::optional<TerminalIndex> supply_of(const Fitting&, int device, Range<Volts> volts);

/// Index of the device's output or input stage at a terminal; -1 when there is none.
int driver_at(const Device&, TerminalIndex);
int receiver_at(const Device&, TerminalIndex);
int switch_at(const Device&, TerminalIndex);
/// Two ends of the device are one net with this terminal: nothing can be put into its lead alone.
bool is_joined(const Device&, TerminalIndex);

/// Everything that hangs on the terminal moves to a new inner one, whose index is returned.
TerminalIndex split(Device&, TerminalIndex, const std::string& behind);
TerminalIndex add_inner(Device&, const std::string& id);

/// A cavity of a placed plug that is empty once the contacts have moved, and the pin under it.
struct EmptySeat {
  int plug = 0, cavity = 0, header = 0, pin = 0;
  Range<Volts> volts{};  ///< of a supply
  bool later = false;    ///< a contact sits there until it is moved
};
/// A lead that is seated later: until then it hangs beside the housing.
struct LateSeat {
  int plug = 0, lead = 0, cavity = 0;
};
/// Empty cavities over pins that are accepted, those of `plug` first, those that are empty already before
/// those that become it. `base` and the fitting's harness hold the same leads; the fitting's are where they
/// will be. Of a supply pin: only with a known rail.
std::vector<EmptySeat> empty_seats(const Fitting&, const Harness& base, int plug,
                                   const std::function<bool(const Pin&)>& accepts);
/// Those over pins with this function; those of `beside`'s plug first.
std::vector<EmptySeat> empty_seats(const Fitting&, const Harness& base, const MetLead& beside, PinFunction);
/// A new terminal of the device with a lead, like `beside`'s, to that cavity.
TerminalIndex add_lead(const Fitting&, Harness& base, const MetLead& beside, const EmptySeat&,
                       std::vector<LateSeat>&);
/// The same for a terminal that is there and has no lead; gauge and length are those of a lead of that plug.
void seat_lead(Harness& base, TerminalRef, const EmptySeat&, const WireColour&, std::vector<LateSeat>&);

/// "the BK lead of terminal 'Q'".
std::string lead_words(const Fitting&, const MetLead&);

}  // namespace plugward
