// SPDX-License-Identifier: MIT
// What the circuit takes for granted where a file states nothing. Every value can be overridden in the file
// (attribute in brackets) or is on the safe side. Documented for users in boards/README.md.
#pragma once

#include "quantity/quantity.h"

namespace plugward {

struct CircuitDefaults {
  Ohms contact{0.02};  ///< one mated contact
  Ohms lead{0.05};     ///< a lead whose gauge or length is not stated
  Ohms pull{
      40e3};  ///< a pull without a stated resistance (STM32F101 data sheet: 30..50 kohm) [pin/@pull-ohms]
  Amps output_limit{
      0.02};  ///< a logic output whose limit is not stated (ATmega640 data sheet, test current) [pin/@limit]
  Amps switched_limit{0.5};   ///< above it a switched output or a contact without a stated rating is a doubt
  Ohms output{50.0};          ///< source resistance of a logic output [pin/@ohms]
  Volts output_low{0.4};      ///< highest low level of an output (TTL, "Logic levels") [pin/@low]
  Ohms low_side_switch{0.1};  ///< on resistance of a switched output [pin/@ohms]
  Volts body_diode{0.7};      ///< reverse conduction of a switched output, ground to pin
  Ohms diode{1.0};            ///< slope resistance of every diode when it conducts
  Ohms driver{1.0};           ///< on resistance of a device's output, in series with its drop
  Volts driver_drop{0.4};     ///< highest drop of a device's output when conducting [driver/@drop]
  Ohms driver_body{10.0};     ///< reverse conduction of a device's output that leaks
  Ohms receiver_pull{
      1000.0};  ///< behind a device's own level whose resistance is not stated [receiver/@pull]
  Ohms closed_switch{0.05};
  Ohms join{0.01};
  Ohms source{0.1};  ///< internal resistance of a device's own supply
  Volts reverse_diode{
      0.7};  ///< a polarised load's substrate when reversed (reversed="destroyed" or not stated)
  Ohms reverse_ohms{10.0};
  Amps coil_limit{2.0};        ///< a motor driver's current limit [pin/@limit]
  Volts margin{0.02};          ///< a voltage counts as beyond a limit only past limit + margin
  double share_margin = 0.01;  ///< a current counts as beyond a limit only past limit x (1 + this)
  Volts beyond_supply{0.3};    ///< what a pin or terminal stands past its own supply when nothing is stated
                               ///< (STM32F103x6 data sheet)
  Amps back_feed{0.001};       ///< a rail counts as fed from outside above this
  Volts reversed_beyond{0.5};  ///< a supply counts as reversed below minus this
  double short_multiple =
      3.0;  ///< an overcurrent of a rail past its limit times this is called a short circuit
  Amps short_without_limit{20.0};  ///< ... or past this, when the rail's limit is not stated
  double heater_over =
      1.2;  ///< heater power beyond rated x this is harm (supply tolerance of +-10 % gives 1.21)
  double heater_under = 0.6;  ///< below rated x this the heater will not do its work
  double heater_off = 0.05;   ///< at rest a heater must stay below rated x this
  int most_states = 20000;    ///< per island; beyond it the judgement is a doubt
};

}  // namespace plugward
